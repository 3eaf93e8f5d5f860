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
    for (Bar bar : lane.bars()) {
      for (Beat beat : bar.beats()) {
        ghosts(work.problems, line, beat.elements(), false);
      }
    }
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
    int[] strokes = new int[2];
    for (Bar bar : lane.bars()) {
      beats.addAll(bar.beats());
      for (Beat beat : bar.beats()) {
        count(beat.elements(), strokes);
      }
    }
    if (strokes[0] >= MANY && strokes[0] == strokes[1]) {
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
    for (int i = 1; i < last; i++) {
      int before = slots(beats.get(i - 1));
      int here = slots(beats.get(i));
      if (beats.get(i).beats() == null
          && before > 1
          && here > 1
          && before == slots(beats.get(i + 1))
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

  private static void count(List<Beat.Element> elements, int[] strokes) {
    for (Beat.Element element : elements) {
      if (element instanceof Beat.Hit hit) {
        strokes[0]++;
        strokes[1] += hit.accent() ? 1 : 0;
      } else if (element instanceof Beat.Group group) {
        count(group.elements(), strokes);
      } else if (element instanceof Beat.Ghosts ghosts) {
        count(ghosts.elements(), strokes);
      }
    }
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
