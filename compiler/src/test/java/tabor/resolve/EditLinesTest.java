package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Severity;
import tabor.groove.Ornament;
import tabor.rhythm.Time;

/** Edits in detail: sections 6 and 7 of the notation; strokes and words are worked out by hand. */
class EditLinesTest {
  @ParameterizedTest
  @CsvSource(
      value = {
        "add kick at 2| 0 rf kick, 1/4 rf kick, 1/2 rf kick",
        "add kick at 2 in bar 1| 0 rf kick, 1/4 rf kick, 1/2 rf kick",
        "add kick at 1 4| 0 rf kick, 1/2 rf kick, 3/4 rf kick",
        "add kick ghosted at 1 4| 0 rf kick(), 1/2 rf kick, 3/4 rf kick()",
        "add kick with left at 1| 0 lf kick, 1/2 rf kick",
        "add kick with left foot at 2| 0 rf kick, 1/4 lf kick, 1/2 rf kick",
        "add snare with left at 2| 0 rf kick, 1/4 L snare, 1/2 rf kick",
        "add right at 2| 0 rf kick, 1/4 R snare, 1/2 rf kick",
        "add left foot accented at 2| 0 rf kick, 1/4 lf hihat.foot>, 1/2 rf kick",
        "add kick at every beat| 0 rf kick, 1/4 rf kick, 1/2 rf kick, 3/4 rf kick",
        "add kick at every a| 0 rf kick, 3/16 rf kick, 7/16 rf kick, 1/2 rf kick, 11/16 rf kick,"
            + " 15/16 rf kick",
        "add kick at every e| 0 rf kick, 1/16 rf kick, 5/16 rf kick, 1/2 rf kick, 9/16 rf kick,"
            + " 13/16 rf kick",
        "add kick at every .3| 0 rf kick, 1/8 rf kick, 3/8 rf kick, 1/2 rf kick, 5/8 rf kick,"
            + " 7/8 rf kick",
        "add kick at every half| 0 rf kick, 1/2 rf kick",
        "add kick at every quarter-triplet| 0 rf kick, 1/6 rf kick, 1/3 rf kick, 1/2 rf kick,"
            + " 2/3 rf kick, 5/6 rf kick",
        "drop kick at 1| 1/2 rf kick",
        "double kick| 0 rf kick, 1/8 rf kick, 1/2 rf kick, 5/8 rf kick",
        "triple kick at 3| 0 rf kick, 1/2 rf kick, 7/12 rf kick, 2/3 rf kick",
        "move kick from 3 to 4&| 0 rf kick, 7/8 rf kick",
        "shift kick later by 1 quarter| 1/4 rf kick, 3/4 rf kick",
        "shift kick later by 3 beats| 1/4 rf kick, 3/4 rf kick",
        "shift kick earlier by 5 beats| 1/4 rf kick, 3/4 rf kick",
        "shift kick earlier by 1 sixteenth| 7/16 rf kick, 15/16 rf kick",
        "shift kick later by 4 beats| 0 rf kick, 1/2 rf kick",
      },
      delimiter = '|')
  void anEditMakes(String line, String strokes) {
    assertThat(Compact.lastOfFine("groove g\n kick : x . x .\nstep s\n " + line + "\n"))
        .isEqualTo(strokes);
  }

  @Test
  void addReadsEveryInThePickupToo() {
    assertThat(
            Compact.lastOfFine(
                "groove g\n pickup 2 beats\n kick : x . | x . . .\n add kick at every beat\n"))
        .isEqualTo("1/2 rf kick, 3/4 rf kick | 0 rf kick, 1/4 rf kick, 1/2 rf kick, 3/4 rf kick");
    assertThat(
            Compact.lastOfFine(
                "groove g\n pickup 1 beat\n kick : x | x . . .\n add kick at every eighth\n"))
        .isEqualTo(
            "3/4 rf kick, 7/8 rf kick | 0 rf kick, 1/8 rf kick, 1/4 rf kick, 3/8 rf kick, 1/2 rf"
                + " kick, 5/8 rf kick, 3/4 rf kick, 7/8 rf kick");
  }

