package tabor.emit.midi;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.perform.Performance;
import tabor.perform.Segment;
import tabor.rhythm.Meter;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/**
 * The conductor track: tempo, meter and a marker where a section begins.
 *
 * <p>The format knows no pickups. A pickup that stands in the last beats of a count-in bar needs
 * none; any other is a short bar with a meter of its own. Tempi are rounded to a microsecond in a
 * quarter note, the finest that the format can say.
 */
final class Conductor {
  private final Ticks ticks;
  private final List<Smf.Event> events = new ArrayList<>();
  private Smf.@Nullable Meter meter;
  private int micros;
  private @Nullable String section;
  private @Nullable Tempo marked;

  private Conductor(Ticks ticks) {
    this.ticks = ticks;
  }

  static List<Smf.Event> events(Performance performance, Ticks ticks) {
    Conductor conductor = new Conductor(ticks);
    Segment before = null;
    for (Segment segment : performance.segments()) {
      conductor.add(segment, before);
      before = segment;
    }
    for (Performance.Words words : performance.words()) {
      conductor.events.add(new Smf.Marker(ticks.at(words.start()), words.text()));
    }
    conductor.events.sort((a, b) -> Long.compare(a.tick(), b.tick()));
    return conductor.events;
  }

  private void add(Segment segment, @Nullable Segment before) {
    Time start = segment.start();
    if (!segment.kind().hasBars() && segment.kind() != Segment.Kind.COUNT_IN) {
      // No bars: what follows begins a new one, which only its meter can say.
      tempo(start, segment.tempo());
      meter = null;
      return;
    }
    boolean pickup = segment.kind() == Segment.Kind.SECTION && segment.pickup().sign() > 0;
    boolean completes =
        before != null
            && (before.endsInBar()
                || (before.kind() == Segment.Kind.COUNT_IN
                    && before.pickup().equals(segment.pickup())));
    if (pickup && !completes) {
      meter(start, shortBar(segment.pickup(), segment.meter(0)), segment.meter(0));
    } else if (!pickup) {
      meter(start, segment.meter(segment.firstBar()));
    }
    tempo(start, segment.tempo());
    mark(segment);
    for (int bar = segment.firstBar() + 1; bar <= segment.lastBar(); bar++) {
      meter(segment.barline(bar), segment.meter(bar));
    }
  }

  private void meter(Time at, Meter meter) {
    meter(at, meter.count(), meter.unit(), meter);
  }

  private void meter(Time at, Time bar, Meter beats) {
    meter(at, Math.toIntExact(bar.num()), Math.toIntExact(bar.den()), beats);
  }

  private void meter(Time at, int count, int unit, Meter beats) {
    int power = Integer.numberOfTrailingZeros(unit);
    Time clocks = beats.tempoBeat().times(4 * 24);
    int whole = (int) Math.max(1, Math.min(255, clocks.rounded()));
    Smf.Meter next = new Smf.Meter(ticks.at(at), count, power, whole);
    if (meter == null || meter.count() != count || meter.power() != power) {
      events.add(next);
      meter = next;
    }
  }

  /** A pickup as a signature: over the meter's own lower number where that fits. */
  private static Time shortBar(Time pickup, Meter meter) {
    Time units = pickup.times(meter.unit());
    // Not reduced, since 2/4 and 1/2 look different.
    return units.isWhole() ? new Time(units.num(), meter.unit()) : pickup;
  }

  private void tempo(Time at, Tempo tempo) {
    long exact = Time.of(60_000_000).over(tempo.quartersPerMinute()).rounded();
    int kept = (int) Math.max(1, Math.min(0xFFFFFF, exact));
    if (kept != micros) {
      micros = kept;
      events.add(new Smf.Tempo(ticks.at(at), kept));
    }
  }

  private void mark(Segment segment) {
    Groove groove = segment.groove();
    if (segment.kind() != Segment.Kind.SECTION || groove == null) {
      section = null;
      return;
    }
    boolean same = groove.name().equals(section);
    boolean begins = segment.firstBar() <= 1 && segment.barline(1).compareTo(segment.start()) >= 0;
    if (!same || (begins && !segment.tempo().equals(marked))) {
      String at = same ? " at " + segment.tempo().perMinute().decimal() : "";
      events.add(new Smf.Marker(ticks.at(segment.start()), groove.caption() + at));
    }
    section = groove.name();
    marked = segment.tempo();
  }
}
