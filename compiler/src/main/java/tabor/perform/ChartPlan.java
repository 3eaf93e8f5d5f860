package tabor.perform;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.rhythm.Feel;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/** Reads a chart into what is played and how often, without playing it out. */
final class ChartPlan implements Chart.Cases<ChartPlan> {
  /** Segments in a row, the row so many times, 1 or more. */
  record Passage(List<PlannedSegment> segments, long times) {}

  private final List<Chart.Item> items;
  private final List<Passage> passages = new ArrayList<>();
  private Chart.Click click = Chart.Click.OFF;
  private @Nullable String before;
  private int index;

  private ChartPlan(Chart chart) {
    items = chart.items();
  }

  static List<Passage> of(Chart chart) {
    ChartPlan plan = new ChartPlan(chart);
    for (plan.index = 0; plan.index < plan.items.size(); plan.index++) {
      plan.items.get(plan.index).match(plan);
    }
    return plan.passages;
  }

  @Override
  public ChartPlan countIn(Chart.CountIn item) {
    Groove next = next();
    Time pickup = next == null ? Time.ZERO : next.pickup();
    before = null;
    return row(List.of(PlannedSegment.countIn(item.bars(), item.like(), item.tempo(), pickup)), 1);
  }

  @Override
  public ChartPlan click(Chart.SetClick item) {
    click = item.click();
    return this;
  }

  @Override
  public ChartPlan play(Chart.Play item) {
    if (item.each()) {
      for (Chart.Turn turn : item.turns()) {
        row(segments(List.of(turn)), 1);
        if (item.times() > 1) {
          row(segments(List.of(turn)), item.times() - 1L);
        }
      }
      return this;
    }
    row(segments(item.turns()), 1);
    return item.times() > 1 ? row(segments(item.turns()), item.times() - 1L) : this;
  }

  @Override
  public ChartPlan rest(Chart.Rest item) {
    before = null;
    Tempo tempo = item.tempo();
    return row(
        List.of(
            new PlannedSegment(
                Segment.Kind.REST,
                item.like(),
                tempo,
                Feel.STRAIGHT,
                item.bars(),
                Time.ZERO,
                click)),
        1);
  }

  @Override
  public ChartPlan trade(Chart.Trade item) {
    return this;
  }

  @Override
  public ChartPlan pause(Chart.Pause item) {
    return this;
  }

  @Override
  public ChartPlan ramp(Chart.Ramp item) {
    return this;
  }

  @Override
  public ChartPlan dynamic(Chart.SetDynamic item) {
    return this;
  }

  @Override
  public ChartPlan hold(Chart.Hold item) {
    return this;
  }

  @Override
  public ChartPlan cue(Chart.Cue item) {
    return this;
  }

  @Override
  public ChartPlan mark(Chart.Mark item) {
    return this;
  }

  @Override
  public ChartPlan climb(Chart.Climb item) {
    for (Tempo tempo : item.tempi()) {
      List<Chart.Turn> turn = List.of(new Chart.Turn(item.groove(), tempo, item.feel()));
      row(segments(turn), 1);
      if (item.times() > 1) {
        row(segments(turn), item.times() - 1L);
      }
    }
    return this;
  }

  private List<PlannedSegment> segments(List<Chart.Turn> turns) {
    List<PlannedSegment> segments = new ArrayList<>();
    for (Chart.Turn turn : turns) {
      Groove groove = turn.groove();
      boolean pickup = !groove.name().equals(before);
      segments.add(PlannedSegment.section(groove, turn.tempo(), turn.feel(), pickup, click));
      before = groove.name();
    }
    return segments;
  }

  private ChartPlan row(List<PlannedSegment> segments, long times) {
    if (!segments.isEmpty()) {
      passages.add(new Passage(segments, times));
    }
    return this;
  }

  /** What the next line that sounds begins with; null if that is no section. */
  private @Nullable Groove next() {
    for (Chart.Item item : items.subList(index + 1, items.size())) {
      if (item instanceof Chart.Play play && !play.turns().isEmpty()) {
        return play.turns().get(0).groove();
      }
      if (item instanceof Chart.Climb climb) {
        return climb.groove();
      }
      if (!(item instanceof Chart.SetClick)) {
        return null;
      }
    }
    return null;
  }
}
