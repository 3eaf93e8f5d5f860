package tabor.compare;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.resolve.Options;

class ChangeWordsTest {
  private static final String LESSON =
      """
      title  "Six-eight workshop"
      time   6/8
      tempo  60

      groove  pads "On the snare"
        hands  play paradiddle-diddle in sixteenths
        text   "Low taps, tall accents."

      step    kitted "Right hand to the ride"
        right  plays ride
        left   plays snare ghosted

      step    answer "The last double moves"
        split  left plain between tom2 and floor at 2.5 2.6

      chart   practice "Practice"
        count-in 1 bar
        play   kitted 4 times
      """;

  private static Compiled compiled(String text) {
    return new Compiler(Loader.NONE).compile(Path.of("lesson.tabor"), text, Options.NONE);
  }

  private static List<String> words(String before, String after) {
    return ChangeWords.of(FileComparison.of(compiled(before), compiled(after))).stream()
        .map(ChangeWords.Said::toString)
        .toList();
  }

  private static List<String> edited(String from, String to) {
    assertThat(LESSON).contains(from);
    return words(LESSON, LESSON.replace(from, to));
  }

  @Test
  void whatIsStruckOtherwiseIsSaidByLimbAndCount() {
    assertThat(edited("between tom2 and floor at 2.5 2.6", "between tom2 and tom1 at 2.5 2.6"))
        .containsExactly("step answer, bar 1: left hand on 2.6 moved from floor tom to first tom");
    assertThat(edited("at 2.5 2.6\n", "at 2.5 2.6\n  add kick at 1 2&\n"))
        .containsExactly("step answer, bar 1: kick added on 1 and 2&");
    assertThat(edited("at 2.5 2.6\n", "at 2.5 2.6\n  flam snare at 1.2\n"))
        .containsExactly("step answer, bar 1: snare on 1.2: flam added");
    assertThat(edited("at 2.5 2.6\n", "at 2.5 2.6\n  accent snare at 1.2\n"))
        .containsExactly("step answer, bar 1: snare on 1.2 accented (was ghosted)");
    assertThat(edited("at 2.5 2.6\n", "at 2.5 2.6\n  drop ride at 1\n"))
        .containsExactly("step answer, bar 1: ride left out on 1");
  }

  @Test
  void aStrokeHasMovedOnlyWhereItCanHaveMovedNowhereElse() {
    String before = "groove a\n  kick : x . . .\n";
    assertThat(words(before, "groove a\n  kick : . x . .\n"))
        .containsExactly("groove a, bar 1: kick moved from 1 to 2");
    assertThat(words(before, "groove a\n  kick : . x x .\n"))
        .containsExactly("groove a, bar 1: kick left out on 1; kick added on 2 and 3");
  }

  @Test
  void aHeaderSettingIsSaidOnce() {
    assertThat(edited("tempo  60", "tempo  66")).containsExactly("tempo 60 → 66");
    assertThat(edited("title  \"Six-eight workshop\"", "title \"Six\""))
        .containsExactly("title \"Six-eight workshop\" → \"Six\"");
    assertThat(edited("groove  pads \"On the snare\"", "groove  pads \"On the snare\"\n  tempo 50"))
        .containsExactly(
            "groove pads: tempo 60 → 50",
            "step kitted changed as pads did",
            "step answer changed as kitted did");
  }

  @Test
  void aHeaderSettingThatNobodyHearsIsNoChange() {
    String own = "groove a\n  tempo 70\n  kick : x . x .\n";
    assertThat(words("tempo 60\n" + own, "tempo 90\n" + own)).isEmpty();
  }

  @Test
  void aChangeThatComesFromTheSectionAboveIsSaidThere() {
    assertThat(edited("left   plays snare ghosted", "left   plays snare ghosted\n  add kick at 1"))
        .containsExactly(
            "step kitted, bar 1: kick added on 1", "step answer changed as kitted did");
  }

  @Test
  void sectionsAreFollowedThroughARename() {
    assertThat(edited("kitted", "ridden")).containsExactly("step ridden was called kitted");
    String both = LESSON.replace("kitted", "ridden").replace("ghosted", "ghosted\n  add kick at 1");
    assertThat(words(LESSON, both))
        .containsExactly(
            "step ridden was called kitted",
            "step ridden, bar 1: kick added on 1",
            "step answer changed as ridden did");
  }

  @Test
  void sectionsComeAndGo() {
    String quick = "\nstep quick\n  accent ride at 1\n";
    assertThat(words(LESSON, LESSON + quick)).containsExactly("step quick is new");
    assertThat(words(LESSON + quick, LESSON)).containsExactly("step quick is taken out");
  }

  @Test
  void proseTitlesAndChartsAreChangesToo() {
    assertThat(edited("Low taps", "Lower taps")).containsExactly("prose of pads changed");
    assertThat(edited("\"On the snare\"", "\"On a snare\""))
        .containsExactly("groove pads: title \"On the snare\" → \"On a snare\"");
    assertThat(edited("play   kitted 4 times", "play kitted 6 times\n rest 1 bar"))
        .containsExactly(
            "chart practice: play kitted 4 times → play kitted 6 times",
            "chart practice: rest 1 bar added");
  }

