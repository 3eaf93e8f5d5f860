package tabor.resolve;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.source.Span;
import tabor.syntax.Bar;
import tabor.syntax.Beat;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;
import tabor.syntax.Word;

/** What can be said of a part from its letters alone. */
final class PartHints {
  private static final int MANY = 8;

  private PartHints() {}

  /** Finds capitals in ghost parentheses. */
  static void ghosts(Work work, Line line, PartStatement.Lane lane) {
    if (!has(line, '(')) {
      return;
    }
    for (Bar bar : lane.bars()) {
      for (Beat beat : bar.beats()) {
        ghosts(work.problems, line, beat.elements(), false);
      }
    }
  }

  private static boolean has(Line line, char sign) {
    String text = line.passage().text();
    int end = line.start() + line.statement().span().end();
    for (int i = line.start() + line.statement().span().start(); i < end; i++) {
      if (text.charAt(i) == sign) {
        return true;
      }
    }
    return false;
  }

  /** Finds capitals in ghost parentheses. */
  static void ghosts(Problems problems, Line line, List<Beat.Element> elements, boolean ghost) {
    for (Beat.Element element : elements) {
      if (element instanceof Beat.Hit hit && ghost && hit.accent()) {
        problems.add(
            problems
                .make(
                    Code.ACCENT_IN_GHOST,
                    line,
                    hit.span(),
                    "a capital is an accent, and parentheses make a ghost stroke: it cannot be"
                        + " both")
                .help("write " + hit.letter() + " for a ghost, or take the parentheses away")
                .fix(
                    Diagnostic.Fix.of(
                        "make it a ghost stroke",
                        line.spot(hit.span()),
                        line.spot(hit.span()).text().toLowerCase(java.util.Locale.ROOT))));
      } else if (element instanceof Beat.Group group) {
        ghosts(problems, line, group.elements(), ghost);
      } else if (element instanceof Beat.Ghosts inner) {
        ghosts(problems, line, inner.elements(), true);
      }
    }
  }

  /** Warns of parts in capitals throughout, and hints at beats divided unlike their neighbours. */
  static void hints(Work work, Line line, PartStatement.Lane lane) {
    List<Beat> beats = new ArrayList<>();
    int accents = 0;
    for (Bar bar : lane.bars()) {
      beats.addAll(bar.beats());
      for (int i = 0; i < bar.beats().size() && accents >= 0; i++) {
        accents = accents(bar.beats().get(i).elements(), accents);
      }
    }
    if (accents >= MANY) {
      work.problems.add(
          work.problems
              .make(
                  Code.ALL_ACCENTS,
                  line,
                  lane.subject().span(),
                  "every stroke of this part is an accent: capitals are accents")
              .help("write small letters for plain strokes"));
    }
    // Unequal beats are divided unequally on purpose.
    int last = work.meter().isEven() ? beats.size() - 1 : 0;
    int[] divided = new int[last > 0 ? beats.size() : 0];
    for (int i = 0; i < divided.length; i++) {
      divided[i] = slots(beats.get(i));
    }
    for (int i = 1; i < last; i++) {
      int before = divided[i - 1];
      int here = divided[i];
      if (before > 1
          && here > 1
          && here != before
          && before == divided[i + 1]
          && here % before != 0
          && before % here != 0) {
        work.problems.add(
            work.problems
                .make(
                    Code.ODD_BEAT,
                    line,
                    beats.get(i).span(),
                    "this beat is divided in "
                        + here
                        + ", the beats around it in "
                        + before
                        + ": is a stroke or a dot missing?")
                .help("write " + beats.get(i).span().in(lineText(line)) + ":1 to say it is meant"));
      }
    }
  }

  private static String lineText(Line line) {
    return line.passage().text().substring(line.start());
  }

  private static int slots(Beat beat) {
    return beat.beats() == null ? slots(beat.elements()) : 0;
  }

  private static int slots(List<Beat.Element> elements) {
    int slots = 0;
    for (Beat.Element element : elements) {
      slots += element instanceof Beat.Ghosts ghosts ? slots(ghosts.elements()) : 1;
    }
    return slots;
  }

  /** So many accents more than before; -1 from the first stroke on that is none. */
  private static int accents(List<Beat.Element> elements, int before) {
    int accents = before;
    for (int i = 0; i < elements.size() && accents >= 0; i++) {
      Beat.Element element = elements.get(i);
      if (element instanceof Beat.Hit hit) {
        accents = hit.accent() ? accents + 1 : -1;
      } else if (element instanceof Beat.Group group) {
        accents = accents(group.elements(), accents);
      } else if (element instanceof Beat.Ghosts ghosts) {
        accents = accents(ghosts.elements(), accents);
      }
    }
    return accents;
  }

  /** Hints at holds after drum strokes that do not roll: a drum does not ring on. */
  static void held(Work work, LaneWalker walker, Line line, Word subject) {
    Subject of = Subject.of(subject.text(), work.kit());
    List<Span> said = new ArrayList<>();
    for (LaneWalker.Held held : walker.holds()) {
      Beat.Hit hit = held.stroke().hit;
      boolean rolls =
          hit.suffixes().stream()
              .anyMatch(
                  s ->
                      s == Beat.Suffix.DIDDLE
                          || s == Beat.Suffix.OPEN_ROLL
                          || s == Beat.Suffix.BUZZ);
      Surface surface = of == null || rolls ? null : surface(work, of, hit.letter());
      if (surface == null
          || surface.isCymbal()
          || surface.sort() == Surface.Sort.OWN
          || said.contains(hit.span())
          || held.stroke().line != line) {
        continue;
      }
      said.add(hit.span());
      work.problems.add(
          work.problems
              .make(
                  Code.HELD_DRUM,
                  line,
                  held.hold(),
                  "the " + surface.words() + " does not ring on after a stroke")
              .help("write a dot for silence, or a roll: " + hit.letter() + "//"));
    }
  }

  private static @Nullable Surface surface(Work work, Subject subject, char letter) {
    return switch (subject.kind()) {
      case SURFACE -> subject.surface();
      case LIMB -> {
        Surface named = work.kit().letter(letter);
        Limb limb = subject.limb();
        yield letter == 'x' && limb != null ? work.plays(limb) : named;
      }
      case FEET -> work.plays(letter == 'l' ? Limb.LEFT_FOOT : Limb.RIGHT_FOOT);
      case HANDS, LINE, ALL ->
          work.plays(
              letter == 'l'
                  ? Limb.LEFT_HAND
                  : letter == 'k'
                      ? Limb.RIGHT_FOOT
                      : letter == 'p' ? Limb.LEFT_FOOT : Limb.RIGHT_HAND);
    };
  }
}
