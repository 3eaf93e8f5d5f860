package tabor.body;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.diagnostic.Severity;
import tabor.groove.Stroke;
import tabor.resolve.Options;

/**
 * Under swung eighths a word of two beside one of three is struck on the first and the last third
 * of its beat (section 3 of the notation): the limbs are those of the same groove written so.
 */
class SwungDealingTest {
  /** The limbs of each surface in order of time. */
  private static String limbs(String lines) {
    String source = "groove g\n " + lines.replace("/ ", "\n ") + "\n";
    Compiled compiled = new Compiler(Loader.NONE).compile(Path.of("t.tabor"), source, Options.NONE);
    assertThat(compiled.diagnostics()).as(source).noneMatch(d -> d.severity() == Severity.ERROR);
    Map<String, String> limbs = new TreeMap<>();
    for (Stroke stroke : compiled.lesson().grooves().get(0).strokes()) {
      limbs.merge(stroke.surface().name(), stroke.limb().letter(), String::concat);
    }
    return limbs.toString();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "ride : xxx xxx xxx xxx/ snare : .x . .x .; ride : xxx xxx xxx xxx/ snare : ..x . ..x .",
        "snare : .x . .x ./ ride : xxx xxx xxx xxx; ride : xxx xxx xxx xxx/ snare : ..x . ..x .",
        "hihat : x xx x xx/ snare : . xxx . xxx; hihat : x x.x x x.x/ snare : . xxx . xxx",
        "hihat : x xx x xx/ snare : . .xx . .xx; hihat : x x.x x x.x/ snare : . .xx . .xx",
        "tom1 : xx . . ./ snare : xxx . . .; tom1 : x.x . . ./ snare : xxx . . .",
        "floor : .x .x . ./ tom1 : xxx xxx . .; floor : ..x ..x . ./ tom1 : xxx xxx . .",
        "floor : .l . . ./ snare : xxx xxx . .; floor : ..l . . ./ snare : xxx xxx . .",
        "floor : .r . . ./ snare : xxx xxx . .; floor : ..r . . ./ snare : xxx xxx . .",
        "floor : .x . . ./ snare : rlr xxx . .; floor : ..x . . ./ snare : rlr xxx . .",
        "floor : .x . . ./ snare : rll xxx . .; floor : ..x . . ./ snare : rll xxx . .",
        "crash : .x . . ./ ride : xxx xxx . .; crash : ..x . . ./ ride : xxx xxx . .",
        "kick : xx xx . ./ hihat.foot : xxx xxx . .; kick : x.x x.x . ./ hihat.foot : xxx xxx . .",
        "kick : .x . . ./ ride : xxx xxx . ./ snare : .x .x . .;"
            + " kick : ..x . . ./ ride : xxx xxx . ./ snare : ..x ..x . .",
        "ride : xxx xxx xxx xxx | xxx . . ./ snare : . . . . | .x .. . .;"
            + " ride : xxx xxx xxx xxx | xxx . . ./ snare : . . . . | ..x . . .",
        // Two that meet on one surface are one stroke.
        "snare : xxx . . ./ snare : .x . . ./ ride : x.x . . .;"
            + " snare : xxx . . ./ ride : x.x . . .",
        "snare : .xx . . ./ snare : .x . . ./ tom1 : ..x . . .;"
            + " snare : .xx . . ./ tom1 : ..x . . .",
        "hihat : .xx . . ./ hihat : .x . . ./ crash : .x . . .;"
            + " hihat : .xx . . ./ crash : ..x . . .",
      })
  void asWrittenInThirds(String swung, String written) {
    assertThat(limbs("feel swing eighths as triplets/ " + swung)).isEqualTo(limbs(written));
  }

  /** Nothing is divided in three, or another swing: the limbs go by the page. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "hihat : xx xx xx xx/ snare : . x . x",
        "hihat : xxxx xxxx xxxx xxxx/ snare : .x . .x .",
        "snare : xx xx xx xx",
        "ride : xxx xxx xxx xxx/ snare : . x . x",
      })
  void otherwiseByThePage(String lines) {
    assertThat(limbs("feel swing eighths as triplets/ " + lines)).isEqualTo(limbs(lines));
    String both = "ride : xxx xxx xxx xxx/ snare : .x . .x .";
    assertThat(limbs("feel swing sixteenths 58%/ " + both)).isEqualTo(limbs(both));
  }
}
