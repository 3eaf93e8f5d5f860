package tabor.format;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tabor.parse.Reader;
import tabor.syntax.Heading;
import tabor.syntax.Statement;
import tabor.testing.Files;
import tabor.testing.Goldens;

class FormatterTest {
  @Provide
  Arbitrary<String> valid() {
    return Files.valid();
  }

  @ParameterizedTest
  @ValueSource(strings = {"lesson", "systems", "comments", "broken"})
  void goldens(String name) {
    String formatted = Formatter.format(Goldens.resource("tabor/format/" + name + ".tabor"));
    Goldens.check("tabor/format/" + name + ".golden", formatted);
    assertThat(Formatter.format(formatted)).isEqualTo(formatted);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "trees/everything",
        "trees/names",
        "trees/beats",
        "trees/teaching",
        "problems/teaching",
        "problems/header",
        "problems/headings",
        "problems/kit",
        "problems/beats",
        "problems/edits",
        "problems/texts",
        "problems/starts"
      })
  void theReadersTextsKeepTheirMeaning(String name) {
    holds(Goldens.resource("tabor/parse/" + name + ".tabor"));
  }

  @Property(tries = 200)
  void aValidFileKeepsItsMeaning(@ForAll("valid") String text) {
    holds(text);
  }

  @Property(tries = 200)
  void aBrokenFileKeepsItsMeaning(@ForAll("valid") String text, @ForAll long seed) {
    Random random = new Random(seed);
    StringBuilder mutated = new StringBuilder(text);
    for (int i = 0; i < 1 + random.nextInt(5); i++) {
      int at = random.nextInt(mutated.length() + 1);
      if (random.nextBoolean()) {
        mutated.delete(at, Math.min(mutated.length(), at + 1 + random.nextInt(3)));
      } else {
        mutated.insert(at, " \n\t\r\"#:|{('.\uFEFF\f9%".charAt(random.nextInt(16)));
      }
    }
    holds(mutated.toString());
  }

  @Property(tries = 100)
  void thePrinterIsReadAgain(@ForAll("valid") String text) {
    for (Statement statement : Trees.statements(text)) {
      String printed = Printer.print(statement);
      String context = statement instanceof Heading ? "" : context(statement);
      List<Statement> again = Trees.statements(context + printed + "\n");
      assertThat(Trees.meant(again.get(again.size() - 1)))
          .as(printed)
          .isEqualTo(Trees.meant(statement));
    }
  }

  private static String context(Statement statement) {
    for (String heading :
        List.of("", "groove g\n", "kit k\n", "player p\n", "sheet s\n", "chart c\n")) {
      if (Trees.problems(heading + Printer.print(statement)).isEmpty()) {
        return heading;
      }
    }
    throw new AssertionError(Printer.print(statement));
  }

  private static void holds(String text) {
    String formatted = Formatter.format(text);
    assertThat(Formatter.format(formatted)).as("twice: " + text).isEqualTo(formatted);
    assertThat(Trees.problems(formatted)).as(text).isEqualTo(Trees.problems(text));
    assertThat(Trees.statements(formatted).stream().map(Trees::meant).toList())
        .as(text)
        .isEqualTo(Trees.statements(text).stream().map(Trees::meant).toList());
  }

  /** A server has the text read already. */
  @Test
  void whatWasReadIsFormattedAlike() {
    String text =
        "title  \"T\"\ngroove  a\n hands:rl rlrl  r l # c\nkick :x . x .\n\n\n\npattern p:rl\n";
    Reader reader = new Reader();
    assertThat(
            Formatter.replacements(text, Reader.passages(text).stream().map(reader::read).toList()))
        .isNotEmpty()
        .isEqualTo(Formatter.replacements(text));
  }

  @Test
  void lineEndsAreKeptWhereTheyAgree() {
    assertThat(Formatter.format("groove g\r\n hands:r\r\n"))
        .isEqualTo("groove g\r\n  hands : r\r\n");
    assertThat(Formatter.format("groove g\r\n hands:r\n")).isEqualTo("groove g\n  hands : r\n");
    assertThat(Formatter.format("groove g\r hands:r")).isEqualTo("groove g\n  hands : r\n");
  }

  @Test
  void aByteOrderMarkIsKept() {
    assertThat(Formatter.format("\uFEFFgroove   g")).isEqualTo("\uFEFFgroove g\n");
  }

  @Test
  void anEmptyFileStaysEmpty() {
    assertThat(Formatter.format("")).isEmpty();
    assertThat(Formatter.format("\n  \n")).isEmpty();
  }

  @Test
  void someLinesAreFormattedWithTheirSystem() {
    String text = "tempo   90\ngroove  g\n  hands:rl r\n  kick:x .\n  add   kick at 2\n";
    assertThat(apply(text, Formatter.replacements(text, 2, 2)))
        .isEqualTo("tempo   90\ngroove  g\n  hands : rl r\n  kick  : x  .\n  add   kick at 2\n");
    assertThat(apply(text, Formatter.replacements(text, 4, 4)))
        .isEqualTo("tempo   90\ngroove  g\n  hands:rl r\n  kick:x .\n  add kick at 2\n");
    assertThat(Formatter.replacements(Formatter.format(text))).isEmpty();
  }

  private static String apply(String text, List<Formatter.Replacement> replacements) {
    StringBuilder result = new StringBuilder(text);
    for (int i = replacements.size() - 1; i >= 0; i--) {
      Formatter.Replacement one = replacements.get(i);
      result.replace(one.span().start(), one.span().end(), one.text());
    }
    return result.toString();
  }
}
