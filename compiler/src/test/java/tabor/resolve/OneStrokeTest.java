package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.diagnostic.Diagnostic;

/** One stroke in one place (section 6 of the notation), and other words for what is there. */
class OneStrokeTest {
  @ParameterizedTest
  @CsvSource(
      value = {
        // The louder level, the ornaments of both.
        "hands : r . . .; snare : R . . .| 0 R snare>",
        "hands : R . . .; snare : r . . .| 0 R snare>",
        "hands : (r) . . .; snare : r . . .| 0 R snare",
        "hands : 'r . . .; snare : r^ . . .| 0 R snare+flam,rimshot",
        // Two hands are two strokes.
        "hands : r . . .; snare : l . . .| 0 R snare, 0 L snare",
        // An open stroke is the one that is struck anyway, whoever strikes it.
        "left : s . . .; snare : x . . .| 0 L snare",
        "snare : x . . .; left : s . . .| 0 L snare",
        "snare : X . . .; left : s . . .| 0 L snare>",
        "snare : x . . .; left : S . . .; hihat : x . . .| 0 R hihat, 0 L snare>",
        "snare : x . . .; hands : b . . .| 0 R snare, 0 L snare",
        // Other surfaces and other places stay.
        "right : s . . .; left : t . . .| 0 R snare, 0 L tom1",
        "hands : r . . .; snare : . r . .| 0 R snare, 1/4 R snare",
        "kick : x . . .; right foot : k . . .; left foot : p . . .| 0 rf kick, 0 lf hihat.foot",
      },
      delimiter = '|')
  void strokesOfOneLimbOnOneSurfaceAreOne(String parts, String strokes) {
    String text = "groove g\n " + parts.replace("; ", "\n ") + "\n";
    assertThat(Compact.last(text)).isEqualTo(strokes);
    assertThat(Compact.problems(text)).isEmpty();
  }

  @Test
  void placesOfAValueThatDividesNoBeatAreAWordOverSeveral() {
    // Two beats of 6/8 are fifteen quintuplet places of 1/20.
    String text = "pattern p : r\ngroove g\n time 6/8\n bars 1\n hands play p in quintuplets\n";
    assertThat(Compact.last(text + " accent hands at 1.15\n")).endsWith("7/10 R snare>");
    assertThat(Compact.last(text + " drop hands\n add kick at 1.4\n"))
        .as("nothing divides the beat any more: a dotted beat's .4 is the fourth of six")
        .isEqualTo("3/16 rf kick");
    // Quarter-note triplets over two beats, twice.
    String half = "pattern p : r\ngroove g\n bars 1\n hands play p in quarter-triplets\n";
    assertThat(Compact.last(half + " accent hands at 3.2\n"))
        .isEqualTo("0 R snare, 1/6 R snare, 1/3 R snare, 1/2 R snare, 2/3 R snare>, 5/6 R snare");
  }

  @Test
  void aPatternIsToldToBeCutOnlyInItsMiddle() {
    String text = "pattern p : rlr\ngroove g\n bars 1\n hands play p in ";
    assertThat(Compact.problems(text + "eighths\n")).containsExactly("4 pattern-cut");
    assertThat(Compact.problems(text + "triplets\n")).isEmpty();
    assertThat(Compact.problems("pattern p : rlrl\ngroove g\n bars 1\n hands play p in eighths\n"))
        .isEmpty();
    assertThat(
            Compact.problems(
                "pattern p : r\ngroove g\n time 3/8\n bars 1\n hands play p in quarters\n"))
        .as("its last place goes beyond the bar line")
        .containsExactly("5 pattern-cut");
    Diagnostic told = Compact.compile(text + "eighths\n").diagnostics().get(0);
    assertThat(told.message()).isEqualTo("the section ends in the middle of the pattern “p”");
  }

  @Test
  void showLinesOfOneKindAreEqualAndOthersNot() {
    List<Shows> all =
        List.of(
            Shows.ALL,
            new Shows(false, true, true),
            new Shows(true, false, true),
            new Shows(true, true, false),
            new Shows(false, false, false));
    assertThat(all).doesNotHaveDuplicates();
    assertThat(new Shows(true, true, true)).isEqualTo(Shows.ALL);
  }

  @ParameterizedTest
  @CsvSource({
    "accent bd, kick",
    "add sidestick at 2, snare.cross",
    "left plays bell, ride.bell",
    "accent kik, kick",
  })
  void wordsOfTheTradeAreUnderstood(String line, String meant) {
    Diagnostic told =
        Compact.compile("groove g\n kick : x . . .\n hands : r l . .\nstep s\n " + line + "\n")
            .diagnostics()
            .get(0);
    assertThat(told.fixes().get(0).edits().get(0).text()).isEqualTo(meant);
    assertThat(told.help()).isEqualTo("did you mean “" + meant + "”?");
  }

  @Test
  void whatCannotBePlayedSaysByWhom() {
    String beat = "groove g\n kick : x . . .\n hands : r l . .\nstep s\n ";
    Diagnostic foot = Compact.compile(beat + "right plays kick\n").diagnostics().get(0);
    assertThat(foot.message()).isEqualTo("the right hand cannot play the kick");
    assertThat(foot.help()).isEqualTo("the kick is played by a foot");
    Diagnostic hand = Compact.compile(beat + "right foot plays ride\n").diagnostics().get(0);
    assertThat(hand.help()).isEqualTo("the ride is played by a hand");
    assertThat(Compact.compile(beat + "open kick\n").diagnostics().get(0).message())
        .isEqualTo("the kick cannot be opened");
    assertThat(Compact.compile(beat + "choke kick\n").diagnostics().get(0).help())
        .isEqualTo("only cymbals and the hi-hat under the stick are choked");
    assertThat(Compact.compile(beat + "rimshot kick\n").diagnostics().get(0).message())
        .isEqualTo("there is no rimshot on the kick");
    assertThat(Compact.compile("groove g\n ride : r= . . .\n").diagnostics().get(0).help())
        .isEqualTo("only the hi-hat opens");
    assertThat(Compact.compile("groove g\n snare : r! . . .\n").diagnostics().get(0).message())
        .isEqualTo("the snare cannot be choked");
    assertThat(Compact.compile("groove g\n ride : r^ . . .\n").diagnostics().get(0).help())
        .isEqualTo("rimshots are for the snare and the toms");
  }
}
