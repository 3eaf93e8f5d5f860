package tabor.compile;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.function.IntFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Groove;
import tabor.resolve.Options;

/** Short texts that ask for a lot are told so, at the line that asks for too much. */
class LimitsOfWorkTest {
  private static List<Diagnostic> problems(String text) {
    Compiled compiled = new Compiler(Loader.NONE).compile(Path.of("big.tabor"), text, Options.NONE);
    long strokes =
        compiled.lesson().grooves().stream().map(Groove::written).mapToLong(List::size).sum();
    assertThat(strokes).isLessThan(250_000);
    return compiled.diagnostics();
  }

  private static void tooLongAt(String text, String at) {
    assertThat(
            problems(text).stream()
                .filter(d -> d.code() == Code.TOO_LONG)
                .map(d -> d.spot().text()))
        .contains(at);
  }

  @Test
  void aSectionOfTooManyStrokes() {
    String lane = "ostinato snare : " + "r".repeat(900) + " . . .";
    tooLongAt("groove g\n bars 512\n " + lane + "\n", lane);
  }

  @Test
  void sectionsOfTooManyStrokesTogether() {
    String big = "groove g\n bars 512\n ostinato snare : rlrl rlrl rlrl rlrl\n";
    String steps = "step \"more\"\n accent snare at 1\n".repeat(60);
    assertThat(problems(big + steps).stream().filter(d -> d.code() == Code.TOO_LONG)).hasSize(1);
  }

  /** A step that changes nothing is printed and drawn like any other. */
  @Test
  void stepsThatChangeNothingCount() {
    String big = "groove g\n bars 512\n ostinato snare : rlrl rlrl rlrl rlrl\n";
    String steps = "step \"more\"\n text \"t\"\n".repeat(10);
    assertThat(problems(big + steps).stream().filter(d -> d.code() == Code.TOO_LONG)).hasSize(1);
  }