  @Test
  void addPassesOverBarsThatLackThePlaceUnlessTheyAreNamed() {
    String turns = "groove g\n time 4/4 3/4\n hands : r . . . | r . .\n";
    assertThat(Compact.lastOfFine(turns + " add kick at 4\n"))
        .isEqualTo("0 R snare, 3/4 rf kick | 0 R snare");
    assertThat(Compact.problems(turns + " add kick at 4 in bars 1 2\n"))
        .containsExactly("4 count-outside-bar");
    assertThat(Compact.problems(turns + " add kick at 5\n")).containsExactly("4 count-outside-bar");
    assertThat(Compact.lastOfFine(turns + " add kick at every a in bars 1 2\n"))
        .contains("11/16 rf kick");
    assertThat(
            Compact.problems("groove g\n time 5/8\n kick : x . . . .\n add kick at every half\n"))
        .isEmpty();
    assertThat(Compact.problems("groove g\n time 3/8\n kick : x . .\n add kick at every half\n"))
        .containsExactly("4 count-outside-bar");
    assertThat(
            Compact.problems(
                "groove g\n time 5/8 3/8\n kick : x . . . . | x . .\n add kick at every half in"
                    + " bars 1 2\n"))
        .as("every passes over bars without one")
        .isEmpty();
    assertThat(
            Compact.only(
                    "groove g\n time 3/8\n kick : x . .\n add kick at every half\n",
                    Severity.WARNING)
                .message())
        .isEqualTo("no beat of these bars has such a place");
  }

  @Test
  void anAddedBarThatIsNotThereIsTold() {
    Diagnostic told =
        Compact.only("groove g\n kick : x . . .\n add kick at 2 in bar 2\n", Severity.WARNING);
    assertThat(told.message()).isEqualTo("“g” has only 1 bar");
    assertThat(told.help()).isEqualTo("name a bar from 1 to 1");
    assertThat(Compact.last("groove g\n kick : x . . .\n add kick at 2 in bar 2\n"))
        .isEqualTo("0 rf kick");
    assertThat(
            Compact.only(
                    "groove g\n pickup 1 beat\n kick : x | x . . .\n add kick at 2 in bar 2\n",
                    Severity.WARNING)
                .help())
        .isEqualTo("name a bar from 0 to 1");
  }

  @Test
  void twoReadingsOfAnAddedCountAreOffered() {
    Diagnostic told =
        Compact.only(
            "groove g\n"
                + " hands : rlr . . .\n"
                + " hihat : xxxx . . .\n"
                + " kick : . . . x\n"
                + " add kick at 1a\n",
            Severity.WARNING);
    assertThat(told.code().word()).isEqualTo("ambiguous-count");
    assertThat(told.message()).isEqualTo("1a can be read in two ways here, as 1a/3 and as 1a/4");
    assertThat(told.help()).isEqualTo("name the division: 1a/3 or 1a/4");
    assertThat(told.place().count()).isEqualTo("1a");
  }

  @Test
  void addOntoAStrokeThatIsThere() {
    String open = "groove g\n snare : . x . x\n";
    assertThat(Compact.hints(open + " add snare at 2\n")).containsExactly("3 already-there");
    assertThat(Compact.hints(open + " add snare at 2 3\n")).isEmpty();
    assertThat(Compact.hints(open + " add snare accented at 2\n")).isEmpty();
    assertThat(Compact.hints(open + " accent snare at 2\n add snare accented at 2\n"))
        .containsExactly("4 already-there");
    assertThat(Compact.lastOfFine(open + " add snare with left ghosted at 2\n"))
        .startsWith("1/4 L snare(), 3/4 ");
    assertThat(Compact.lastOfFine("groove g\n hands : . l . .\n add snare with right at 2\n"))
        .as("the other hand strikes too")
        .isEqualTo("1/4 R snare, 1/4 L snare");
    assertThat(Compact.lastOfFine("groove g\n hands : . l . .\n add snare at 2 4\n"))
        .as("without a limb: where the surface is struck already")
        .startsWith("1/4 L snare, 3/4 ");
  }

  @Test
  void followsIsAddedWhereverTheLimbStrikes() {
    String hands = "groove g\n hands : rl . r .\n";
    assertThat(Compact.lastOfFine(hands + "step s\n kick follows left\n"))
        .isEqualTo("0 R snare, 1/8 L snare, 1/8 rf kick, 1/2 R snare");
    assertThat(Compact.lastOfFine(hands + "step s\n kick follows right at 3\n"))
        .isEqualTo("0 R snare, 1/8 L snare, 1/2 R snare, 1/2 rf kick");
    assertThat(
            Compact.only(hands + "step s\n kick follows left foot\n", Severity.WARNING)
                .code()
                .word())
        .isEqualTo("nothing-there");
  }