  @Test
  void aBarPutInFrontIsOneNewBar() {
    String before = "groove a\n  kick : x . x . | x x . . | . . x x\n";
    String after = "groove a\n  kick : xx xx xx xx | x . x . | x x . . | . . x xx\n";
    assertThat(words(before, after))
        .containsExactly(
            "groove a: length 3 bars → 4 bars",
            "groove a, bar 1 is new",
            "groove a, bar 4: kick added on 4&");
    assertThat(words(after, before))
        .containsExactly(
            "groove a: length 4 bars → 3 bars",
            "groove a, the old bar 1 is left out",
            "groove a, bar 3: kick left out on 4&");
  }

  @Test
  void barsWithTheSameChangeAreNamedTogether() {
    String before = "groove a\n  kick : x . x . | x . x . | x . x . | x . . .\n";
    String after = "groove a\n  kick : x . x x | x . x x | x . x x | x . . x\n";
    assertThat(words(before, after)).containsExactly("groove a, bars 1 to 4: kick added on 4");
  }

  @Test
  void anotherSpellingAndAnotherOrderOfPartsAreNoChange() {
    assertThat(
            words(
                "groove a\n  kick : x . x .\n  snare : . x . x\n",
                "groove a\n  snare : . r . r  # right\n  kick : x... . x.:1 .\n"))
        .isEmpty();
    assertThat(
            words(
                "groove a\n  hands play paradiddle in eighths\n",
                "groove a\n  hands : Rl rr Lr ll\n"))
        .isEmpty();
  }

  @Test
  void aKitOfTheirOwnIsComparedByWhatIsStruck() {
    String kit = "kit small like five-piece\n  without tom2 plays floor\n";
    String groove = "groove a\n  on small\n  tom2 : x x x x\n";
    assertThat(words(kit + groove, kit.replace("plays floor", "plays tom1") + groove))
        .containsExactly("kit small: tom2 on floor → tom2 on tom1");
  }

  @Test
  void aSectionWithErrorsIsComparedLineByLine() {
    String wrong = LESSON.replace("between tom2", "betwixt tom2");
    assertThat(words(LESSON, wrong))
        .contains("step answer has errors now, so that only its lines are compared");
    assertThat(words(wrong, wrong)).isEmpty();
    assertThat(words(wrong, wrong.replace("at 2.5 2.6", "at 2.5")))
        .containsExactly(
            "step answer: split  left plain betwixt tom2 and floor at 2.5 2.6 → "
                + "split  left plain betwixt tom2 and floor at 2.5");
  }

  @Test
  void sectionsInAnotherOrder() {
    String a = "groove a\n  kick : x . x .\n";
    String b = "groove b\n  kick : x x x x\n";
    assertThat(words(a + b, b + a)).hasSize(1).allMatch(words -> words.contains("place "));
  }

  private static final String SHEET =
      """
      groove beat
        hihat : xx xx xx xx
        snare : .  x  .  x
        kick  : x  .  .  .

      sheet kicks "Where the kick can go" from beat
        each add kick at 2 2& 3
      """;

  @Test
  void aVariationPutInBetweenIsOneNewVariation() {
    assertThat(words(SHEET, SHEET.replace("at 2 2& 3", "at 2 2& 3 4")))
        .containsExactly("sheet kicks-4 is new");
    assertThat(words(SHEET, SHEET.replace("at 2 2& 3", "at 1& 2 2& 3")))
        .containsExactly("sheet kicks-1 is new");
    assertThat(words(SHEET.replace("at 2 2& 3", "at 1& 2 2& 3"), SHEET))
        .containsExactly("sheet kicks-1 is taken out");
  }

  @Test
  void anotherWayToWriteTheSameVariationsIsNoChange() {
    String apart = "each add kick at 2\n  each add kick at 2& | 3";
    assertThat(words(SHEET, SHEET.replace("each add kick at 2 2& 3", apart))).isEmpty();
  }

  @Test
  void whatASheetTakesFromItsGrooveIsSaidOnce() {
    assertThat(words(SHEET, SHEET.replace("snare : .  x  .  x", "snare : .  x  .  X")))
        .containsExactly(
            "groove beat, bar 1: snare on 4 accented (was plain)",
            "sheet kicks changed as beat did");
  }

  @Test
  void aSheetIsFollowedThroughARename() {
    assertThat(words(SHEET, SHEET.replace("sheet kicks", "sheet feet")))
        .containsExactly("sheet feet was called kicks");
  }

  @Test
  void whatThePagePrintsAndPlayersAreComparedByLine() {
    assertThat(words(SHEET, "page large\n" + SHEET)).containsExactly("page large added");
    String goal = "sheet kicks \"Where the kick can go\" from beat\n  goal \"Even\"";
    assertThat(words(SHEET, SHEET.replace("sheet kicks \"Where the kick can go\" from beat", goal)))
        .containsExactly("sheet kicks: goal \"Even\" added");
    String player = "player mia \"Mia\"\n  tempo 80%\n";
    assertThat(words(player + SHEET, player.replace("80", "90") + SHEET))
        .containsExactly("player mia: tempo 80% → tempo 90%");
  }
}
