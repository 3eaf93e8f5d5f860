package tabor.perform;

import org.jspecify.annotations.Nullable;
import tabor.groove.Chart.Click;
import tabor.groove.Groove;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/**
 * A stretch that is not yet placed in time. The components are those of {@link Stretch}.
 *
 * @param click what the click does under it
 */
record Leg(
    Stretch.Kind kind,
    @Nullable Groove groove,
    Tempo tempo,
    Feel feel,
    int bars,
    Time pickup,
    Click click) {

  /** So many bars of count-in. It leaves {@code pickup} to what comes after it. */
  static Leg countIn(int bars, @Nullable Groove like, Tempo tempo, Time pickup) {
    Meter meter = like == null ? Meter.COMMON : like.meter();
    Time left = pickup.before(meter.bar()) ? pickup : Time.ZERO;
    return new Leg(Stretch.Kind.COUNT_IN, like, tempo, Feel.STRAIGHT, bars, left, Click.OFF);
  }

  /** A section once, with or without its pickup. */
  static Leg section(Groove groove, Tempo tempo, Feel feel, boolean pickup, Click click) {
    return new Leg(
        Stretch.Kind.SECTION,
        groove,
        tempo,
        feel,
        groove.bars(),
        pickup ? groove.pickup() : Time.ZERO,
        click);
  }

  Stretch at(Time start, long picos) {
    Meter meter = groove == null ? Meter.COMMON : groove.meter();
    return new Stretch(kind, groove, meter, tempo, feel, bars, pickup, start, picos);
  }

  Time length() {
    return at(Time.ZERO, 0).length();
  }
}
