package tabor.format;

import java.util.List;
import java.util.stream.Stream;
import tabor.diagnostic.Diagnostic;
import tabor.parse.Reader;
import tabor.syntax.Line;
import tabor.syntax.SectionSyntax;
import tabor.syntax.Statement;

/** What texts say, places left out, so that two can be compared. */
final class Trees {
  private Trees() {}

  static List<SectionSyntax> sections(String text) {
    Reader reader = new Reader();
    return Reader.passages(text).stream().map(reader::read).toList();
  }

  static List<Statement> statements(String text) {
    return sections(text).stream()
        .flatMap(
            s ->
                Stream.concat(Stream.ofNullable(s.heading()), s.lines().stream())
                    .map(Line::statement))
        .toList();
  }

  static List<String> problems(String text) {
    return sections(text).stream()
        .flatMap(s -> s.problems().stream())
        .map(Diagnostic::message)
        .toList();
  }

  /** A statement without its places. */
  static String said(Statement statement) {
    return statement.toString().replaceAll("=Span\\[start=\\d+, end=\\d+]", "");
  }

  /**
   * The same with every spelling that has a canonical form in that form. What strokes are written
   * is untouched by it.
   */
  static String meant(Statement statement) {
    return said(statement).replaceAll("(?<=_HAND, spelledOut=)true", "false");
  }
}
