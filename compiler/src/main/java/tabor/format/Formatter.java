package tabor.format;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import tabor.parse.Reader;
import tabor.source.LineIndex;
import tabor.source.Span;
import tabor.syntax.Beat;
import tabor.syntax.Edit;
import tabor.syntax.Heading;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;
import tabor.syntax.SectionSyntax;
import tabor.syntax.Statement;

/**
 * A file in the one way that Tabor writes it. Headings stand at the margin, what is below them two
 * spaces in; words have one space between them; the lanes of one system stand beat under beat, and
 * what follows short keywords on neighbouring lines in one column. Comments stay on their lines,
 * those at the margin there and those behind statements in a column; of several blank lines one is
 * kept. A line that cannot be read stays as it is. Formatting a formatted text changes nothing, and
 * no stroke ever changes.
 *
 * <p>Lines end with LF, or with CRLF where every line of the file does; a byte-order mark is kept.
 */
public final class Formatter {
  /** Comments behind lines longer than this are not lined up with others. */
  private static final int WIDEST = 72;

  /** Lines that start with longer words than {@code levels} do not move the others. */
  private static final int LONGEST_KEYWORD = 6;

  private final String text;
  private final String lineEnd;
  private final List<Row> rows = new ArrayList<>();

  private Formatter(String text) {
    this.text = text;
    this.lineEnd = isCrLf(text) ? "\r\n" : "\n";
  }

  /**
   * A replacement of one line, its line end included, or of a place without length.
   *
   * @param span offsets in the file
   * @param text what stands there instead
   */
  public record Replacement(Span span, String text) {}

  /** The canonical text of a file. */
  public static String format(String text) {
    StringBuilder result = new StringBuilder();
    int from = 0;
    for (Replacement replacement : replacements(text)) {
      result.append(text, from, replacement.span().start()).append(replacement.text());
      from = replacement.span().end();
    }
    return result.append(text, from, text.length()).toString();
  }

  /** What {@link #format} changes, line by line, in order; none for a formatted text. */
  public static List<Replacement> replacements(String text) {
    return replacements(text, 0, Integer.MAX_VALUE);
  }

  /**
   * The same for a text that was read already.
   *
   * @param sections what {@link Reader} makes of each passage of the text, in order
   */
  public static List<Replacement> replacements(String text, List<SectionSyntax> sections) {
    Formatter formatter = new Formatter(text);
    formatter.take(sections);
    return formatter.replacements(0, Integer.MAX_VALUE);
  }

  /**
   * What formatting changes in some lines only. Where one of them is a lane, all lanes of its
   * system count as asked for, since they share their columns.
   *
   * @param firstLine 0-based
   * @param lastLine 0-based, included
   */
  public static List<Replacement> replacements(String text, int firstLine, int lastLine) {
    Formatter formatter = new Formatter(text);
    formatter.readAll();
    return formatter.replacements(firstLine, lastLine);
  }

