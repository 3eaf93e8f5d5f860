package tabor.emit.html;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import tabor.cores.SpareCores;
import tabor.emit.html.PlayData.Leg;
import tabor.groove.Caution;
import tabor.groove.Changes;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.Section;
import tabor.groove.SectionNumbers;
import tabor.groove.Sheet;
import tabor.rhythm.Time;
import tabor.words.Words;

/** From a lesson to its page. */
public final class PageMaker {
  private final Pictures pictures;
  private final Words words;
  private final boolean changes;
  private final Map<Groove, Page.Figure> figures = new LinkedHashMap<>();
  private final Map<Groove, List<PlayData.Take>> played = new HashMap<>();
  private final List<Groove> shown = new ArrayList<>();
  private final List<Page.Figure> others = new ArrayList<>();
  private final Takes takes = new Takes();
  private final List<PlayData.Part> parts = new ArrayList<>();

  private PageMaker(Pictures pictures, Words words, boolean changes) {
    this.pictures = pictures;
    this.words = words;
    this.changes = changes;
  }

  /**
   * The page of a lesson.
   *
   * @param lesson finished, without errors
   * @param pictures its drawings
   * @param changes true to say in words what each step changed
   * @param caution the line above the first section; empty to leave it out
   */
  public static Page of(Lesson lesson, Pictures pictures, boolean changes, String caution) {
    Words words = Words.of(lesson.setting().wording().language());
    String said = caution.equals(Caution.WORDS) ? Caution.in(words) : caution;
    return new PageMaker(pictures, words, changes).page(lesson, said);
  }

  private Page page(Lesson lesson, String caution) {
    figures(lesson.grooves());
    List<Page.Block> blocks = new ArrayList<>();
    SectionNumbers numbers = lesson.numbers();
    for (Section section : lesson.sections()) {
      if (section instanceof Groove groove) {
        blocks.add(lesson(groove, numbers.of(groove), lesson.setting()));
      } else if (section instanceof Sheet sheet) {
        for (Groove groove : sheet.grooves()) {
          blocks.add(lesson(groove, numbers.of(groove), lesson.setting()));
        }
        blocks.add(practice(sheet.inTurn(1, 2)));
      } else if (section instanceof Chart chart) {
        blocks.add(practice(chart));
      }
    }
    return new Page(
        lesson.title(),
        lesson.by(),
        PageWording.facts(lesson.setting(), words),
        pictures.key(List.copyOf(shown)),
        blocks,
        lesson.extras().head(),
        caution,
        words.language(),
        new PlayData(takes.list(), List.copyOf(figures.values()), parts));
  }

  /** The sections of the lesson itself, drawn and played on all cores. */
  private void figures(List<Groove> grooves) {
    List<Groove> different = List.copyOf(new LinkedHashSet<>(grooves));
    record Made(Drawn drawn, List<PlayData.Take> takes) {}
    List<Made> made =
        SpareCores.map(different, groove -> new Made(drawn(groove), Charts.cut(groove)));
    for (int i = 0; i < different.size(); i++) {
      figure(different.get(i), made.get(i).drawn());
      played.put(different.get(i), made.get(i).takes());
    }
  }

  /** What a section looks like, and the same in words. */
  private record Drawn(Pictures.Score score, List<String> bars) {}

  private Drawn drawn(Groove groove) {
    return new Drawn(pictures.score(groove), SpokenBars.of(pictures.printed(groove)));
  }

  private Page.Figure figure(Groove groove) {
    Page.Figure figure = figures.get(groove);
    return figure == null ? figure(groove, drawn(groove)) : figure;
  }

  private Page.Figure figure(Groove groove, Drawn drawn) {
    Page.Figure figure =
        new Page.Figure(figures.size(), groove.caption(), drawn.score(), drawn.bars());
    figures.put(groove, figure);
    shown.add(groove);
    others.add(figure);
    return figure;
  }

  private Page.Block lesson(Groove groove, String number, Groove.Setting head) {
    List<Integer> numbers = takes.of(played.computeIfAbsent(groove, Charts::cut));
    Charts.Reading reading = Charts.read(groove, numbers, g -> figure(g).number());
    String title = groove.caption();
    List<Leg> legs = reading.legs();
    List<Time> barlines = new ArrayList<>();
    for (int bar = 0; bar <= groove.bars(); bar++) {
      barlines.add(groove.meters().length(bar));
    }
    parts.add(
        new PlayData.Part(
            groove.name(), title, false, barlines, legs.subList(0, 1), legs.subList(1, 2)));
    return new Page.Lesson(
        parts.size() - 1,
        number,
        groove.name(),
        title,
        changes ? Changes.printed(pictures.printed(groove)).words() : List.of(),
        PageWording.facts(groove.setting(), head, words),
        groove.prose(),
        figure(groove));
  }

  private Page.Block practice(Chart chart) {
    others.clear();
    Charts.Reading reading = Charts.read(chart, words, takes, g -> figure(g).number());
    String title = chart.caption();
    parts.add(
        new PlayData.Part(
            chart.name(), title, reading.click(), List.of(), reading.legs(), reading.legs()));
    return new Page.Practice(
        parts.size() - 1, chart.name(), title, chart.prose(), List.copyOf(others), reading.rows());
  }
}
