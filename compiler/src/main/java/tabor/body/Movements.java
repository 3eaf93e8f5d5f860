package tabor.body;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tabor.groove.Groove;
import tabor.groove.Roll;
import tabor.groove.Snap;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.rhythm.Time;

/** Takes a section apart into what each limb does, in order of time. */
final class Movements {
  private static final Comparator<Movement> ORDER =
      (a, b) -> {
        int order = a.start().compareTo(b.start());
        return order == 0 ? Integer.compare(b.lead(), a.lead()) : order;
      };

  private final Groove groove;
  private final Snap snap;
  private final Map<Limb, List<Movement>> byLimb = new EnumMap<>(Limb.class);

  private Movements(Groove groove) {
    this.groove = groove;
    this.snap = Snap.of(groove);
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

  private void add(Stroke stroke) {
    Time at = groove.position(stroke);
    Limb limb = stroke.limb();
    int small = stroke.ornaments().graceNotes();
    // A ruff's three alternate into the main stroke, so its second is by the main stroke's limb.
    int lead = small == 3 ? 2 : 0;
    if (small > 0) {
      put(new Movement(stroke, limb.other(), at, small, at, 1, Time.ZERO));
    }
    Optional<Roll> roll = Roll.of(groove, snap, stroke);
    if (roll.isEmpty()) {
      put(new Movement(stroke, limb, at, lead, at, 0, Time.ZERO));
    } else {
      roll(roll.get(), at, lead);
    }
  }

  /** Two strokes of one limb are one movement; of an odd number the last is one by itself. */
  private void roll(Roll roll, Time at, int lead) {
    for (long i = 0; i < roll.count(); i += 2) {
      Time inner = i + 1 < roll.count() ? roll.step() : Time.ZERO;
      Time start = at.plus(roll.after(i));
      put(
          new Movement(
              roll.stroke(), roll.limb(i), start, i == 0 ? lead : 0, start.plus(inner), 0, inner));
    }
  }

  private void put(Movement move) {
    byLimb.get(move.limb()).add(move);
  }
}
