package tabor.resolve;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Severity;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.lists.Lists;
import tabor.rhythm.Meter;
import tabor.rhythm.Meters;
import tabor.rhythm.Time;
import tabor.source.Span;
import tabor.source.Spot;
import tabor.syntax.Beat;
import tabor.syntax.LaneBar;
import tabor.syntax.LimbRef;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;
import tabor.syntax.Subject;
import tabor.syntax.SurfaceRef;

/** What can be said of a part from its letters alone. */
record PartHints(Problems problems, Line line) {
  private static final int MANY = 8;

  /** Finds capitals in ghost parentheses. */
  void ghosts(PartStatement.Lane lane) {
    for (LaneBar bar : lane.bars()) {
      for (Beat beat : bar.beats()) {
        ghosts(beat.elements(), false);
      }
    }
  }

  /** Finds capitals in ghost parentheses. */
  void ghosts(List<Beat.Element> elements, boolean ghost) {
    for (Beat.Element element : elements) {
      if (element instanceof Beat.Hit hit && ghost && hit.accent()) {
        Spot spot = line.spot(hit.span());
        problems.add(
            problems
                .make(
                    Code.ACCENT_IN_GHOST,
                    line,
                    hit.span(),
                    "a capital is an accent, and parentheses make a ghost stroke: it cannot be"
                        + " both")
                .help("write " + hit.letter() + " for a ghost, or take the parentheses away")
                .fix("make it a ghost stroke", spot, spot.text().toLowerCase(Locale.ROOT)));
      } else if (element instanceof Beat.Group group) {
        ghosts(group.elements(), ghost);
      } else if (element instanceof Beat.Ghosts inner) {
        ghosts(inner.elements(), true);
      }
    }
  }

  /**
   * Warns of parts in capitals throughout and of beats divided unlike their neighbours.
   *
   * @param first the number of the part's first bar
   */
  void letters(PartStatement.Lane lane, Meters meters, int first) {
    capitals(lane);
    Set<Beat> told = new HashSet<>();
    for (int i = 0; i < lane.bars().size(); i++) {
      Meter meter = meters.of(first + i);
      if (meter.isEven()) {
        odd(lane.bars().get(i).beats(), meter, told);
      }
    }
    neighbours(lane, meters, first, told);
  }

  private void capitals(PartStatement.Lane lane) {
    List<Beat.Hit> hits = new ArrayList<>();
    lane.bars().forEach(bar -> bar.beats().forEach(beat -> collect(beat.elements(), hits)));
    List<Beat.Hit> grace = new ArrayList<>();
    for (int i = 0; i + 1 < hits.size(); i++) {
      Beat.Hit hit = hits.get(i);
      Beat.Hit next = hits.get(i + 1);
      boolean hands = hit.letter() == 'r' || hit.letter() == 'l';
      if (hands
          && !hit.accent()
          && next.accent()
          && next.letter() == (hit.letter() == 'r' ? 'l' : 'r')
          && hit.span().end() == next.span().start()) {
        grace.add(hit);
      }
    }
    long accents = Lists.count(hits, Beat.Hit::accent);
    if (hits.size() < MANY || accents + grace.size() < hits.size()) {
      return;
    }
    if (grace.isEmpty()) {
      problems.tell(
          Code.ALL_ACCENTS,
          line,
          lane.subject().span(),
          "every stroke of this part is an accent: capitals are accents",
          "write small letters for plain strokes");
    } else if (Lists.any(grace, hit -> hit.letter() == 'l')) {
      // Flams as method books print them. Only small rights and capital lefts are played as
      // written: accents off the beat.
      List<Diagnostic.Edit> edits = new ArrayList<>();
      grace.forEach(hit -> edits.add(new Diagnostic.Edit(line.spot(hit.span()), "'")));
      problems.add(
          problems
              .make(
                  Code.ALL_ACCENTS,
                  line,
                  lane.subject().span(),
                  "capitals are accents here, and small letters are strokes of their own")
              .help("a flam is written with an apostrophe: 'R")
              .fix(new Diagnostic.Fix("write flams", edits)));
    }
  }

  private static void collect(List<Beat.Element> elements, List<Beat.Hit> hits) {
    for (Beat.Element element : elements) {
      if (element instanceof Beat.Hit hit) {
        hits.add(hit);
      } else if (element instanceof Beat.Group group) {
        collect(group.elements(), hits);
      } else if (element instanceof Beat.Ghosts ghosts) {
        collect(ghosts.elements(), hits);
      }
    }
  }

