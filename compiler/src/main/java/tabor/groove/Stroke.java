package tabor.groove;

import java.util.Comparator;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.rhythm.Slot;
import tabor.rhythm.Time;
import tabor.source.Spot;

/**
 * One stroke.
 *
 * @param bar 1-based; 0 is the pickup
 * @param at distance from the barline in whole notes; in a pickup from where its barline would be
 * @param length its slot and the holds after it, in whole notes: what a roll fills
 * @param limb who strikes
 * @param surface what is struck
 * @param level how loud
 * @param ornaments what is done to it
 * @param slot where it stands in its word
 * @param spot what in the source made it
 * @param choice who chose the limb
 */
public record Stroke(
    int bar,
    Time at,
    Time length,
    Limb limb,
    Surface surface,
    Level level,
    Ornaments ornaments,
    Slot slot,
    Spot spot,
    Choice choice) {

  /** Who chose the limb. */
  public enum Choice {
    /** The source. */
    WRITTEN,
    /** The compiler, for good: sections made from this one keep the limb. */
    FIXED,
    /** The compiler, for this section: it is open, and each section chooses again. */
    OPEN,
    /** Nobody: it is open, and at its place no limb is free. The limb is without meaning. */
    NONE_FREE
  }

  /** A stroke whose limb was written, or was {@code dealt} and is open. */
  public Stroke(
      int bar,
      Time at,
      Time length,
      Limb limb,
      Surface surface,
      Level level,
      Ornaments ornaments,
      Slot slot,
      Spot spot,
      boolean dealt) {
    this(
        bar,
        at,
        length,
        limb,
        surface,
        level,
        ornaments,
        slot,
        spot,
        dealt ? Choice.OPEN : Choice.WRITTEN);
  }

  /** True if the compiler chose the limb. */
  public boolean dealt() {
    return choice != Choice.WRITTEN;
  }

  /** True if each section made from this one chooses the limb again. */
  public boolean isOpen() {
    return choice == Choice.OPEN || choice == Choice.NONE_FREE;
  }


  /** The order of every list: bar, place, limb, surface. */
  public static final Comparator<Stroke> ORDER =
      (a, b) -> {
        int byBar = Integer.compare(a.bar, b.bar);
        if (byBar != 0) {
          return byBar;
        }
        int byPlace = a.at.compareTo(b.at);
        if (byPlace != 0) {
          return byPlace;
        }
        int byLimb = a.limb.compareTo(b.limb);
        return byLimb != 0 ? byLimb : a.surface.name().compareTo(b.surface.name());
      };

  /** The same stroke by another limb; the compiler chose it if {@code chosen}. */
  public Stroke by(Limb other, boolean chosen) {
    return new Stroke(bar, at, length, other, surface, level, ornaments, slot, spot, chosen);
  }

  /** The same stroke by another limb, chosen by {@code by}. */
  public Stroke by(Limb other, Choice by) {
    return new Stroke(bar, at, length, other, surface, level, ornaments, slot, spot, by);
  }

  /** The same stroke, made by another line of the source. */
  public Stroke from(Spot other) {
    return new Stroke(bar, at, length, limb, surface, level, ornaments, slot, other, choice);
  }

  /** The same stroke on another surface. */
  public Stroke on(Surface other) {
    return new Stroke(bar, at, length, limb, other, level, ornaments, slot, spot, choice);
  }

  /** The same stroke at another level. */
  public Stroke at(Level other) {
    return new Stroke(bar, at, length, limb, surface, other, ornaments, slot, spot, choice);
  }

  /** The same stroke with other ornaments. */
  public Stroke with(Ornaments others) {
    return new Stroke(bar, at, length, limb, surface, level, others, slot, spot, choice);
  }

  /** The same stroke elsewhere. */
  public Stroke moved(int newBar, Time place, Time newLength, Slot newSlot) {
    return new Stroke(
        newBar, place, newLength, limb, surface, level, ornaments, newSlot, spot, choice);
  }
}
