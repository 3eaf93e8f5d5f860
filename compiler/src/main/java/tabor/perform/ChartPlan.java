package tabor.perform;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.Loudness;
import tabor.groove.Part;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/**
 * Reads a chart into what is played and how often, without playing it out where it only repeats
 * itself.
 */
final class ChartPlan implements Chart.Cases<ChartPlan> {
  private static final BigInteger LONGEST =
      BigInteger.valueOf(Clock.SECOND).multiply(BigInteger.valueOf(Performer.LONGEST_SECONDS));

  /**
   * Segments in a row, the row so many times, 1 or more.
   *
   * @param item the line of the chart that it comes from, counted from 0
   */
  record Passage(List<PlannedSegment> segments, long times, int item) {
    Passage {
      segments = List.copyOf(segments);
    }

    BigInteger picos() {
      BigInteger once = BigInteger.ZERO;
      for (PlannedSegment segment : segments) {
        once = once.add(BigInteger.valueOf(segment.picos()));
      }
      return once.multiply(BigInteger.valueOf(times));
    }
  }

  /** A row of segments as it is played the first time or again: the pickup may differ. */
  private interface Row {
    List<PlannedSegment> next();
  }

  /** What a line has changed, to take it back. */
  private record State(
      int passages,
      BigInteger total,
      long phase,
      @Nullable Sweep sweep,
      boolean inBar,
      long itemBars,
      @Nullable String before,
      List<PlannedSegment.Words> waiting) {}

  private final List<Chart.Item> items;
  private final List<Passage> passages = new ArrayList<>();
  private final List<PlannedSegment.Words> waiting = new ArrayList<>();
  private final Map<Integer, List<PlannedSegment.Words>> inBars = new TreeMap<>();
  private Chart.SetClick click = new Chart.SetClick(Chart.Click.OFF);
  private @Nullable Loudness over;
  private @Nullable Sweep sweep;
  private @Nullable String before;
  private BigInteger total = BigInteger.ZERO;
  private boolean clickWaits;
  private long phase;
  private long itemBars;
  private boolean inBar;
  private int index;

  private ChartPlan(Chart chart) {
    items = chart.items();
  }

  /** The passages of a chart in order. */
  static List<Passage> of(Chart chart) {
    return planned(chart).passages;
  }

  /** The plan of a chart, with the words that stand after its end. */
  static ChartPlan planned(Chart chart) {
    ChartPlan plan = new ChartPlan(chart);
    for (plan.index = 0; plan.index < plan.items.size(); plan.index++) {
      plan.items.get(plan.index).match(plan);
    }
    return plan;
  }

  List<Passage> passages() {
    return passages;
  }

  /** Words after which nothing is played. */
  List<PlannedSegment.Words> last() {
    return waiting;
  }

  @Override
  public ChartPlan countIn(Chart.CountIn item) {
    Groove next = next();
    Time pickup = next == null ? Time.ZERO : next.pickup();
    before = null;
    Tempo tempo = counted(item.tempo());
    emit(List.of(PlannedSegment.countIn(item.bars(), item.like(), tempo, pickup)));
    return this;
  }

  /** A count-in before or within a gradual change counts at the tempo of the beat after it. */
  private Tempo counted(Tempo tempo) {
    Sweep now = sweep;
    if (now != null && now.to().equals(tempo.perMinute())) {
      return tempo.at(now.next());
    }
    for (Chart.Item item : items.subList(index + 1, items.size())) {
      if (item instanceof Chart.Ramp ramp && ramp.to().perMinute().equals(tempo.perMinute())) {
        return tempo.at(ramp.from().perMinute());
      }
      if (ChartBars.of(item).isMusic()) {
        break;
      }
    }
    return tempo;
  }

  @Override
  public ChartPlan click(Chart.SetClick item) {
    click = item;
    clickWaits = true;
    return this;
  }

  @Override
  public ChartPlan play(Chart.Play item) {
    begin();
    PlannedSegment.Manner manner = manner(item.extras().without());
    if (item.each()) {
      for (Chart.Turn turn : item.turns()) {
        amount(() -> row(List.of(turn), manner), item.amount(), item.extras().fill(), 1);
      }
    } else {
      amount(() -> row(item.turns(), manner), item.amount(), item.extras().fill(), 1);
    }
    inBars.clear();
    return this;
  }

