package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Sheet;

/** What is told of the variations of a sheet, how often, and by which number. */
class SheetProblemsTest {
  private static final String BEAT = "groove beat\n right : h h h h\n";

  private static List<Diagnostic> told(String lines) {
    return Compact.compile(BEAT + "sheet s from beat\n" + lines).diagnostics();
  }

  private static List<String> messages(String lines) {
    return told(lines).stream().map(Diagnostic::message).toList();
  }

  private static Sheet sheet(String lines) {
    return Compact.compile(BEAT + "sheet s from beat\n" + lines).lesson().sheets().get(0);
  }

  @Test
  void whatALineDoesToEachVariationIsToldOnceIfItIsTheSame() {
    assertThat(messages(" each right : h h h h | d d d d\n add tom1 with right at 1\n"))
        .as("two clashes")
        .containsExactly(
            "the right hand cannot strike the hi-hat and the first tom at once at 1",
            "the right hand cannot strike the ride and the first tom at once at 1");
    assertThat(messages(" each right : h h h . | h h . .\n add tom1 with right at 1\n"))
        .as("one and the same")
        .containsExactly("the right hand cannot strike the hi-hat and the first tom at once at 1");
    assertThat(messages(" each right : h h h . | h h . .\n accent right in bar 3\n"))
        .as("one and the same, though each has its own name")
        .containsExactly("“s-1” has only 1 bar");
  }

  @Test
  void aLineForAllNeedNotFindSomethingInEach() {
    String both = " each hands : rl . . . | r . . .\n";
    assertThat(told(both + " left plays tom1 in bar 1\n")).isEmpty();
    assertThat(told(both + " accent hands at 1&\n")).isEmpty();
    assertThat(told(" each hands : rlr . . . | rl . . .\n accent hands at 1.3\n"))
        .as("a slot that one of the two lacks")
        .isEmpty();
    assertThat(messages(both + " accent left at 3\n"))
        .containsExactly("there is no stroke of “left” at 3");
  }

  @Test
  void numbersThatAreToldAreThoseThatTheVariationsHaveInTheEnd() {
    String lines =
        " each right : h h h . | h h h . | d d d . | d d d .\n each add tom1 with right at 1\n";
    List<Diagnostic> told = told(lines);
    assertThat(told)
        .extracting(one -> one.code().word())
        .containsExactlyInAnyOrder("already-there", "already-there", "limb-conflict");
    List<Diagnostic> same =
        told.stream().filter(one -> one.code().word().equals("already-there")).toList();
    assertThat(same.get(0).labels().get(0).text()).isEqualTo("“s-1”");
    assertThat(same.get(0).labels().get(0).spot().text()).isEqualTo("h h h .");
    assertThat(same.get(1).labels().get(0).text()).isEqualTo("“s-2”");
    assertThat(same.get(1).labels().get(0).spot().text()).isEqualTo("d d d .");
    assertThat(same.get(1).labels().get(0).spot().span().start())
        .as("the first of the two")
        .isLessThan(same.get(1).spot().span().start());
    Diagnostic clash =
        told.stream().filter(one -> one.code().word().equals("limb-conflict")).findFirst().get();
    assertThat(clash.place().section()).isEqualTo("s-3");
    Sheet sheet = sheet(lines);
    assertThat(sheet.variations()).extracting(Sheet.Variation::number).containsExactly(1, 2, 3);
    assertThat(sheet.variations())
        .extracting(Sheet.Variation::coincided)
        .containsExactly(List.of(2), List.of(4), List.of());
  }

  @Test
  void tooManyAreCountedTogether() {
    String bars = " each kick : " + "x . . . | ".repeat(62) + "x . . x\n";
    assertThat(messages(bars + " each add snare at 2 3 4\n"))
        .contains("a sheet has at most 64 variations; here it comes to 66");
  }

  @Test
  void aChartLeavesOutWhatTheSheetPlays() {
    assertThat(messages(" each add kick at 1 2\nchart c\n play s without tom1\n"))
        .containsExactly("nothing of tom1 is played here that could be left out");
  }

