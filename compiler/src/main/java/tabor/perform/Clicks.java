package tabor.perform;

import java.util.ArrayList;
import java.util.List;
import tabor.groove.Chart;
import tabor.groove.Chart.Click;
import tabor.groove.Groove;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;

/**
 * The click and the count-in: wood blocks, which General MIDI has and no kit of ours uses; the high
 * one on the first beat of a bar, the low one elsewhere, softer between the beats. The click swings
 * with the music.
 */
final class Clicks {
  private static final int HIGH = 76;
  private static final int LOW = 77;
  private static final Time LENGTH = Time.of(1, 64);

  private Clicks() {}

  /** The beats of a count-in. It stops where the pickup after it begins. */
  static void countIn(SoundPlacer placer, int index, Segment segment) {
    for (int bar = segment.firstBar(); bar <= segment.lastBar(); bar++) {
      for (Time at : places(segment.meter(bar), Click.ON)) {
        Time start = segment.barline(bar).plus(at);
        if (start.before(segment.end())) {
          placer.add(sound(Sound.Kind.COUNT_IN, at.sign() == 0, 100, start, index, bar, at));
        }
      }
    }
  }

  /**
   * The click through a section or a rest.
   *
   * @param phase how many bars it has counted before bar 1, for one that plays and pauses in turn
   */
  static void under(
      SoundPlacer placer, int index, Segment segment, Chart.SetClick click, long phase) {
    Groove groove = segment.groove();
    Swing swing =
        new Swing(segment.meters(), segment.feel(), groove == null ? List.of() : groove.strokes());
    for (int bar = segment.firstBar(); bar <= segment.lastBar(); bar++) {
      if (pauses(click, phase + Math.max(1, bar) - 1)) {
        continue;
      }
      Meter meter = segment.meter(bar);
      List<Time> beats = places(meter, Click.ON);
      for (Time at : places(meter, click)) {
        Time start = segment.barline(bar).plus(sounded(meter, swing, bar, at));
        if (!start.before(segment.start()) && start.before(segment.end())) {
          int loud = beats.contains(at) ? 80 : 50;
          placer.add(sound(Sound.Kind.CLICK, at.sign() == 0, loud, start, index, bar, at));
        }
      }
    }
  }

  private static boolean pauses(Chart.SetClick click, long bar) {
    return click.barsOn() > 0
        && Math.floorMod(bar, (long) click.barsOn() + click.barsOff()) >= click.barsOn();
  }

  private static List<Time> places(Meter meter, Chart.SetClick click) {
    if (click.beats().isEmpty()) {
      return places(meter, click.click());
    }
    List<Time> found = new ArrayList<>();
    for (int beat : click.beats()) {
      if (beat <= meter.beatCount()) {
        found.add(meter.beatStart(beat - 1));
      }
    }
    return found;
  }

  private static Sound sound(
      Sound.Kind kind, boolean first, int velocity, Time start, int index, int bar, Time at) {
    return new Sound(
        kind,
        null,
        null,
        first ? HIGH : LOW,
        first ? 110 : velocity,
        start,
        LENGTH,
        0,
        index,
        bar,
        at,
        null);
  }

  private static List<Time> places(Meter meter, Click click) {
    List<Time> found = new ArrayList<>();
    switch (click) {
      case OFF -> {}
      case ON -> {
        for (int i = 0; i < meter.beatCount(); i++) {
          found.add(meter.beatStart(i));
        }
      }
      case QUARTERS, EIGHTHS -> {
        Time step = Time.of(1, click == Click.QUARTERS ? 4 : 8);
        for (Time at = Time.ZERO; at.before(meter.bar()); at = at.plus(step)) {
          found.add(at);
        }
      }
    }
    return found;
  }

  private static Time sounded(Meter meter, Swing swing, int bar, Time at) {
    int beat = meter.beatAt(at);
    Time in = at.minus(meter.beatStart(beat)).over(meter.beat(beat));
    return Long.bitCount(in.den()) == 1 ? swing.even(bar, at) : at;
  }
}
