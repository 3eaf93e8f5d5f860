package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.diagnostic.Diagnostic;
import tabor.emit.grid.Grid;
import tabor.groove.Groove;
import tabor.groove.Level;
import tabor.groove.Stroke;

/** Counts with the words of a lesson: where they are read, and what is said where they are not. */
class CountingWordsTest {
  private static final String BEAT =
      "groove beat\n hihat : xxx xxxx xx x\n kick : . . . .\nstep s\n ";

  /** Where the kick is struck by a line, such as {@code 1/12}; else the codes of what is wrong. */
  private static String kick(String header, String line) {
    Compiled compiled = compile(header, line);
    if (!compiled.diagnostics().isEmpty()) {
      return compiled.diagnostics().stream()
          .map(Diagnostic::code)
          .map(code -> code.word())
          .collect(Collectors.joining(" "));
    }
    Groove step = compiled.lesson().grooves().get(1);
    return step.strokes().stream()
        .filter(stroke -> stroke.surface().name().equals("kick"))
        .map(Stroke::at)
        .map(Object::toString)
        .collect(Collectors.joining(" "));
  }

  private static Compiled compile(String header, String line) {
    return Compact.compile(header + "\n" + BEAT + line + "\n");
  }

  @ParameterizedTest
  @CsvSource(
      nullValues = "-",
      value = {
        // The word names the division, whatever the beat is divided in.
        "say threes trip let, add kick at 1trip 1let, 1/12 1/6",
        "say threes trip let, add kick at 2trip 2let, 1/3 5/12",
        "say fours e und e, add kick at 2und, 3/8",
        // Said twice: the first.
        "say fours la li la, add kick at 2la, 5/16",
        "say twos und, add kick at 4und, 7/8",
        "say fours é ét è, add kick at 2é 2ét 2è, 5/16 3/8 7/16",
        "say 1-trip-let, add kick at 3let, 2/3",
        "say 1-la-li, add kick at 3li, 2/3",
        "say ta-ka-di-mi, add kick at 2ta 2ka 2di 2mi 3ki 3da, 1/4 5/16 3/8 7/16 7/12 2/3",
        // Ours stay.
        "say threes trip let, add kick at 1& 2a, 1/12 7/16",
        "say threes trip let, add kick at 1lett, syntax",
        // Of every beat, in its division.
        "say threes trip let, add kick at every trip, 1/12 1/3 7/12 5/6",
        "say fours e und e, add kick at every und, 1/8 3/8 5/8 7/8",
        "say fours e und e, add kick at every Und, 1/8 3/8 5/8 7/8",
        "say twos et, add kick at every et in bar 1, 1/8 3/8 5/8 7/8",
        "say fours é ét è, add kick at every è, 3/16 7/16 11/16 15/16",
        "say fours en es de, add kick at every es, 1/8 3/8 5/8 7/8",
        "say ta-ka-di-mi, add kick at every ta, 0 1/4 1/2 3/4",
        "say 1-trip-let, add kick at every e, 1/16 5/16 9/16 13/16",
        "say threes trip let, add kick at every und, syntax",
        "-, add kick at every trip, syntax",
        "-, add kick at 1trip, syntax",
      })
  void wordsAreReadInPlaces(String header, String line, String expected) {
    assertThat(kick(header == null ? "" : header, line)).isEqualTo(expected);
  }

  @Test
  void anAccentIsTheSameHoweverItWasTyped() {
    assertThat(kick("say twos e\u0301t", "add kick at 2\u00e9t")).isEqualTo("3/8");
  }

  @Test
  void aWordWithTwoPlacesIsAmbiguousOnlyWhereStrokesDoNotDecide() {
    String header = "say threes ta ti\nsay fours ti ta tu";
    assertThat(kick(header, "add kick at 4ti")).isEqualTo("ambiguous-count");
    Compiled threes = compile(header, "accent hihat at 1ti");
    assertThat(threes.diagnostics()).isEmpty();
    assertThat(accents(threes)).containsExactly("1/6");
    assertThat(accents(compile(header, "accent hihat at 2ti"))).containsExactly("5/16");
  }

  private static List<String> accents(Compiled compiled) {
    return compiled.lesson().grooves().get(1).strokes().stream()
        .filter(stroke -> stroke.level() == Level.ACCENT)
        .map(stroke -> stroke.at().toString())
        .toList();
  }

  @Test
  void oursWinsAndIsTold() {
    String header = "say threes e a";
    assertThat(kick(header, "add kick at 1e")).isEqualTo("counting-word");
    // Sixteenths are there: nobody takes it for a third.
    assertThat(kick(header, "add kick at 2e")).isEqualTo("5/16");
    // A stroke that only the word of the lesson meets.
    Compiled met = compile(header, "accent hihat at 1e");
    assertThat(met.diagnostics()).isEmpty();
    assertThat(accents(met)).containsExactly("1/12");
    Diagnostic told = compile(header, "add kick at 1e").diagnostics().get(0);
    assertThat(told.fixes())
        .extracting(fix -> fix.edits().get(0).text())
        .containsExactly("1e/4", "1&/3");
  }

