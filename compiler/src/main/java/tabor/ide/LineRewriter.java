package tabor.ide;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import tabor.compile.Compiled;
import tabor.source.Span;
import tabor.syntax.Line;

/** Puts lines in the place of others and keeps every comment between and behind those. */
record LineRewriter(Cursor cursor) {
  private String lineEnd() {
    return LineEnds.of(cursor.compiled().text());
  }

  /** Writes lines in place of a run of lines; the comment behind the last one stays behind. */
  TextEdit lines(List<Line> run, List<String> written) {
    Compiled compiled = cursor.compiled();
    Span whole = compiled.span(run.get(0).spot()).to(compiled.span(run.get(run.size() - 1).spot()));
    String indent = LineEnds.before(compiled.text(), whole.start());
    List<String> all = new ArrayList<>(comments(whole));
    all.addAll(written);
    return new TextEdit(whole, String.join(lineEnd() + indent, all));
  }

  private List<String> comments(Span inFile) {
    List<String> found = new ArrayList<>();
    for (Comments.Comment comment : Comments.of(cursor.section())) {
      int at = comment.span().start() + cursor.start();
      if (inFile.start() < at && at < inFile.end()) {
        found.add(comment.text());
      }
    }
    return found;
  }

  /**
   * Writes a section anew: another heading, and below it every line that is not {@code replaced},
   * with the new lines where the first of those stood.
   */
  TextEdit section(String heading, Predicate<Line> replaced, List<String> written) {
    String passage = cursor.section().passage().text();
    List<String> made = new ArrayList<>();
    int at = 0;
    boolean open = true;
    for (Line line : References.lines(cursor.section())) {
      int start = line.start() + line.statement().span().start();
      int end = line.start() + line.statement().span().end();
      keep(passage, at, start, made);
      if (line == cursor.section().heading()) {
        made.add(heading + passage.substring(end, LineEnds.end(passage, end)));
      } else if (replaced.test(line)) {
        String comment = passage.substring(end, LineEnds.end(passage, end)).strip();
        if (!comment.isEmpty()) {
          made.add("  " + comment);
        }
        if (open) {
          written.forEach(one -> made.add("  " + one));
          open = false;
        }
      } else {
        made.add("  " + passage.substring(start, LineEnds.end(passage, end)));
      }
      at = LineEnds.whole(passage, new Span(end, end)).end();
    }
    if (open) {
      written.forEach(one -> made.add("  " + one));
    }
    int end = Math.min(at, passage.length());
    String text = String.join(lineEnd(), made);
    boolean ended = end > 0 && LineEnds.isLineEnd(passage.charAt(end - 1));
    return new TextEdit(
        new Span(cursor.start(), cursor.start() + end), ended ? text + lineEnd() : text);
  }

  /** The lines between two statements: comments of their own and empty lines. */
  private static void keep(String passage, int from, int to, List<String> made) {
    int at = from;
    while (at < LineEnds.start(passage, to)) {
      int end = LineEnds.end(passage, at);
      made.add(passage.substring(at, end).stripTrailing());
      at = LineEnds.whole(passage, new Span(at, at)).end();
    }
  }
}
