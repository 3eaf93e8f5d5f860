package tabor.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import tabor.report.SourceView.Found;
import tabor.source.DisplayWidth;
import tabor.source.VisibleText;

/**
 * The source lines that a diagnostic is about, each mark below its spot. Tabs are spread out to
 * every fourth column, so that marks sit right whatever the terminal does with tabs; long lines are
 * cut down to the surroundings of their first mark.
 */
final class Excerpt {
  private static final int TAB = 4;
  private static final int MOST_COLUMNS = 88;

  /**
   * A spot to be shown.
   *
   * @param found where
   * @param words what stands beside the mark; may be empty
   * @param main true for the diagnostic's own spot
   */
  record Mark(Found found, String words, boolean main) {}

  private final Paint paint;
  private final List<Mark> marks;
  private final StringBuilder out = new StringBuilder();
  private final int gutter;

  private Excerpt(Paint paint, List<Mark> marks) {
    this.paint = paint;
    this.marks = marks;
    int highest = marks.stream().mapToInt(mark -> mark.found().line() + 1).max().orElse(1);
    this.gutter = Math.max(4, Integer.toString(highest).length()) + 2;
  }

  /** Lines and marks; the first mark's file is not named, others are. */
  static String of(Paint paint, List<Mark> marks) {
    List<Mark> sorted = new ArrayList<>(marks);
    sorted.sort(
        Comparator.comparing((Mark mark) -> !sameFile(mark, marks.get(0)))
            .thenComparing(mark -> mark.found().file().toString())
            .thenComparingInt(mark -> mark.found().line())
            .thenComparingInt(mark -> mark.found().column()));
    Excerpt excerpt = new Excerpt(paint, sorted);
    excerpt.write(marks.get(0));
    return excerpt.out.toString();
  }

  private static boolean sameFile(Mark a, Mark b) {
    return a.found().file().equals(b.found().file());
  }

  private void write(Mark first) {
    Mark last = first;
    int line = -1;
    for (int i = 0; i < marks.size(); i++) {
      Mark mark = marks.get(i);
      if (!sameFile(mark, last)) {
        out.append("  in ").append(VisibleText.line(mark.found().file().toString())).append('\n');
        line = -1;
        last = mark;
      }
      if (mark.found().line() != line) {
        if (line >= 0 && mark.found().line() > line + 1) {
          out.append(" ".repeat(gutter - 1)).append(":\n");
        }
        line = mark.found().line();
        writeLine(mark.found());
      }
      writeMark(mark, windowStart(firstOnLine(i).found()));
    }
  }

  private Mark firstOnLine(int index) {
    int i = index;
    while (i > 0
        && sameFile(marks.get(i - 1), marks.get(index))
        && marks.get(i - 1).found().line() == marks.get(index).found().line()) {
      i--;
    }
    return marks.get(i);
  }

  private void writeLine(Found found) {
    String number = Integer.toString(found.line() + 1);
    int start = windowStart(found);
    Shown shown = shown(found, start, Integer.MAX_VALUE);
    out.append(paint.faint(" ".repeat(gutter - number.length()) + number + " | "));
    out.append(start > 0 ? "… " : "").append(shown.text).append(shown.cut ? " …" : "");
    out.append('\n');
  }

  private void writeMark(Mark mark, int start) {
    Found found = mark.found();
    int from = found.column();
    int lineStart = found.text().lines().lineStart(found.line());
    int lineEnd = found.text().lines().lineEnd(found.line());
    int to = Math.max(from, Math.min(found.span().end(), lineEnd) - lineStart);
    int before = shown(found, start, from).width + (start > 0 ? 2 : 0);
    int under = shown(found, start, to).width + (start > 0 ? 2 : 0) - before;
    String sign = (mark.main() ? "^" : "-").repeat(Math.max(1, under));
    String words = mark.words().isEmpty() ? "" : " " + mark.words();
    out.append(paint.faint(" ".repeat(gutter) + " | ")).append(" ".repeat(before));
    out.append(mark.main() ? paint.main(sign + words) : paint.second(sign + words)).append('\n');
  }

  /** Where the shown part of a line starts: 0, or some way before the spot on a long line. */
  private static int windowStart(Found found) {
    int lineStart = found.text().lines().lineStart(found.line());
    int length = found.text().lines().lineEnd(found.line()) - lineStart;
    if (length <= MOST_COLUMNS || found.column() < MOST_COLUMNS * 2 / 3) {
      return 0;
    }
    int start = found.column() - MOST_COLUMNS / 3;
    return Character.isLowSurrogate(found.text().text().charAt(lineStart + start))
        ? start - 1
        : start;
  }

  private record Shown(String text, int width, boolean cut) {}

  /** The line from a column on, up to another or as far as there is room. */
  private static Shown shown(Found found, int from, int to) {
    String text = found.text().text();
    int lineStart = found.text().lines().lineStart(found.line());
    int end = found.text().lines().lineEnd(found.line());
    StringBuilder line = new StringBuilder();
    int width = 0;
    int i = lineStart + from;
    while (i < end && i - lineStart < to && width < MOST_COLUMNS) {
      int point = text.codePointAt(i);
      if (point == '\t') {
        int spaces = TAB - width % TAB;
        line.append(" ".repeat(spaces));
        width += spaces;
      } else {
        int visible = VisibleText.point(point);
        line.appendCodePoint(visible);
        width += DisplayWidth.of(visible);
      }
      i += Character.charCount(point);
    }
    return new Shown(line.toString(), width, i < end);
  }
}
