package tabor.ide;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tabor.compile.Compiled;
import tabor.parse.ExpectedWords;
import tabor.parse.ExpectedWords.Item;
import tabor.source.Span;
import tabor.syntax.StatementRow;
import tabor.syntax.StatementTable;

/** How the statement under the cursor is written, and which word of it comes next. */
public final class UsageHelp {
  /** The grammar's rules for what the words in capitals stand for. */
  private static final Map<String, Set<String>> RULES =
      Map.ofEntries(
          Map.entry("LIMB", Set.of("limb", "player")),
          Map.entry("SURFACE", Set.of("surface")),
          Map.entry("TARGET", Set.of("targets")),
          Map.entry("PART", Set.of("subject")),
          Map.entry("AT", Set.of("at")),
          Map.entry("COUNTS", Set.of("addedPlace")),
          Map.entry("COUNT", Set.of("count")),
          Map.entry("BARS", Set.of("barList")),
          Map.entry("SECTION", Set.of("sectionName")),
          Map.entry("KIT", Set.of("kitName")),
          Map.entry("NAME", Set.of("newName", "newSurface")),
          Map.entry("PATTERN", Set.of("playedPattern")),
          Map.entry("VALUE", Set.of("noteValue", "distance", "beatUnit")),
          Map.entry("METER", Set.of("meter")),
          Map.entry("BEATS", Set.of("tempo", "meter", "bars")),
          Map.entry("GROUPS", Set.of("meter")),
          Map.entry("SHAPE", Set.of("head")),
          Map.entry("TITLE", Set.of("text")),
          Map.entry("TEXT", Set.of("text")),
          Map.entry("FILE", Set.of("text")));

  private UsageHelp() {}

  /**
   * A statement's usage.
   *
   * @param usage as a person reads it
   * @param meaning what it does
   * @param words where each of its words stands in the usage
   * @param active which of them may come next; -1 if none
   */
  public record Usage(String usage, String meaning, List<Span> words, int active) {
    /** Copies the list. */
    public Usage {
      words = List.copyOf(words);
    }
  }

  /** The statements that the line may turn out to be; none before its first word. */
  public static List<Usage> at(Compiled compiled, int offset, Library library) {
    CompletionContext context = new CompletionContext(Cursor.at(compiled, offset), library);
    if (context.isInBeats()) {
      return context.lane().isEmpty() ? List.of() : List.of(lane());
    }
    ExpectedWords expected = context.expected();
    Set<StatementRow> rows = new LinkedHashSet<>();
    if (!expected.words().isEmpty()) {
      expected.items().forEach(item -> context.row(item).ifPresent(rows::add));
    }
    return rows.stream().map(row -> usage(row, expected)).toList();
  }

  /** Among beats, the beats are what comes next. */
  private static Usage lane() {
    StatementRow row = StatementTable.row("lane", null);
    List<Span> words = words(row.usage());
    return new Usage(row.usage(), row.meaning(), words, words.size() - 1);
  }

  private static Usage usage(StatementRow row, ExpectedWords expected) {
    List<Span> words = words(row.usage());
    int from = 0;
    for (String typed : expected.words()) {
      for (int i = from; i < words.size(); i++) {
        if (choices(row.usage(), words.get(i)).contains(typed)) {
          from = i + 1;
          break;
        }
      }
    }
    int active = -1;
    for (int i = from; i < words.size() && active < 0; i++) {
      Set<String> choices = choices(row.usage(), words.get(i));
      boolean next =
          expected.items().stream()
              .filter(item -> item.statement().equals(row.label()))
              .anyMatch(item -> choices.stream().anyMatch(choice -> fits(choice, item)));
      active = next ? i : -1;
    }
    return new Usage(row.usage(), row.meaning(), words, active);
  }

  private static boolean fits(String choice, Item item) {
    Set<String> rules = RULES.getOrDefault(choice, Set.of());
    return choice.equals(item.word())
        || (choice.equals(":") && item.kind().equals("LANE_START"))
        || rules.stream().anyMatch(item::in)
        || rules.contains(item.kind())
        || (choice.length() == 1 && Character.isUpperCase(choice.charAt(0)) && isNumber(item));
  }

  private static boolean isNumber(Item item) {
    return switch (item.kind()) {
      case "WHOLE", "number", "letter" -> true;
      default -> false;
    };
  }

  /** The words of a usage, its brackets, quotes and dots left out; alternatives are one word. */
  private static List<Span> words(String usage) {
    List<Span> words = new ArrayList<>();
    int at = 0;
    while (at < usage.length()) {
      int end = at;
      while (end < usage.length() && " []…\"".indexOf(usage.charAt(end)) < 0) {
        end++;
      }
      if (end > at) {
        words.add(new Span(at, end));
      }
      at = end + 1;
    }
    return words;
  }

  private static Set<String> choices(String usage, Span word) {
    return Set.copyOf(new LinkedHashSet<>(List.of(word.in(usage).split("\\|", -1))));
  }
}
