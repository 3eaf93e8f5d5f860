package tabor.parse;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import tabor.diagnostic.Diagnostic;
import tabor.source.Passage;
import tabor.source.Span;
import tabor.syntax.Line;
import tabor.syntax.SectionSyntax;
import tabor.syntax.Statement;
import tabor.testing.Files;

class ReaderPropertyTest {
  private static final String BITS =
      " \t\n\r\"\u201C\u2019'#:|%.-{}()/~=!^&,+0123456789abrlxRLX_\uFEFFé\uD83E\uDD41";
  private static final List<String> WORDS =
      List.of(
          "\"\"\"",
          "groove g\n",
          "step s \"x\"\n",
          "pattern",
          "kit",
          "hands : ",
          "at ",
          "in bar ",
          "\r\n",
          "{{{{{{{{{",
          "every ",
          "plays ",
          "text \"\"\"\n",
          "# ",
          "\n\n",
          "2&",
          "3a/4");

  @Provide
  Arbitrary<String> valid() {
    return Files.valid();
  }

  @Provide
  Arbitrary<String> rubbish() {
    Arbitrary<String> bits =
        Arbitraries.integers()
            .between(0, BITS.codePointCount(0, BITS.length()) - 1)
            .map(i -> Character.toString(BITS.codePointAt(BITS.offsetByCodePoints(0, i))));
    return Arbitraries.oneOf(bits, Arbitraries.of(WORDS), Arbitraries.strings().ofMaxLength(5))
        .list()
        .ofMaxSize(60)
        .map(parts -> String.join("", parts));
  }

  @Property(tries = 200)
  void aValidFileIsReadWithoutAProblem(@ForAll("valid") String text) {
    for (SectionSyntax section : read(text)) {
      assertThat(section.problems()).as(text).isEmpty();
    }
  }

  @Property(tries = 300)
  void anyTextIsRead(@ForAll("rubbish") String text) {
    holds(text);
  }

  @Property(tries = 300)
  void anyMutationIsRead(@ForAll("valid") String text, @ForAll long seed) {
    Random random = new Random(seed);
    StringBuilder mutated = new StringBuilder(text);
    for (int i = 0; i < 1 + random.nextInt(6); i++) {
      int at = random.nextInt(mutated.length() + 1);
      switch (random.nextInt(4)) {
        case 0 -> mutated.delete(at, Math.min(mutated.length(), at + 1 + random.nextInt(4)));
        case 1 -> mutated.insert(at, WORDS.get(random.nextInt(WORDS.size())));
        case 2 -> mutated.insert(at, BITS.charAt(random.nextInt(BITS.length())));
        default -> {
          int from = random.nextInt(mutated.length() + 1);
          mutated.insert(at, mutated.substring(from, Math.min(mutated.length(), from + 20)));
        }
      }
    }
    holds(mutated.toString());
  }

  @Property(tries = 100)
  void lineEndsMakeNoDifference(@ForAll("valid") String text) {
    List<Statement> feed = statements(text);
    assertThat(statements(text.replace("\n", "\r"))).isEqualTo(feed);
    assertThat(strip(statements(text.replace("\n", "\r\n")))).isEqualTo(strip(feed));
  }

  /** A text of several lines is longer with CRLF, its words are the same. */
  private static List<String> strip(List<Statement> statements) {
    return statements.stream()
        .map(s -> s instanceof Statement.Prose p ? p.text().value() : s.toString())
        .collect(Collectors.toList());
  }

  private static List<SectionSyntax> read(String text) {
    Reader reader = new Reader();
    return Reader.passages(text).stream().map(reader::read).toList();
  }

  private static List<Statement> statements(String text) {
    return read(text).stream().flatMap(s -> s.lines().stream()).map(Line::statement).toList();
  }

  private static void holds(String text) {
    List<Passage> passages = Reader.passages(text);
    assertThat(passages.stream().map(Passage::text).collect(Collectors.joining())).isEqualTo(text);
    Reader reader = new Reader();
    for (int i = 0; i < passages.size(); i++) {
      SectionSyntax section = reader.read(passages.get(i));
      assertThat(section.heading() == null).as("passage " + i + " of " + text).isEqualTo(i == 0);
      int end = 0;
      for (Line line : section.lines()) {
        assertThat(line.start()).isGreaterThanOrEqualTo(end);
        Span span = line.spot().span();
        end = span.end();
        assertThat(end).isLessThanOrEqualTo(passages.get(i).text().length());
        assertThat(line.spot().text()).isNotEmpty().doesNotContainPattern("^[ \\t]|[ \\t]$");
      }
      for (Diagnostic problem : section.problems()) {
        assertThat(problem.spot().span().end())
            .isLessThanOrEqualTo(passages.get(i).text().length());
        assertThat(problem.message()).matches("(?s)[^A-Z].*[^.]");
        for (Diagnostic.Fix fix : problem.fixes()) {
          helps(passages.get(i).text(), section.problems().size(), fix);
        }
      }
      assertThat(oneEach(section)).as("one problem a line: " + text).isTrue();
    }
  }

  /** A fix takes its problem away and brings no other. */
  private static void helps(String text, int problems, Diagnostic.Fix fix) {
    assertThat(fix.title()).matches("[A-Z].*[^.]");
    String fixed = text;
    for (int i = fix.edits().size() - 1; i >= 0; i--) {
      Span span = fix.edits().get(i).spot().span();
      fixed =
          fixed.substring(0, span.start())
              + fix.edits().get(i).text()
              + fixed.substring(span.end());
    }
    SectionSyntax again = new Reader().read(new Passage(fixed));
    assertThat(again.problems()).as(fix.title() + " in " + text).hasSize(problems - 1);
  }

  /** True if every broken line has exactly one problem and no good line has any. */
  private static boolean oneEach(SectionSyntax section) {
    String text = section.passage().text();
    List<Integer> lines =
        section.problems().stream().map(p -> logicalLine(text, p.spot().span().start())).toList();
    return lines.stream().distinct().count() == lines.size()
        && section.lines().stream()
            .allMatch(
                line ->
                    line.statement() instanceof Statement.Broken == lines.contains(line.start()));
  }

  private static int logicalLine(String text, int offset) {
    LineSplitter lines = new LineSplitter(text);
    while (lines.advance()) {
      if (offset <= lines.end()) {
        return lines.start();
      }
    }
    throw new AssertionError("no line holds " + offset);
  }
}
