package tabor.ide;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
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
  /** What a list can have; numbers, texts, letters and new names a writer makes up. */
  private static final Set<String> LISTED = Set.of("name", "surface", "count");

  private static final Set<CompletionItem.Kind> WORDS =
      EnumSet.complementOf(EnumSet.of(CompletionItem.Kind.LETTER, CompletionItem.Kind.FILE));

  static Stream<Path> examples() throws IOException {
    List<Path> found = new ArrayList<>();
    try (Stream<Path> files = Files.walk(Path.of("..", "examples"))) {
      files.filter(file -> file.toString().endsWith(".tabor")).sorted().forEach(found::add);
    }
    return found.stream();
  }

  private interface Check {
    void of(MemoryFiles files, String text);
  }

  private static Stream<DynamicTest> overExamples(Check test) throws IOException {
    return examples()
        .map(
            file ->
                DynamicTest.dynamicTest(
                    file.getFileName().toString(),
                    () -> test.of(MemoryFiles.beside(file), Files.readString(file))));
  }

  private static List<CompletionItem> items(
      MemoryFiles files, String text, int offset, boolean explicit) {
    Compiled compiled = files.trial(MemoryFiles.path("a.tabor"), text);
    return Completion.at(compiled, offset, explicit, files);
  }

  /**
   * A person types the file from its first character to its last, in an editor that asks for items
   * at every character and whose Enter takes the first of them.
   */
  @TestFactory
  Stream<DynamicTest> enterAtALineEndStaysALineEnd() throws IOException {
    return overExamples(
        (files, text) -> {
          for (int end = text.indexOf('\n'); end >= 0; end = text.indexOf('\n', end + 1)) {
            String typed = text.substring(0, end);
            assertThat(items(files, typed, end, false)).as("at the end of%n%s", typed).isEmpty();
            assertThat(items(files, text, end, false)).as("at the end of%n%s", typed).isEmpty();
          }
        });
  }

  /** Every word of the examples is offered where it stands, unless its writer made it up. */
  @TestFactory
  Stream<DynamicTest> whatCanFollowIsOffered() throws IOException {
    return overExamples(CompletionProperties::isOffered);
  }

  private static void isOffered(MemoryFiles files, String text) {
    int start = 0;
    for (String line : text.split("\n", -1)) {
      for (int i = 1; i <= line.length(); i++) {
        ExpectedWords here = ExpectedWords.at(line.substring(0, i));
        boolean wordEnds =
            here.place() == ExpectedWords.Place.STATEMENT
                && !here.typed().isEmpty()
                && (i == line.length() || " ,:=\"".indexOf(line.charAt(i)) >= 0);
        if (wordEnds && !isMadeUp(here)) {
          int at = start + here.start();
          String without = text.substring(0, at) + text.substring(start + i);
          assertThat(items(files, without, at, true))
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
            .anyMatch(
                i ->
                    i.in("newName")
                        || i.in("sectionRange")
                        || i.in("newSurface")
                        || i.in("syllable")
                        || i.statement().equals("limits"));
    // A count may be written in several ways, of which one is offered.
    boolean otherwise = here.typed().contains("/") || here.typed().contains(".");
    boolean listed = here.items().stream().anyMatch(i -> LISTED.contains(i.kind()));
    boolean number = Character.isDigit(here.typed().charAt(0));
    boolean counted = here.items().stream().anyMatch(i -> i.kind().equals("count"));
    return !literal && ((number && !counted) || named || (otherwise && counted) || !listed);
  }

  /**
   * At random places of the examples, each item is accepted and the line is read to its end with
   * the first item each time: it is a statement, and says of nothing that it is not there.
   */
  @TestFactory
  Stream<DynamicTest> whatIsOfferedGoesOnToAGoodLine() throws IOException {
    return overExamples(
        (files, text) -> {
          Random dice = new Random(text.length());
          for (int i = 0; i < 25; i++) {
            int at = dice.nextInt(text.length());
            goesOn(files, text, at, dice);
          }
        });
  }

  private static void goesOn(MemoryFiles files, String text, int at, Random dice) {
    String before = text.substring(0, at);
    List<CompletionItem> offered = items(files, before, at, true);
    if (offered.isEmpty() || !WORDS.contains(offered.get(0).kind())) {
      return;
    }
    for (int i = 0; i < 6; i++) {
      CompletionItem item = offered.get(dice.nextInt(offered.size()));
      String line = finished(files, CompletionTest.apply(before, item));
      boolean sheet =
          line.substring(LineEnds.start(line, line.length())).strip().startsWith("sheet ");
      List<Diagnostic> errors = errors(files, sheet ? line + "\n  each add snare at 1" : line);
      boolean side = line.endsWith("right") || line.endsWith("left");
      if (side && !errors.isEmpty()) {
        // It may have been the foot of that side that was meant.
        errors = errors(files, line + " foot");
      }
      assertThat(errors).as("after %s in%n%s", item.label(), line).isEmpty();
    }
  }

  /** The text with its last line read to an end. */
  private static String finished(MemoryFiles files, String text) {
    String made = text;
    for (int words = 0; words < 12; words++) {
      String line = made.substring(LineEnds.start(made, made.length())) + " ";
      ExpectedWords expected = ExpectedWords.at(line);
      assertThat(expected.items()).as("what may follow in: %s", line).isNotEmpty();
      if (expected.items().stream().anyMatch(item -> item.kind().equals(Item.END))) {
        boolean keyless = line.contains("surface ") && !line.contains(" key ");
        boolean sideless = line.contains("place ") && line.endsWith("degrees ");
        boolean endless =
            line.contains("climb ") && !line.contains(" every ") && !line.contains(" for ");
        String syllables =
            line.contains("say fours ") ? " & a" : line.contains("say threes ") ? " let" : "";
        return !syllables.isEmpty()
            ? made + syllables
            : keyless
                ? made + " key 52"
                : sideless ? made + " right" : endless ? made + " for 2 minutes" : made;
      }
      if (expected.place() == ExpectedWords.Place.BEATS) {
        return made + " . . . .";
      }
      made += " ";
      List<CompletionItem> next = items(files, made, made.length(), true);
      String before = made;
      made =
          next.stream()
              .filter(item -> !item.label().equals(","))
              .findFirst()
              .map(item -> CompletionTest.apply(before, item))
              .orElseGet(() -> before + sample(before, expected));
    }
    return made;
  }

  private static String sample(String before, ExpectedWords expected) {
    if (before.endsWith("over ")) {
      return "16"; // a stroke for each place at most
    }
    if (before.endsWith("staff ")) {
      return "c5";
    }
    for (Item item : expected.items()) {
      switch (item.kind()) {
        case "name", "NAME" -> {
          return "zz";
        }
        case "surface" -> {
          return "zz";
        }
        case "WHOLE" -> {
          return "1";
        }
        case "number" -> {
          return "90";
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

  private static List<Diagnostic> errors(MemoryFiles files, String text) {
    Compiled compiled = files.trial(MemoryFiles.path("a.tabor"), text);
    int line = LineEnds.start(text, text.length());
    return compiled.diagnostics().stream()
        .filter(found -> found.severity() == Severity.ERROR)
        .filter(found -> compiled.span(found.spot()).start() >= line)
        .filter(
            found ->
                // Whether a hairpin ends after it begins is up to the bar that may follow, and
                // whether all strokes take an ornament up to the places.
                switch (found.code()) {
                  case SYNTAX, NOTHING_THERE, AMBIGUOUS_COUNT, WRONG_LIMB, UNKNOWN_LETTER -> true;
                  case COUNT_OUTSIDE_BAR -> !text.substring(line).contains("endo to");
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
          case "groove", "step" ->
              "groove a\n  hihat : x x x x\n  snare : . x . .\n  crash : . . . x\n"
                  + (section.equals("step") ? "step b \"B\"\n" : "");
          case "chart" -> "groove a\n  hihat : x x x x\nchart c\n  play a\n";
          default -> section + " a \"A\"\n";
        };
    assertThat(items(new MemoryFiles(), heading, heading.length(), true))
        .extracting(CompletionItem::label)
        .contains(row.keyword());
  }
}