  @Override
  public ChartPlan climb(Chart.Climb item) {
    begin();
    PlannedSegment.Manner manner = manner(item.extras().without());
    Time all = item.seconds();
    Chart.Amount amount =
        all == null
            ? new Chart.Amount(item.times(), 0, null)
            : new Chart.Amount(0, 0, all.over(item.tempi().size()));
    for (Tempo tempo : item.tempi()) {
      List<Chart.Turn> turn = List.of(new Chart.Turn(item.groove(), tempo, item.feel()));
      amount(() -> row(turn, manner), amount, item.extras().fill(), all == null ? 1 : item.times());
    }
    inBars.clear();
    return this;
  }

  @Override
  public ChartPlan trade(Chart.Trade item) {
    begin();
    PlannedSegment.Manner manner = manner(item.extras().without());
    Groove groove = item.turn().groove();
    Groove fill = item.extras().fill();
    int[] bar = {1};
    Row plain =
        () -> {
          boolean pickup = bar[0] == 1 && !groove.name().equals(before);
          PlannedSegment section = PlannedSegment.section(item.turn(), pickup, manner);
          List<PlannedSegment> row = new ArrayList<>(Rows.stretch(section, bar[0], item.bars()));
          List<PlannedSegment> theirs = row.stream().map(PlannedSegment::yours).toList();
          bar[0] = (bar[0] - 1 + item.bars()) % groove.bars() + 1;
          before = groove.name();
          row.addAll(theirs);
          return row;
        };
    // The section goes on where it was, so that no two rounds need be the same.
    BigInteger begun = total;
    Time seconds = item.amount().seconds();
    for (long i = 1; ; i++) {
      State state = state();
      List<PlannedSegment> row = plain.next();
      emit(row);
      boolean last = seconds == null ? i >= item.amount().times() : reached(begun, seconds);
      if (last && fill != null) {
        undo(state);
        long own = row.stream().filter(one -> one.kind() == Segment.Kind.SECTION).count();
        List<PlannedSegment> filled = new ArrayList<>(Rows.filled(row.subList(0, (int) own), fill));
        filled.addAll(row.subList((int) own, row.size()));
        emit(filled);
        before = fill.name();
      }
      if (last || total.compareTo(LONGEST) > 0) {
        break;
      }
    }
    inBars.clear();
    return this;
  }

  /** Plays a row as often or as long as a line says, by the clock in multiples of {@code step}. */
  private void amount(Row row, Chart.Amount amount, @Nullable Groove fill, int step) {
    Time seconds = amount.seconds();
    if (amount.bars() > 0) {
      bars(row, amount.bars(), fill);
    } else {
      times(row, seconds == null ? amount.times() : times(row, seconds, step), fill);
    }
  }

  private void times(Row row, long times, @Nullable Groove fill) {
    long left = times;
    while (left > 0) {
      List<PlannedSegment> next = row.next();
      if (left == 1 && fill != null) {
        emit(Rows.filled(next, fill));
        before = fill.name();
        return;
      }
      long most = left - (fill == null ? 0 : 1);
      long now = left < times && isSteady() ? most : 1;
      emit(next, now);
      left -= now;
    }
  }

  /** How often a row must be played to last so long: a multiple of {@code step}, 1 or more. */
  private long times(Row row, Time seconds, int step) {
    State state = state();
    BigInteger begun = total;
    long times = 0;
    do {
      List<PlannedSegment> next = row.next();
      long more = 1;
      if (times > 0 && isSteady()) {
        more = Math.max(1, missing(begun, seconds, next));
        more += Math.floorMod(-(times + more), (long) step);
      }
      emit(next, more);
      times += more;
    } while (total.compareTo(LONGEST) <= 0 && (times % step != 0 || !reached(begun, seconds)));
    undo(state);
    return times;
  }

  /** So many bars of a row, cut at the end. */
  private void bars(Row row, long bars, @Nullable Groove fill) {
    long left = bars;
    while (left > 0) {
      List<PlannedSegment> next = row.next();
      long own = Math.max(1, Rows.bars(next));
      if (own >= left) {
        List<PlannedSegment> last = Rows.firstBars(next, left);
        emit(fill == null ? last : Rows.filled(last, fill));
        PlannedSegment end = last.get(last.size() - 1);
        before = fill != null ? fill.name() : end.groove() == null ? null : end.groove().name();
        return;
      }
      boolean steady = isSteady() && next.get(0).from().sign() == 0;
      long times = steady ? (left - 1) / own : 1;
      emit(next, times);
      left -= times * own;
    }
  }

