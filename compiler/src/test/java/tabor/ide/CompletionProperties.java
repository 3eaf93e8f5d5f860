package tabor.ide;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import tabor.compile.Compiled;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Severity;
import tabor.parse.ExpectedWords;
import tabor.parse.ExpectedWords.Item;
import tabor.syntax.StatementRow;
import tabor.syntax.StatementTable;

/** Completion over every example: what is offered goes on well, what is written is offered. */
class CompletionProperties {
  /** Things that a writer makes up; no list has them. */
  private static final Set<String> MADE_UP =
      Set.of("number", "text", "letter", "RATIO", "SUM", "PERCENT", "NAME", "ORDINAL", "WHOLE");

  static Stream<Path> examples() throws IOException {
    List<Path> found = new ArrayList<>();
    try (Stream<Path> files = Files.walk(Path.of("..", "examples"))) {
      files.filter(file -> file.toString().endsWith(".tabor")).sorted().forEach(found::add);
    }
    return found.stream();
  }

  private static Stream<DynamicTest> overExamples(java.util.function.Consumer<String> test)
      throws IOException {
    return examples()
        .map(
            file ->
                DynamicTest.dynamicTest(
                    file.getFileName().toString(), () -> test.accept(Files.readString(file))));
  }

  private static List<CompletionItem> items(String text, int offset, boolean explicit) {
    MemoryFiles files = new MemoryFiles().put("a.tabor", text);
    return Completion.at(files.compiled("a.tabor"), offset, explicit, files);
  }

  /**
   * A person types the file from its first character to its last, in an editor that asks for items
   * at every character and whose Enter takes the first of them.
   */
  @TestFactory
  Stream<DynamicTest> enterAtALineEndStaysALineEnd() throws IOException {
    return overExamples(
        text -> {
          for (int end = text.indexOf('\n'); end >= 0; end = text.indexOf('\n', end + 1)) {
            String typed = text.substring(0, end);
            assertThat(items(typed, end, false)).as("at the end of%n%s", typed).isEmpty();
            assertThat(items(text, end, false)).as("at the end of%n%s", typed).isEmpty();
          }
        });
  }

  /** Every word of the examples is offered where it stands, unless its writer made it up. */
  @TestFactory
  Stream<DynamicTest> whatCanFollowIsOffered() throws IOException {
    return overExamples(CompletionProperties::isOffered);
  }

  private static void isOffered(String text) {
    int start = 0;
    for (String line : text.split("\n", -1)) {
      for (int i = 1; i <= line.length(); i++) {
        ExpectedWords here = ExpectedWords.at(line.substring(0, i));
        boolean wordEnds =
            here.place() == ExpectedWords.Place.STATEMENT
                && !here.typed().isEmpty()
                && (i == line.length() || " ,:=\"".indexOf(line.charAt(i)) >= 0);
        if (wordEnds && !isMadeUp(here)) {
          String before = text.substring(0, start + here.start());
          assertThat(items(before, before.length(), true))
              .as("before %s in: %s", here.typed(), line)
              .extracting(CompletionItem::label)
              .contains(here.typed());
        }
      }
      start += line.length() + 1;
    }
  }

  private static boolean isMadeUp(ExpectedWords here) {
    boolean literal = here.items().stream().anyMatch(i -> here.typed().equals(i.word()));
    boolean named =
        here.items().stream()
            .anyMatch(i -> i.in("newName") || i.in("newSurface") || i.statement().equals("limits"));
    boolean divided = here.typed().contains("/");
    return !literal
        && (named
            || divided
            || here.items().stream().allMatch(i -> i.word() != null || MADE_UP.contains(i.kind()))
            || here.items().isEmpty());
  }

  /**
   * At random places of the examples, each item is accepted and the line is read to its end with
   * the first item each time: it is a statement, and says of nothing that it is not there.
   */
  @TestFactory
  Stream<DynamicTest> whatIsOfferedGoesOnToAGoodLine() throws IOException {
    return overExamples(
        text -> {
          Random dice = new Random(text.length());
          for (int i = 0; i < 25; i++) {
            int at = dice.nextInt(text.length());
            goesOn(text, at, dice);
          }
        });
  }

  private static void goesOn(String text, int at, Random dice) {
    String before = text.substring(0, at);
    List<CompletionItem> offered = items(before, at, true);
    if (offered.isEmpty() || offered.get(0).kind() == CompletionItem.Kind.LETTER) {
      return;
    }
    for (int i = 0; i < 6; i++) {
      CompletionItem item = offered.get(dice.nextInt(offered.size()));
      String line = finished(CompletionTest.apply(before, item));
      assertThat(errors(line)).as("after %s in%n%s", item.label(), line).isEmpty();
    }
  }

  /** The text with its last line read to an end. */
  private static String finished(String text) {
    String made = text;
    for (int words = 0; words < 12; words++) {
      String line = made.substring(LineEnds.start(made, made.length())) + " ";
      ExpectedWords expected = ExpectedWords.at(line);
      assertThat(expected.items()).as("what may follow in: %s", line).isNotEmpty();
      if (expected.items().stream().anyMatch(item -> item.kind().equals(Item.END))) {
        return made;
      }
      if (expected.place() == ExpectedWords.Place.BEATS) {
        return made + " . . . .";
      }
      made += " ";
      List<CompletionItem> next = items(made, made.length(), true);
      made = next.isEmpty() ? made + sample(expected) : CompletionTest.apply(made, next.get(0));
    }
    return made;
  }

  private static String sample(ExpectedWords expected) {
    for (Item item : expected.items()) {
      switch (item.kind()) {
        case "name", "NAME" -> {
          return "zz";
        }
        case "surface" -> {
          return "zz";
        }
        case "WHOLE", "number" -> {
          return "4";
        }
        case "text" -> {
          return "\"z\"";
        }
        case "letter" -> {
          return "q";
        }
        case "SUM" -> {
          return "2+2";
        }
        default -> {
          // Another item tells.
        }
      }
    }
    throw new AssertionError("nothing to go on with: " + expected);
  }

  private static List<Diagnostic> errors(String text) {
    Compiled compiled = MemoryFiles.alone(text);
    int line = LineEnds.start(text, text.length());
    return compiled.diagnostics().stream()
        .filter(found -> found.severity() == Severity.ERROR)
        .filter(found -> compiled.span(found.spot()).start() >= line)
        .filter(
            found ->
                switch (found.code()) {
                  case SYNTAX, NOTHING_THERE, COUNT_OUTSIDE_BAR, AMBIGUOUS_COUNT, WRONG_LIMB,
                      MISSING_SURFACE, UNKNOWN_LETTER -> true;
                  default -> false;
                })
        .toList();
  }

  /** The example of every row of the table is offered word by word, as far as it is words. */
  @TestFactory
  Stream<DynamicTest> theTableIsOffered() {
    return StatementTable.rows().stream()
        .filter(row -> !row.isSign() && row.keyword() != null)
        .map(row -> DynamicTest.dynamicTest(row.usage(), () -> offersKeyword(row)));
  }

  private static void offersKeyword(StatementRow row) {
    String section = row.sections().iterator().next().word();
    String heading =
        switch (section) {
          case "header" -> "";
          case "pattern" -> "pattern p : rl\n";
          default -> section + " a \"A\"\n";
        };
    assertThat(items(heading, heading.length(), true))
        .extracting(CompletionItem::label)
        .contains(row.keyword());
  }
}
