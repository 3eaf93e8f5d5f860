package tabor.perform;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.groove.Chart;
import tabor.lists.Lists;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;
import tabor.words.Words;

/**
 * When each line of a chart begins: what the table of a printed chart says, worked out from the
 * same plan that is played.
 *
 * @param stops one for each line of the chart, in order
 * @param bars all bars; count-ins and pickups are not counted, rests and the student's bars are
 * @param micros how long the chart lasts in microseconds, rounded
 */
public record RoadMap(List<Stop> stops, long bars, long micros) {
  /**
   * A line of a chart.
   *
   * @param item the line
   * @param first the index of its first segment in the performance of the chart
   * @param segments how many segments it plays; 0 for a line in which no time passes
   * @param bar the number of its first bar, from 1
   * @param bars how many bars begin in it
   * @param start microseconds from the start of the chart, rounded
   * @param micros how long it lasts, rounded
   * @param from the tempo it begins at; null where no time passes
   * @param to the tempo at which it ends: on the way to another, the one that the next beat would
   *     have; null where no time passes
   */
  public record Stop(
      Chart.Item item,
      int first,
      int segments,
      long bar,
      long bars,
      long start,
      long micros,
      @Nullable Tempo from,
      @Nullable Tempo to) {
    /** The tempo that it is played at, or the tempi in order; empty where no bars are counted. */
    public String tempo(Words words) {
      if (from == null || to == null || bars == 0) {
        return "";
      }
      List<Tempo> written = new ArrayList<>();
      if (item instanceof Chart.Play play) {
        play.turns().forEach(turn -> written.add(turn.tempo()));
      } else if (item instanceof Chart.Trade trade) {
        written.add(trade.turn().tempo());
      }
      if (written.contains(from)) {
        return words.then(Lists.map(new LinkedHashSet<>(written), words::tempo));
      }
      return from.equals(to)
          ? words.tempo(from)
          : words.text("chart.tempi", words.tempo(from), Long.toString(to.perMinute().rounded()));
    }
  }

  /** Copies the list. */
  public RoadMap {
    stops = List.copyOf(stops);
  }

  /** The road map of a chart. */
  public static RoadMap of(Chart chart) {
    List<ChartPlan.Passage> passages = ChartPlan.of(chart);
    List<Stop> stops = new ArrayList<>();
    BigInteger at = BigInteger.ZERO;
    long first = 0;
    long bar = 1;
    int next = 0;
    Chart.Ramp ramp = null;
    for (int i = 0; i < chart.items().size(); i++) {
      ramp = chart.items().get(i) instanceof Chart.Ramp later ? later : ramp;
      BigInteger begun = at;
      long segments = 0;
      long bars = 0;
      Tempo from = null;
      Tempo to = null;
      for (; next < passages.size() && passages.get(next).item() == i; next++) {
        ChartPlan.Passage passage = passages.get(next);
        List<PlannedSegment> row = passage.segments();
        from = from == null ? row.get(0).tempo() : from;
        to = last(row, ramp);
        segments += row.size() * passage.times();
        bars += Rows.bars(row) * passage.times();
        at = at.add(passage.picos());
      }
      stops.add(
          new Stop(
              chart.items().get(i),
              (int) Math.min(Integer.MAX_VALUE, first),
              (int) Math.min(Integer.MAX_VALUE, segments),
              bar,
              bars,
              micros(begun),
              micros(at) - micros(begun),
              from,
              to));
      first += segments;
      bar += bars;
    }
    return new RoadMap(stops, bar - 1, micros(at));
  }

  /**
   * The tempo that goes on after these segments: on the way of the ramp the next one, no further
   * than it goes.
   */
  private static Tempo last(List<PlannedSegment> row, Chart.@Nullable Ramp ramp) {
    Tempo last = row.get(row.size() - 1).tempo();
    if (ramp == null || row.size() < 2) {
      return last;
    }
    Time step = last.perMinute().minus(row.get(row.size() - 2).tempo().perMinute());
    Time goal = ramp.to().perMinute();
    Time left = goal.minus(last.perMinute());
    if (step.sign() == 0 || step.sign() != left.sign()) {
      return last;
    }
    boolean passes = step.sign() > 0 ? left.before(step) : step.before(left);
    return new Tempo(last.beat(), passes ? goal : last.perMinute().plus(step));
  }

  private static long micros(BigInteger picos) {
    BigInteger rounded =
        picos.add(BigInteger.valueOf(500_000)).divide(BigInteger.valueOf(1_000_000));
    return rounded.min(BigInteger.valueOf(Long.MAX_VALUE)).longValueExact();
  }

  /** {@code 2:05}, {@code 1:00:00}: minutes and seconds, rounded to a second. */
  public static String clock(long micros) {
    long seconds = (micros + 500_000) / 1_000_000;
    long minutes = seconds / 60;
    String rest = twoDigits(seconds % 60);
    return minutes < 60
        ? minutes + ":" + rest
        : minutes / 60 + ":" + twoDigits(minutes % 60) + ":" + rest;
  }

  private static String twoDigits(long number) {
    return (number < 10 ? "0" : "") + number;
  }
}
