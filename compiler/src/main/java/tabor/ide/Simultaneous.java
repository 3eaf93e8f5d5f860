package tabor.ide;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import tabor.compile.Compiled;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.ide.SyntaxToken.Role;
import tabor.kit.Limb;
import tabor.rhythm.Time;
import tabor.source.Span;
import tabor.source.Spot;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;

/** The vertical slice: what sounds together with the stroke under the cursor. */
public final class Simultaneous {
  private Simultaneous() {}

  private record Moment(int bar, Time at) {}

  /**
   * The strokes written in the cursor's section that sound with the one under the cursor, that one
   * among them; empty if the cursor is on no stroke. A letter that sounds several times, as in a
   * part that goes round, takes all its moments with it.
   */
  public static List<Span> at(Compiled compiled, int offset) {
    Cursor cursor = Cursor.at(compiled, offset);
    Groove groove = cursor.groove().orElse(null);
    if (groove == null || cursor.token() == null || cursor.token().role() != Role.HIT) {
      return List.of();
    }
    Set<Moment> moments = new HashSet<>();
    for (Stroke stroke : struckBy(groove, cursor)) {
      moments.add(new Moment(stroke.bar(), stroke.at()));
    }
    Set<Spot> spots = new LinkedHashSet<>();
    for (Stroke stroke : groove.written()) {
      if (stroke.spot().passage() == cursor.section().passage()
          && moments.contains(new Moment(stroke.bar(), stroke.at()))) {
        spots.add(stroke.spot());
      }
    }
    List<Span> found = new ArrayList<>();
    for (Spot spot : spots) {
      // What an edit made is in the slice by the edit's line: only letters are strokes to look at.
      if (isHit(cursor, spot)) {
        found.add(compiled.span(spot));
      }
    }
    return found;
  }

  /** The strokes that the letter under the cursor made. */
  static List<Stroke> struckBy(Groove groove, Cursor cursor) {
    if (cursor.token() == null) {
      return List.of();
    }
    Spot hit = cursor.spot(cursor.token().span());
    return groove.written().stream()
        .filter(stroke -> stroke.spot().passage() == hit.passage())
        .filter(stroke -> overlap(stroke.spot().span(), hit.span()))
        .toList();
  }

  /** True if a limb strikes when a stroke is struck. */
  static boolean isBusy(Groove groove, Limb limb, Stroke place) {
    return groove.written().stream()
        .anyMatch(
            one -> one.limb() == limb && one.bar() == place.bar() && one.at().equals(place.at()));
  }

  private static boolean overlap(Span a, Span b) {
    return a.start() < b.end() && b.start() < a.end();
  }

  private static boolean isHit(Cursor cursor, Spot spot) {
    for (Line line : cursor.section().lines()) {
      if (line.spot().span().holds(spot.span())) {
        return line.statement() instanceof PartStatement.Lane;
      }
    }
    return false;
  }
}
