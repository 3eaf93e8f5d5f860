package tabor.ide;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.compile.Compiled;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.kit.Surface;
import tabor.kit.SurfaceFacts;
import tabor.source.Span;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;

/** What fixes a line whose strokes meet the other end of the hi-hat in several places. */
record HihatFixes(Cursor cursor, List<QuickFix> found) {
  /** Leaves them all out together; false if there is but one, or the line is none of strokes. */
  boolean find() {
    Groove groove = cursor.groove().orElse(null);
    Line line = cursor.line();
    if (groove == null || line == null || !(line.statement() instanceof PartStatement.Lane)) {
      return false;
    }
    List<Stroke> here = Simultaneous.struckBy(groove, cursor);
    Stroke partner = here.isEmpty() ? null : partner(groove, here.get(0), null);
    if (partner == null) {
      return false;
    }
    Compiled compiled = cursor.compiled();
    Set<Span> strokes = new LinkedHashSet<>();
    for (Stroke stroke : groove.written()) {
      if (stroke.spot().passage() == line.passage()
          && line.spot().span().holds(stroke.spot().span())
          && stroke.limb().isHand() == here.get(0).limb().isHand()
          && partner(groove, stroke, partner) != null) {
        Cursor letter = Cursor.at(compiled, compiled.span(stroke.spot()).start());
        if (letter.token() != null && letter.token().hit() != null) {
          strokes.add(FixFinder.whole(letter));
        }
      }
    }
    if (strokes.size() < 2) {
      return false;
    }
    List<TextEdit> edits = strokes.stream().map(span -> new TextEdit(span, ".")).toList();
    found.add(new QuickFix("Leave these strokes out", edits, false));
    return true;
  }

  /**
   * What a stick meets below, or a foot above, at one place.
   *
   * @param like what it is to be like; null for anything
   */
  private static @Nullable Stroke partner(Groove groove, Stroke stroke, @Nullable Stroke like) {
    boolean stick = stroke.surface().sort() == Surface.Sort.STICK_HIHAT;
    for (Stroke other : groove.written()) {
      if (other.bar() == stroke.bar()
          && other.at().equals(stroke.at())
          && (stick ? isPedal(other) : other.surface().sort() == Surface.Sort.STICK_HIHAT)
          && (like == null || isClosed(like) == isClosed(other))) {
        return other;
      }
    }
    return null;
  }

  private static boolean isPedal(Stroke stroke) {
    return stroke.surface().hihat() == SurfaceFacts.HiHat.CHICK
        || stroke.surface().sort() == Surface.Sort.KICK;
  }

  private static boolean isClosed(Stroke stroke) {
    return stroke.surface().hihat() == SurfaceFacts.HiHat.CLOSED;
  }
}
