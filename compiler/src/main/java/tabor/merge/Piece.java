package tabor.merge;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import tabor.parse.Reader;
import tabor.source.Passage;
import tabor.source.Span;
import tabor.syntax.Heading;
import tabor.syntax.Line;
import tabor.syntax.Name;
import tabor.syntax.SectionKind;
import tabor.syntax.SectionSyntax;
import tabor.syntax.Statement;
import tabor.syntax.Text;

/**
 * The header or a section, with the blank lines and comments right above its heading.
 *
 * @param key by which it is found in another text
 * @param heading null for the header
 * @param rows its lines, those above the heading included
 */
record Piece(String key, @Nullable Heading heading, List<Row> rows) {
  Piece {
    rows = List.copyOf(rows);
  }

  /**
   * The pieces of a text: the header first, which may be empty. Their lines are the text.
   *
   * @param known takes up its lines
   */
  static List<Piece> of(String text, KnownRows known) {
    List<Piece> pieces = new ArrayList<>();
    List<Row> above = List.of();
    Map<String, Integer> seen = new HashMap<>();
    List<Passage> passages = Reader.passages(text);
    for (int i = 0; i < passages.size(); i++) {
      SectionSyntax section = known.read(passages.get(i));
      List<Row> rows = rows(section, known);
      int own = i + 1 < passages.size() ? ownRows(rows) : rows.size();
      List<Row> all = new ArrayList<>(above);
      all.addAll(rows.subList(0, own));
      above = rows.subList(own, rows.size());
      Heading heading =
          section.heading() != null && section.heading().statement() instanceof Heading found
              ? found
              : null;
      String key = key(heading);
      int count = seen.merge(key, 1, Integer::sum);
      pieces.add(new Piece(count == 1 ? key : key + " " + count, heading, all));
    }
    return pieces;
  }

  private static List<Row> rows(SectionSyntax section, KnownRows known) {
    String text = section.passage().text();
    Map<Integer, Statement> statements = new TreeMap<>();
    Line heading = section.heading();
    if (heading != null) {
      statements.put(heading.start(), heading.statement());
    }
    section.lines().forEach(line -> statements.put(line.start(), line.statement()));
    List<Row> rows = new ArrayList<>();
    for (Span span : Reader.lines(section.passage())) {
      String raw = span.in(text);
      Statement statement = statements.get(span.start());
      if (statement == null && !isLayout(raw)) {
        // A line that its section does not take: it is read, and said to be wrong.
        int start = raw.length() - raw.stripLeading().length();
        statement =
            new Statement.Broken(
                raw.strip().split("\\s+", 2)[0],
                false,
                new Span(start, Math.max(start, raw.stripTrailing().length())));
      }
      rows.add(known.of(raw, statement));
    }
    return rows;
  }

  private static boolean isLayout(String raw) {
    String said = raw.strip();
    return said.isEmpty() || said.startsWith("#");
  }

  /**
   * How many rows a section has to itself: blank lines and comments before the next are not its.
   */
  private static int ownRows(List<Row> rows) {
    int own = rows.size();
    while (own > 0) {
      Row last = rows.get(own - 1);
      if (last.isStatement() || (last.isComment() && last.raw().startsWith(" "))) {
        break;
      }
      own--;
    }
    return own;
  }

  /** What sounds shares one set of names; patterns, kits and players each have their own. */
  private static String key(@Nullable Heading heading) {
    if (heading == null) {
      return "header";
    }
    String names =
        switch (heading.kind()) {
          case GROOVE, STEP, SHEET, CHART -> "section";
          case PATTERN, KIT, PLAYER, HEADER -> heading.kind().word();
        };
    Name name = heading.name();
    if (name != null) {
      return names + " " + name.text();
    }
    Text title = heading.title();
    return names + " \"" + (title == null ? "" : title.value()) + '"';
  }

  /** Its name as written; null if it has none. */
  @Nullable String name() {
    Name name = heading == null ? null : heading.name();
    return name == null ? null : name.text();
  }

  /** True for what a step can be made from. */
  boolean isBase() {
    return heading != null
        && (heading.kind() == SectionKind.GROOVE || heading.kind() == SectionKind.STEP);
  }

  /** What it is called in a message: {@code step answer}. */
  String words() {
    if (heading == null) {
      return "the header";
    }
    Text title = heading.title();
    String name = name();
    return heading.kind().word()
        + (name != null ? " " + name : title == null ? "" : " \"" + title.value() + '"');
  }

  /** True if both say the same, blank lines apart. */
  boolean says(Piece other) {
    List<Row> mine = said();
    List<Row> theirs = other.said();
    if (mine.size() != theirs.size()) {
      return false;
    }
    for (int i = 0; i < mine.size(); i++) {
      if (!mine.get(i).says(theirs.get(i))) {
        return false;
      }
    }
    return true;
  }

  private List<Row> said() {
    return rows.stream().filter(row -> !row.isBlank()).toList();
  }
}