  @Test
  void groupsMoveWholeAndTheirPartsAlone() {
    String group = "groove g\n snare : r{lr} . . .\n";
    assertThat(Compact.lastOfFine(group + " move snare from 1& to 3\n"))
        .as("the group as it is, in the beat's own slot")
        .isEqualTo("0 R snare, 1/2 L snare, 5/8 R snare");
    assertThat(Compact.lastOfFine(group + " move snare from 1&.2 to 3\n"))
        .isEqualTo("0 R snare, 1/8 L snare, 1/2 R snare");
    assertThat(Compact.lastOfFine(group + " move snare from 1.2 to 3\n"))
        .isEqualTo("0 R snare, 1/2 L snare, 5/8 R snare");
    assertThat(Compact.lastOfFine(group + " move snare from 1.2.1 to 3\n"))
        .isEqualTo("0 R snare, 3/16 R snare, 1/2 L snare");
    Diagnostic told = Compact.only(group + " move snare from 1 to 5\n", Severity.WARNING);
    assertThat(told.message()).contains("no beat 5");
  }

  @Test
  void aMovedStrokeIsReadByItsOwnDivision() {
    assertThat(Compact.lastOfFine("groove g\n snare : rlr . . .\n move snare from 1a to 2a\n"))
        .as("nothing divides beat 2: the plain reading")
        .isEqualTo("0 R snare, 1/12 L snare, 7/16 R snare");
    assertThat(Compact.lastOfFine("groove g\n snare : rlr r.. . .\n move snare from 1a to 2a\n"))
        .isEqualTo("0 R snare, 1/12 L snare, 1/4 R snare, 5/12 R snare");
  }

  @Test
  void shiftGoesRoundTheBars() {
    String two = "groove g\n kick : x . . . | . . . x\n";
    assertThat(Compact.lastOfFine(two + " shift kick later by 1 bar\n"))
        .isEqualTo("3/4 rf kick | 0 rf kick");
    assertThat(Compact.lastOfFine(two + " shift kick later by 1 beat\n"))
        .isEqualTo("0 rf kick, 1/4 rf kick");
    assertThat(Compact.lastOfFine(two + " shift kick earlier by 1 beat\n"))
        .isEqualTo("| 1/2 rf kick, 3/4 rf kick");
    assertThat(
            Compact.lastOfFine(
                "groove g\n time 4/4 3/4\n kick : . . . x | . . x\n shift kick later by 2 beats\n"))
        .isEqualTo("1/4 rf kick | 1/4 rf kick");
    Diagnostic bars =
        Compact.only(
            "groove g\n time 4/4 3/4\n kick : x . . . | x . .\n shift kick later by 1 bar\n",
            Severity.WARNING);
    assertThat(bars.code().word()).isEqualTo("bar-length");
    assertThat(bars.message()).isEqualTo("the bars of 4/4 3/4 are not equally long");
    assertThat(
            Compact.lastOfFine(
                "groove g\n time 7/8 in 2+2+3\n kick : x . .\n shift kick later by 1 beat\n"))
        .as("in unequal beats the denominator unit")
        .isEqualTo("1/8 rf kick");
    assertThat(Compact.problems(two + " shift kick later by 100000 beats\n")).isEmpty();
    assertThat(Compact.problems(two + " shift kick later by 100001 beats\n"))
        .containsExactly("3 syntax");
  }

  @Test
  void heldStrokesAreDividedWithTheirHold() {
    var groove =
        Compact.compile("groove g\n ride : r - . .\n triple ride at 1\n").lesson().grooves().get(0);
    assertThat(groove.strokes().stream().map(s -> s.at() + " " + s.length()))
        .containsExactly("0 1/12", "1/12 1/12", "1/6 1/3");
  }

