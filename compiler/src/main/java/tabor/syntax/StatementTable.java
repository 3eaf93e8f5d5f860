package tabor.syntax;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * The statements of the notation, each said once: where it may stand, how it is written, what it
 * does. The table stands beside the grammar, which is held to it by a test.
 */
public final class StatementTable {
  /** The label of the rows that are signs of the beats. */
  public static final String SIGN = "sign";

  private static final String RESOURCE = "/tabor/grammar/statements.txt";
  private static final List<StatementRow> ROWS = read();
  private static final Map<String, StatementRow> BY_NAME = byName();

  private static final Set<String> LABELS =
      ROWS.stream()
          .filter(row -> !row.isSign())
          .map(StatementRow::label)
          .collect(Collectors.toUnmodifiableSet());

  private StatementTable() {}

  /** All rows, in the order of the table: headings, settings, lines of sections, signs. */
  public static List<StatementRow> rows() {
    return ROWS;
  }

  /**
   * The row of a statement.
   *
   * @param label the name of its grammar rule
   * @param word the first word of the line; a row of that word comes before one without a word
   * @throws IllegalArgumentException if there is none
   */
  public static StatementRow row(String label, @Nullable String word) {
    return find(label, word)
        .orElseThrow(() -> new IllegalArgumentException("no statement " + label + " " + word));
  }

  /** The same; empty if there is none, as for a line whose first word is still missing. */
  public static Optional<StatementRow> find(String label, @Nullable String word) {
    StatementRow row = word == null ? null : BY_NAME.get(label + ' ' + word);
    return Optional.ofNullable(row == null ? BY_NAME.get(label) : row);
  }

  /** The statements that a section takes below its heading, signs left out, in order. */
  public static List<StatementRow> inSection(SectionKind kind) {
    return ROWS.stream()
        .filter(row -> !row.isSign() && !row.isHeading() && row.sections().contains(kind))
        .toList();
  }

  /** The rows of the statements that start with this word, in order; none for any other word. */
  public static List<StatementRow> startingWith(String keyword) {
    return ROWS.stream().filter(row -> !row.isSign() && keyword.equals(row.keyword())).toList();
  }

  /** True for the name of a grammar rule that reads a statement. */
  public static boolean isLabel(String name) {
    return LABELS.contains(name);
  }

  private static Map<String, StatementRow> byName() {
    Map<String, StatementRow> map = new HashMap<>();
    for (StatementRow row : ROWS) {
      String name = row.keyword() == null ? row.label() : row.label() + ' ' + row.keyword();
      if (map.put(name, row) != null) {
        throw new IllegalStateException("two rows " + name);
      }
    }
    return Map.copyOf(map);
  }

  private static List<StatementRow> read() {
    List<StatementRow> rows = new ArrayList<>();
    Map<String, String> fields = new HashMap<>();
    String name = null;
    for (String line : text().split("\n", -1)) {
      if (line.startsWith(" ")) {
        String[] field = line.strip().split(" +", 2);
        fields.put(field[0], field[1]);
      } else if (line.isBlank() && name != null) {
        rows.add(row(name, fields));
        name = null;
      } else if (!line.isBlank() && !line.startsWith("#")) {
        name = line.strip();
        fields.clear();
      }
    }
    return List.copyOf(rows);
  }

  private static StatementRow row(String name, Map<String, String> fields) {
    String[] names = name.split(" ", 2);
    Set<SectionKind> sections = EnumSet.noneOf(SectionKind.class);
    for (String section : field(name, fields, "sections").split(" ", -1)) {
      sections.add(SectionKind.valueOf(section.toUpperCase(Locale.ROOT)));
    }
    return new StatementRow(
        names[0],
        names.length == 1 ? null : names[1],
        sections,
        field(name, fields, "usage"),
        field(name, fields, "meaning"),
        field(name, fields, "example"));
  }

  private static String field(String name, Map<String, String> fields, String key) {
    String value = fields.get(key);
    if (value == null) {
      throw new IllegalStateException("no " + key + " of " + name);
    }
    return value;
  }

  private static String text() {
    try (InputStream in = StatementTable.class.getResourceAsStream(RESOURCE)) {
      if (in == null) {
        throw new IllegalStateException("not packed: " + RESOURCE);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8).replace("\r", "");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
