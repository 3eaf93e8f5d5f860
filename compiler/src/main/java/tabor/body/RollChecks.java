package tabor.body;

import java.util.List;
import java.util.function.Consumer;
import tabor.diagnostic.Code;
import tabor.groove.Groove;
import tabor.groove.Ornament;
import tabor.groove.Roll;
import tabor.groove.Stroke;
import tabor.rhythm.Time;

/** Strokes by a limb that a roll keeps busy: both limbs in a roll, its own in a diddle. */
record RollChecks(Groove groove, Consumer<Finding> found) {
  /** Hands every stroke inside a roll to {@code found}, in order of the rolls. */
  static void each(Groove groove, Consumer<Finding> found) {
    RollChecks checks = new RollChecks(groove, found);
    List<Stroke> strokes = groove.strokes();
    for (int i = 0; i < strokes.size(); i++) {
      Stroke stroke = strokes.get(i);
      Ornament ornament = Roll.measured(stroke.ornaments());
      if (ornament != null) {
        checks.roll(strokes, i, ornament);
      }
    }
  }

  private void roll(List<Stroke> strokes, int index, Ornament ornament) {
    Stroke roll = strokes.get(index);
    Time start = groove.position(roll);
    Time end = start.plus(roll.length());
    boolean both = ornament.takesBothLimbs();
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
      boolean other =
          both && stroke.limb() == roll.limb().other() && !isPartner(roll, stroke, ornament);
      if (own || other) {
        busy(roll, stroke, ornament);
        return;
      }
    }
  }

  /** On {@code b} both limbs roll: two such rolls of one surface at one place. */
  private static boolean isPartner(Stroke roll, Stroke stroke, Ornament ornament) {
    return stroke.ornaments().has(ornament)
        && stroke.surface().equals(roll.surface())
        && stroke.bar() == roll.bar()
        && stroke.at().equals(roll.at());
  }

  private void busy(Stroke roll, Stroke stroke, Ornament ornament) {
    boolean both = ornament.takesBothLimbs();
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
                + ornament.words()
                + " at "
                + FindingWords.count(groove, roll)
                + (both ? ", which takes both " + pair : ", which it is still playing"),
            both
                ? "leave the stroke out, or roll with one hand: a diddle is written with one /"
                : "leave the stroke out, or give one of the two to the other limb"));
  }
}
