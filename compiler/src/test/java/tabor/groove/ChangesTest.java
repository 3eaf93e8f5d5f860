package tabor.groove;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.resolve.Options;

class ChangesTest {
  private static final String BASE =
      """
      groove base
        hihat : rr rr rr rr
        snare : . l . l
        kick  : x . .x .
      """;

  private static Changes of(String source) {
    Compiled compiled = new Compiler(Loader.NONE).compile(Path.of("a.tabor"), source, Options.NONE);
    assertThat(compiled.hasErrors()).as(source).isFalse();
    return Changes.of(compiled.lesson().grooves().get(compiled.lesson().grooves().size() - 1));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "right plays ride.bell                | right hand: now on the ride bell",
        "add kick at 3                        | kick: added on 3",
        "add kick at every &                  | kick: added on 1&, 2& and 4&",
        "add hihat.foot accented at 2 4       | hi-hat with the foot: added accented on 2 and 4",
        "drop kick                            | kick: left out",
        "drop hihat at 4&                     | hi-hat: left out on 4&",
        "only feet                            | hands: left out",
        "ghost snare at 2                     | snare: ghosted on 2",
        "accent hihat at every beat           | hi-hat: accented on every beat",
        "ghost hands                          | hands: ghosted",
        "move kick from 3& to 4               | kick: from 3& to 4",
        "flam snare at 4                      | snare: flam on 4",
        "double kick at 1                     | kick: doubled on 1",
        "left plays tom1 at 4                 | left hand: to the first tom on 4",
        "open right at 4&                     | hi-hat: open on 4&",
        "swap hands                           | hands: right and left exchanged",
        "bars 2                               | now 2 bars",
        "tempo 72.5                           | tempo now 72.5",
        "feel swing eighths 60%               | swing eighths 60%",
        "on four-piece                        | on the four-piece kit",
      })
  void saysItInADrummersWords(String edit, String words) {
    if (edit.startsWith("flam")) {
      edit = "drop hihat at 4\n  " + edit;
      words = "hi-hat: left out on 4; " + words;
    }
    String source = BASE + "step more\n  " + edit + "\n";
    assertThat(sorted(of(source).text())).isEqualTo(sorted(words));
  }

  /** Which part is named first does not matter here. */
  private static String sorted(String words) {
    return java.util.Arrays.stream(words.split("; ", -1))
        .sorted()
        .collect(java.util.stream.Collectors.joining("; "));
  }

  @Test
  void aTurnedPartIsOneChange() {
    String pads = "groove a\n  hands : Rlrr lrll Rlrr lrll\n";
    assertThat(of(pads + "step b\n  shift hands later by 1 sixteenth\n").text())
        .isEqualTo("everything: moved a sixteenth later");
    assertThat(of(pads + "step b\n  shift hands earlier by 1 sixteenth\n").text())
        .isEqualTo("everything: moved a sixteenth earlier");
  }

  @Test
  void aFillIsNamedByItsBar() {
    String fill = "groove f\n  hands : . . rlrl rlrl\n";
    assertThat(of(fill + BASE + "step b\n  bars 4\n  fill f in bar 4 from 3\n").words())
        .containsExactly("now 4 bars", "bar 4: new from 3 on");
  }

  @Test
  void aShortFillIsNamedByItsCount() {
    String fill = "groove f\n  pickup 1 beat\n  snare : xxxx\n";
    assertThat(of(fill + BASE + "step b\n  bars 4\n  fill f in bar 4\n").words())
        .containsExactly("now 4 bars", "bar 4: new from 4 on");
  }

  /** One move in one bar is told as such, however many strokes it takes along. */
  @Test
  void aSimpleMoveInOneBarIsNoNewBar() {
    assertThat(of(BASE + "step b\n  bars 2\n  right plays ride in bar 2\n").words())
        .containsExactly("now 2 bars", "right hand: to the ride on every beat and & in bar 2");
  }

  @Test
  void aRewrittenLineIsToldInTwoWords() {
    assertThat(of(BASE + "step b\n  hands : . . rlrl rlrl\n").words())
        .containsExactly("hands: a new line");
    assertThat(
            of(BASE + "step b\n  hands : rr bb rlrl rlrl\n  right plays hihat at 1 1& 2 2&\n")
                .words())
        .containsExactly("hands: new from 2& on");
    assertThat(of(BASE + "step b\n  bars 2\n  hands : xx xx xx xx | rlrl . rlrl .\n").words())
        .containsExactly("now 2 bars", "hands: a new line");
  }

  @Test
  void otherHandsOnTheSameDrumAreANewSticking() {
    String singles = "groove a\n  hands : rlrl rlrl rlrl rlrl\n";
    assertThat(of(singles + "step b\n  hands : Rlrr Lrll Rlrr Lrll\n").words())
        .containsExactly("hands: new sticking", "snare: accented on every beat");
    assertThat(of(singles + "step b\n  hands : rlrr lrll rlrr lrll\n").strokes()).isEmpty();
  }

  /** What plays elsewhere now is not simply left out. */
  @Test
  void aPartThatGoesToOtherPlacesSaysWhichItLeaves() {
    assertThat(of(BASE + "step b\n  drop snare\n  add snare accented at 3\n").words())
        .containsExactly("snare: added accented on 3, left out on 2 and 4");
    assertThat(of(BASE + "step b\n  drop snare\n  add tom1 at 3\n").words())
        .containsExactly("first tom: added on 3", "snare: left out");
  }

  @Test
  void marksAndCountsStrokes() {
    Changes changes = of(BASE + "step b\n  add kick at 2 4\n  drop snare at 4\n");
    assertThat(changes.strokes()).hasSize(2).allMatch(s -> s.surface().name().equals("kick"));
    assertThat(changes.gone()).isEqualTo(1);
    assertThat(changes.count()).isEqualTo(3);
    assertThat(of(BASE)).isEqualTo(Changes.NONE);
  }

  @Test
  void longerStepsAreComparedWithTheBaseGoingRound() {
    assertThat(of(BASE + "step b\n  bars 4\n").strokes()).isEmpty();
    assertThat(of(BASE + "step b\n  bars 4\n  drop kick in bar 3\n").words())
        .containsExactly("now 4 bars", "kick: left out on 1 and 3& in bar 3");
  }
}
