package tabor.ide;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tabor.kit.Kit;
import tabor.kit.Surface;
import tabor.syntax.Beat;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;
import tabor.syntax.Subject;

/** What could be struck in place of a surface that the kit lacks. */
final class SurfaceChoice {
  private SurfaceChoice() {}

  /**
   * A surface of the kit.
   *
   * @param name its name
   * @param letter its letter, in the case of the stroke
   * @param words as a sentence says it
   */
  record Choice(String name, String letter, String words) {}

  /** The surfaces of the same sort that the kit has; for a letter only those with one. */
  static List<Choice> of(Kit kit, SyntaxToken token) {
    Surface missing =
        token.hit() == null ? kit.surface(token.text()) : kit.letter(token.hit().letter());
    List<Choice> found = new ArrayList<>();
    for (Surface surface : kit.surfaces().values()) {
      char letter = kit.letterOf(surface);
      boolean fits =
          missing != null
              && surface.sort() == missing.sort()
              && !surface.equals(missing)
              && kit.struck(surface) != null;
      if (fits && (token.hit() == null || letter != 0)) {
        String text = String.valueOf(letter);
        boolean accent = token.hit() != null && token.hit().accent();
        found.add(
            new Choice(
                surface.name(), accent ? text.toUpperCase(Locale.ROOT) : text, surface.words()));
      }
    }
    return found;
  }

  /** True if the sign makes sense on what the letter strikes, as far as the line tells. */
  static boolean takes(Cursor cursor, Line line, Beat.Hit hit, Beat.Suffix suffix) {
    Kit kit = cursor.kit();
    Surface struck =
        line.statement() instanceof PartStatement.Lane lane
            ? lane.subject() instanceof Subject.OfSurface named
                ? kit.surface(named.surface().name())
                : lane.subject() instanceof Subject.OfLimb ? kit.letter(hit.letter()) : null
            : null;
    return switch (suffix) {
      case CHOKE -> struck != null && struck.canChoke();
      case RIMSHOT -> struck != null && struck.canRimshot();
      case OPEN -> struck != null && kit.opened(struck) != null;
      case DIDDLE, OPEN_ROLL, ROLL, BUZZ -> true;
    };
  }
}
