package tabor.emit.html;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.ToIntFunction;
import tabor.emit.html.PlayData.Leg;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.PageNotes;
import tabor.groove.Section;
import tabor.lists.Lists;
import tabor.perform.ChartWords;
import tabor.perform.Performance;
import tabor.perform.Performer;
import tabor.perform.RoadMap;
import tabor.perform.Segment;
import tabor.rhythm.Tempo;
import tabor.words.Words;

/**
 * Turns a chart into legs and into the rows that the page shows. The performance has one segment
 * for each time that something is played, in the order of the chart's lines.
 */
final class Charts {
  private final Performance performance;
  private final List<Integer> takes;

  /** The number of the figure that shows a section. */
  private final ToIntFunction<Groove> figures;

  private final List<RoadMap.Stop> stops;
  private final ChartWords said;
  private final Map<Integer, String> marks = new HashMap<>();
  private final Map<Integer, String> cues = new HashMap<>();
  private final List<String> waitingMarks = new ArrayList<>();
  private final List<String> waitingCues = new ArrayList<>();
  private final List<Leg> legs = new ArrayList<>();
  private final List<Page.Row> rows = new ArrayList<>();
  private int item;

  private Charts(
      Performance performance,
      Chart chart,
      Words words,
      List<Integer> takes,
      ToIntFunction<Groove> figures) {
    this.said = new ChartWords(words);
    this.performance = performance;
    this.takes = takes;
    this.figures = figures;
    this.stops = RoadMap.of(chart).stops();
    for (Performance.Words cue : performance.words()) {
      (cue.mark() ? marks : cues).merge(cue.segment(), cue.text(), (a, b) -> a + " · " + b);
    }
  }

  /** What is played and what is shown of a chart. */
  record Reading(List<Leg> legs, List<Page.Row> rows, boolean click) {}

  /** Reads a chart. One without a click can be given one on the page. */
  static Reading read(Chart chart, Words words, Takes takes, ToIntFunction<Groove> figures) {
    boolean clicks =
        Lists.any(
            chart.items(), i -> i instanceof Chart.SetClick set && set.click() != Chart.Click.OFF);
    Performance performance = Performer.chart(chart);
    List<Integer> numbers = takes.of(Takes.cut(performance, Performer.clicks(clicking(chart))));
    Charts charts = new Charts(performance, chart, words, numbers, figures);
    for (charts.item = 0; charts.item < charts.stops.size(); charts.item++) {
      charts.read(chart.items().get(charts.item));
    }
    charts.leftOver();
    RoadMap map = RoadMap.of(chart);
    charts.rows.add(
        Page.Row.of(
            words.text("web.total", RoadMap.clock(map.micros()), charts.said.bars(map.bars()))));
    return new Reading(charts.legs, charts.rows, clicks);
  }

  /**
   * The takes of a section: a bar of count-in, the section, and the section once more without its
   * pickup. Safe for several threads.
   */
  static List<PlayData.Take> cut(Groove groove) {
    Groove.Setting setting = groove.setting();
    Chart.Turn turn = new Chart.Turn(groove, setting.tempo(), setting.feel());
    List<Chart.Item> items =
        List.of(new Chart.CountIn(1, groove, setting.tempo()), new Chart.Play(List.of(turn), 2));
    Chart twice =
        new Chart(
            groove.name(), groove.title(), groove.heading(), items, groove.prose(), PageNotes.NONE);
    return Takes.cut(Performer.chart(twice), Performer.clicks(clicking(twice)));
  }

  /**
   * The section after its count-in, and once more.
   *
   * @param takes the numbers of its takes, in the order of {@link #cut}
   */
  static Reading read(Groove groove, List<Integer> takes, ToIntFunction<Groove> figures) {
    List<Leg> legs = new ArrayList<>();
    for (int i = 1; i < takes.size(); i++) {
      legs.add(
          new Leg(
              takes.get(i),
              groove.setting().tempo(),
              1,
              figures.applyAsInt(groove),
              groove.caption(),
              "",
              "",
              1));
    }
    return new Reading(legs, List.of(), false);
  }

  /** The same with a click on eighths throughout: all places where the page may click. */
  private static Chart clicking(Chart chart) {
    List<Chart.Item> items = new ArrayList<>();
    items.add(new Chart.SetClick(Chart.Click.EIGHTHS));
    items.addAll(Lists.filter(chart.items(), i -> !(i instanceof Chart.SetClick)));
    return chart.with(items);
  }

  private void read(Chart.Item one) {
    if (one instanceof Chart.Play play) {
      play(play);
    } else if (one instanceof Chart.Trade trade) {
      trade(trade);
    } else if (one instanceof Chart.Climb climb) {
      climb(climb);
    } else if (one instanceof Chart.Cue cue) {
      waitingCues.add(said.of(cue));
    } else if (one instanceof Chart.Mark mark) {
      waitingMarks.add(mark.text());
    } else {
      line(one);
      if (one instanceof Chart.Hold) {
        rows.add(rows.remove(rows.size() - 1).held());
      }
    }
  }

  private void line(Chart.Item one) {
    String line = said.of(one);
    take(line);
    add(Page.Row.of(stamp(line)));
  }

