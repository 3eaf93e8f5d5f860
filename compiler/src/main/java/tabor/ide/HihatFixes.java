package tabor.ide;

import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tabor.compile.Compiled;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.kit.Surface;
import tabor.kit.SurfaceFacts.HiHat;
import tabor.lists.Lists;
import tabor.rhythm.Time;
import tabor.source.Span;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;

/** What fixes a line whose strokes meet the other end of the hi-hat in several places. */
record HihatFixes(Cursor cursor, List<QuickFix> found) {
  private record Place(int bar, Time at) {
    static Place of(Stroke stroke) {
      return new Place(stroke.bar(), stroke.at());
    }
  }

  /**
   * Leaves them all out together, and nothing else of the line; false if there is but one, or the
   * line is none of strokes.
   */
  boolean find() {
    Groove groove = cursor.groove().orElse(null);
    Line line = cursor.line();
    if (groove == null || line == null || !(line.statement() instanceof PartStatement.Lane)) {
      return false;
    }
    List<Stroke> here = Simultaneous.struckBy(groove, cursor);
    if (here.isEmpty()) {
      return false;
    }
    Stroke first = here.get(0);
    Map<Place, Stroke> others = new HashMap<>();
    for (Stroke stroke : groove.written()) {
      if (isStick(first) ? isPedal(stroke, groove) : isStick(stroke)) {
        others.put(Place.of(stroke), stroke);
      }
    }
    Stroke met = others.get(Place.of(first));
    if (met == null) {
      return false;
    }
    Compiled compiled = cursor.compiled();
    Set<Span> strokes = new LinkedHashSet<>();
    for (Stroke stroke : groove.written()) {
      Stroke other = others.get(Place.of(stroke));
      if (other != null
          && isAlike(stroke, first)
          && isAlike(other, met)
          && stroke.spot().passage() == line.passage()
          && line.spot().span().holds(stroke.spot().span())) {
        Cursor letter = Cursor.at(compiled, compiled.span(stroke.spot()).start());
        if (letter.token() != null && letter.token().hit() != null) {
          strokes.add(FixFinder.whole(letter));
        }
      }
    }
    if (strokes.size() < 2) {
      return false;
    }
    List<TextEdit> edits = Lists.map(strokes, span -> new TextEdit(span, "."));
    found.add(new QuickFix("Leave these strokes out", edits, false));
    return true;
  }

  private static boolean isStick(Stroke stroke) {
    return stroke.surface().sort() == Surface.Sort.STICK_HIHAT;
  }

  /** What the foot of the hi-hat does: closes it, or is away on the kick pedal. */
  private static boolean isPedal(Stroke stroke, Groove groove) {
    return stroke.surface().hihat() == HiHat.CHICK
        || (stroke.surface().sort() == Surface.Sort.KICK
            && stroke.limb() == groove.setting().kit().hihatFoot());
  }

  /** True if two strokes on one end of the hi-hat are told of by the same words. */
  private static boolean isAlike(Stroke a, Stroke b) {
    boolean sameFoot = isStick(a) || a.limb() == b.limb();
    return a.surface().sort() == b.surface().sort()
        && (a.surface().hihat() == HiHat.CLOSED) == (b.surface().hihat() == HiHat.CLOSED)
        && sameFoot;
  }
}