  private static boolean isCrLf(String text) {
    boolean any = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '\n' && (i == 0 || text.charAt(i - 1) != '\r')) {
        return false;
      }
      if (c == '\r') {
        if (i + 1 == text.length() || text.charAt(i + 1) != '\n') {
          return false;
        }
        any = true;
      }
    }
    return any;
  }

  /** A line of the file and what becomes of it. */
  private static final class Row {
    final Span span;
    final boolean blank;
    final Statement statement;
    final String comment;
    String said = "";
    int system = -1;

    Row(Span span, boolean blank, Statement statement, String comment) {
      this.span = span;
      this.blank = blank;
      this.statement = statement;
      this.comment = comment;
    }
  }

  private void readAll() {
    Reader reader = new Reader();
    take(Reader.passages(text).stream().map(reader::read).toList());
  }

  private void take(List<SectionSyntax> sections) {
    int offset = 0;
    for (SectionSyntax section : sections) {
      readPassage(section, offset);
      offset += section.passage().text().length();
    }
    alignLanes();
    alignKeywords();
    alignComments();
  }

  private void readPassage(SectionSyntax section, int offset) {
    String source = section.passage().text();
    TreeMap<Integer, Line> lines = new TreeMap<>();
    if (section.heading() != null) {
      lines.put(section.heading().start(), section.heading());
    }
    section.lines().forEach(line -> lines.put(line.start(), line));
    for (Span span : Reader.lines(section.passage())) {
      rows.add(row(section, source, span, lines.get(span.start()), offset));
    }
  }

  private Row row(
      SectionSyntax section, String source, Span span, @Nullable Line line, int offset) {
    String written = span.in(source);
    int mark = written.startsWith("\uFEFF") ? 1 : 0;
    String bare = withoutEnd(written.substring(mark));
    boolean header = section.heading() == null;
    Span place = new Span(span.start() + offset + mark, span.end() + offset);
    if (isBlank(bare)) {
      return new Row(place, true, BLANK, "");
    }
    if (line == null || isBroken(line.statement())) {
      Row row = new Row(place, false, BLANK, "");
      boolean comment = line == null && bare.strip().startsWith("#");
      row.said = comment ? ownComment(bare, header) : bare.replaceAll("\r\n|\r", "\n");
      return row;
    }
    Statement statement = line.statement();
    String comment = written.substring(statement.span().end()).strip();
    Row row = new Row(place, false, statement, comment);
    if (statement instanceof PartStatement.Lane) {
      return row; // its system says it
    }
    String printed =
        statement instanceof Heading.Pattern pattern
            ? grouped(pattern, written)
            : Printer.print(statement);
    boolean margin =
        header || statement instanceof Heading || statement instanceof PartStatement.Next;
    row.said = (margin ? "" : "  ") + printed;
    return row;
  }

  /** Stands for what a row without a statement says. */
  private static final Statement BLANK = new Statement.Broken("", false, new Span(0, 0));

  private static boolean isBlank(String line) {
    for (int i = 0; i < line.length(); i++) {
      char c = line.charAt(i);
      if (c != ' ' && c != '\t' && c != '\uFEFF') {
        return false;
      }
    }
    return true;
  }

  private static boolean isBroken(Statement statement) {
    return statement instanceof Statement.Broken || statement instanceof Heading.Faulty;
  }

  private static String ownComment(String line, boolean header) {
    boolean atMargin = header || line.charAt(0) == '#';
    return (atMargin ? "" : "  ") + line.strip();
  }

  private static String withoutEnd(String line) {
    int end = line.length();
    if (end > 0 && line.charAt(end - 1) == '\n') {
      end--;
    }
    if (end > 0 && line.charAt(end - 1) == '\r') {
      end--;
    }
    return line.substring(0, end);
  }

  /** A pattern with its places grouped as they are written. */
  private static String grouped(Heading.Pattern pattern, String line) {
    StringBuilder places = new StringBuilder();
    int last = -1;
    for (Beat.Element place : pattern.places()) {
      if (last >= 0) {
        String between = line.substring(last, place.span().start());
        places.append(between.contains("|") ? " | " : between.isEmpty() ? "" : " ");
      }
      places.append(BeatPrinter.element(place));
      last = place.span().end();
    }
    return "pattern " + pattern.name().text() + " : " + places;
  }

  /** Lanes that no other statement parts are one system. */
  private void alignLanes() {
    List<Row> system = new ArrayList<>();
    int number = 0;
    for (Row row : rows) {
      if (row.statement instanceof PartStatement.Lane) {
        row.system = number;
        system.add(row);
      } else if (row.statement != BLANK) {
        alignSystem(system);
        number++;
      }
    }
    alignSystem(system);
  }

  private static void alignSystem(List<Row> system) {
    if (system.isEmpty()) {
      return;
    }
    List<String> lines =
        LaneTable.lines(system.stream().map(row -> (PartStatement.Lane) row.statement).toList());
    for (int i = 0; i < lines.size(); i++) {
      system.get(i).said = "  " + lines.get(i);
    }
    system.clear();
  }

  /** Short keywords on lines after one another are followed by one column. */
  private void alignKeywords() {
    List<Row> run = new ArrayList<>();
    for (Row row : rows) {
      if (hasKeyword(row)) {
        run.add(row);
      } else if (row.blank || row.statement != BLANK) {
        alignKeywords(run);
      }
    }
    alignKeywords(run);
  }

  private static boolean hasKeyword(Row row) {
    return row.statement != BLANK
        && !(row.statement instanceof Heading)
        && !(row.statement instanceof PartStatement.Lane)
        && !(row.statement instanceof PartStatement.Next);
  }

  private static void alignKeywords(List<Row> run) {
    int widest = 0;
    for (Row row : run) {
      int width = keyword(row);
      widest = width <= LONGEST_KEYWORD ? Math.max(widest, width) : widest;
    }
    for (Row row : run) {
      int width = keyword(row);
      int end = row.said.length() - row.said.stripLeading().length() + width;
      if (width < widest && end < row.said.length()) {
        row.said =
            row.said.substring(0, end) + " ".repeat(widest - width) + row.said.substring(end);
      }
    }
    run.clear();
  }

  /** Length of what a line starts with: a verb, or who plays. */
  private static int keyword(Row row) {
    if (row.statement instanceof Edit.Plays plays) {
      return Printer.target(plays.who()).length();
    }
    String said = row.said.stripLeading();
    int space = said.indexOf(' ');
    return space < 0 ? said.length() : space;
  }

  /** Comments behind lines after one another stand in one column. */
  private void alignComments() {
    List<Row> run = new ArrayList<>();
    for (Row row : rows) {
      if (row.comment.isEmpty() || row.statement instanceof Heading) {
        alignComments(run);
      }
      if (!row.comment.isEmpty()) {
        run.add(row);
      }
    }
    alignComments(run);
  }

  private static void alignComments(List<Row> run) {
    if (run.isEmpty()) {
      return;
    }
    int widest =
        run.stream().mapToInt(Formatter::lastWidth).filter(w -> w <= WIDEST).max().orElse(0);
    for (Row row : run) {
      row.said += " ".repeat(Math.max(0, widest - lastWidth(row)) + 2) + row.comment;
    }
    run.clear();
  }

  /** Width of a row's last line: a text may take several. */
  private static int lastWidth(Row row) {
    return row.said.length() - row.said.lastIndexOf('\n') - 1;
  }

  private List<Replacement> replacements(int firstLine, int lastLine) {
    boolean[] asked = asked(firstLine, lastLine);
    List<Replacement> found = new ArrayList<>();
    boolean blankBefore = true;
    int lastSaid = lastSaid();
    for (int i = 0; i < rows.size(); i++) {
      Row row = rows.get(i);
      String wanted;
      if (row.blank) {
        wanted = blankBefore || i > lastSaid ? "" : lineEnd;
        blankBefore = true;
      } else {
        wanted = row.said.replace("\n", lineEnd) + lineEnd;
        blankBefore = false;
      }
      if (asked[i] && !row.span.in(text).equals(wanted)) {
        found.add(new Replacement(row.span, wanted));
      }
    }
    return found;
  }

  private int lastSaid() {
    int last = rows.size() - 1;
    while (last >= 0 && rows.get(last).blank) {
      last--;
    }
    return last;
  }

  private boolean[] asked(int firstLine, int lastLine) {
    boolean[] asked = new boolean[rows.size()];
    if (firstLine == 0 && lastLine == Integer.MAX_VALUE) {
      Arrays.fill(asked, true);
      return asked;
    }
    LineIndex index = new LineIndex(text);
    java.util.Set<Integer> systems = new java.util.HashSet<>();
    for (int i = 0; i < asked.length; i++) {
      Row row = rows.get(i);
      int from = index.lineOf(row.span.start());
      int to = index.lineOf(Math.max(row.span.start(), row.span.end() - 1));
      asked[i] = from <= lastLine && to >= firstLine;
      if (asked[i] && row.system >= 0) {
        systems.add(row.system);
      }
    }
    for (int i = 0; i < asked.length; i++) {
      asked[i] |= systems.contains(rows.get(i).system);
    }
    return asked;
  }
}