  /** Whatever is missing might have been in the lines that are wrong. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        " each add kick at 1 2\n accent\n",
        " and add kick at 3\n each add kick at 1 2\n",
        " each kick : x . . .\n each add tomm at 1\n",
        " each add snare at 2 3 4\n and add kick at 1 2\n each add kick at 1 2\n",
        " each 2 bars kick : x . . . | x . . . | x . . .\n each add kick at 1 2\n",
        " each 2 bars kick : x . . . | x . . .\n each add kick at 1 2\n",
        " each hands play long in eighths\n each add kick at 1 2\npattern long : "
            + "rl rl rl rl rl rl rl rl rl rl rl rl rl rl rl rl r\n",
        " each add snare at 3 of 1e 1& 1a 2e 2& 2a 3e 3& 3a\n each add kick at 1 2\n",
      })
  void aSheetWithAMistakeIsNotAskedWhatItPlays(String lines) {
    assertThat(told(lines + "chart c\n play s without tom1\n")).hasSize(1);
  }

  /** A line that has no choices of its own is not compared with those that change along with it. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "each 2 bars kick : x . . . | x . . . | x . . .",
        "each 2 bars kick : x . . . | x . . .",
        "each kick : % | x . . .",
        "each hands play long in eighths",
      })
  void linesAlongAWrongLineAreNotCounted(String line) {
    String pattern = line.contains("long") ? "pattern long : " + "r".repeat(33) + "\n" : "";
    String along = " and snare : . x . . | . . x . | . . . x\n";
    assertThat(told(" " + line + "\n" + along + pattern)).hasSize(1);
  }

  @Test
  void barsThatDoNotFallIntoVariationsAreToldWhereTheyAreWritten() {
    String bars = "snare : . . x . | . . x . | x . . .";
    Diagnostic own = told(" bars 2\n each 2 bars " + bars + "\n").get(0);
    assertThat(own.message()).isEqualTo("3 bars do not fall into variations of 2 bars");
    assertThat(own.spot().text()).isEqualTo("2");
    String two = " bars 2\n each 2 bars kick : x . . . | . x . .\n and ";
    Diagnostic along = told(two + bars + "\n").get(0);
    assertThat(along.message()).isEqualTo("3 bars do not fall into variations of 2 bars");
    assertThat(along.spot().text()).as("the line says no number").isEqualTo(bars);
    assertThat(told(two + "2 bars " + bars + "\n").get(0).spot().text()).isEqualTo("2");
    Diagnostic section = told(" each 2 bars kick : x . . . | . x . .\n").get(0);
    assertThat(section.message()).isEqualTo("the section has 1 bar, which 2 bars do not divide");
    assertThat(section.spot().text()).isEqualTo("2");
  }

  @Test
  void aPatternMayNeedThirtyTwoBars() {
    // Eight eighths to the bar: 31 places end on a bar line after 31 bars, as 33 do after 33.
    for (int places : new int[] {31, 33}) {
      List<Diagnostic> told =
          told(" each hands play long in eighths\npattern long : " + "r".repeat(places) + "\n");
      assertThat(told.stream().map(one -> one.code().word()).toList())
          .isEqualTo(places == 31 ? List.of() : List.of("too-long"));
    }
    // Twelve triplets to the bar: 128 places are 32 bars after three times.
    assertThat(told(" each hands play long in triplets\npattern long : " + "r".repeat(128) + "\n"))
        .isEmpty();
  }

  @Test
  void aPatternEndsWithAWholeRoundOfMeters() {
    String turns = "groove turns\n time 4/4 3/4\n right : h h h h | h h h\n";
    Sheet sheet =
        Compact.compile(
                turns
                    + "sheet s from turns\n"
                    + " each left foot play seven, two, fourteen in quarters\n"
                    + "pattern seven : lllllll\n"
                    + "pattern two : l.\n"
                    + "pattern fourteen : llllllllllllll\n")
            .lesson()
            .sheets()
            .get(0);
    assertThat(sheet.grooves()).extracting(one -> one.bars()).containsExactly(2, 4, 4);
  }
}
