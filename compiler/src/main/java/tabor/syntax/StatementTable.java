package tabor.syntax;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.grammar.StatementTexts;
import tabor.lists.Lists;

/**
 * The statements of the notation, each said once: where it may stand, how it is written, what it
 * does. The table is {@code statements.txt} beside the grammar, which is held to it by a test.
 */
public final class StatementTable {
  /** The label of the rows that are signs of the beats. */
  public static final String SIGN = "sign";

  private static final List<StatementRow> ROWS = read();
  private static final Map<String, StatementRow> BY_NAME = byName();

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
    return Index.BY_SECTION.getOrDefault(kind, List.of());
  }

  /** The rows of the statements that start with this word, in order; none for any other word. */
  public static List<StatementRow> startingWith(String keyword) {
    return Index.BY_KEYWORD.getOrDefault(keyword, List.of());
  }

  /** True for the name of a grammar rule that reads a statement. */
  public static boolean isLabel(String name) {
    for (StatementRow row : ROWS) {
      if (!row.isSign() && row.label().equals(name)) {
        return true;
      }
    }
    return false;
  }

  private static Map<String, StatementRow> byName() {
    Map<String, StatementRow> map = new HashMap<>();
    for (StatementRow row : ROWS) {
      String name = row.keyword() == null ? row.label() : row.label() + ' ' + row.keyword();
      if (map.put(name, row) != null) {
        throw new IllegalStateException("two rows " + name);
      }
    }
    return map;
  }

  private static List<StatementRow> read() {
    List<Set<SectionKind>> sections = new ArrayList<>();
    for (String words : StatementTexts.SECTIONS) {
      sections.add(sections(words));
    }
    List<StatementRow> rows = new ArrayList<>();
    String blocks = StatementTexts.BLOCKS;
    for (int at = 0; at < blocks.length(); at = blocks.indexOf('\n', at) + 1) {
      int keyword = blocks.indexOf('\t', at) + 1;
      int number = blocks.indexOf('\t', keyword) + 1;
      rows.add(
          new StatementRow(
              rows.size(),
              blocks.substring(at, keyword - 1),
              keyword == number - 1 ? null : blocks.substring(keyword, number - 1),
              sections.get(blocks.charAt(number) - '0')));
    }
    return List.copyOf(rows);
  }

  private static Set<SectionKind> sections(String words) {
    List<String> named = List.of(words.split(" ", -1));
    List<SectionKind> kinds = new ArrayList<>();
    for (SectionKind kind : SectionKind.values()) {
      if (named.contains(kind.word())) {
        kinds.add(kind);
      }
    }
    if (kinds.size() != named.size()) {
      throw new IllegalStateException("no such sections: " + words);
    }
    return Set.copyOf(kinds);
  }

  /** The rows by what is asked of them where a line is wrong or unfinished; others need none. */
  private static final class Index {
    static final Map<String, List<StatementRow>> BY_KEYWORD = byKeyword();
    static final Map<SectionKind, List<StatementRow>> BY_SECTION = bySection();

    private static Map<String, List<StatementRow>> byKeyword() {
      Map<String, List<StatementRow>> map = new HashMap<>();
      for (StatementRow row : ROWS) {
        String keyword = row.keyword();
        if (keyword != null && !row.isSign() && !map.containsKey(keyword)) {
          map.put(
              keyword, Lists.filter(ROWS, one -> !one.isSign() && keyword.equals(one.keyword())));
        }
      }
      return map;
    }

    private static Map<SectionKind, List<StatementRow>> bySection() {
      Map<SectionKind, List<StatementRow>> map = new EnumMap<>(SectionKind.class);
      for (SectionKind kind : SectionKind.values()) {
        map.put(
            kind,
            Lists.filter(
                ROWS, row -> !row.isSign() && !row.isHeading() && row.sections().contains(kind)));
      }
      return map;
    }
  }
}
