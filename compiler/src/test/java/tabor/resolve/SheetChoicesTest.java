package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.compile.Compiled;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Groove;
import tabor.groove.Sheet;

/**
 * What each kind of edit makes after {@code each}: a variation is the step that its choice leaves.
 */
class SheetChoicesTest {
  private static final String BEAT =
      "groove beat\n hands : rl rl r . | r . l .\n kick : x . x . | . x . .\n"
          + "groove other\n kick : . x . x\n";

  private static Sheet sheet(String lines) {
    Compiled compiled = Compact.compile(BEAT + "sheet s \"S\" from beat\n" + lines);
    assertThat(compiled.diagnostics().stream().filter(d -> d.severity().ordinal() == 0))
        .as(lines)
        .isEmpty();
    return compiled.lesson().sheets().get(0);
  }

  private static List<Diagnostic> told(String lines) {
    return Compact.compile(BEAT + "sheet s \"S\" from beat\n" + lines).diagnostics();
  }

  /** Each variation is the step that has the line written out, in the same order. */
  private static void same(String each, List<String> lines) {
    List<String> steps =
        lines.stream()
            .map(line -> Compact.last(BEAT + "step t from beat\n " + line + "\n"))
            .toList();
    assertThat(
            sheet(" each " + each + "\n").grooves().stream()
                .map(Compact::of)
                .collect(Collectors.toList()))
        .as(each)
        .isEqualTo(steps);
    assertThat(steps).as("each choice is heard").doesNotHaveDuplicates();
  }

  @ParameterizedTest
  @CsvSource(
      value = {
        "right plays ride at 1 2| right plays ride at 1; right plays ride at 2",
        "right plays ride in bars 1 2| right plays ride in bar 1; right plays ride in bar 2",
        "right plays ride at 1 in bars 1 2| right plays ride at 1 in bars 1 2",
        "split left between tom1 and floor at 1& 2&"
            + "| split left between tom1 and floor at 1&; split left between tom1 and floor at 2&",
        "accent hands at 1 to 2| accent hands at 1; accent hands at 1&; accent hands at 2",
        "ghost right at every beat| ghost right at 1; ghost right at 2; ghost right at 3",
        "tom1 follows right at 1 2| tom1 follows right at 1; tom1 follows right at 2",
        "take kick from other in bars 1 2| take kick from other in bar 1; take kick from other in"
            + " bar 2",
        "take kick from other at 2 4| take kick from other at 2; take kick from other at 4",
        "take kick from other at every beat| take kick from other at 2; take kick from other at 4",
        "move kick from 1 to 1& in bars 1| move kick from 1 to 1& in bar 1",
        "fill other in bars 1 2| fill other in bar 1; fill other in bar 2",
        "fill other in bars 1 to 2 from 3| fill other in bar 1 from 3; fill other in bar 2 from 3",
        "fill other in last bar| fill other in bar 2",
        "drop kick in every 1st bar| drop kick in bar 1; drop kick in bar 2",
        "add kick at 4 4& in bar 2| add kick at 4 in bar 2; add kick at 4& in bar 2",
        "add kick at 2 of 2& 4 4&| add kick at 2& 4; add kick at 2& 4&; add kick at 4 4&",
        "add kick at 3 of 2& 4 4& 2a| add kick at 2& 4 4&; add kick at 2& 4 2a; add kick at 2& 4&"
            + " 2a; add kick at 4 4& 2a",
        "add kick accented at 2& 4| add kick accented at 2&; add kick accented at 4",
        "add tom1 with left at 4 4&| add tom1 with left at 4; add tom1 with left at 4&",
        "add right at 4 4&| add right at 4; add right at 4&",
        "double hands at 1 3| double hands at 1; double hands at 3",
        // Places that are found by the strokes of those who are meant: of each kind of edit.
        "right plays ride at every beat| right plays ride at 1; right plays ride at 2; right plays"
            + " ride at 3",
        "right plays ride at 1 to 2| right plays ride at 1; right plays ride at 2",
        "left plays ride at 1 to 2& in bar 1| left plays ride at 1& in bar 1; left plays ride at 2&"
            + " in bar 1",
        "split left between tom1 and floor at every &"
            + "| split left between tom1 and floor at 1&; split left between tom1 and floor at 2&",
        "tom1 follows right at every beat| tom1 follows right at 1; tom1 follows right at 2; tom1"
            + " follows right at 3",
        "tom1 follows left at 1 to 3"
            + "| tom1 follows left at 1&; tom1 follows left at 2&; tom1 follows left at 3",
        "take kick from other at 1 to 4| take kick from other at 2; take kick from other at 4",
        "take kick from other at every beat in bar 1"
            + "| take kick from other at 2 in bar 1; take kick from other at 4 in bar 1",
        "drop hands at every beat in every 2nd bar| drop hands at 1 in bar 2; drop hands at 3 in"
            + " bar 2",
        "drop hands at 2 of 1 to 2| drop hands at 1 1&; drop hands at 1 2; drop hands at 1& 2",
        "drop kick at 3 of every beat| drop kick at 1 2 3",
        "add tom1 at every & in bar 2| add tom1 at 1& in bar 2; add tom1 at 2& in bar 2; add tom1"
            + " at 3& in bar 2; add tom1 at 4& in bar 2",
        "add tom1 at every e in bar 2| add tom1 at 1e in bar 2; add tom1 at 2e in bar 2; add tom1"
            + " at 3e in bar 2; add tom1 at 4e in bar 2",
        // Bars that are not listed.
        "tom1 follows right in bars 1 2| tom1 follows right in bar 1; tom1 follows right in bar 2",
        "split left between tom1 and floor in bars 1 to 2"
            + "| split left between tom1 and floor in bar 1; split left between tom1 and floor in"
            + " bar 2",
        "take kick from other in every 1st bar| take kick from other in bar 1; take kick from other"
            + " in bar 2",
        "move hands from 1 to 1a in bars 1 to 2| move hands from 1 to 1a in bar 1; move hands from"
            + " 1 to 1a in bar 2",
        "move hands from 1 to 1a in last bar| move hands from 1 to 1a in bar 2",
        // What else stands in the line stays in each.
        "ghost hands at 1 3 where plain| ghost hands at 1 where plain; ghost hands at 3 where"
            + " plain",
        "accent hands where plain in bars 1 2| accent hands where plain in bar 1; accent hands"
            + " where plain in bar 2",
        "right plays ride ghosted at 1 2| right plays ride ghosted at 1; right plays ride ghosted"
            + " at 2",
        "split left ghosted between tom1 and floor at 1& 2&"
            + "| split left ghosted between tom1 and floor at 1&; split left ghosted between tom1"
            + " and floor at 2&",
      },
      delimiter = '|')
  void everyEditVaries(String each, String lines) {
    same(each, List.of(lines.split("; ", -1)));
  }

