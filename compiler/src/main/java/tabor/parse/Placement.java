package tabor.parse;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.source.Span;
import tabor.syntax.Edit;
import tabor.syntax.SectionKind;
import tabor.syntax.SettingStatement;
import tabor.syntax.Statement;
import tabor.syntax.StatementRow;

/** Which section takes which statement. */
final class Placement {
  private Placement() {}

  /** What is wrong with a line standing in such a section; null if nothing is. */
  static @Nullable SyntaxProblem refuse(LineParser.Result line, SectionKind kind, String text) {
    StatementRow row = line.row();
    if (row == null) {
      return null;
    }
    if (row.sections().contains(kind) && !row.isHeading()) {
      return form(line.statement(), kind);
    }
    Span span = line.statement().span();
    int end = span.start();
    while (end < span.end() && !Spans.isBlank(text.charAt(end)) && text.charAt(end) != ':') {
      end++;
    }
    Span first = new Span(span.start(), end);
    String what =
        switch (row.label()) {
          case "lane", "played" -> "a part";
          case "plays", "follows" -> "a change of strokes";
          default -> "`" + first.in(text) + "`";
        };
    String message =
        kind == SectionKind.PATTERN
            ? "nothing stands below a pattern, but here is " + what
            : what + " does not belong in " + kind.words();
    return SyntaxProblem.of(first, message, where(row));
  }

  /** What is wrong with a form of a statement that the section takes in other forms. */
  private static @Nullable SyntaxProblem form(Statement statement, SectionKind kind) {
    if (statement instanceof SettingStatement.Page page
        && page.kind().value() == SettingStatement.PageKind.NEW
        && (kind == SectionKind.HEADER || kind == SectionKind.PLAYER)) {
      return SyntaxProblem.of(
          page.span(),
          "`page new` starts the page of a section, and " + kind.words() + " has none",
          "It stands below the heading of the section that is to start a page");
    }
    if (statement instanceof Edit.Dynamic dynamic
        && kind == SectionKind.CHART
        && (dynamic.at() != null || dynamic.bar() != null)) {
      return SyntaxProblem.of(
          dynamic.span(),
          "in a chart a dynamic holds from its line on, not from a count",
          "Write it above the line that it is for: dynamic " + dynamic.loudness().value().word());
    }
    if (statement instanceof SettingStatement.LimitsSetting limits
        && kind == SectionKind.PLAYER
        && limits.name() != null) {
      return SyntaxProblem.of(
          limits.name().span(),
          "the limits of a player are the player's own and have no name",
          "Leave `" + limits.name().text() + "` out");
    }
    return null;
  }

  private static String where(StatementRow row) {
    if (row.isHeading()) {
      return "A heading opens a section of its own";
    }
    List<String> places = new ArrayList<>();
    for (SectionKind other : SectionKind.values()) {
      if (row.sections().contains(other)) {
        places.add(other.words());
      }
    }
    String where = "It stands in " + Wording.or(places);
    if (places.size() == 1 && row.sections().contains(SectionKind.HEADER)) {
      return where + ", above the first section";
    }
    boolean inherited =
        row.sections().contains(SectionKind.GROOVE) && !row.sections().contains(SectionKind.STEP);
    return inherited ? where + "; steps take it over from there" : where;
  }
}
