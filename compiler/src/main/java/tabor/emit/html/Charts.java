package tabor.emit.html;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tabor.emit.html.PlayData.Leg;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.perform.Performance;
import tabor.perform.Performer;
import tabor.perform.Segment;
import tabor.rhythm.Tempo;

/**
 * Turns a chart into legs and into the rows that the page shows. The performance has one segment
 * for each time that something is played, in the order of the chart's lines.
 */
final class Charts implements Chart.Cases<@Nullable Void> {
  /** Tells the number of the figure that shows a section. */
  interface Figures {
    int of(Groove groove);
  }

  private final Performance performance;
  private final List<Integer> takes;
  private final Figures figures;
  private final List<Leg> legs = new ArrayList<>();
  private final List<Page.Row> rows = new ArrayList<>();
  private int next;

  private Charts(Performance performance, List<Integer> takes, Figures figures) {
    this.performance = performance;
    this.takes = takes;
    this.figures = figures;
  }

  /** What is played and what is shown of a chart. */
  record Reading(List<Leg> legs, List<Page.Row> rows, boolean click) {}

  /** Reads a chart. One without a click can be given one on the page. */
  static Reading read(Chart chart, Takes takes, Figures figures) {
    boolean clicks =
        chart.items().stream()
            .anyMatch(i -> i instanceof Chart.SetClick set && set.click() != Chart.Click.OFF);
    Performance performance = Performer.chart(chart);
    Performance eighths = Performer.chart(clicking(chart));
    Charts charts = new Charts(performance, takes.of(performance, eighths), figures);
    chart.items().forEach(item -> item.match(charts));
    return new Reading(charts.legs, charts.rows, clicks);
  }

  /** The section after a bar of count-in, then once more without its pickup. */
  static Reading read(Groove groove, Takes takes, Figures figures) {
    Groove.Setting setting = groove.setting();
    Chart.Turn turn = new Chart.Turn(groove, setting.tempo(), setting.feel());
    List<Chart.Item> items =
        List.of(new Chart.CountIn(1, groove, setting.tempo()), new Chart.Play(List.of(turn), 2));
    Chart twice = new Chart(groove.name(), groove.title(), groove.heading(), items, groove.prose());
    Performance performance = Performer.chart(twice);
    List<Integer> numbers = takes.of(performance, Performer.chart(clicking(twice)));
    List<Leg> legs = new ArrayList<>();
    for (int i = 1; i < numbers.size(); i++) {
      legs.add(new Leg(numbers.get(i), setting.tempo(), 1, figures.of(groove), groove.caption()));
    }
    return new Reading(legs, List.of(), false);
  }

  /** The same with a click on eighths throughout: all places where the page may click. */
  private static Chart clicking(Chart chart) {
    List<Chart.Item> items =
        Stream.concat(
                Stream.of((Chart.Item) new Chart.SetClick(Chart.Click.EIGHTHS)),
                chart.items().stream().filter(i -> !(i instanceof Chart.SetClick)))
            .toList();
    return new Chart(chart.name(), chart.title(), chart.heading(), items, chart.prose());
  }

  @Override
  public @Nullable Void countIn(Chart.CountIn item) {
    String words = "Count in " + PageWording.bars(item.bars());
    take(1, words);
    rows.add(Page.Row.of(words));
    return null;
  }

  @Override
  public @Nullable Void click(Chart.SetClick item) {
    rows.add(Page.Row.of(PageWording.click(item.click())));
    return null;
  }

  @Override
  public @Nullable Void play(Chart.Play item) {
    if (item.turns().isEmpty()) {
      return null;
    }
    List<String> titles = item.turns().stream().map(turn -> turn.groove().caption()).toList();
    String times = PageWording.times(item.times());
    String words = String.join(" · ", titles) + ", " + times;
    int first = legs.size();
    take(item.turns().size() * item.times(), words);
    List<Tempo> tempi = item.turns().stream().map(Chart.Turn::tempo).distinct().toList();
    String tempo = tempi.stream().map(PageWording::tempo).collect(Collectors.joining(", then "));
    rows.add(new Page.Row(titles, times, List.of(new Page.Rung(first, legs.size() - 1, tempo))));
    return null;
  }

  @Override
  public @Nullable Void rest(Chart.Rest item) {
    String words = "Rest, " + PageWording.bars(item.bars());
    take(1, words);
    rows.add(Page.Row.of(words));
    return null;
  }

  @Override
  public @Nullable Void trade(Chart.Trade item) {
    return null;
  }

  @Override
  public @Nullable Void pause(Chart.Pause item) {
    return null;
  }

  @Override
  public @Nullable Void ramp(Chart.Ramp item) {
    return null;
  }

  @Override
  public @Nullable Void dynamic(Chart.SetDynamic item) {
    return null;
  }

  @Override
  public @Nullable Void hold(Chart.Hold item) {
    return null;
  }

  @Override
  public @Nullable Void cue(Chart.Cue item) {
    return null;
  }

  @Override
  public @Nullable Void mark(Chart.Mark item) {
    return null;
  }

  @Override
  public @Nullable Void climb(Chart.Climb item) {
    List<Tempo> tempi = item.tempi();
    String name = item.groove().caption();
    List<Page.Rung> rungs = new ArrayList<>();
    for (Tempo tempo : tempi) {
      int first = legs.size();
      take(item.times(), name + ", " + PageWording.tempo(tempo));
      rungs.add(new Page.Rung(first, legs.size() - 1, PageWording.decimal(tempo.perMinute())));
    }
    String unit = item.unit() == Chart.Every.BARS ? PageWording.bars(item.every()) : "";
    String each = unit.isEmpty() ? PageWording.times(item.every()) : unit;
    Tempo from = tempi.get(0);
    String to = PageWording.decimal(tempi.get(tempi.size() - 1).perMinute());
    String words = PageWording.tempo(from) + " to " + to + ", each tempo " + each;
    rows.add(new Page.Row(List.of(name), words, rungs));
    return null;
  }

  /** Takes the next segments; those that repeat the one before become one leg. */
  private void take(int count, String words) {
    int begin = legs.size();
    for (int i = 0; i < count; i++, next++) {
      Segment segment = performance.segments().get(next);
      int take = takes.get(next);
      boolean section = segment.kind() == Segment.Kind.SECTION;
      Groove groove = segment.groove();
      int figure = section && groove != null ? figures.of(groove) : -1;
      Leg leg = new Leg(take, segment.tempo(), 1, figure, words);
      Leg last = legs.size() > begin ? legs.get(legs.size() - 1) : null;
      if (last != null && last.take() == take && last.tempo().equals(leg.tempo())) {
        legs.set(legs.size() - 1, new Leg(take, leg.tempo(), last.times() + 1, figure, words));
      } else {
        legs.add(leg);
      }
    }
  }
}
