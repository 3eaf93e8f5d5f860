package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.diagnostic.Diagnostic;

/** Parts that go round or spread over several beats: sections 3, 4 and 7 of the notation. */
class PartLinesTest {
  @ParameterizedTest
  @CsvSource(
      value = {
        // Beat numbers and syllables stay the meter's own.
        "rlrl:2 . .; every &; 0 R snare, 1/8 L snare>, 1/4 R snare, 3/8 L snare>",
        "rlrl:2 . .; every beat; 0 R snare>, 1/8 L snare, 1/4 R snare>, 3/8 L snare",
        "rlrl:2 . .; every .3; 0 R snare, 1/8 L snare, 1/4 R snare>, 3/8 L snare",
        "rlrl:2 . .; 2&; 0 R snare, 1/8 L snare, 1/4 R snare, 3/8 L snare>",
        "rlrl:2 . .; 1.4; 0 R snare, 1/8 L snare, 1/4 R snare, 3/8 L snare>",
        "rlr:2 . .; every beat; 0 R snare>, 1/6 L snare, 1/3 R snare",
        "rlr:2 . .; 1.2; 0 R snare, 1/6 L snare>, 1/3 R snare",
        "r{lr}:2 . .; every beat; 0 R snare>, 1/4 L snare>, 3/8 R snare>",
        "r..l.r..:2 . .; every a; 0 R snare, 3/16 L snare>, 5/16 R snare",
        "r..l.r..:2 . .; every e; 0 R snare, 3/16 L snare, 5/16 R snare>",
      },
      delimiter = ';')
  void countsInAWordOverTwoBeats(String words, String at, String strokes) {
    String text = "groove g\n hands : " + words + "\n accent hands at " + at + "\n";
    assertThat(Compact.last(text)).isEqualTo(strokes);
    assertThat(Compact.problems(text)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      value = {
        "bars 4/  ostinato kick : x . . . | %; 0 rf kick | 0 rf kick | 0 rf kick | 0 rf kick",
        "bars 4/  ostinato kick : x . . . | . x . .; 0 rf kick | 1/4 rf kick | 0 rf kick"
            + " | 1/4 rf kick",
        "pickup 1 beat/  hands : r | r . . . | . . . ./  ostinato kick : . . . x; 3/4 R snare"
            + " | 0 R snare, 3/4 rf kick | 3/4 rf kick",
        "bars 1/  hands play p in quarters; 0 R snare(), 1/4 L snare(), 1/2 R snare, 3/4 R snare()",
        "bars 1/  hands play held in quarters; 0 R snare, 1/2 L snare",
        "bars 1/  hands play open in quarters; 1/4 R snare, 1/2 R snare",
        "time 4/4 3/4/ "
            + " bars 2/ "
            + " kick plays three in quarters; 0 rf kick, 3/4 rf kick | 1/2 rf kick",
      },
      delimiter = ';')
  void partsThatGoRound(String lines, String strokes) {
    String text =
        "pattern p : (rl)r\n"
            + "pattern held : r-l-\n"
            + "pattern open : .rr.\n"
            + "pattern three : x..\n"
            + "groove g\n"
            + " "
            + lines.replace("/ ", "\n ")
            + "\n";
    assertThat(Compact.last(text)).isEqualTo(strokes);
  }

  @Test
  void whatGoesRoundCannotBeginWithWhatIsNotThere() {
    Diagnostic repeat = Compact.only("groove g\n bars 2\n ostinato kick : % | x . . .\n");
    assertThat(repeat.code().word()).isEqualTo("nothing-there");
    assertThat(repeat.message()).isEqualTo("there is no bar before this one to repeat");
    assertThat(repeat.place().bar()).isEqualTo(1);
    Diagnostic meter = Compact.only("groove g\n time 4/4 3/4\n kick : x . . . | %\n");
    assertThat(meter.message()).isEqualTo("there is no bar of 3/4 before this one to repeat");
    assertThat(Compact.hints("groove g\n bars 3\n ostinato snare : x - . .\n"))
        .as("said once")
        .containsExactly("3 held-drum");
  }

  @Test
  void capitalsInParenthesesAreTold() {
    for (String word : List.of("(R)", "(lR)", "{(R)l}", "(l{R})")) {
      Diagnostic told = Compact.only("groove g\n hands : " + word + " . . .\n");
      assertThat(told.code().word()).isEqualTo("accent-in-ghost");
      assertThat(told.spot().text()).isEqualTo("R");
      assertThat(told.fixes().get(0).edits().get(0).text()).isEqualTo("r");
    }
    assertThat(Compact.problems("pattern p : (R)l\ngroove g\n hands play p in eighths\n"))
        .containsExactly("1 accent-in-ghost");
    assertThat(Compact.problems("groove g\n hands : R(l) . . .\n")).isEmpty();
  }

  @Test
  void allCapitalsAreFromEightOn() {
    assertThat(Compact.problems("groove g\n hands : RLRL RLR. . .\n")).isEmpty();
    assertThat(Compact.problems("groove g\n hands : RLRL RLRL . .\n"))
        .containsExactly("2 all-accents");
    assertThat(Compact.problems("groove g\n hands : {RL}RL (rl)RL RLRL .\n")).isEmpty();
    assertThat(Compact.problems("groove g\n hands : {RL}{RL} RLRL . .\n"))
        .containsExactly("2 all-accents");
  }

  @Test
  void oneWordUnlikeItsNeighbours() {
    assertThat(Compact.problems("groove g\n hihat : xx xxx xx xx\n")).containsExactly("2 odd-beat");
    assertThat(Compact.problems("groove g\n time 2/4\n hihat : xx xxx\n"))
        .as("too few around")
        .isEmpty();
    assertThat(Compact.problems("groove g\n time 3/4\n hihat : xxxx xxx xxxx\n"))
        .containsExactly("3 odd-beat");
    assertThat(Compact.problems("groove g\n hihat : xxx xxx xx xxx\n"))
        .as("the others are not even")
        .isEmpty();
    Diagnostic told = Compact.only("groove g\n hihat : xx xxx xx xx\n");
    assertThat(told.help()).isEqualTo("write xxx:1 to say that 3 in the beat are meant");
    assertThat(told.fixes().get(0).edits().get(0).text()).isEqualTo(":1");
  }

  @ParameterizedTest
  @CsvSource({
    "right plays ride at every beat, right plays ride at 1",
    "split left between tom1 and floor at every &, split left between tom1 and floor at 1&",
    "tom1 follows right at every beat, tom1 follows right at 1",
    "double right at every beat, double right at 1",
  })
  void everyOfALimbIsWhatThatLimbPlays(String each, String first) {
    String beat = "groove beat\n hands : rl rl . .\n";
    var sheet =
        Compact.compile(beat + "sheet s from beat\n each " + each + "\n").lesson().sheets().get(0);
    assertThat(sheet.grooves()).hasSize(2);
    assertThat(Compact.of(sheet.grooves().get(0)))
        .isEqualTo(Compact.last(beat + "step t\n " + first + "\n"));
  }
}
