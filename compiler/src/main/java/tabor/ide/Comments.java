package tabor.ide;

import java.util.ArrayList;
import java.util.List;
import tabor.source.Span;
import tabor.syntax.Line;
import tabor.syntax.SectionSyntax;

/** The comments of a section: the tree does not keep them. */
final class Comments {
  private Comments() {}

  /**
   * A comment.
   *
   * @param span where in the passage
   * @param text as written, its sign included
   */
  record Comment(Span span, String text) {}

  /** The comments behind lines and on lines of their own, in order. */
  static List<Comment> of(SectionSyntax section) {
    String text = section.passage().text();
    List<Comment> found = new ArrayList<>();
    if (text.indexOf('#') < 0) {
      return found;
    }
    int at = 0;
    for (Line line : References.lines(section)) {
      between(text, at, line.start() + line.statement().span().start(), found);
      at = line.start() + line.statement().span().end();
    }
    between(text, at, text.length(), found);
    return found;
  }

  /** Between two statements, all that says something is comments. */
  private static void between(String text, int from, int to, List<Comment> found) {
    for (int sign = from; sign < to; sign++) {
      if (text.charAt(sign) == '#') {
        int end = LineEnds.end(text, sign);
        found.add(new Comment(new Span(sign, end), text.substring(sign, end)));
        sign = end;
      }
    }
  }
}
