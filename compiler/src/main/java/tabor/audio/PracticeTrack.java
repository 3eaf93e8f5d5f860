package tabor.audio;

import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import java.util.function.Predicate;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.Section;
import tabor.groove.Sheet;
import tabor.perform.Performance;
import tabor.perform.Performer;
import tabor.perform.Segment;
import tabor.perform.Sound;
import tabor.rhythm.Time;

/**
 * A section as a stream of samples, block by block, so that a long one needs no memory. A groove or
 * step is played after its count-in and then repeated without its pickup; a chart is played as it
 * is written. The last sounds ring out.
 */
public final class PracticeTrack {
  /** Frames a second. */
  public static final int RATE = StereoMixer.RATE;

  /** How many seconds before a round its strokes are fetched: more than any grace note needs. */
  private static final double EARLY = 2;

  private final Performance performance;
  private final StrikePlan plan;
  private final long rounds;
  private final StereoMixer mixer;
  private final PriorityQueue<Queued> queue =
      new PriorityQueue<>(
          Comparator.comparingDouble((Queued q) -> q.strike().seconds())
              .thenComparingLong(Queued::number));
  private long fetched;
  private long queued;

  private record Queued(Strike strike, long number) {}

  private PracticeTrack(Performance performance, StrikePlan plan, long rounds) {
    this(performance, plan, rounds, new StereoMixer());
  }

  private PracticeTrack(Performance performance, StrikePlan plan, long rounds, StereoMixer mixer) {
    this.performance = performance;
    this.plan = plan;
    this.rounds = rounds;
    this.mixer = mixer;
    plan.first().forEach(this::add);
  }

  /** A section once: after its count-in if {@code countIn}, a chart as it is written. */
  public static PracticeTrack once(Section section, boolean countIn, Predicate<Sound> heard) {
    Performance performance =
        isInTurn(section)
            ? Performer.chart(chart(section, countIn))
            : Performer.once((Groove) section, countIn ? 1 : 0);
    return new PracticeTrack(performance, StrikePlan.once(performance, heard), 0);
  }

  /**
   * A section that is repeated.
   *
   * @param times how many times it is heard in all, 2 or more; {@link Long#MAX_VALUE} for ever
   */
  public static PracticeTrack repeated(
      Section section, boolean countIn, long times, Predicate<Sound> heard) {
    if (isInTurn(section)) {
      Performance performance = Performer.chart(chart(section, false));
      return new PracticeTrack(performance, StrikePlan.allAgain(performance, heard), times);
    }
    Performance performance = Performer.twice((Groove) section, countIn ? 1 : 0);
    return new PracticeTrack(performance, StrikePlan.lastAgain(performance, heard), times - 1);
  }

  private static boolean isInTurn(Section section) {
    return section instanceof Chart || section instanceof Sheet;
  }

  /** A chart; of a sheet each variation twice. */
  private static Chart chart(Section section, boolean countIn) {
    return section instanceof Sheet sheet ? sheet.inTurn(countIn ? 1 : 0, 2) : (Chart) section;
  }

  /** What is played, once through and, where something is repeated, with its first round. */
  public Performance performance() {
    return performance;
  }

  /**
   * Where in {@link #performance} the music is so many seconds from the start: a later round counts
   * as the first of those that are repeated.
   */
  public Time place(double seconds) {
    double within = seconds - plan.start();
    double once = within > 0 && plan.length() > 0 ? within % plan.length() : within;
    long micros = Math.max(0, Math.round((plan.start() + once) * 1e6));
    List<Segment> stretches = performance.segments();
    int low = 0;
    int high = stretches.size() - 1;
    while (low < high) {
      int middle = (low + high + 1) >>> 1;
      if (performance.micros(stretches.get(middle).start()) <= micros) {
        low = middle;
      } else {
        high = middle - 1;
      }
    }
    Segment segment = stretches.get(low);
    long since = micros - performance.micros(segment.start());
    // A thousandth of a second is near enough for a count that is looked at.
    Time inside = Time.of(since / 1000, 1000).over(segment.tempo().secondsPerWhole());
    return Time.min(segment.start().plus(inside), performance.length());
  }

  /** Where the first repeated round begins, in seconds; without one the end. */
  public double roundStart() {
    return plan.start();
  }

  /** How long a repeated round is in seconds; 0 without one. */
  public double roundLength() {
    return plan.length();
  }

  /** The last barline in seconds; infinite for a track that is repeated for ever. */
  public double end() {
    return rounds == Long.MAX_VALUE || rounds == Long.MAX_VALUE - 1
        ? Double.POSITIVE_INFINITY
        : plan.start() + rounds * plan.length();
  }

  /** How many blocks of so many frames there are from the start to the end. */
  public long blocks(int frames) {
    PracticeTrack silent = new PracticeTrack(performance, plan, rounds, mixer.again());
    long blocks = 0;
    while (!silent.isOver()) {
      silent.strike(frames);
      silent.mixer.skip(frames);
      blocks++;
    }
    return blocks;
  }

  /** True when the last barline is past and the last sound has died away. */
  public boolean isOver() {
    return mixer.seconds() >= end() && queue.isEmpty() && mixer.isSilent();
  }

  /** The next frames of both channels, from -1 to 1, into arrays of the same length. */
  public void next(float[] left, float[] right) {
    strike(left.length);
    mixer.mix(left, right);
  }

  /** Hands the mixer the strokes of the next frames. */
  private void strike(int frames) {
    double until = mixer.seconds() + (double) frames / RATE;
    while (fetched < rounds
        && plan.start() + fetched * plan.length() - EARLY < until
        && plan.length() > 0) {
      double by = fetched * plan.length();
      plan.again().forEach(strike -> add(strike.later(by)));
      fetched++;
    }
    while (!queue.isEmpty() && queue.element().strike().seconds() < until) {
      mixer.strike(queue.remove().strike());
    }
  }

  private void add(Strike strike) {
    queue.add(new Queued(strike, queued++));
  }
}
