package tabor.notation;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import tabor.groove.Groove;
import tabor.groove.Level;
import tabor.groove.Ornament;
import tabor.groove.Ornaments;
import tabor.groove.Roll;
import tabor.groove.Snap;
import tabor.groove.Stroke;
import tabor.rhythm.Division;
import tabor.rhythm.Meters;
import tabor.rhythm.Slot;
import tabor.rhythm.Time;

/**
 * How the measured rolls of a section are written: by slashes where these, with the note's flags or
 * beams, say the number of strokes exactly, else stroke by stroke.
 */
final class RollWriting {
  /** So many strokes of one roll are written out at most. */
  private static final int MOST = 64;

  private final Groove groove;
  private final Snap snap;

  /** Strokes that are written out, and what each of them becomes. */
  private final IdentityHashMap<Stroke, List<Stroke>> written = new IdentityHashMap<>();

  private final IdentityHashMap<Stroke, Stroke> origins = new IdentityHashMap<>();

  RollWriting(Groove groove) {
    this.groove = groove;
    this.snap = Snap.of(groove);
  }

  /** True for a roll whose strokes are counted. */
  static boolean isMeasured(Stroke stroke) {
    return Roll.measured(stroke.ornaments()) != null;
  }

  private Roll roll(Stroke stroke) {
    return Roll.of(groove, snap, stroke).orElseThrow();
  }

  /**
   * The slashes through a note: with its flags they say its strokes. 0 if it is no measured roll.
   */
  int slashes(Stroke stroke, Draft draft) {
    return !isMeasured(stroke) ? 0 : Math.max(0, exponent(stroke, draft) - 2 - flags(draft));
  }

  /**
   * The power of a half that one stroke of the roll lasts where the draft stands, tuplets taken
   * out: 3 for eighths; negative if it is none.
   */
  private int exponent(Stroke stroke, Draft draft) {
    Time step = roll(stroke).step().times(draft.written().length()).over(draft.length());
    boolean power = step.num() == 1 && Long.bitCount(step.den()) == 1;
    return power ? Long.numberOfTrailingZeros(step.den()) : -1;
  }

  private static int flags(Draft draft) {
    return draft.written().type().flags();
  }

  /** True if the slashes of a note that is part of a roll say its strokes exactly. */
  private boolean isExact(Stroke stroke, Draft draft) {
    int exponent = exponent(stroke, draft);
    int slashes = exponent - 2 - flags(draft);
    return exponent >= 3
        && slashes >= 0
        && draft.written().length().times(1L << exponent).isWhole()
        && (slashes > 0 || draft.written().dots() == 0);
  }

  /** Notes which rolls these notes cannot say; true if there is one that was not yet known. */
  boolean spellOut(List<Draft> drafts, Holds holds) {
    boolean found = false;
    for (Draft draft : drafts) {
      for (List<Stroke> some : List.of(draft.struck(), draft.held())) {
        for (Stroke stroke : some) {
          if (isMeasured(stroke) && !written.containsKey(stroke)) {
            Time end = holds.endByLimb(stroke);
            // One note cannot be a roll that goes on and another limb's stroke.
            if (!end.equals(holds.end(stroke)) || !isExact(stroke, draft)) {
              found |= write(stroke, end.minus(groove.position(stroke)));
            }
          }
        }
      }
    }
    return found;
  }

  /** Writes a roll out as far as it is held. */
  private boolean write(Stroke stroke, Time held) {
    Roll roll = roll(stroke);
    Time step = roll.step();
    Time whole = held.over(step);
    long begun = Math.max(1, whole.isWhole() ? whole.floor() : whole.floor() + 1);
    long count = Math.min(begun, roll.count());
    if (count > MOST || step.sign() <= 0) {
      return false;
    }
    List<Stroke> single = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      single.add(single(roll, i));
    }
    written.put(stroke, List.copyOf(single));
    single.forEach(one -> origins.put(one, stroke));
    return true;
  }

  private Stroke single(Roll roll, int i) {
    Stroke stroke = roll.stroke();
    Time step = roll.step();
    Meters.Place place = groove.meters().place(stroke.bar(), stroke.at().plus(step.times(i)));
    Ornaments kept = Ornaments.NONE;
    for (Ornament ornament : stroke.ornaments().list()) {
      if (!ornament.isRoll() && (i == 0 || ornament.graceNotes() == 0)) {
        kept = kept.with(ornament);
      }
    }
    Slot slot = stroke.slot();
    if (i >= roll.inSlot()) {
      // Held beyond its slot: a place of no word.
      slot = new Slot(new Division(0, groove.meter(place.bar()).beatCount() + 1, 1), 0, List.of());
    } else if (i > 0) {
      List<Slot.Part> parts = new ArrayList<>(slot.parts());
      parts.add(new Slot.Part(i, Math.toIntExact(roll.inSlot())));
      slot = new Slot(slot.division(), slot.index(), parts);
    }
    Stroke one = stroke.moved(place.bar(), place.at(), step, slot).with(kept);
    if (i > 0 && stroke.level() == Level.ACCENT) {
      one = one.at(Level.PLAIN);
    }
    return roll.limb(i) == stroke.limb() ? one : one.by(roll.limb(i), true);
  }

  /** The stroke of the section that a written one belongs to. */
  Stroke origin(Stroke stroke) {
    return origins.getOrDefault(stroke, stroke);
  }

  /** The strokes as they are written, in order. */
  List<Stroke> strokes() {
    if (written.isEmpty()) {
      return groove.strokes();
    }
    List<Stroke> all = new ArrayList<>();
    for (Stroke stroke : groove.strokes()) {
      all.addAll(written.getOrDefault(stroke, List.of(stroke)));
    }
    all.removeIf(stroke -> stroke.bar() > groove.bars());
    all.sort(Stroke.ORDER);
    return all;
  }
}
