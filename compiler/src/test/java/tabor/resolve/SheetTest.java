package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;
import static tabor.resolve.Compact.compile;
import static tabor.resolve.Compact.problems;

import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import tabor.compile.Compiled;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.Sheet;

/** What section 1 of the page on teaching says of sheets. */
class SheetTest {
  private static final String BEAT =
      "groove beat \"Beat\"\n hihat : rr rr rr rr\n snare : . l . l\n kick : r . . .\n";

  private static Sheet sheet(String lines) {
    Compiled compiled = compile(BEAT + "sheet s \"S\" from beat\n" + lines);
    assertThat(compiled.diagnostics().stream().filter(d -> d.severity().ordinal() == 0)).isEmpty();
    return compiled.lesson().sheets().get(0);
  }

  /** The kick of each variation, in places of the bar. */
  private static String kicks(String lines) {
    return sheet(lines).grooves().stream()
        .map(
            groove ->
                groove.strokes().stream()
                    .filter(stroke -> stroke.surface().name().equals("kick"))
                    .map(stroke -> (stroke.bar() == 1 ? "" : stroke.bar() + ":") + stroke.at())
                    .collect(Collectors.joining(" ")))
        .collect(Collectors.joining(" | "));
  }

  private static List<String> told(String lines) {
    return problems(BEAT + "sheet s \"S\" from beat\n" + lines);
  }

  private static Diagnostic first(String lines) {
    return compile(BEAT + "sheet s \"S\" from beat\n" + lines).diagnostics().get(0);
  }

  @Test
  void everyBarOfAPartIsAVariation() {
    assertThat(kicks(" each kick : r . r . | . r . r | rr . . .\n"))
        .isEqualTo("0 1/2 | 1/4 3/4 | 0 1/8");
  }

  /** Alone it is called by its sheet and number, unless it says itself what it shows. */
  @Test
  void aVariationIsCalledByItsSheetOrItsCaption() {
    List<Sheet.Variation> found =
        compile(
                BEAT
                    + "sheet s \"Kicks\" from beat\n"
                    + " each accent hands at 1 \"Push\"\n"
                    + " each accent hands at 2\n"
                    + "sheet bare from beat\n"
                    + " each accent hands at 3\n")
            .lesson()
            .sheets()
            .stream()
            .flatMap(sheet -> sheet.variations().stream())
            .toList();
    assertThat(found)
        .extracting(one -> one.groove().title())
        .containsExactly("Push", "Kicks: 2", "bare: 1");
    assertThat(found).extracting(Sheet.Variation::caption).containsExactly("Push", null, null);
  }

  @Test
  void aBarRepeatsItselfOverTheSection() {
    assertThat(kicks(" bars 2\n each kick : . r . . | . . r .\n"))
        .isEqualTo("1/4 2:1/4 | 1/2 2:1/2");
    assertThat(kicks(" bars 2\n each 2 bars kick : . r . . | . . r . | r . . . | %\n"))
        .isEqualTo("1/4 2:1/2 | 0 2:0");
  }

  @Test
  void everyPlaceIsAVariation() {
    assertThat(kicks(" each add kick at 2& 3 | 3& 4a\n each add kick at 2& 4\n"))
        .isEqualTo("0 3/8 1/2 | 0 5/8 15/16 | 0 3/8 | 0 3/4");
  }

  @Test
  void soManyOfThePlaces() {
    assertThat(kicks(" each add kick at 2 of 1& 2& 3& 4&\n"))
        .isEqualTo("0 1/8 3/8 | 0 1/8 5/8 | 0 1/8 7/8 | 0 3/8 5/8 | 0 3/8 7/8 | 0 5/8 7/8");
  }

  @Test
  void everyAndRangesBecomeThePlacesThatTheyFind() {
    assertThat(kicks(" each add kick at every &\n")).isEqualTo("0 1/8 | 0 3/8 | 0 5/8 | 0 7/8");
    assertThat(kicks(" add kick at 1& 2 3\n each drop kick at 1& to 3\n"))
        .isEqualTo("0 1/4 1/2 | 0 1/8 1/2 | 0 1/8 1/4");
    assertThat(kicks(" each add kick at 2 of every beat\n"))
        .as("a stroke that is there is a place too")
        .isEqualTo("0 1/4 | 0 1/2 | 0 3/4 | 0 1/4 1/2 | 0 1/4 3/4 | 0 1/2 3/4");
    assertThat(kicks(" each add kick at every triplet\n").split(" \\| ", -1)[0]).isEqualTo("0");
    assertThat(kicks(" each add kick at every triplet\n").split(" \\| ", -1)[1])
        .isEqualTo("0 1/12");
  }