  /** The hands of a part in {@code x} are chosen before a line speaks of one of them. */
  @ParameterizedTest
  @CsvSource({
    "left, 1& 2& 3& 4&",
    "right, 1 2 3 4",
    "hands, 1 1& 2 2& 3 3& 4 4&",
  })
  void whoseStrokesAreMeantIsChosenFirst(String who, String counts) {
    String row = "groove row\n hands : xx xx xx xx\n";
    List<String> steps =
        Arrays.stream(counts.split(" ", -1))
            .map(at -> Compact.last(row + "step t\n accent " + who + " at " + at + "\n"))
            .toList();
    Sheet sheet =
        Compact.compile(row + "sheet s from row\n each accent " + who + " at 1 to 4&\n")
            .lesson()
            .sheets()
            .get(0);
    assertThat(sheet.grooves().stream().map(Compact::of)).containsExactlyElementsOf(steps);
  }

  /** What cannot be made is told once; the choices below it are taken as written. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "beat; each add kick at 4 of 2 4 4&; 7 syntax",
        "beat; each drop kick in bars 1 to 3; 7 count-outside-bar",
        "beat; each accent tomm at every beat; 7 unknown-name",
        "beat; each accent tom1 at every beat; 7 nothing-there",
        "beat; each accent hands at 1 to 5; 7 count-outside-bar",
        "nowhere; each drop kick in last bar; 6 unknown-name",
        "nowhere; each drop kick in every 1st bar; 6 unknown-name",
        "nowhere; each drop kick at every beat; 6 unknown-name",
        "nowhere; each drop kick at 1 to 3; 6 unknown-name",
        "nowhere; each add kick at 2 4; 6 unknown-name",
        "beat; each take kick from nowhere at every beat; 7 unknown-name",
      })
  void whatIsWrongIsToldOnce(String base, String line, String told) {
    assertThat(Compact.problems(BEAT + "sheet s from " + base + "\n " + line + "\n"))
        .containsExactly(told);
  }

  /** A line that applies to all variations must find something in one of them only. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "each drop kick at 1 3/ accent kick at 1; ''",
        "each drop kick at 1 3/ accent kick at 3/ accent kick at 1; ''",
        "each drop kick at 1 3/ accent kick at 4; 8 nothing-there",
        "accent kick at 4/ each drop kick at 1 3; 7 nothing-there",
        "each drop kick at 1 3 2/ accent kick at 4/ accent kick at 1; 8 nothing-there",
        "each drop kick at 1 3/ accent kick at 5; 8 count-outside-bar",
        "each accent kick at 1 4; 7 nothing-there",
        "each accent kick at 4 1; 7 nothing-there",
        "each accent kick at 4 4&; 7 nothing-there 7 nothing-there",
        "each accent kick at 1 4/ accent hands at 1; 7 nothing-there",
        "each drop kick at 1 3/ accent tomm; 8 unknown-name",
        "each drop kick at 1 3/ add kick at 1; ''",
        // What is left out since it came to the same tells nothing.
        "each accent kick at 1 1 3; 7 already-there",
        "each accent kick at 4 1 1; 7 nothing-there 7 already-there",
        "and accent kick/ each drop kick at 1 3; 7 syntax",
      })
  void whatIsToldOfAllVariations(String lines, String told) {
    assertThat(Compact.problems(BEAT + "sheet s from beat\n " + lines.replace("/ ", "\n ") + "\n"))
        .containsExactlyInAnyOrder(told.isEmpty() ? new String[0] : told.split(" (?=\\d)", -1));
  }

  @Test
  void groupsVaryTogether() {
    same("add kick at 2& 4 | 4&", List.of("add kick at 2& 4", "add kick at 4&"));
    same(
        "accent hands at 1 | 1& 2 in bar 1",
        List.of("accent hands at 1 in bar 1", "accent hands at 1& 2 in bar 1"));
  }

  @Test
  void onlyWhatEveryFindsInTheBarsNamedVaries() {
    same(
        "accent hands at every & in bars 1 2",
        List.of("accent hands at 1& in bar 1", "accent hands at 2& in bar 1"));
    same(
        "accent hands at every beat in bars 1 2",
        List.of(
            "accent hands at 1 in bars 1 2",
            "accent hands at 2 in bar 1",
            "accent hands at 3 in bars 1 2"));
  }

  @Test
  void placesOfADivisionAreNamedWithIt() {
    same(
        "add kick at every triplet in bar 1",
        List.of(
            "add kick at 1 in bar 1",
            "add kick at 1&/3 in bar 1",
            "add kick at 1a/3 in bar 1",
            "add kick at 2 in bar 1",
            "add kick at 2&/3 in bar 1",
            "add kick at 2a/3 in bar 1",
            "add kick at 3&/3 in bar 1",
            "add kick at 3a/3 in bar 1",
            "add kick at 4 in bar 1",
            "add kick at 4&/3 in bar 1",
            "add kick at 4a/3 in bar 1"));
  }

  @Test
  void choicesThatAreNoneAreTold() {
    Diagnostic few = told(" each add kick at 4 of 2 4 4&\n").get(0);
    assertThat(few.message()).isEqualTo("there are not 4 places here to choose, but 3");
    assertThat(few.help()).isEqualTo("choose 3 or fewer, or name more places");
    assertThat(few.spot().text()).isEqualTo("4");
    Diagnostic bars = told(" each drop kick in bars 1 to 3\n").get(0);
    assertThat(bars.code().word()).isEqualTo("count-outside-bar");
    assertThat(bars.message()).isEqualTo("“s-1” has only 2 bars");
    Diagnostic range = told(" each accent hands at 1 to 5\n").get(0);
    assertThat(range.code().word()).isEqualTo("count-outside-bar");
    assertThat(told(" each accent tom1 at every beat\n").get(0).code().word())
        .isEqualTo("nothing-there");
    assertThat(told(" each accent tomm at every beat\n").get(0).code().word())
        .isEqualTo("unknown-name");
  }

  @Test
  void howManyWaysThereAreToChoose() {
    // Pascal's triangle.
    long[][] rows = {{1, 1}, {1, 2, 1}, {1, 3, 3, 1}, {1, 4, 6, 4, 1}, {1, 5, 10, 10, 5, 1}};
    for (int all = 1; all <= rows.length; all++) {
      for (int taken = 0; taken <= all; taken++) {
        assertThat(EditChoices.binomial(all, taken)).isEqualTo(rows[all - 1][taken]);
      }
    }
    assertThat(EditChoices.binomial(32, 16)).isEqualTo(601_080_390L);
    assertThat(EditChoices.binomial(400, 200)).as("cut").isGreaterThan(Integer.MAX_VALUE);
  }

  @Test
  void unequalLinesSayHowManyEachHas() {
    Diagnostic told = told(" each add kick at 2 4\n and drop hands at 1\n").get(0);
    assertThat(told.message())
        .isEqualTo("this line has 1 choice, but the line that it changes along with has 2 choices");
    assertThat(told.labels().get(0).text()).isEqualTo("2 choices here");
    assertThat(told.labels().get(0).spot().text()).contains("each add kick");
  }

  @Test
  void barsOfEachLinesFallIntoTheSection() {
    Diagnostic odd = told(" each 2 bars kick : x . . . | . x . . | . . x .\n").get(0);
    assertThat(odd.message()).isEqualTo("3 bars do not fall into variations of 2 bars");
    assertThat(odd.help()).isEqualTo("write a multiple of 2 bars");
    Diagnostic section = told(" bars 3\n each 2 bars kick : x . . . | . x . .\n").get(0);
    assertThat(section.message()).isEqualTo("the section has 3 bars, which 2 bars do not divide");
    Diagnostic hold = told(" each kick : - x . .\n").get(0);
    assertThat(hold.code().word()).isEqualTo("nothing-there");
    assertThat(told(" each kick : x - . .\n").stream().filter(d -> d.severity().ordinal() == 0))
        .isEmpty();
    assertThat(told(" each kick : . - . .\n").get(0).code().word()).isEqualTo("nothing-there");
    assertThat(told(" each kick : .. {-x} . .\n").get(0).code().word()).isEqualTo("nothing-there");
  }

  @Test
  void captionsComeFromTheFirstLineThatHasOne() {
    assertThat(
            sheet(
                    " each add kick at 2 4\n and accent hands at 1 3 \"Loud\"\n"
                        + " each hands play paradiddle, flam-tap in sixteenths\n"
                        + " and kick : . . . x | . . x x\n"
                        + " each drop kick at 1 \"One\"\n and drop hands at 1 \"Two\"\n")
                .grooves())
        .extracting(Groove::caption)
        .containsExactly("Loud", "Loud", "paradiddle", "flam-tap", "One");
  }

  @Test
  void aPatternThatNeedsTooManyBarsIsTold() {
    String meter = "groove beat\n time 63/64\n kick : " + "x".repeat(1) + " .".repeat(62) + "\n";
    Diagnostic told =
        Compact.compile(meter + "sheet s from beat\n each hands play paradiddle in eighths\n")
            .diagnostics()
            .get(0);
    assertThat(told.code().word()).isEqualTo("too-long");
    assertThat(told.message()).isEqualTo("this pattern ends on a bar line only after 64 bars");
  }

  @Test
  void whatCoincidedIsCountedInTheMessage() {
    List<Diagnostic> told =
        Compact.compile(
                BEAT
                    + "sheet s from beat\n each add tom1 at 4 4 4\n each add kick at 4\nchart c\n"
                    + " play s-3\n")
            .diagnostics();
    Diagnostic unknown = told.get(told.size() - 1);
    assertThat(unknown.message()).isEqualTo("“s” has 2 variations, so there is no “s-3”");
    assertThat(unknown.help())
        .isEqualTo("the last is “s-2”; “s-1” was written 3 times and counts once");
    assertThat(told.get(0).labels().get(0).text()).isEqualTo("“s-1”");
    assertThat(told.get(0).labels().get(0).spot()).isNotEqualTo(told.get(0).spot());
  }

  @Test
  void aLaterCopyPointsAtTheVariationThatItEquals() {
    List<Diagnostic> told = told(" each add kick at 2 2 4\n each add kick at 4 \"x\"\n");
    assertThat(told)
        .extracting(Diagnostic::message)
        .containsExactly(
            "this comes to the same as “s-1” and is left out",
            "this comes to the same as “s-2” and is left out");
    // The third place of the first line, not the second.
    assertThat(told.get(1).labels().get(0).spot().text()).isEqualTo("4");
  }

  @Test
  void oneVariationIsNamedInTheSingular() {
    List<Diagnostic> told =
        Compact.compile(BEAT + "sheet s from beat\n each add kick at 4\nchart c\n play s-2\n")
            .diagnostics();
    assertThat(told.get(0).message()).isEqualTo("“s” has 1 variation, so there is no “s-2”");
    assertThat(told.get(0).help()).isEqualTo("name “s-1”");
  }

  @Test
  void theSheetSaysItsTextsOnce() {
    Compiled compiled =
        Compact.compile(
            BEAT
                + "sheet s \"Title\" from beat\n text \"[Right] first\"\n goal \"Even\"\n"
                + " each add kick at 2 4\n");
    Sheet sheet = compiled.lesson().sheets().get(0);
    assertThat(sheet.title()).isEqualTo("Title");
    assertThat(sheet.prose()).containsExactly("Right first");
    assertThat(sheet.page().goals()).containsExactly("Even");
    assertThat(sheet.grooves()).allMatch(groove -> groove.prose().isEmpty());
    assertThat(sheet.grooves()).allMatch(groove -> groove.page().goals().isEmpty());
  }

  @Test
  void aSheetThatVariesNothingSaysSo() {
    Diagnostic told = told(" accent kick\n").get(0);
    assertThat(told.message()).isEqualTo("nothing varies on this sheet");
    assertThat(told(" accent\n")).extracting(d -> d.code().word()).containsExactly("syntax");
  }
}