  /** What is written out may be long: a text may hold more strokes the longer it is. */
  @Test
  void aLongTextMayHoldMore() {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < 4_000; i++) {
      text.append("groove g").append(i).append("\n hands : rlrl rlrl rlrl rlrl\n");
    }
    assertThat(problems(text.toString())).isEmpty();
  }

  @Test
  void chartsThatSoundTooMuchTogether() {
    String groove = "groove g\n snare : rlrl rlrl rlrl rlrl\n";
    tooLongAt(groove + "chart c\n play g 50000 times\n", "play g 50000 times");
    tooLongAt(
        groove + "chart c\n play g 6000 times\nchart d\n play g 5000 times\n", "play g 5000 times");
  }

  @Test
  void tooManyPlayers() {
    String players = repeated(201, i -> "player p" + i + " \"P\"\n");
    tooLongAt("groove g\n kick : x . x .\n" + players, "player p200 \"P\"");
    assertThat(problems("groove g\n kick : x . x .\n" + repeated(200, i -> "player p" + i + "\n")))
        .isEmpty();
  }

  @Test
  void tooManyChangesOfTooManyStrokes() {
    String text =
        "groove g\n bars 512\n ostinato hihat : rrrr rrrr rrrr rrrr\n"
            + " shift hihat later by 1 sixteenth\n".repeat(1700);
    tooLongAt(text, "shift hihat later by 1 sixteenth");
  }

  @Test
  void aLineThatNobodyWrites() {
    String lane = "hands : " + "rl ".repeat(30_000);
    tooLongAt("groove g\n  " + lane + "\n  kick : x . x .\n", lane.strip());
    String text = "text \"\"\"" + "word\n".repeat(14_000) + "\"\"\"";
    tooLongAt("groove g\n  kick : x . x .\n  " + text + "\n", text);
    assertThat(problems("groove g\n  kick : x . x .\n  text \"" + "x".repeat(65_000) + "\"\n"))
        .isEmpty();
  }

  /** Each line after the limit costs no more than one before it. */
  @Test
  void systemsBeyondTheLimitAreNotWalked() {
    String systems = "  kick : x . x .\n  next\n".repeat(60_000);
    assertThat(problems("groove g\n" + systems + "  kick : x . x .\n"))
        .extracting(Diagnostic::code)
        .containsOnlyOnce(Code.TOO_LONG);
  }

  @Test
  void aLongChainOfKits() {
    StringBuilder text = new StringBuilder("kit k0 like five-piece\n");
    for (int i = 1; i < 3_000; i++) {
      text.append("kit k").append(i).append(" like k").append(i - 1).append('\n');
    }
    text.append("groove g\n on k2999\n kick : x . . .\n");
    assertThat(problems(text.toString())).isEmpty();
  }

  private static String repeated(int count, IntFunction<String> lines) {
    return IntStream.range(0, count).mapToObj(lines).collect(Collectors.joining());
  }

  private static Diagnostic onlyTooLong(List<Diagnostic> problems) {
    List<Diagnostic> found = problems.stream().filter(d -> d.code() == Code.TOO_LONG).toList();
    assertThat(found).hasSize(1);
    return found.get(0);
  }

  @Test
  void aFileOfTooManySections() {
    IntFunction<String> groove = i -> "groove g" + i + "\n";
    assertThat(problems(repeated(10_000, groove))).isEmpty();
    String many = repeated(10_001, groove) + "  nonsense\n" + repeated(300, i -> "groove g\n");
    List<Diagnostic> problems = problems(many);
    assertThat(onlyTooLong(problems).spot().text()).isEqualTo("groove g10000");
    assertThat(problems).hasSize(1);
  }

  /** What an edit makes of a file beyond the limit is what a fresh compilation makes of it. */
  @Test
  void editsAroundTheLimitOfSections() {
    Compiler compiler = new Compiler(Loader.NONE);
    Path path = Path.of("big.tabor");
    String most = repeated(10_000, i -> "groove g" + i + "\n");
    for (String text :
        List.of(most, most + "groove z\n", "groove a\n" + most, most, most + "  snare : x\n")) {
      Compiled again = compiler.compile(path, text, Options.NONE);
      assertThat(again.diagnostics().stream().map(d -> d.spot().text() + d.message()))
          .isEqualTo(problems(text).stream().map(d -> d.spot().text() + d.message()).toList());
    }
  }

  @Test
  void linesThatCannotBeRead() {
    List<Diagnostic> problems = problems(repeated(1_500, i -> "nonsense" + i + " here\n"));
    assertThat(problems).hasSize(1_001);
    assertThat(problems.subList(0, 1_000)).allMatch(d -> d.code() == Code.SYNTAX);
    assertThat(problems.get(1_000).code()).isEqualTo(Code.TOO_LONG);
    assertThat(problems.get(1_000).spot().text()).isEqualTo("nonsense1000");
    assertThat(problems(repeated(1_000, i -> "nonsense" + i + " here\n"))).hasSize(1_000);
  }

  @Test
  void problemsOfOneSection() {
    String start = "groove g\n  kick : x . x .\nstep s\n";
    List<Diagnostic> problems =
        problems(start + repeated(1_500, i -> "  accent blorb" + i + " at 1\n"));
    assertThat(problems).hasSize(1_001);
    assertThat(onlyTooLong(problems).spot().text()).isEqualTo("blorb1000");
    assertThat(problems(start + repeated(1_000, i -> "  accent blorb" + i + " at 1\n")))
        .hasSize(1_000)
        .noneMatch(d -> d.code() == Code.TOO_LONG);
  }

  /** Errors of many sections end; warnings do not, or a lesson with many would be refused. */
  @Test
  void errorsOfManySections() {
    IntFunction<String> wrong =
        i -> "groove g" + i + "\n" + "  drop blorb at 1\n".repeat(10) + "  kick : x . x .\n";
    List<Diagnostic> problems = problems(repeated(300, wrong));
    assertThat(onlyTooLong(problems).spot().text()).isEqualTo("groove g101");
    assertThat(problems).hasSize(1_011);
    IntFunction<String> fast =
        i -> "groove g" + i + "\n  tempo 300\n  right : hhhhhhhh hhhhhhhh hhhhhhhh hhhhhhhh\n";
    assertThat(problems(repeated(1_200, fast)))
        .hasSize(1_200)
        .allMatch(d -> d.code() == Code.TOO_FAST);
  }

  /** No chart after the one that goes too far is worked out, and none is told of. */
  @Test
  void chartsBeyondTheLimitAreNotTold() {
    String groove = "groove g\n snare : rlrl rlrl rlrl rlrl\n";
    String charts = repeated(20, i -> "chart c" + i + "\n play g 3000 times\n");
    Diagnostic told = onlyTooLong(problems(groove + charts));
    assertThat(told.spot().text()).isEqualTo("play g 3000 times");
    assertThat(told.spot().passage().text()).startsWith("chart c2\n");
  }

  /** Many short sections cost more than their strokes say. */
  @Test
  void sectionsWithTooMuchTogether() {
    String beat = "groove g\n hihat : xxxx xxxx xxxx xxxx\n snare : . x . x\n kick : x . x .\n";
    IntFunction<String> sheet = i -> "sheet s" + i + " from g\n each add snare at 1& 2& 3& 4&\n";
    assertThat(problems(beat + repeated(100, sheet))).isEmpty();
    assertThat(onlyTooLong(problems(beat + repeated(1_000, sheet))).message())
        .contains("too many strokes, and changes of them, together");
  }

  /** Bars without a stroke are written and drawn as well. */
  @Test
  void barsOfManySections() {
    IntFunction<String> empty = i -> "groove g" + i + "\n  blank 64 bars\n";
    assertThat(problems(repeated(90, empty))).isEmpty();
    Diagnostic told = onlyTooLong(problems(repeated(200, empty)));
    // 200 headings of two lines are 5,490 characters: (20,000 + 2 for each) strokes, four to a bar.
    assertThat(told.message()).isEqualTo("the sections so far have more than 7745 bars together");
    assertThat(told.spot().text()).isEqualTo("groove g121");
  }

  /** What keeps sections in tables must not go down the chain to its first. */
  @Test
  void aLongChainOfSteps() {
    String text =
        "groove g\n kick : x . x .\n"
            + repeated(9_900, i -> "step \"Louder\"\n accent kick at 1\n");
    Compiled compiled = new Compiler(Loader.NONE).compile(Path.of("a.tabor"), text, Options.NONE);
    // The number alone: no message about thousands of sections can be read.
    assertThat(new HashSet<>(compiled.lesson().grooves()).size()).isEqualTo(9_901);
  }
}