  @Test
  void barsVaryWhereNoPlacesAreNamed() {
    assertThat(kicks(" bars 3\n each drop kick in bars 1 to 2\n")).isEqualTo("2:0 3:0 | 0 3:0");
    assertThat(kicks(" bars 2\n each add kick at 2 4 in bars 1 2\n"))
        .isEqualTo("0 1/4 2:0 2:1/4 | 0 3/4 2:0 2:3/4");
  }

  @Test
  void aLineWithoutChoicesIsOneVariation() {
    assertThat(kicks(" each drop kick\n each swap hands\n")).isEqualTo(" | 0");
  }

  @Test
  void anAndLineChangesAlong() {
    Sheet sheet = sheet(" each kick : r . r . | . r . .\n and snare : l . . . | . . l .\n");
    assertThat(sheet.grooves())
        .extracting(groove -> Compact.of(groove).replaceAll("\\d+/?\\d* R hihat(, )?", ""))
        .containsExactly("0 L snare, 0 rf kick, 1/2 rf kick, ", "1/4 rf kick, 1/2 L snare, ");
  }

  @Test
  void anAndLineBelowSeveralBarsTakesAsMany() {
    assertThat(
            kicks(
                " bars 2\n each 2 bars kick : r . . . | . r . . | . . r . | . . . r\n"
                    + " and snare : l . . . | l . . . | . . . l | . . . l\n"))
        .isEqualTo("0 2:1/4 | 1/2 2:3/4");
  }

  @Test
  void linesActInTheirOrder() {
    assertThat(kicks(" add kick at 3\n each drop kick at 3 1\n add kick at 4\n"))
        .isEqualTo("0 3/4 | 1/2 3/4");
  }

  @Test
  void patternsHaveTheLengthTheyNeedAndGiveTheirName() {
    Sheet sheet =
        sheet(
            " each hands play paradiddle, paradiddle-diddle, spread 3 over 8, mine left-lead in"
                + " sixteenths\npattern mine : rlrl\n");
    assertThat(sheet.grooves())
        .extracting(groove -> groove.title() + " " + groove.bars())
        .containsExactly(
            "paradiddle 1", "paradiddle-diddle 3", "spread 3 over 8 1", "mine left-lead 1");
    Groove long_ = sheet.grooves().get(1);
    assertThat(long_.strokes().stream().filter(s -> s.surface().name().equals("kick")))
        .as("the other parts repeat")
        .hasSize(3);
  }

  @Test
  void aTextAfterTheLineIsTheCaption() {
    assertThat(sheet(" each add kick at 2& 4 \"Push\"\n each kick : r r . . \"Low\"\n").grooves())
        .extracting(Groove::caption)
        .containsExactly("Push", "Push", "Low");
  }

  @Test
  void whatComesToTheSameIsLeftOutAndTheNumbersCloseUp() {
    String lines = " each kick : r . r .\n each add kick at 3 4\n";
    assertThat(kicks(lines)).isEqualTo("0 1/2 | 0 3/4");
    assertThat(told(lines)).containsExactly("7 already-there");
    assertThat(first(lines).message()).contains("s-1");
    assertThat(sheet(lines).grooves()).extracting(Groove::name).containsExactly("s-1", "s-2");
  }

  @Test
  void aLineForAllNeedFindSomethingInOneOnly() {
    assertThat(told(" each kick : r . r . | r r . r\n drop kick at 2\n")).isEmpty();
    assertThat(told(" each kick : r . r . | r r . .\n drop kick at 2&\n"))
        .containsExactly("7 nothing-there");
    assertThat(told(" each kick : r . r . | r r . r\n accent kick at 2 3\n")).isEmpty();
  }

  @Test
  void aProblemIsToldOnceNamingTheFirstThatHasIt() {
    String lines = " each add kick at 2& 3 3&\n add tom1 with right at 1\n";
    assertThat(told(lines)).containsExactly("7 limb-conflict");
    assertThat(first(lines).place().section()).isEqualTo("s-1");
    String later =
        " each accent snare at 2\n each kick : r . . r\n add cowbell with left foot at 4\n";
    assertThat(told(later)).containsExactly("8 wrong-limb");
    assertThat(first(later).place().section()).isEqualTo("s-1");
  }

