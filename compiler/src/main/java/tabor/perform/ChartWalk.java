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
final class ChartWalk implements Chart.Cases<ChartWalk> {
  /** Legs in a row, the row so many times, 1 or more. */
  record Passage(List<Leg> legs, long times) {}

  private final List<Chart.Item> items;
  private final List<Passage> passages = new ArrayList<>();
  private Chart.Click click = Chart.Click.OFF;
  private @Nullable String before;
  private int index;

  private ChartWalk(Chart chart) {
    items = chart.items();
  }

  static List<Passage> of(Chart chart) {
    ChartWalk walk = new ChartWalk(chart);
    for (walk.index = 0; walk.index < walk.items.size(); walk.index++) {
      walk.items.get(walk.index).match(walk);
    }
    return walk.passages;
  }

  @Override
  public ChartWalk countIn(Chart.CountIn item) {
    Groove next = next();
    Time pickup = next == null ? Time.ZERO : next.pickup();
    before = null;
    return row(List.of(Leg.countIn(item.bars(), item.like(), item.tempo(), pickup)), 1);
  }

  @Override
  public ChartWalk click(Chart.SetClick item) {
    click = item.click();
    return this;
  }

  @Override
  public ChartWalk play(Chart.Play item) {
    row(legs(item.turns()), 1);
    return item.times() > 1 ? row(legs(item.turns()), item.times() - 1L) : this;
  }

  @Override
  public ChartWalk rest(Chart.Rest item) {
    before = null;
    Tempo tempo = item.tempo();
    return row(
        List.of(
            new Leg(
                Stretch.Kind.REST,
                item.like(),
                tempo,
                Feel.STRAIGHT,
                item.bars(),
                Time.ZERO,
                click)),
        1);
  }

  @Override
  public ChartWalk climb(Chart.Climb item) {
    for (Tempo tempo : item.tempi()) {
      List<Chart.Turn> turn = List.of(new Chart.Turn(item.groove(), tempo, item.feel()));
      row(legs(turn), 1);
      if (item.times() > 1) {
        row(legs(turn), item.times() - 1L);
      }
    }
    return this;
  }

  private List<Leg> legs(List<Chart.Turn> turns) {
    List<Leg> legs = new ArrayList<>();
    for (Chart.Turn turn : turns) {
      Groove groove = turn.groove();
      boolean pickup = !groove.name().equals(before);
      legs.add(Leg.section(groove, turn.tempo(), turn.feel(), pickup, click));
      before = groove.name();
    }
    return legs;
  }

  private ChartWalk row(List<Leg> legs, long times) {
    if (!legs.isEmpty()) {
      passages.add(new Passage(legs, times));
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