  @Test
  void aRollThatIsDividedRollsNoMore() {
    for (String verb : List.of("double", "triple")) {
      var groove =
          Compact.compile("groove g\n hands : 'R///- -- . .\n " + verb + " hands at 1\n")
              .lesson()
              .grooves()
              .get(0);
      int times = verb.equals("double") ? 2 : 3;
      assertThat(groove.strokes()).hasSize(times);
      assertThat(groove.strokes().get(0).ornaments().list()).containsExactly(Ornament.FLAM);
      assertThat(groove.strokes())
          .allMatch(s -> s.length().equals(Time.of(1, 8L * times)) && !s.ornaments().isRolled());
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "accent tomm",
        "accent kick, tomm",
        "add tomm at 2",
        "add snare with left foot at 2",
        "left plays tomm",
        "left plays kick",
        "left plays",
        "split left between snare and tomm",
        "split left between snare and kick",
        "tomm follows right",
        "take kick from none",
        "take kick from drawn",
        "fill none in bar 1",
        "fill drawn in bar 1",
        "left : q . . .",
        "left : k . . .",
        "hands : k . . .",
        "snare : r= . . .",
        "hands play none in eighths",
        "ostinato tom1 : q . . .",
        "tomm : r . . .",
        "snare : %",
        "snare : {{{{{{{{{r}}}}}}}}} . . .",
      })
  void whereALineIsWrongNothingIsMissedBelow(String line) {
    String text =
        "groove drawn\n snare : x q\ngroove g\n hands : . r . .\nstep s\n "
            + line
            + "\n accent china\n";
    List<String> told = Compact.problems(text);
    assertThat(told).as("the line itself, or its source").hasSizeBetween(2, 3);
    assertThat(told).doesNotContain("7 nothing-there");
    assertThat(Compact.problems(text.replace(" " + line + "\n", " accent snare\n")))
        .contains("7 nothing-there");
  }

  @ParameterizedTest
  @CsvSource(
      value = {
        "kick : x x x| bar 1 has 3 beats, but 4/4 has 4 beats| each word between spaces is one"
            + " beat: write one more word, a dot for a silent beat| x x x .",
        "kick : x| bar 1 has 1 beat, but 4/4 has 4 beats| each word between spaces is one beat:"
            + " write 3 more words, a dot for a silent beat| x . . .",
        "kick : x x:2| bar 1 has 3 beats, but 4/4 has 4 beats| each word between spaces is one"
            + " beat: write one more word, a dot for a silent beat| x x:2 .",
        "kick : x x x x x| bar 1 has 5 beats, but 4/4 has 4 beats| each word between spaces is one"
            + " beat: take one word out, or set a bar line| x x x x",
        "kick : x x x x x x x| bar 1 has 7 beats, but 4/4 has 4 beats| each word between spaces is"
            + " one beat: take 3 beats out, or set a bar line| x x x x",
        "kick : x x x xx:2| bar 1 has 5 beats, but 4/4 has 4 beats| each word between spaces is one"
            + " beat: take one word out, or set a bar line| -",
        "kick : x. x. x. x. x. x. x. x. x. x. x. x.| bar 1 has 12 beats, but 4/4 has 4 beats|"
            + " each word between spaces is one beat: take 8 beats out, or set a bar line|"
            + " x. x. x. x. : x. x. x. x. : x. x. x. x.",
      },
      delimiter = '|')
  void barsOfAnotherLengthAreExplained(String part, String message, String help, String fixed) {
    Diagnostic told = Compact.only("groove g\n " + part + "\n", Severity.WARNING);
    assertThat(told.code().word()).isEqualTo("bar-length");
    assertThat(told.message()).isEqualTo(message);
    assertThat(told.help()).isEqualTo(help);
    if (fixed.equals("-")) {
      assertThat(told.fixes()).isEmpty();
      return;
    }
    String text = Compact.fixed("groove g\n " + part, told);
    assertThat(text.substring(text.indexOf(": ") + 2)).isEqualTo(fixed.replace(" : ", " | "));
  }

  @Test
  void aPickupOfAnotherLengthIsExplained() {
    assertThat(
            Compact.only("groove g\n pickup 2 beats\n kick : x | x . . .\n", Severity.WARNING)
                .message())
        .isEqualTo("the pickup has 1 beat, but it has room for 2 beats");
  }

