package tabor.emit.grid;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import tabor.groove.Changes;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.Section;
import tabor.groove.SectionNumbers;
import tabor.groove.Sheet;
import tabor.groove.StandIns;
import tabor.lists.Lists;
import tabor.words.Words;

/**
 * The counted grid of a lesson: title, then each section with its number, what a step changed, its
 * prose and its bars, and a line that explains the signs used.
 */
public final class Grid {
  private static final String INDENT = "   ";
  private static final int PROSE_WIDTH = 78;

  private final Lesson lesson;
  private final Words words;
  private final List<String> lines = new ArrayList<>();
  private final Set<String> told = new HashSet<>();
  private Groove.@Nullable Setting known;

  private Grid(Lesson lesson) {
    this.lesson = lesson;
    this.words = Words.of(lesson.setting().wording().language());
  }

  /** The sections of a lesson that {@code chosen} picks, in order; lines end with LF. */
  public static String of(Lesson lesson, Predicate<Section> chosen) {
    Grid grid = new Grid(lesson);
    grid.head();
    SectionNumbers numbers = lesson.numbers();
    List<Groove> shown = new ArrayList<>();
    for (Section section : lesson.sections()) {
      if (section instanceof Sheet sheet) {
        List<Groove> some = Lists.map(Sheet.apart(List.of(sheet), chosen), Groove.class::cast);
        if (!some.isEmpty()) {
          grid.sheet(sheet, some, numbers.of(sheet));
          shown.addAll(some);
        }
        continue;
      }
      if (!chosen.test(section)) {
        continue;
      }
      if (section instanceof Groove groove) {
        grid.groove(groove, numbers.of(groove));
        shown.add(groove);
      } else if (section instanceof Chart chart) {
        grid.chart(chart);
      }
    }
    List<String> legend = GridSigns.legend(shown, grid.words);
    if (!legend.isEmpty()) {
      grid.gap();
      grid.lines.addAll(
          TextWrapper.wrap(
              grid.words.text("grid.signs", grid.words.list(legend)), "", PROSE_WIDTH));
    }
    return grid.text();
  }

  /** The bars of a section alone, as a hover shows them. */
  public static String bars(Groove groove) {
    return String.join(
            "\n", GridWriter.write(GridLayout.of(groove, Words.english()), Words.english()))
        + "\n";
  }

  private String text() {
    return String.join("\n", lines) + "\n";
  }

  private void gap() {
    if (!lines.isEmpty()) {
      lines.add("");
    }
  }

  private void head() {
    lines.addAll(TextWrapper.wrap(lesson.title(), "", PROSE_WIDTH));
    String by = lesson.by();
    if (by != null) {
      lines.addAll(TextWrapper.wrap(by, "", PROSE_WIDTH));
    }
    lesson.extras().head().forEach(text -> lines.addAll(TextWrapper.wrap(text, "", PROSE_WIDTH)));
    known = lesson.setting();
    lines.addAll(TextWrapper.wrap(settingLine(lesson.setting(), null, words), "", PROSE_WIDTH));
  }

  /** Phrases one after another. */
  private String next(List<String> phrases) {
    return String.join(words.text("spoken.next"), phrases);
  }

  private void groove(Groove groove, String number) {
    gap();
    lines.add("");
    heading(number + ". ", groove);
    if (groove.isStep()) {
      String changes = next(Changes.printed(groove).words());
      lines.addAll(
          TextWrapper.wrap(
              changes.isEmpty() ? words.text("grid.as-before") : changes, INDENT, PROSE_WIDTH));
    }
    setting(groove);
    prose(groove.prose());
    List<String> dynamics = DynamicWords.of(groove, words);
    if (!dynamics.isEmpty()) {
      lines.addAll(TextWrapper.wrap(next(dynamics), INDENT, PROSE_WIDTH));
    }
    lines.add("");
    lines.addAll(GridWriter.write(GridLayout.of(groove, words), words));
  }

  /** The variations of a sheet: for each its name, what changed, and its bars. */
  private void sheet(Sheet sheet, List<Groove> some, String number) {
    gap();
    lines.add("");
    heading(number + ". ", sheet);
    lines.addAll(
        TextWrapper.wrap(
            words.text("grid.variations", sheet.base().caption()), INDENT, PROSE_WIDTH));
    prose(sheet.prose());
    for (Groove groove : some) {
      gap();
      heading("", groove);
      setting(groove);
      lines.addAll(GridWriter.write(GridLayout.of(groove, words), words));
    }
  }

  /** What its setting has that is not known yet. */
  private void setting(Groove groove) {
    String setting = settingLine(groove.setting(), known, words);
    if (!setting.isEmpty()) {
      lines.addAll(TextWrapper.wrap(setting, INDENT, PROSE_WIDTH));
    }
    standIns(groove);
    known = groove.setting();
  }

  /** What the kit lacks is told once. */
  private void standIns(Groove groove) {
    List<String> moved =
        Lists.filter(
            StandIns.words(groove), one -> told.add(groove.setting().kit().name() + ": " + one));
    if (!moved.isEmpty()) {
      String said = words.text("grid.on-this-kit", words.list(moved));
      lines.addAll(TextWrapper.wrap(said, INDENT, PROSE_WIDTH));
    }
  }

  private void heading(String number, Section section) {
    boolean titled = !section.caption().equals(section.name());
    lines.addAll(
        TextWrapper.wrap(
            number + section.caption() + (titled ? " (" + section.name() + ")" : ""),
            "",
            PROSE_WIDTH));
  }

  private void prose(List<String> texts) {
    for (String text : texts) {
      lines.addAll(TextWrapper.wrap(text, INDENT, PROSE_WIDTH));
    }
  }

  private void chart(Chart chart) {
    gap();
    lines.add("");
    heading(words.text("grid.play-along") + " ", chart);
    prose(chart.prose());
    for (ChartLines.Item item : ChartLines.of(chart, words)) {
      lines.addAll(TextWrapper.wrap(item.lead(), item.said(), INDENT, PROSE_WIDTH));
    }
  }

  /** What differs from {@code known}; everything where that is null. Empty if nothing does. */
  private static String settingLine(
      Groove.Setting setting, Groove.@Nullable Setting known, Words words) {
    List<String> parts = new ArrayList<>();
    if (known == null || !known.meters().equals(setting.meters())) {
      parts.add(words.meters(setting.meters()));
    }
    if (known == null || !known.tempo().equals(setting.tempo())) {
      parts.add(words.tempo(setting.tempo()));
    }
    if (known == null ? !setting.feel().isStraight() : !known.feel().equals(setting.feel())) {
      parts.add(words.feel(setting.feel()));
    }
    if (known == null || !known.kit().name().equals(setting.kit().name())) {
      parts.add(words.text("grid.kit", words.kit(setting.kit().name())));
    }
    if (known == null
        ? setting.kit().leftHanded()
        : known.kit().leftHanded() != setting.kit().leftHanded()) {
      parts.add(words.text(setting.kit().leftHanded() ? "grid.left-handed" : "grid.right-handed"));
    }
    return words.list(parts);
  }
}