  /** A word of theirs meets what stands at its places, however that was written. */
  @Test
  void everyWordOfTheirsChoosesStrokes() {
    String header = "say threes trip let\nsay fours e und e";
    assertThat(accents(compile(header, "accent hihat at every trip"))).containsExactly("1/12");
    assertThat(accents(compile(header, "accent hihat at every und"))).containsExactly("3/8", "5/8");
    assertThat(kick(header, "accent hihat at every trip in bar 1 where ghosted"))
        .isEqualTo("nothing-there");
    assertThat(kick("say 1-la-li", "drop kick at every li")).isEqualTo("nothing-there");
  }

  @Test
  void oursWinsAfterEveryTooAndIsTold() {
    String header = "say threes e a";
    Diagnostic told = compile(header, "add kick at every e").diagnostics().get(0);
    assertThat(told.code().word()).isEqualTo("counting-word");
    assertThat(told.message()).contains("every e is read as 1e/4", "not as 1&/3");
    // Where only theirs meets a stroke, it is meant, as at one count.
    Compiled only =
        Compact.compile(
            header + "\ngroove a\n hihat : xxx xxx . .\nstep s\n accent hihat at every e\n");
    assertThat(only.diagnostics()).isEmpty();
    assertThat(accents(only)).containsExactly("1/12", "1/3");
  }

  @Test
  void nearWordsAreOfferedAfterEvery() {
    Diagnostic told =
        compile("say threes trip let", "add kick at every tripp").diagnostics().get(0);
    assertThat(told.help()).startsWith("did you mean every trip?");
    assertThat(told.fixes().get(0).edits().get(0).text()).isEqualTo("every trip");
    assertThat(
            compile("", "add kick at every sixtenth").diagnostics().get(0).fixes().get(0).edits())
        .extracting(edit -> edit.text())
        .containsExactly("every sixteenth");
  }

  @Test
  void anUnclearWordAfterEveryIsToldWithoutAFixForOneBeat() {
    Diagnostic told =
        compile("say threes ta ti\nsay fours ti ta tu", "add kick at every ti")
            .diagnostics()
            .get(0);
    assertThat(told.code().word()).isEqualTo("ambiguous-count");
    assertThat(told.fixes()).isEmpty();
    assertThat(told.help()).contains("write out the counts");
  }

  @Test
  void nearWordsAreOffered() {
    Diagnostic told = compile("say threes trip let", "add kick at 2tripp").diagnostics().get(0);
    assertThat(told.help()).startsWith("did you mean 2trip?");
    assertThat(told.fixes().get(0).edits().get(0).text()).isEqualTo("2trip");
    assertThat(compile("", "add kick at 2und").diagnostics().get(0).fixes().get(0).edits().get(0))
        .extracting(edit -> edit.text())
        .isEqualTo("2&");
  }

  @Test
  void eighthsGoThroughADottedMeter() {
    String six =
        "say eighths through\ngroove six\n time 6/8\n hihat : xxx xxx\n kick : . .\nstep s\n ";
    Compiled added = Compact.compile(six + "add kick at 1 3 4 6\n");
    assertThat(added.diagnostics()).isEmpty();
    assertThat(
            added.lesson().grooves().get(1).strokes().stream()
                .filter(stroke -> stroke.surface().name().equals("kick"))
                .map(stroke -> stroke.at().toString()))
        .containsExactly("0", "1/4", "3/8", "5/8");
    assertThat(Compact.problems(six + "add kick at 2\n")).containsExactly("7 counting-word");
    assertThat(Compact.problems(six + "add kick at 7\n")).containsExactly("7 count-outside-bar");
  }

  @Test
  void printedInPlaceOfOurs() {
    assertThat(row("say fours e und e\nsay threes trip let", "xxx xxxx xx x"))
        .isEqualTo("1 trip let 2 e und e 3 und 4");
    assertThat(row("say ta-ka-di-mi", "xxx xxxx xx x")).isEqualTo("ta ki da ta ka di mi ta di ta");
    assertThat(row("", "xxx xxxx xx x")).isEqualTo("1 & a 2 e & a 3 & 4");
    assertThat(row("say eighths through\ntime 6/8", "xxx xxxxxx")).isEqualTo("1 2 3 4 & 5 & 6 &");
  }

  private static String row(String header, String beats) {
    Compiled compiled = Compact.compile(header + "\ngroove beat\n hihat : " + beats + "\n");
    assertThat(compiled.diagnostics()).isEmpty();
    String grid = Grid.of(compiled.lesson(), section -> true);
    return grid.lines()
        .filter(line -> line.startsWith("bar 1"))
        .findFirst()
        .orElseThrow()
        .substring("bar 1".length())
        .strip()
        .replaceAll(" +", " ");
  }

  @Test
  void aPlayersWordsArePrintedOnly() {
    String lesson =
        "say threes trip let\ngroove beat\n hihat : xxx x x x\nplayer mia\n say threes la li\n";
    Compiled compiled = Compact.compile(lesson);
    assertThat(compiled.diagnostics()).isEmpty();
    assertThat(compiled.lesson().extras().players().get(0).words()).isNotNull();
    Compiled hers =
        new Compiler(Loader.NONE)
            .compile(
                Path.of("x.tabor"),
                lesson,
                Options.NONE.of(compiled.lesson().extras().players().get(0)));
    assertThat(Grid.of(hers.lesson(), section -> true)).contains(" la ").doesNotContain("trip");
  }
}