  @Test
  void whatIsNotThereIsNamedWithWhatIs() {
    String text = "groove g\n snare : (x) . X x\nstep s\n ";
    assertThat(Compact.only(text + "accent snare at 2\n", Severity.WARNING).message())
        .isEqualTo("there is no stroke of “snare” at 2");
    assertThat(Compact.only(text + "accent snare at 2\n", Severity.WARNING).help())
        .isEqualTo("in bar 1 it is played at 1 3 4");
    assertThat(Compact.only(text + "plain snare at 4 where accented\n", Severity.WARNING).message())
        .isEqualTo("there is no accent of “snare” here");
    assertThat(Compact.only(text + "accent snare at 3 where ghosted\n", Severity.WARNING).message())
        .isEqualTo("there is no ghost stroke of “snare” here");
    assertThat(Compact.only(text + "accent snare at 1 where plain\n", Severity.WARNING).message())
        .isEqualTo("there is no plain stroke of “snare” here");
    assertThat(Compact.only(text + "accent kick, tom1\n", Severity.WARNING).message())
        .isEqualTo("there is no stroke of “kick, tom1” here");
    assertThat(Compact.only(text + "accent kick\n", Severity.WARNING).help())
        .isEqualTo("nothing above this line plays it");
    assertThat(
            Compact.only(
                    "groove g\n snare : . . . . | x . . .\nstep s\n accent snare in bar 1\n",
                    Severity.WARNING)
                .help())
        .isEqualTo("it is played in bar 2");
  }

  @Test
  void whatNoBarHasIsToldAsSuch() {
    String text = "groove g\n snare : x . x x\nstep s\n ";
    assertThat(Compact.only(text + "accent snare at 5\n", Severity.WARNING).message())
        .isEqualTo("there is no beat 5 in 4/4: the beats are 1 to 4");
    Diagnostic place = Compact.only(text + "accent snare at 1e/3\n", Severity.WARNING);
    assertThat(place.message()).isEqualTo("beat 1 has no place 1e/3 here");
    assertThat(place.help()).isEqualTo("name a place that the bar has, such as 1&");
    Diagnostic pickup =
        Compact.only(
            "groove g\n"
                + " pickup 1 beat\n"
                + " snare : x | x . . .\n"
                + "step s\n"
                + " accent snare at 1 in bar 0\n",
            Severity.WARNING);
    assertThat(pickup.message()).isEqualTo("the pickup has no beat 1");
    assertThat(pickup.help()).isEqualTo("name a place that the bar has, such as 4&");
    assertThat(Compact.only(text + "accent snare at 1e.2\n", Severity.WARNING).message())
        .isEqualTo("beat 1 has no place 1e.2 here");
  }

  @Test
  void metersThatDoNotAddUpAreExplained() {
    Diagnostic sum =
        Compact.only("groove g\n time 7/8 in 2+2+2\n kick : x . .\n", Severity.WARNING);
    assertThat(sum.message()).isEqualTo("these beats add up to 6, but a bar of 7/8 has 7");
    assertThat(sum.help()).isEqualTo("make the numbers add up to 7");
    Diagnostic five = Compact.only("groove g\n time 8/8 in 5+3\n kick : x .\n", Severity.WARNING);
    assertThat(five.message()).isEqualTo("a beat of 5/8 of a whole note is no note value");
    Diagnostic groups =
        Compact.only("groove g\n time 5/4 grouped 3+3\n kick : x . . . .\n", Severity.WARNING);
    assertThat(groups.message()).isEqualTo("these groups have 6 beats, but a bar of 5/4 has 5");
    assertThat(groups.help()).isEqualTo("make the numbers add up to 5");
    assertThat(Compact.problems("groove g\n time 6/8 in 6\n kick : x . . . . .\n")).isEmpty();
    assertThat(Compact.problems("groove g\n time 4/4 in 2\n kick : x .\n")).isEmpty();
    assertThat(Compact.problems("groove g\n time 7/8 in 2+2+3\n kick : x . .\n")).isEmpty();
  }

  @Test
  void levelsAndSwingOfTheHeader() {
    var setting =
        Compact.compile(
                "levels ghost 20 accent 120\nlevels plain 60\nfeel swing sixteenths 58%\n"
                    + "groove g\n kick : x . . .\n levels ghost 30\n")
            .lesson()
            .grooves()
            .get(0)
            .setting();
    assertThat(setting.levels().ghost()).isEqualTo(30);
    assertThat(setting.levels().plain()).isEqualTo(60);
    assertThat(setting.levels().accent()).isEqualTo(120);
    assertThat(setting.feel().share().toString()).isEqualTo("29/50");
    assertThat(
            Compact.compile("feel swing eighths 60%\ngroove g\n feel straight\n kick : x . . .\n")
                .lesson()
                .grooves()
                .get(0)
                .setting()
                .feel()
                .isStraight())
        .isTrue();
  }
}
