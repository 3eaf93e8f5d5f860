package tabor.perform;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import tabor.groove.Chart;
import tabor.rhythm.Time;

/**
 * What a chart has come to so far, and what the next row meets there: a gradual tempo, the click's
 * count of bars, words that wait to be said. Rows are added at its end, and may be taken back.
 */
final class ChartProgress {
  /** From here on {@link Performer#seconds} says more than a day, rounding allowed for. */
  private static final BigInteger TOO_LONG =
      BigInteger.valueOf(Clock.SECOND)
          .multiply(BigInteger.valueOf(Performer.LONGEST_SECONDS))
          .add(BigInteger.valueOf(Clock.MILLI));

  /** More are not planned one by one: a chart that needs them is refused. */
  private static final int MOST_PASSAGES = 200_000;

  /** What a line has changed, to take it back. */
  record State(
      int passages,
      BigInteger total,
      long played,
      long phase,
      @Nullable Sweep sweep,
      boolean inBar,
      long itemBars,
      @Nullable String before,
      List<PlannedSegment.Words> waiting) {}

  final List<ChartPlan.Passage> passages = new ArrayList<>();

  /** Words for the beginning of the next row. */
  final List<PlannedSegment.Words> waiting = new ArrayList<>();

  /** Words for bars of the line that is being planned, by their numbers. */
  final Map<Integer, List<PlannedSegment.Words>> inBars = new TreeMap<>();

  @Nullable Sweep sweep;

  /** The name of the section played last; null after anything else. */
  @Nullable String before;

  /** The line of the chart, counted from 0. */
  int item;

  private BigInteger total = BigInteger.ZERO;
  private long played;
  private long phase;
  private long itemBars;
  private boolean inBar;

  /** What has been played, in picoseconds. */
  BigInteger total() {
    return total;
  }

  /**
   * A line that plays something begins.
   *
   * @param clicks true if the click's bars on and off are counted from here
   */
  void begin(boolean clicks) {
    itemBars = 0;
    phase = clicks ? 0 : phase;
  }

  /** The last stroke rings so many beats, and the count stops. */
  void hold(int beats) {
    LastStroke.hold(passages, beats, item);
    total = BigInteger.ZERO;
    for (ChartPlan.Passage passage : passages) {
      total = total.add(passage.picos());
    }
    before = null;
    inBar = false;
  }

  /** Adds a row once. */
  void add(List<PlannedSegment> row) {
    add(row, 1);
  }

  /** Adds a row, with the gradual tempo, the click's count and the words that wait for it. */
  void add(List<PlannedSegment> row, long times) {
    if (row.isEmpty() || times < 1) {
      return;
    }
    List<PlannedSegment> marked = row;
    if (!waiting.isEmpty()) {
      marked = new ArrayList<>(row);
      marked.set(0, marked.get(0).after(waiting));
      waiting.clear();
    }
    for (Map.Entry<Integer, List<PlannedSegment.Words>> words : inBars.entrySet()) {
      marked = Rows.marked(marked, words.getKey() - itemBars, words.getValue());
    }
    List<PlannedSegment> done = new ArrayList<>();
    for (PlannedSegment segment : marked) {
      for (PlannedSegment piece : swept(segment)) {
        long count = phase - (piece.beginsBar() ? 0 : 1);
        int first = piece.from().sign() <= 0 ? 1 : piece.meters().place(piece.from()).bar();
        done.add(piece.counted(count - (first - 1)));
        phase += piece.barlines();
        itemBars += piece.barlines();
        inBar = piece.at(Time.ZERO, 0).endsInBar();
      }
    }
    if (times > 1) {
      phase += (times - 1) * Rows.bars(done);
    }
    ChartPlan.Passage passage = new ChartPlan.Passage(done, times, item);
    passages.add(passage);
    total = total.add(passage.picos());
    played += done.size() * times;
  }

  private List<PlannedSegment> swept(PlannedSegment segment) {
    Sweep now = sweep;
    if (now == null || !segment.kind().hasBars()) {
      return List.of(segment);
    }
    if (!now.takes(segment)) {
      sweep = null;
      return List.of(segment);
    }
    Sweep.Swept swept = now.over(segment, inBar);
    sweep = swept.next().isOver() && !segment.at(Time.ZERO, 0).endsInBar() ? null : swept.next();
    return swept.pieces();
  }

  /** How many more times a row must be played to last so long from {@code begun} on. */
  long missing(BigInteger begun, Time seconds, List<PlannedSegment> row) {
    BigInteger once =
        new ChartPlan.Passage(row, 1, item)
            .picos()
            .add(BigInteger.valueOf(row.size()))
            .max(BigInteger.ONE);
    BigInteger left = picos(seconds).subtract(total.subtract(begun)).subtract(slack());
    BigInteger up = left.add(once).subtract(BigInteger.ONE).divide(once);
    return up.min(BigInteger.TEN.pow(15)).longValueExact();
  }

  /** True if so long has been played from {@code begun} on. */
  boolean reached(BigInteger begun, Time seconds) {
    return total.subtract(begun).add(slack()).compareTo(picos(seconds)) >= 0;
  }

  /**
   * What rounding may have taken away: a nanosecond, and a picosecond for each segment that has
   * been played, since each is rounded by itself.
   */
  private BigInteger slack() {
    return BigInteger.valueOf(1000 + played);
  }

  private static BigInteger picos(Time seconds) {
    return BigInteger.valueOf(seconds.num())
        .multiply(BigInteger.valueOf(Clock.SECOND))
        .divide(BigInteger.valueOf(seconds.den()));
  }

  /** True if a row that is repeated is the same each time. */
  boolean isSteady(Chart.SetClick click) {
    return (sweep == null && click.barsOn() == 0 && inBars.isEmpty() && waiting.isEmpty())
        || isTooLong();
  }

  /** True where nobody will play it any more, so that it need not be written out. */
  boolean isTooLong() {
    return total.compareTo(TOO_LONG) >= 0 || passages.size() > MOST_PASSAGES;
  }

  /** All that {@link #undo} needs to come back here. */
  State state() {
    return new State(
        passages.size(),
        total,
        played,
        phase,
        sweep,
        inBar,
        itemBars,
        before,
        List.copyOf(waiting));
  }

  /** Takes back what was added since. */
  void undo(State state) {
    passages.subList(state.passages(), passages.size()).clear();
    total = state.total();
    played = state.played();
    phase = state.phase();
    sweep = state.sweep();
    inBar = state.inBar();
    itemBars = state.itemBars();
    before = state.before();
    waiting.clear();
    waiting.addAll(state.waiting());
  }
}
