package tabor.testing;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import tabor.groove.Groove;
import tabor.groove.Ornament;
import tabor.groove.Ornaments;
import tabor.kit.Kits;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.rhythm.Division;
import tabor.rhythm.Meter;
import tabor.rhythm.Meters;
import tabor.rhythm.Slot;
import tabor.rhythm.Time;

/**
 * Sections without sense: one meter or several in turn, any divisions, spans and groups over each
 * other, rolls over barlines, now and then a stroke whose slot does not say where it is. No limb
 * strikes twice at one place.
 */
public final class RandomSections {
  private static final List<Meter> METERS =
      List.of(
          Meter.COMMON,
          Meter.of(3, 4),
          Meter.of(6, 8),
          Meter.of(12, 8),
          Meter.of(5, 8),
          Meter.of(7, 16),
          Meter.of(2, 2),
          new Meter(4, 4, List.of(Time.of(1, 2), Time.of(1, 2))),
          new Meter(6, 8, Collections.nCopies(6, Time.of(1, 8))),
          new Meter(7, 8, List.of(Time.of(1, 4), Time.of(1, 4), Time.of(3, 8))),
          new Meter(6, 4, List.of(Time.of(3, 4), Time.of(3, 4))));

  private final Random random;
  private final Meters meters;
  private final Set<Object> taken = new HashSet<>();

  /** Of so many strokes out of four it is said that they are in a line. */
  private final int inLine;

  private RandomSections(long seed) {
    random = new Random(seed);
    List<Meter> cycle = new ArrayList<>();
    int size = random.nextInt(3) > 0 ? 1 : 2 + random.nextInt(2);
    for (int i = 0; i < size; i++) {
      cycle.add(METERS.get(random.nextInt(METERS.size())));
    }
    meters = new Meters(cycle);
    inLine = Math.max(0, random.nextInt(8) - 3);
  }

  /** All of them. */
  public static Arbitrary<Groove> grooves() {
    return Arbitraries.longs().map(seed -> new RandomSections(seed).groove());
  }

  private Groove groove() {
    int bars = 1 + random.nextInt(meters.size() > 1 ? 5 : 3);
    Meter meter = meters.first();
    Sketch sketch = Sketch.groove("g").meters(meters).bars(bars);
    int pickup = random.nextInt(4) == 0 && meter.beatCount() > 1 ? 1 : 0;
    if (pickup > 0) {
      sketch.pickup(pickup);
    }
    for (Limb limb : Limb.values()) {
      if (random.nextInt(4) > 0) {
        for (int bar = pickup > 0 ? 0 : 1; bar <= bars; bar++) {
          bar(sketch, bar, bar == 0 ? meter.beatCount() - pickup : 0, limb);
        }
      }
    }
    return sketch.done();
  }

  private void bar(Sketch sketch, int bar, int from, Limb limb) {
    Meter meter = meters.of(bar);
    for (int beat = from; beat < meter.beatCount(); ) {
      int beats = 1;
      if (random.nextInt(4) == 0) {
        beats = 1 + random.nextInt(meter.beatCount() - beat);
      }
      int slots = random.nextInt(60) == 0 ? 4096 - random.nextInt(9) : 1 + random.nextInt(9);
      Division division = new Division(beat, beats, slots);
      for (int i = 0; i < slots; i++) {
        if (slots < 20 || random.nextInt(500) == 0) {
          Slot slot = new Slot(division, i, List.of());
          place(sketch, bar, limb, slot, slot.start(meter), slot.length(meter), 0);
        }
      }
      beat += beats;
    }
  }

  private void place(
      Sketch sketch, int bar, Limb limb, Slot slot, Time start, Time length, int depth) {
    int choice = random.nextInt(6);
    if (choice == 0 && depth < 4) {
      int of = 1 + random.nextInt(4);
      for (int i = 0; i < of; i++) {
        List<Slot.Part> parts = new ArrayList<>(slot.parts());
        parts.add(new Slot.Part(i, of));
        Slot inner = new Slot(slot.division(), slot.index(), parts);
        Time part = length.over(of);
        place(sketch, bar, limb, inner, start.plus(part.times(i)), part, depth + 1);
      }
    } else if (choice > 1 && taken.add(List.of(bar, start, limb))) {
      Time held = random.nextInt(8) == 0 ? length.plus(Time.of(random.nextInt(9), 8)) : length;
      Slot said = random.nextInt(20) == 0 ? new Slot(new Division(0, 9, 7), 3, slot.parts()) : slot;
      boolean line = random.nextInt(4) < inLine;
      sketch.stroke(
          Sketch.stroke(bar, start, held, limb, surface(limb), said, ornaments()).inLine(line));
    }
  }

  private Surface surface(Limb limb) {
    List<Surface> fit =
        Kits.FIVE_PIECE.surfaces().values().stream()
            .filter(s -> s.isFoot() != limb.isHand())
            .toList();
    return fit.get(random.nextInt(fit.size()));
  }

  private Ornaments ornaments() {
    Ornaments ornaments = Ornaments.NONE;
    for (Ornament ornament : Ornament.values()) {
      if (random.nextInt(9) == 0) {
        ornaments = ornaments.with(ornament);
      }
    }
    return ornaments;
  }
}
