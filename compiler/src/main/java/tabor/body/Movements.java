package tabor.body;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import tabor.groove.Groove;
import tabor.groove.Ornament;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.rhythm.Slot;
import tabor.rhythm.Time;

/** Takes a section apart into what each limb does, in order of time. */
final class Movements {
  private static final Comparator<Movement> ORDER =
      Comparator.comparing(Movement::start)
          .thenComparing(Movement::lead, Comparator.reverseOrder());

  private final Groove groove;
  private final Map<Limb, List<Movement>> byLimb = new EnumMap<>(Limb.class);

  private Movements(Groove groove) {
    this.groove = groove;
    for (Limb limb : Limb.values()) {
      byLimb.put(limb, new ArrayList<>());
    }
  }

  /** The movements of each limb of a finished section; every limb has a list. */
  static Map<Limb, List<Movement>> of(Groove groove) {
    Movements moves = new Movements(groove);
    for (Stroke stroke : groove.strokes()) {
      moves.add(stroke);
    }
    for (List<Movement> list : moves.byLimb.values()) {
      list.sort(ORDER);
    }
    return moves.byLimb;
  }

  /**
   * How many slots a roll fills: more than one where it is held. Each of them is rolled the same.
   */
  static long rolledSlots(Stroke stroke, Groove groove) {
    Time unit = stroke.slot().length(groove.meter());
    for (Slot.Part part : stroke.slot().parts()) {
      unit = unit.over(part.of());
    }
    Time slots = stroke.length().over(unit);
    return slots.isWhole() && slots.num() > 1 ? slots.num() : 1;
  }

  private void add(Stroke stroke) {
    Time at = groove.position(stroke);
    Limb limb = stroke.limb();
    int small = stroke.ornaments().smallStrokes();
    // A ruff's three alternate into the main stroke, so its second is by the main stroke's limb.
    int lead = small == 3 ? 2 : 0;
    if (small > 0) {
      put(new Movement(stroke, limb.other(), at, small, at, 1, Time.ZERO));
    }
    if (stroke.ornaments().has(Ornament.DIDDLE)) {
      roll(stroke, at, lead, 2);
    } else if (stroke.ornaments().has(Ornament.OPEN_ROLL)) {
      roll(stroke, at, lead, 4);
    } else {
      put(new Movement(stroke, limb, at, lead, at, 0, Time.ZERO));
    }
  }

  private void roll(Stroke stroke, Time at, int lead, int perSlot) {
    long slots = rolledSlots(stroke, groove);
    Time step = stroke.length().over(slots * perSlot);
    for (long i = 0; i < slots * perSlot / 2; i++) {
      Time start = at.plus(step.times(2 * i));
      Limb limb = (perSlot == 4 && i % 2 == 1) ? stroke.limb().other() : stroke.limb();
      put(new Movement(stroke, limb, start, i == 0 ? lead : 0, start.plus(step), 0, step));
    }
  }

  private void put(Movement move) {
    byLimb.get(move.limb()).add(move);
  }
}
