package tabor.groove;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tabor.kit.Limb;
import tabor.rhythm.Time;

/**
 * The measured strokes that a diddle, an open roll or a roll in a note value is played with: the
 * one place that says how many there are, when, and by whom.
 *
 * <p>What is played in the slot goes on at the same speed while the stroke is held. A roll in a
 * note value has the even number of strokes that comes nearest to it, the lower of two as near, at
 * least two, spread evenly over the slot and its holds. A roll of both limbs goes two and two,
 * beginning with the limb that is written; where the other limb has the same roll at the same
 * place, each limb plays all of its own. No stroke but the first is louder than plain.
 *
 * @param stroke what is written
 * @param count how many strokes there are, 1 or more
 * @param inSlot how many of them stand in the slot itself
 * @param step from one to the next, in whole notes
 * @param inTurn true if the two limbs take turns
 */
public record Roll(Stroke stroke, long count, long inSlot, Time step, boolean inTurn) {
  /**
   * How a stroke rolls; empty if it does not, or if nobody counts its bounces.
   *
   * @param groove the section that it stands in
   * @param snap of that section
   */
  public static Optional<Roll> of(Groove groove, Snap snap, Stroke stroke) {
    Ornament ornament = measured(stroke.ornaments());
    return ornament == null
        ? Optional.empty()
        : Optional.of(
            of(stroke, ornament.way(), snap.slotLength(stroke), isAlone(groove, stroke, ornament)));
  }

  /**
   * How a stroke rolls, by itself.
   *
   * @param slot the length of its slot, without the holds
   * @param alone false if the other limb has the same roll there
   */
  static Roll of(Stroke stroke, Ornament.Way way, Time slot, boolean alone) {
    Time held = stroke.length();
    boolean inTurn = way.bothLimbs() && alone;
    Time value = way.value();
    if (value != null) {
      long count = nearestEven(held.over(value));
      return new Roll(stroke, count, count, held.over(count), inTurn);
    }
    Time step = Time.min(slot, held).over(way.inSlot());
    return new Roll(stroke, held.over(step).floor(), way.inSlot(), step, inTurn);
  }

  /** The even number nearest to this one, ties downward, at least two. */
  private static long nearestEven(Time number) {
    Time half = number.over(2);
    long floor = half.floor();
    boolean up = half.minus(Time.of(floor)).compareTo(Time.of(1, 2)) > 0;
    return 2 * Math.max(1, floor + (up ? 1 : 0));
  }

  /** The roll among these ornaments whose strokes are counted; null if there is none. */
  public static @Nullable Ornament measured(Ornaments ornaments) {
    if (ornaments.isEmpty()) {
      return null;
    }
    for (Ornament ornament : ornaments.list()) {
      if (ornament.isMeasured()) {
        return ornament;
      }
    }
    return null;
  }

  private static boolean isAlone(Groove groove, Stroke stroke, Ornament ornament) {
    if (!ornament.takesBothLimbs()) {
      return true;
    }
    List<Stroke> strokes = groove.strokes();
    for (int i = first(strokes, stroke); i < strokes.size(); i++) {
      Stroke other = strokes.get(i);
      if (other.bar() != stroke.bar() || !other.at().equals(stroke.at())) {
        return true;
      }
      if (other.limb() == stroke.limb().other() && other.ornaments().has(ornament)) {
        return false;
      }
    }
    return true;
  }

  /** The first of the strokes that stand where this one does. */
  private static int first(List<Stroke> strokes, Stroke stroke) {
    int low = 0;
    int high = strokes.size();
    while (low < high) {
      int middle = (low + high) >>> 1;
      Stroke there = strokes.get(middle);
      boolean before =
          there.bar() < stroke.bar()
              || (there.bar() == stroke.bar() && there.at().before(stroke.at()));
      if (before) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** Who plays the stroke with this 0-based number. */
  public Limb limb(long number) {
    return inTurn && number / 2 % 2 == 1 ? stroke.limb().other() : stroke.limb();
  }

  /** How loud it is. */
  public Level level(long number) {
    return number > 0 && stroke.level() == Level.ACCENT ? Level.PLAIN : stroke.level();
  }

  /** How long after the written stroke it comes, in whole notes. */
  public Time after(long number) {
    return step.times(number);
  }
}
