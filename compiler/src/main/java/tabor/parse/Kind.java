package tabor.parse;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.source.Span;
import tabor.syntax.ChartStatement;
import tabor.syntax.Edit;
import tabor.syntax.Heading;
import tabor.syntax.KitStatement;
import tabor.syntax.PartStatement;
import tabor.syntax.SettingStatement;
import tabor.syntax.Statement;

/** The header and the five kinds of section: which takes which statement. */
enum Kind {
  HEADER("the header", "title by time tempo feel on levels show use limits"),
  PATTERN("a pattern", ""),
  KIT("a kit", "surface letter without left-handed limits place"),
  GROOVE(
      "a groove",
      "time tempo feel on levels show hands feet line right left ostinato next pickup bars text "
          + Words.EDITS),
  STEP(
      "a step",
      "tempo feel on levels show hands feet line right left ostinato next bars text "
          + Words.EDITS),
  CHART("a chart", "count-in click play rest climb tempo feel text");

  private static final class Words {
    static final String EDITS =
        "split add drop accent ghost plain double triple flam drag ruff buzz diddle choke open"
            + " rimshot move shift swap only take fill dynamic crescendo diminuendo";
  }

  private final String words;
  private final String verbs;

  Kind(String words, String verbs) {
    this.words = words;
    this.verbs = verbs;
  }

  /** {@code a groove}. */
  String words() {
    return words;
  }

  /** The first words that its lines may have, surfaces apart. */
  List<String> verbs() {
    return verbs.isEmpty() ? List.of() : List.of(verbs.split(" ", -1));
  }

  /** The kind of section that a heading's first word opens. */
  static Kind of(String keyword) {
    return switch (keyword) {
      case "pattern" -> PATTERN;
      case "kit" -> KIT;
      case "groove" -> GROOVE;
      case "step" -> STEP;
      case "chart" -> CHART;
      default -> throw new IllegalArgumentException(keyword);
    };
  }

  /** What is wrong with this statement standing here; null if nothing is. */
  @Nullable Problem refuse(Statement statement, String line) {
    String here = where(statement);
    if (here == null) {
      return null;
    }
    Span span = statement.span();
    int end = span.start();
    while (end < span.end() && !Spans.isBlank(line.charAt(end)) && line.charAt(end) != ':') {
      end++;
    }
    Span first = new Span(span.start(), end);
    String what =
        statement instanceof PartStatement.Lane || statement instanceof PartStatement.Played
            ? "a part"
            : statement instanceof Edit.Plays || statement instanceof Edit.Follows
                ? "a change of strokes"
                : "`" + first.in(line) + "`";
    String message =
        this == PATTERN
            ? "nothing stands below a pattern, but here is " + what
            : what + " does not belong in " + words;
    return Problem.syntax(first, message, here);
  }

  /** Where a statement that does not belong here would belong; null if it belongs here. */
  private @Nullable String where(Statement statement) {
    boolean music = this == GROOVE || this == STEP;
    if (statement instanceof SettingStatement setting) {
      return setting.match(new SettingPlaces(this));
    }
    if (statement instanceof PartStatement.Pickup) {
      return this == GROOVE ? null : "It stands in a groove; steps take it over from there";
    }
    if (statement instanceof PartStatement || statement instanceof Edit) {
      return music ? null : "It stands in a groove or a step";
    }
    if (statement instanceof KitStatement) {
      return this == KIT ? null : "It stands in a kit";
    }
    if (statement instanceof ChartStatement) {
      return this == CHART ? null : "It stands in a chart";
    }
    if (statement instanceof Statement.Prose) {
      return music || this == CHART ? null : "It stands in a groove, a step or a chart";
    }
    if (statement instanceof Heading) {
      return "A heading opens a section of its own";
    }
    return null;
  }

  private record SettingPlaces(Kind kind) implements SettingStatement.Cases<@Nullable String> {
    private @Nullable String header() {
      return kind == HEADER ? null : "It stands in the header, above the first section";
    }

    private @Nullable String music() {
      return kind == HEADER || kind == GROOVE || kind == STEP
          ? null
          : "It stands in the header, a groove or a step";
    }

    private @Nullable String musicOrChart() {
      return kind == CHART
          ? null
          : music() == null ? null : "It stands in the header, a groove, a step or a chart";
    }

    @Override
    public @Nullable String title(SettingStatement.Title setting) {
      return header();
    }

    @Override
    public @Nullable String by(SettingStatement.By setting) {
      return header();
    }

    @Override
    public @Nullable String use(SettingStatement.Use setting) {
      return header();
    }

    @Override
    public @Nullable String meter(SettingStatement.MeterSetting setting) {
      return kind == HEADER || kind == GROOVE
          ? null
          : "It stands in the header or a groove; steps take it over from there";
    }

    @Override
    public @Nullable String tempo(SettingStatement.TempoSetting setting) {
      return musicOrChart();
    }

    @Override
    public @Nullable String feel(SettingStatement.FeelSetting setting) {
      return musicOrChart();
    }

    @Override
    public @Nullable String on(SettingStatement.On setting) {
      return music();
    }

    @Override
    public @Nullable String levels(SettingStatement.LevelsSetting setting) {
      return music();
    }

    @Override
    public @Nullable String show(SettingStatement.Show setting) {
      return music();
    }

    @Override
    public @Nullable String limits(SettingStatement.LimitsSetting setting) {
      return kind == HEADER || kind == KIT ? null : "It stands in the header or a kit";
    }
  }
}
