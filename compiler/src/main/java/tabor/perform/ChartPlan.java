package tabor.perform;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.Loudness;
import tabor.groove.Part;
import tabor.lists.Lists;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/**
 * Reads a chart into what is played and how often, without playing it out where it only repeats
 * itself.
 */
final class ChartPlan implements Chart.Cases<ChartPlan> {
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

  private final List<Chart.Item> items;
  private final ChartProgress progress = new ChartProgress();
  private Chart.SetClick click = new Chart.SetClick(Chart.Click.OFF);
  private @Nullable Loudness over;
  private boolean clickWaits;

  private ChartPlan(Chart chart) {
    items = chart.items();
  }

  /** The passages of a chart in order. */
  static List<Passage> of(Chart chart) {
    return planned(chart).passages();
  }

  /** The plan of a chart, with the words that stand after its end. */
  static ChartPlan planned(Chart chart) {
    ChartPlan plan = new ChartPlan(chart);
    for (int i = 0; i < plan.items.size(); i++) {
      plan.progress.item = i;
      plan.items.get(i).match(plan);
    }
    return plan;
  }

  List<Passage> passages() {
    return progress.passages;
  }

  /** Words after which nothing is played. */
  List<PlannedSegment.Words> last() {
    return progress.waiting;
  }

  @Override
  public ChartPlan countIn(Chart.CountIn item) {
    Groove next = next();
    Time pickup = next == null ? Time.ZERO : next.pickup();
    progress.before = null;
    Tempo tempo = counted(item.tempo());
    progress.add(List.of(PlannedSegment.countIn(item.bars(), item.like(), tempo, pickup)));
    return this;
  }

  /** A count-in before or within a gradual change counts at the tempo of the beat after it. */
  private Tempo counted(Tempo tempo) {
    Sweep now = progress.sweep;
    if (now != null && now.to().equals(tempo.perMinute())) {
      return tempo.at(now.next());
    }
    for (Chart.Item item : items.subList(progress.item + 1, items.size())) {
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
    progress.inBars.clear();
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
    progress.inBars.clear();
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
          boolean pickup = bar[0] == 1 && !groove.name().equals(progress.before);
          PlannedSegment section = PlannedSegment.section(item.turn(), pickup, manner);
          List<PlannedSegment> row = new ArrayList<>(Rows.stretch(section, bar[0], item.bars()));
          List<PlannedSegment> theirs = Lists.map(row, PlannedSegment::yours);
          bar[0] = (bar[0] - 1 + item.bars()) % groove.bars() + 1;
          progress.before = groove.name();
          row.addAll(theirs);
          return row;
        };
    // The section goes on where it was, so that no two rounds need be the same.
    BigInteger begun = progress.total();
    Time seconds = item.amount().seconds();
    for (long i = 1; ; i++) {
      ChartProgress.State state = progress.state();
      List<PlannedSegment> row = plain.next();
      progress.add(row);
      boolean last =
          seconds == null ? i >= item.amount().times() : progress.reached(begun, seconds);
      if (last && fill != null) {
        progress.undo(state);
        long own = Lists.count(row, one -> one.kind() == Segment.Kind.SECTION);
        List<PlannedSegment> filled = new ArrayList<>(Rows.filled(row.subList(0, (int) own), fill));
        filled.addAll(row.subList((int) own, row.size()));
        progress.add(filled);
        progress.before = fill.name();
      }
      if (last || progress.isTooLong()) {
        break;
      }
    }
    progress.inBars.clear();
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
        progress.add(Rows.filled(next, fill));
        progress.before = fill.name();
        return;
      }
      long most = left - (fill == null ? 0 : 1);
      long now = left < times && progress.isSteady(click) ? most : 1;
      progress.add(next, now);
      left -= now;
    }
  }

  /** How often a row must be played to last so long: a multiple of {@code step}, 1 or more. */
  private long times(Row row, Time seconds, int step) {
    ChartProgress.State state = progress.state();
    BigInteger begun = progress.total();
    long times = 0;
    do {
      List<PlannedSegment> next = row.next();
      long more = 1;
      if (times > 0 && progress.isSteady(click)) {
        more = Math.max(1, progress.missing(begun, seconds, next));
        more += Math.floorMod(-(times + more), (long) step);
      }
      progress.add(next, more);
      times += more;
    } while (!progress.isTooLong() && (times % step != 0 || !progress.reached(begun, seconds)));
    progress.undo(state);
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
        progress.add(fill == null ? last : Rows.filled(last, fill));
        PlannedSegment end = last.get(last.size() - 1);
        progress.before =
            fill != null ? fill.name() : end.groove() == null ? null : end.groove().name();
        return;
      }
      boolean steady = progress.isSteady(click) && next.get(0).from().sign() == 0;
      long times = steady ? (left - 1) / own : 1;
      progress.add(next, times);
      left -= times * own;
    }
  }

  @Override
  public ChartPlan rest(Chart.Rest item) {
    progress.before = null;
    progress.add(
        List.of(PlannedSegment.rest(item.bars(), item.like(), item.tempo(), manner(List.of()))));
    return this;
  }

  @Override
  public ChartPlan pause(Chart.Pause item) {
    progress.before = null;
    progress.add(List.of(PlannedSegment.pause(item.seconds())));
    return this;
  }

  @Override
  public ChartPlan ramp(Chart.Ramp item) {
    progress.sweep = Sweep.of(item, items.subList(progress.item + 1, items.size()));
    return this;
  }

  @Override
  public ChartPlan dynamic(Chart.SetDynamic item) {
    over = item.loudness();
    return this;
  }

  @Override
  public ChartPlan hold(Chart.Hold item) {
    progress.hold(item.beats());
    return this;
  }

  @Override
  public ChartPlan cue(Chart.Cue item) {
    PlannedSegment.Words words = new PlannedSegment.Words(false, item.text());
    if (item.bar() > 0) {
      progress.inBars.computeIfAbsent(item.bar(), bar -> new ArrayList<>()).add(words);
    } else {
      progress.waiting.add(words);
    }
    return this;
  }

  @Override
  public ChartPlan mark(Chart.Mark item) {
    progress.waiting.add(new PlannedSegment.Words(true, item.text()));
    return this;
  }

  private void begin() {
    progress.begin(clickWaits);
    clickWaits = false;
  }

  private PlannedSegment.Manner manner(List<Part> without) {
    return new PlannedSegment.Manner(click, without, over);
  }

  private List<PlannedSegment> row(List<Chart.Turn> turns, PlannedSegment.Manner manner) {
    List<PlannedSegment> segments = new ArrayList<>();
    for (Chart.Turn turn : turns) {
      boolean pickup = !turn.groove().name().equals(progress.before);
      segments.add(PlannedSegment.section(turn, pickup, manner));
      progress.before = turn.groove().name();
    }
    return segments;
  }

  /** What the next line that sounds begins with; null if that is no section. */
  private @Nullable Groove next() {
    for (Chart.Item item : items.subList(progress.item + 1, items.size())) {
      ChartBars bars = ChartBars.of(item);
      if (bars.isMusic()) {
        return bars.first();
      }
    }
    return null;
  }
}