  /** How many more times a row must be played. */
  private long missing(BigInteger begun, Time seconds, List<PlannedSegment> row) {
    BigInteger once = new Passage(row, 1, index).picos().max(BigInteger.ONE);
    BigInteger left = picos(seconds).subtract(total.subtract(begun)).subtract(slack());
    BigInteger up = left.add(once).subtract(BigInteger.ONE).divide(once);
    return up.min(BigInteger.TEN.pow(15)).longValueExact();
  }

  private boolean reached(BigInteger begun, Time seconds) {
    return total.subtract(begun).add(slack()).compareTo(picos(seconds)) >= 0;
  }

  /** What rounding to picoseconds may have taken away, a nanosecond and half one a segment. */
  private BigInteger slack() {
    return BigInteger.valueOf(1000 + passages.size());
  }

  private static BigInteger picos(Time seconds) {
    return BigInteger.valueOf(seconds.num())
        .multiply(BigInteger.valueOf(Clock.SECOND))
        .divide(BigInteger.valueOf(seconds.den()));
  }

  /** True if a row that is repeated is the same each time. */
  private boolean isSteady() {
    return (sweep == null && click.barsOn() == 0 && inBars.isEmpty() && waiting.isEmpty())
        || total.compareTo(LONGEST) > 0;
  }

  @Override
  public ChartPlan rest(Chart.Rest item) {
    before = null;
    emit(List.of(PlannedSegment.rest(item.bars(), item.like(), item.tempo(), manner(List.of()))));
    return this;
  }

  @Override
  public ChartPlan pause(Chart.Pause item) {
    before = null;
    emit(List.of(PlannedSegment.pause(item.seconds())));
    return this;
  }

  @Override
  public ChartPlan ramp(Chart.Ramp item) {
    long beats = ChartBars.beats(items.subList(index + 1, items.size()), item.bars());
    sweep = new Sweep(item.from().perMinute(), item.to().perMinute(), Math.max(1, beats), 0);
    return this;
  }

  @Override
  public ChartPlan dynamic(Chart.SetDynamic item) {
    over = item.loudness();
    return this;
  }

  @Override
  public ChartPlan hold(Chart.Hold item) {
    LastStroke.hold(passages, item.beats(), index);
    total = passages.stream().map(Passage::picos).reduce(BigInteger.ZERO, BigInteger::add);
    before = null;
    inBar = false;
    return this;
  }

  @Override
  public ChartPlan cue(Chart.Cue item) {
    PlannedSegment.Words words = new PlannedSegment.Words(false, item.text());
    if (item.bar() > 0) {
      inBars.computeIfAbsent(item.bar(), bar -> new ArrayList<>()).add(words);
    } else {
      waiting.add(words);
    }
    return this;
  }

  @Override
  public ChartPlan mark(Chart.Mark item) {
    waiting.add(new PlannedSegment.Words(true, item.text()));
    return this;
  }

  /** A line that plays something begins: the click counts its bars from here. */
  private void begin() {
    itemBars = 0;
    if (clickWaits) {
      clickWaits = false;
      phase = 0;
    }
  }

  private PlannedSegment.Manner manner(List<Part> without) {
    return new PlannedSegment.Manner(click, without, over);
  }

  private List<PlannedSegment> row(List<Chart.Turn> turns, PlannedSegment.Manner manner) {
    List<PlannedSegment> segments = new ArrayList<>();
    for (Chart.Turn turn : turns) {
      boolean pickup = !turn.groove().name().equals(before);
      segments.add(PlannedSegment.section(turn, pickup, manner));
      before = turn.groove().name();
    }
    return segments;
  }

  private void emit(List<PlannedSegment> row) {
    emit(row, 1);
  }

  /** Adds a row, with the gradual tempo, the click's count and the words that wait for it. */
  private void emit(List<PlannedSegment> row, long times) {
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
    Passage passage = new Passage(done, times, index);
    passages.add(passage);
    total = total.add(passage.picos());
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

  private State state() {
    return new State(
        passages.size(), total, phase, sweep, inBar, itemBars, before, List.copyOf(waiting));
  }

  private void undo(State state) {
    passages.subList(state.passages(), passages.size()).clear();
    total = state.total();
    phase = state.phase();
    sweep = state.sweep();
    inBar = state.inBar();
    itemBars = state.itemBars();
    before = state.before();
    waiting.clear();
    waiting.addAll(state.waiting());
  }

  /** What the next line that sounds begins with; null if that is no section. */
  private @Nullable Groove next() {
    for (Chart.Item item : items.subList(index + 1, items.size())) {
      ChartBars bars = ChartBars.of(item);
      if (bars.isMusic()) {
        return bars.first();
      }
    }
    return null;
  }
}
