package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.diagnostic.Diagnostic;

/** What the letters of a part tell by themselves: odd beats, capitals, and held drums. */
class OddBeatsTest {
  @ParameterizedTest
  @CsvSource({
    // Three in a dotted beat are its thirds, one is the beat itself; five and seven are tuplets.
    "9/8, xx xxx xx, ''",
    "9/8, xx x xx, ''",
    "9/8, xxxxxx xxxxx xxxxxx, 3 odd-beat",
    "9/8, xxxxxx xxxxxxx xxxxxx, 3 odd-beat",
    // The beats of 7/8 in 3+2+2 are unequal, whatever bar it is.
    "4/4 7/8 in 3+2+2, xx xx xx xx | xxx xx xx, ''",
    "7/8 in 3+2+2 4/4, xxx xx xx | xx xxx xx xx, 3 odd-beat",
  })
  void oneStrokeMoreOrFewerIsAWarningWhereItMakesATuplet(String time, String words, String told) {
    String text = "groove g\n time " + time + "\n hihat : " + words + "\n";
    assertThat(String.join(", ", Compact.problems(text))).isEqualTo(told);
  }

  @ParameterizedTest
  @CsvSource({
    // Twice as many, or half, are plain divisions of the same beat.
    "xx xxxx xx xx, ''",
    "xxxx xx xxxx xxxx, ''",
    "xxx xxxxxx xxx ., ''",
    "x xxx x ., ''",
    // Only a beat between two that are alike is odd.
    "xx xxx xxxx x, ''",
    "xxxx xxx xx x, ''",
    "xxx xx xxx ., 2 odd-beat",
    "xxxx xxxxxx xxxx ., 2 odd-beat",
    // What says over how many beats it spreads is meant.
    "xxx xx:1 xxx ., ''",
    "xx:1 xxx xx:1 ., ''",
  })
  void aBeatUnlikeTheTwoBesideItIsAHint(String words, String told) {
    String text = "groove g\n hihat : " + words + "\n";
    assertThat(Compact.problems(text)).isEmpty();
    assertThat(String.join(", ", Compact.hints(text))).isEqualTo(told);
  }

  @Test
  void unequalBeatsAreUnequalOnPurpose() {
    assertThat(
            Compact.hints("groove g\n time 4/4 7/8 in 3+2+2\n hihat : xx xx xx xx | xxx xx xx\n"))
        .isEmpty();
  }

  @Test
  void smallLettersBeforeCapitalsBecomeFlams() {
    String text = "groove g\n hands : rL rL lR lR\n";
    Diagnostic told = Compact.only(text);
    assertThat(told.message())
        .isEqualTo("capitals are accents here, and small letters are strokes of their own");
    assertThat(Compact.fixed(text, told)).isEqualTo("groove g\n hands : 'L 'L 'R 'R\n");
  }

  @Test
  void aHeldDrumIsToldWithAWayOut() {
    Diagnostic drum = Compact.only("groove g\n snare : x - . .\n");
    assertThat(drum.message()).isEqualTo("the snare does not ring on after a stroke");
    assertThat(drum.help()).isEqualTo("write a dot for silence, or a roll: x//");
    Diagnostic buzz = Compact.only("groove g\n snare : r~ - - .\n");
    assertThat(buzz.message()).isEqualTo("the buzz of one hand does not last over two beats");
    assertThat(buzz.help()).isEqualTo("press with both hands: b~, or start the buzz again");
  }

  @Test
  void anOstinatoIsReadLikeAnyPart() {
    assertThat(Compact.problems("groove g\n bars 2\n ostinato hihat : xx xxx xx xx\n"))
        .containsExactly("3 odd-beat");
    assertThat(Compact.problems("groove g\n bars 2\n ostinato hihat : XX XX XX XX\n"))
        .containsExactly("3 all-accents");
    assertThat(Compact.hints("groove g\n bars 2\n ostinato hihat : xxx xx xxx .\n"))
        .containsExactly("3 odd-beat");
  }
}