  /** Warns of the one word of a bar that has a stroke more or fewer than all others. */
  private void odd(List<Beat> words, Meter meter, Set<Beat> told) {
    if (words.size() < 3 || Lists.any(words, word -> word.beats() != null)) {
      return;
    }
    int usual =
        slots(words.get(0)) == slots(words.get(1)) ? slots(words.get(0)) : slots(words.get(2));
    Beat odd = null;
    for (Beat word : words) {
      if (slots(word) != usual) {
        if (odd != null) {
          return;
        }
        odd = word;
      }
    }
    if (odd == null || usual % 2 != 0 || Math.abs(slots(odd) - usual) != 1) {
      return;
    }
    boolean tuplet =
        Meter.isDotted(meter.beat(0)) ? slots(odd) % 3 != 0 : Integer.bitCount(slots(odd)) != 1;
    if (tuplet && slots(odd) > 1) {
      told.add(odd);
      problems.add(
          uneven(
                  odd,
                  slots(odd),
                  "this beat has "
                      + slots(odd)
                      + " strokes or dots, the others of"
                      + " the bar "
                      + usual
                      + ": is one missing or too many?")
              .at(Severity.WARNING));
    }
  }

  /** Hints at a word that is divided unlike the two beside it. */
  private void neighbours(PartStatement.Lane lane, Meters meters, int first, Set<Beat> told) {
    List<Beat> words = new ArrayList<>();
    for (int i = 0; i < lane.bars().size(); i++) {
      // Unequal beats are divided unequally on purpose.
      if (!meters.of(first + i).isEven()) {
        return;
      }
      words.addAll(lane.bars().get(i).beats());
    }
    for (int i = 1; i + 1 < words.size(); i++) {
      int before = measured(words.get(i - 1));
      int here = measured(words.get(i));
      if (before > 0
          && before == measured(words.get(i + 1))
          && here % before != 0
          && before % here != 0
          && !told.contains(words.get(i))) {
        problems.add(
            uneven(
                words.get(i),
                here,
                "this beat is divided in "
                    + here
                    + ", the beats around it in "
                    + before
                    + ": is a stroke or a dot missing?"));
      }
    }
  }

  private Diagnostic uneven(Beat word, int slots, String message) {
    Spot spot = line.spot(word.span());
    Spot end = line.spot(new Span(word.span().end(), word.span().end()));
    return problems
        .make(Code.ODD_BEAT, line, word.span(), message)
        .help("write " + spot.text() + ":1 to say that " + slots + " in the beat are meant")
        .fix("say that it is meant", end, ":1");
  }

  private static int measured(Beat beat) {
    return beat.beats() == null ? slots(beat) : 0;
  }

  private static int slots(Beat beat) {
    return slots(beat.elements());
  }

  private static int slots(List<Beat.Element> elements) {
    int slots = 0;
    for (Beat.Element element : elements) {
      slots += element instanceof Beat.Ghosts ghosts ? slots(ghosts.elements()) : 1;
    }
    return slots;
  }

  /** Hints at holds after drum strokes that do not roll, or that one hand cannot press so long. */
  void held(LaneWalker walker, Subject subject, SectionDraft draft, SectionFrame frame) {
    Set<Span> said = new HashSet<>();
    for (LaneWalker.Held held : walker.holds()) {
      Beat.Hit hit = held.stroke().hit;
      if (held.stroke().line != line || said.contains(hit.span())) {
        continue;
      }
      Surface surface = subject.match(new Struck(hit.letter(), draft, frame));
      if (surface == null || surface.isCymbal() || surface.sort() == Surface.Sort.OWN) {
        continue;
      }
      boolean press = hit.suffixes().contains(Beat.Suffix.BUZZ);
      boolean rolls = Lists.any(hit.suffixes(), Beat.Suffix::isRoll);
      Meter meter = frame.meters().of(held.stroke().bar);
      Time twoBeats = meter.beat(0).times(2);
      boolean tooLong = press && hit.letter() != 'b' && held.length().compareTo(twoBeats) > 0;
      if (!rolls || tooLong) {
        said.add(hit.span());
        problems.tell(
            Code.HELD_DRUM,
            line,
            held.hold(),
            tooLong
                ? "the buzz of one hand does not last over two beats"
                : "the " + surface.words() + " does not ring on after a stroke",
            tooLong
                ? "press with both hands: b~, or start the buzz again"
                : "write a dot for silence, or a roll: " + hit.letter() + "//");
      }
    }
  }

  /** What a letter strikes, as far as that is known before the strokes are dealt. */
  private record Struck(char letter, SectionDraft draft, SectionFrame frame)
      implements Subject.Cases<@Nullable Surface> {
    @Override
    public @Nullable Surface limb(LimbRef limb) {
      return letter == 'x' ? draft.plays(limb.limb()) : frame.kit().letter(letter);
    }

    @Override
    public @Nullable Surface hands(Span span) {
      return draft.plays(letter == 'l' ? Limb.LEFT_HAND : Limb.RIGHT_HAND);
    }

    @Override
    public @Nullable Surface feet(Span span) {
      return draft.plays(letter == 'l' ? Limb.LEFT_FOOT : Limb.RIGHT_FOOT);
    }

    @Override
    public @Nullable Surface line(Span span) {
      return letter == 'k' || letter == 'p'
          ? draft.plays(letter == 'k' ? Limb.RIGHT_FOOT : Limb.LEFT_FOOT)
          : hands(span);
    }

    @Override
    public @Nullable Surface surface(SurfaceRef surface) {
      return frame.kit().surface(surface.name());
    }
  }
}
