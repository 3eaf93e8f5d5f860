package tabor.parse;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.source.Span;
import tabor.syntax.SectionKind;
import tabor.syntax.StatementRow;

/** Which section takes which statement. */
final class Placement {
  private Placement() {}

  /** What is wrong with a line standing in such a section; null if nothing is. */
  static @Nullable SyntaxProblem refuse(LineParser.Result line, SectionKind kind, String text) {
    StatementRow row = line.row();
    if (row == null || (row.sections().contains(kind) && !row.isHeading())) {
      return null;
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
