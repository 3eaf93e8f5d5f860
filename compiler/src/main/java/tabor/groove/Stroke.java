package tabor.groove;

import java.util.Comparator;
import org.jspecify.annotations.Nullable;
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
 * @param dealt true if the compiler chose the limb
 * @param open true if the source leaves the limb open: each section that the stroke comes into
 *     deals it anew. An open stroke that is not dealt has found no limb
 * @param inLine true if it belongs to a line over the whole body, which is written as one voice
 * @param before of an open stroke: the limb that was dealt to it in the section that the present
 *     one came from, whatever has been tried since; null if there was none
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
    boolean dealt,
    boolean open,
    boolean inLine,
    @Nullable Limb before) {
  /** The order of every list: bar, place, limb, surface. */
  public static final Comparator<Stroke> ORDER =
      (a, b) -> {
        int byPlace = byPlace(a, b);
        if (byPlace != 0) {
          return byPlace;
        }
        int byLimb = a.limb.compareTo(b.limb);
        return byLimb != 0 ? byLimb : a.surface.name().compareTo(b.surface.name());
      };

  /** The order of time alone: by bar, then by the place in it. */
  public static int byPlace(Stroke a, Stroke b) {
    return a.bar != b.bar ? Integer.compare(a.bar, b.bar) : a.at.compareTo(b.at);
  }

  /** True if two strokes are at one place of one bar. */
  public static boolean areTogether(Stroke a, Stroke b) {
    return a.bar == b.bar && a.at.equals(b.at);
  }

  /** The same stroke by another limb; the compiler chose it if {@code chosen}. */
  public Stroke by(Limb other, boolean chosen) {
    return new Stroke(
        bar, at, length, other, surface, level, ornaments, slot, spot, chosen, open, inLine,
        before);
  }

  /** The same stroke on another surface. */
  public Stroke on(Surface other) {
    return new Stroke(
        bar, at, length, limb, other, level, ornaments, slot, spot, dealt, open, inLine, before);
  }

  /** The same stroke at another level. */
  public Stroke at(Level other) {
    return new Stroke(
        bar, at, length, limb, surface, other, ornaments, slot, spot, dealt, open, inLine, before);
  }

  /** The same stroke with other ornaments. */
  public Stroke with(Ornaments others) {
    return new Stroke(
        bar, at, length, limb, surface, level, others, slot, spot, dealt, open, inLine, before);
  }

  /** The same stroke elsewhere. */
  public Stroke moved(int newBar, Time place, Time newLength, Slot newSlot) {
    return new Stroke(
        newBar, place, newLength, limb, surface, level, ornaments, newSlot, spot, dealt, open,
        inLine, before);
  }

  /** The same stroke at another place in the music, made by another spot. */
  public Stroke moved(int newBar, Time place, Time newLength, Slot newSlot, Spot other) {
    return new Stroke(
        newBar, place, newLength, limb, surface, level, ornaments, newSlot, other, dealt, open,
        false, before);
  }

  /** The same stroke, made by another spot. */
  public Stroke from(Spot other) {
    return new Stroke(
        bar, at, length, limb, surface, level, ornaments, slot, other, dealt, open, inLine, before);
  }

  /** The same stroke with its limb left open, and nothing chosen yet. */
  public Stroke opened() {
    return new Stroke(
        bar, at, length, limb, surface, level, ornaments, slot, spot, false, true, inLine, before);
  }

  /** The same stroke, keeping its limb from now on. */
  public Stroke fixed() {
    return open
        ? new Stroke(
            bar, at, length, limb, surface, level, ornaments, slot, spot, dealt, false, inLine,
            before)
        : this;
  }

  /** The same stroke in a line, or in none. */
  public Stroke inLine(boolean now) {
    return new Stroke(
        bar, at, length, limb, surface, level, ornaments, slot, spot, dealt, open, now, before);
  }

  /** The same stroke when its section has ended: the next one comes from what was dealt here. */
  public Stroke ended() {
    Limb last = open && dealt ? limb : null;
    return before == last
        ? this
        : new Stroke(
            bar, at, length, limb, surface, level, ornaments, slot, spot, dealt, open, inLine,
            last);
  }

  /** True unless it is open and has found no limb. */
  public boolean hasLimb() {
    return dealt || !open;
  }

  /** Without enums, whose own differ from run to run. */
  @Override
  public int hashCode() {
    return ((bar * 31 + at.hashCode()) * 31 + limb.ordinal()) * 31 + surface.hashCode();
  }
}