  @Test
  void wrongChoicesAreTold() {
    assertThat(told(" add kick at 2\n")).containsExactly("5 nothing-there");
    assertThat(told(" each add kick at 2 of 1&\n")).containsExactly("6 syntax");
    assertThat(told(" each add kick at 0 of 1&\n")).containsExactly("6 syntax");
    assertThat(told(" and add kick at 2\n")).containsExactly("6 syntax");
    assertThat(told(" each add kick at 2& 3\n and accent snare at 2\n"))
        .containsExactly("7 syntax");
    assertThat(told(" each kick : r . . . | %\n")).containsExactly("6 nothing-there");
    assertThat(told(" each kick : -r . . .\n")).containsExactly("6 nothing-there");
    assertThat(told(" each 2 bars kick : r . . . | . . . r\n")).containsExactly("6 bar-count");
    assertThat(told(" bars 2\n each 2 bars kick : r . . . | . . . r | r . . .\n"))
        .containsExactly("7 bar-count");
    assertThat(told(" each kick : r . r\n")).containsExactly("6 bar-length");
    assertThat(told(" each accent kick at 4\n")).containsExactly("6 nothing-there");
    assertThat(told(" each hands play nonsense in eighths\n")).containsExactly("6 unknown-name");
  }

  @Test
  void aSheetHasAtMostSixtyFour() {
    assertThat(told(" each add kick at 4 of 1& 1e 1a 2 2e 2& 2a 3\n"))
        .as("70 choices")
        .containsExactly("6 too-long");
    assertThat(told(" each add kick at 16 of " + "1e 1& 1a 2 2e 2& 2a 3 ".repeat(4) + "\n"))
        .as("601 million choices")
        .containsExactly("6 too-long");
    String bars = " each kick : " + "r . . . | ".repeat(63) + "r . . r\n";
    assertThat(told(bars)).hasSize(62).allMatch(one -> one.equals("6 already-there"));
    assertThat(told(bars + " each add kick at 2\n"))
        .as("counted before any is left out")
        .containsExactly("7 too-long");
  }

  @Test
  void aVariationThatIsNamedIsCalledAsInItsSheet() {
    var lesson =
        Compact.compile(
                "groove a\n kick : x . . .\nsheet s \"Kicks\" from a\n each add kick at 2 3\n"
                    + " each add kick at 4 \"Push\"\nchart c\n play s-2 s-3\n")
            .lesson();
    Chart.Play play = (Chart.Play) lesson.charts().get(0).items().get(0);
    assertThat(play.turns().stream().map(turn -> turn.groove().caption()))
        .containsExactly("Kicks: 2", "Push");
    assertThat(lesson.grooves()).containsAll(play.turns().stream().map(t -> t.groove()).toList());
  }

  @Test
  void variationsAreNamedBelowTheirSheetAndInChartsAnywhere() {
    String sheet = "sheet s \"S\" from beat\n each add kick at 2& 3 4\n";
    assertThat(problems(BEAT + sheet + "step up from s-2\n drop kick at 1\n")).isEmpty();
    assertThat(Compact.last(BEAT + sheet + "step up from s-2\n only kick\n drop kick at 1\n"))
        .isEqualTo("1/2 rf kick");
    assertThat(
            problems(
                BEAT
                    + "chart c\n play s s-3 each 2 times\n climb s-1 from 60 to 80 by 5"
                    + " every 2 times\n"
                    + sheet))
        .isEmpty();
    assertThat(problems(BEAT + "step up from s-2\n" + sheet)).containsExactly("5 unknown-name");
    assertThat(problems(BEAT + sheet + "step up from s\n")).containsExactly("7 unknown-name");
    assertThat(problems(BEAT + sheet + "step up\n take kick from s-3\n")).isEmpty();
  }

  @Test
  void aSectionOfThatNameWins() {
    String sheet = "sheet s \"S\" from beat\n each add kick at 2& 3\n";
    String text = BEAT + sheet + "groove s-2\n kick : . . . r\nstep up from s-2\n";
    assertThat(problems(text)).isEmpty();
    assertThat(Compact.last(text)).isEqualTo("3/4 rf kick");
  }

  @Test
  void pastTheLastIsUnknownAndSaysWhatCoincided() {
    String text =
        BEAT
            + "sheet s \"S\" from beat\n each kick : r . r .\n each add kick at 3 4\n"
            + "chart c\n play s-3\n";
    List<Diagnostic> all = compile(text).diagnostics();
    Diagnostic unknown = all.get(all.size() - 1);
    assertThat(unknown.code().word()).isEqualTo("unknown-name");
    assertThat(unknown.message()).contains("2 variations");
    assertThat(unknown.help()).contains("s-2").contains("“s-1” was written twice");
  }

  @Test
  void withoutFromItStartsFromWhatStandsAbove() {
    Compiled compiled = compile(BEAT + "step next\n add kick at 3\nsheet s\n each add kick at 4\n");
    assertThat(compiled.diagnostics()).isEmpty();
    assertThat(compiled.lesson().sheets().get(0).base().name()).isEqualTo("next");
    assertThat(problems("sheet s\n each add kick at 4\n")).containsExactly("1 unknown-name");
    assertThat(problems(BEAT + "sheet beat\n each add kick at 4\n"))
        .containsExactly("5 duplicate-name");
  }
}
