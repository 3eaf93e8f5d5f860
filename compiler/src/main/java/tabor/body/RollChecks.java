package tabor.body;

import java.util.List;
import java.util.function.Consumer;
import tabor.diagnostic.Code;
import tabor.groove.Groove;
import tabor.groove.Ornament;
import tabor.groove.Stroke;
import tabor.rhythm.Time;

/** Strokes by a limb that a roll keeps busy: both limbs in an open roll, its own in a diddle. */
final class RollChecks {
  private final Groove groove;
  private final Consumer<Finding> found;

  private RollChecks(Groove groove, Consumer<Finding> found) {
    this.groove = groove;
    this.found = found;
  }

  /** Hands every stroke inside a roll to {@code found}, in order of the rolls. */
  static void each(Groove groove, Consumer<Finding> found) {
    RollChecks checks = new RollChecks(groove, found);
    List<Stroke> strokes = groove.strokes();
    for (int i = 0; i < strokes.size(); i++) {
      Stroke stroke = strokes.get(i);
      if (stroke.ornaments().has(Ornament.OPEN_ROLL) || stroke.ornaments().has(Ornament.DIDDLE)) {
        checks.roll(strokes, i);
      }
    }
  }

  private void roll(List<Stroke> strokes, int index) {
    Stroke roll = strokes.get(index);
    Time start = groove.position(roll);
    Time end = start.plus(roll.length());
    boolean both = roll.ornaments().has(Ornament.OPEN_ROLL);
    int first = index;
    while (first > 0 && groove.position(strokes.get(first - 1)).equals(start)) {
      first--;
    }
    for (int i = first; i < strokes.size(); i++) {
      Stroke stroke = strokes.get(i);
      Time at = groove.position(stroke);
      if (!at.before(end)) {
        return;
      }
      boolean own = stroke.limb() == roll.limb() && at.compareTo(start) > 0;
      boolean other = both && stroke.limb() == roll.limb().other() && !isPartner(roll, stroke);
      if (own || other) {
        busy(roll, stroke, both);
        return;
      }
    }
  }

  /** On {@code b} both limbs roll: two open rolls of one surface at one place. */
  private static boolean isPartner(Stroke roll, Stroke stroke) {
    return stroke.ornaments().has(Ornament.OPEN_ROLL)
        && stroke.surface().equals(roll.surface())
        && stroke.bar() == roll.bar()
        && stroke.at().equals(roll.at());
  }

  private void busy(Stroke roll, Stroke stroke, boolean both) {
    String pair = stroke.limb().isHand() ? "hands" : "feet";
    found.accept(
        Finding.clash(
            Code.NO_FREE_HAND,
            stroke,
            List.of(roll, stroke),
            FindingWords.limb(stroke)
                + " strikes "
                + FindingWords.surface(stroke)
                + " at "
                + FindingWords.count(groove, stroke)
                + " inside the "
                + (both ? "open roll" : "diddle")
                + " at "
                + FindingWords.count(groove, roll)
                + (both ? ", which takes both " + pair : ", which it is still playing"),
            both
                ? "leave the stroke out, or roll with one hand: a diddle is written with one /"
                : "leave the stroke out, or give one of the two to the other limb"));
  }
}
