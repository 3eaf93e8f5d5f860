package tabor.body;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.groove.Groove;
import tabor.resolve.Options;

/** Why each hand plays what it plays, in the words of the notation's page on open strokes. */
class HandReasonsTest {
  /** Each reason with its strokes, by the first letter of the surface and the hand. */
  private static String reasons(String text) {
    List<Groove> grooves =
        new Compiler(Loader.NONE)
            .compile(Path.of("a.tabor"), text, Options.NONE)
            .lesson()
            .grooves();
    return HandReasons.of(grooves.get(grooves.size() - 1)).stream()
        .map(
            phrase ->
                phrase.why()
                    + phrase.strokes().stream()
                        .map(s -> " " + s.surface().name().charAt(0) + s.limb().letter())
                        .collect(Collectors.joining()))
        .collect(Collectors.joining(", "));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        // A part that keeps time stays on the right, what it is played against goes to the left.
        "hihat : x x x x/ snare : . x . x; KEEPS_TIME hR hR hR hR, AGAINST_TIME sL sL",
        "ride : x x x x/ snare : . x . x/ kick : x . x .;"
            + " KEEPS_TIME rR rR rR rR, AGAINST_TIME sL sL",
        // A row of single strokes alternates from the right: one reason for each row.
        "snare : xxxx . . .; IN_TURN sR sL sR sL",
        "snare : xxxx . xxxx .; IN_TURN sR sL sR sL sR sL sR sL",
        "snare : xx xx . ./ tom1 : . . xx xx; IN_TURN sR sL sR sL tR tL tR tL",
        "snare : xxxx . x . | xxxx . . .; IN_TURN sR sL sR sL, LEADS sR, IN_TURN sR sL sR sL",
        // The hand that keeps the time is written elsewhere for once.
        "hihat : x x x x/ right : . t . .; KEEPS_TIME hR hR hR, WRITTEN tR, OTHER_BUSY hL",
        // A stroke on its own where the other hand lies already.
        "right : d . . ./ left : s . . ./ snare : . . x .; WRITTEN rR, WRITTEN sL, STAYS sL",
        // A stroke on its own is the right's.
        "snare : x . . .; LEADS sR",
        // What is written is written.
        "hands : r l r l; WRITTEN sR sR, WRITTEN sL sL",
        "hands : r l . ./ hihat : . . x x; WRITTEN sR, WRITTEN sL, KEEPS_TIME hR hR",
      })
  void ofEachStroke(String lines, String reasons) {
    assertThat(reasons("groove g\n " + lines.replace("/ ", "\n ") + "\n")).isEqualTo(reasons);
  }

  /** A left-hander's hands are named as they are played. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "hihat : x x x x/ snare : . x . x; KEEPS_TIME hL hL hL hL, AGAINST_TIME sR sR",
        "snare : xxxx . . .; IN_TURN sL sR sL sR",
        "hands : r l . .; WRITTEN sL, WRITTEN sR",
      })
  void ofALeftHander(String lines, String reasons) {
    assertThat(
            reasons(
                "kit mine like five-piece\n left-handed\ngroove g\n on mine\n "
                    + lines.replace("/ ", "\n ")
                    + "\n"))
        .isEqualTo(reasons);
  }

  /** A line that speaks of a single limb fixes what it chose: from then on it is kept. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "accent right at 1; KEPT hR, KEEPS_TIME hR hR hR, AGAINST_TIME sL sL",
        "accent hihat at 1; KEEPS_TIME hR hR hR hR, AGAINST_TIME sL sL",
        "add snare with left at 1; KEEPS_TIME hR hR hR hR, WRITTEN sL, AGAINST_TIME sL sL",
      })
  void ofAStep(String line, String reasons) {
    assertThat(reasons("groove g\n hihat : x x x x\n snare : . x . x\nstep s\n " + line + "\n"))
        .isEqualTo(reasons);
  }
}
