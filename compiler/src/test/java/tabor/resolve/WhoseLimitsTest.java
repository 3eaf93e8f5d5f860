package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;

/**
 * Whose limits a section is checked by: six strokes a second of one hand are too fast for hands
 * that play up to five, and not for others. A kit's own limits come before the header's, those of
 * the player asked for before everybody's.
 */
class WhoseLimitsTest {
  private static final String SLOW = "hands 4 to 5";
  private static final String QUICK = "hands 7 to 10";

  private static boolean isTooFast(String text, Options options) {
    Compiled compiled = new Compiler(Loader.NONE).compile(Path.of("limits.tabor"), text, options);
    assertThat(compiled.diagnostics()).allMatch(d -> d.code().word().equals("too-fast"));
    return !compiled.diagnostics().isEmpty();
  }

  private static String limits(String prefix, String said) {
    return said == null
        ? ""
        : prefix + "limits " + said.replace("slow", SLOW).replace("quick", QUICK) + "\n";
  }

  @ParameterizedTest
  @CsvSource(
      nullValues = "-",
      value = {
        "-, -, -, false",
        "slow, -, -, true",
        "slow, quick, -, false",
        "quick, slow, -, true",
        "-, slow, -, true",
        "beginner slow, -, -, false",
        "beginner slow, -, beginner, true",
        "beginner slow, -, expert, false",
        "-, beginner slow, beginner, true",
        "-, beginner slow, -, false",
        "beginner slow, beginner quick, beginner, false",
        "beginner quick, beginner slow, beginner, true",
        "beginner quick, slow, beginner, false",
      })
  void limits(String header, String kit, String player, boolean tooFast) {
    String text =
        "tempo 90\n"
            + limits("", header)
            + "kit k\n surface gong letter g key 52\n"
            + limits(" ", kit)
            + "groove g\n on k\n right : ssss ssss ssss ssss\n";
    Options options = new Options(null, false, false, null, player);
    assertThat(isTooFast(text, options)).isEqualTo(tooFast);
  }

  @Test
  void aStudentsOwnLimits() {
    String text =
        "tempo 90\nlimits %s\ngroove g\n right : ssss ssss ssss ssss\n"
            + "player mia \"Mia\"\n limits %s\n";
    for (String own : new String[] {SLOW, QUICK}) {
      String lesson = text.formatted(own.equals(SLOW) ? QUICK : SLOW, own);
      Options hers = Options.NONE.of(Compact.compile(lesson).lesson().extras().players().get(0));
      assertThat(isTooFast(lesson, hers)).as(own).isEqualTo(own.equals(SLOW));
      assertThat(isTooFast(lesson, Options.NONE)).as(own).isNotEqualTo(own.equals(SLOW));
    }
  }
}