  /** Marks and cues stand in the row of what they are said for: the next in which time passes. */
  private void add(Page.Row row) {
    if (stops.get(item).segments() == 0) {
      rows.add(row);
      return;
    }
    rows.add(row.at(String.join(" · ", waitingMarks), String.join(" · ", waitingCues)));
    waitingMarks.clear();
    waitingCues.clear();
  }

  /** What is said where nothing follows. */
  private void leftOver() {
    if (!waitingMarks.isEmpty() || !waitingCues.isEmpty()) {
      String said = String.join(" · ", waitingCues);
      rows.add(Page.Row.of("").at(String.join(" · ", waitingMarks), said));
    }
  }

  /** A line with the bar and the minute at which it begins, if time passes in it. */
  private String stamp(String line) {
    RoadMap.Stop stop = stops.get(item);
    if (stop.segments() == 0) {
      return line;
    }
    String clock = RoadMap.clock(stop.start());
    return stop.bars() > 0
        ? said.words().text("web.stamp-bar", line, stop.bar(), clock)
        : said.words().text("web.stamp", line, clock);
  }

  private String tempo(Tempo tempo) {
    return PageWording.tempo(tempo, said.words());
  }

  private void play(Chart.Play one) {
    if (one.turns().isEmpty()) {
      return;
    }
    List<String> titles = Lists.map(one.named(), Section::caption);
    Set<Tempo> tempi = new LinkedHashSet<>(Lists.map(one.turns(), Chart.Turn::tempo));
    String tempo = said.words().then(Lists.map(tempi, this::tempo));
    entered(titles, said.after(one), tempo);
  }

  private void trade(Chart.Trade one) {
    List<String> titles = List.of(one.turn().groove().caption());
    entered(titles, said.after(one), tempo(one.turn().tempo()));
  }

  private void entered(List<String> titles, String amount, String tempo) {
    int first = legs.size();
    int count = take(said.words().list(List.of(String.join(" · ", titles), amount)));
    // While a chart goes from one tempo to another, what is played is not at the tempo it is set.
    String played = stops.get(item).tempo(said.words());
    String words = played.isEmpty() ? tempo : played;
    Page.Rung rung = new Page.Rung(first, legs.size() - 1, words, count);
    add(new Page.Row("", titles, stamp(amount), "", false, List.of(rung)));
  }

  private void climb(Chart.Climb one) {
    List<Tempo> tempi = one.tempi();
    String name = one.groove().caption();
    List<Page.Rung> rungs = new ArrayList<>();
    // The plan plays the rungs in order: each begins where the tempo changes.
    int at = stops.get(item).first();
    int end = at + stops.get(item).segments();
    for (Tempo tempo : tempi) {
      int to = at;
      while (to < end && performance.segments().get(to).tempo().equals(tempo)) {
        to++;
      }
      int first = legs.size();
      int count = take(at, to, said.words().list(List.of(name, tempo(tempo))));
      String words = said.words().decimal(PageWording.decimal(tempo.perMinute()));
      if (to > at) {
        rungs.add(new Page.Rung(first, legs.size() - 1, words, count));
      }
      at = to;
    }
    String line = said.words().list(List.of(said.tempi(one), said.after(one)));
    add(new Page.Row("", List.of(name), stamp(line), "", false, rungs));
  }

  /** Takes the segments of the line; answers how many times through they are. */
  private int take(String words) {
    int first = stops.get(item).first();
    return take(first, first + stops.get(item).segments(), words);
  }

  /** Those that repeat the one before become one leg. */
  private int take(int from, int to, String words) {
    int begin = legs.size();
    int through = 0;
    String mark = "";
    String cue = "";
    for (int i = from; i < to; i++) {
      Segment segment = performance.segments().get(i);
      boolean fresh = marks.containsKey(i) || cues.containsKey(i);
      mark = marks.getOrDefault(i, mark);
      cue = cues.getOrDefault(i, marks.containsKey(i) ? "" : cue);
      boolean begins = i == from || begins(segment, performance.segments().get(i - 1));
      through += begins ? 1 : 0;
      int take = takes.get(i);
      boolean shown = segment.kind() == Segment.Kind.SECTION || segment.kind() == Segment.Kind.HOLD;
      Groove groove = segment.groove();
      int figure = shown && groove != null ? figures.applyAsInt(groove) : -1;
      Leg last = legs.size() > begin ? legs.get(legs.size() - 1) : null;
      if (last != null
          && !fresh
          && begins
          && last.take() == take
          && last.tempo().equals(segment.tempo())) {
        legs.set(legs.size() - 1, last.again());
      } else {
        legs.add(new Leg(take, segment.tempo(), 1, figure, words, mark, cue, Math.max(1, through)));
      }
    }
    return Math.max(1, through);
  }

  private static boolean begins(Segment segment, Segment before) {
    boolean goesOn =
        before.kind() == segment.kind()
            && before.to().equals(segment.from())
            && Objects.equals(before.groove(), segment.groove());
    return segment.kind() == Segment.Kind.SECTION && !goesOn;
  }
}
