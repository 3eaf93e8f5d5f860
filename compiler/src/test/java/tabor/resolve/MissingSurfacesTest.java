package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.diagnostic.Diagnostic;

/** What a kit lacks and nothing stands in for: section 5 of the notation. */
class MissingSurfacesTest {
  /** Neither cowbell nor china, and nothing in their place; the first section is on all of them. */
  private static final String KIT =
      "kit small like five-piece\n without cowbell\n without china\n without crash2 plays crash\n";

  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "cowbell : r . . r; 7",
        "crash2 : r . . r; ''",
        "crash : r . . r; ''",
        // Once for each line and each surface.
        "cowbell : r . . ./ hihat : . r . ./ cowbell : . . . r; 7 9",
        "cowbell : r . . ./ china : . r . .; 7 8",
        "right : w . w .; 7",
        "cowbell : r . . . | . r . .; 7",
        "hands : r . . ./ right plays cowbell; 8",
        "hands : r . . ./ add cowbell with left at 2 4; 8",
      })
  void isToldWhereItIsWritten(String lines, String expected) {
    String text = KIT + "groove g\n on small\n " + lines.replace("/ ", "\n ") + "\n";
    assertThat(Compact.problems(text).stream().map(p -> p.replace(" missing-surface", "")).toList())
        .isEqualTo(expected.isEmpty() ? List.of() : List.of(expected.split(" ", -1)));
  }

  @Test
  void theMessageNamesKitSurfaceAndWayOut() {
    Diagnostic told =
        Compact.only(KIT + "groove g\n on small\n hihat : r . . .\n cowbell : . . r .\n");
    assertThat(told.message())
        .isEqualTo("the kit “small” has no cowbell, and nothing stands in for it");
    assertThat(told.help())
        .isEqualTo("play something else, or let something stand in: without cowbell plays …");
    assertThat(told.place()).isEqualTo(new Diagnostic.Place("g", 1, "3"));
  }

  /** A step that moves to the kit misses it because of its own line; one that stays does not. */
  @ParameterizedTest
  @CsvSource(
      delimiter = ';',
      value = {
        "on five-piece; step s/ on small; 8",
        "on five-piece; step s/ on small/ drop cowbell; ''",
        "on five-piece; step s/ on small/ cowbell : . . . r | . . . .; 10",
        "on small; step s/ accent cowbell; 7",
        "on small; step s/ cowbell : . . . r | . . . .; 7 9",
        "on small; step s/ on five-piece; 7",
      })
  void ofAStep(String kit, String step, String expected) {
    String text =
        KIT
            + "groove g\n "
            + kit
            + "\n cowbell : r . r . | r . r .\n"
            + step.replace("/ ", "\n ")
            + "\n hihat : x x x x | x x x x\n";
    assertThat(Compact.problems(text).stream().map(p -> p.replace(" missing-surface", "")).toList())
        .isEqualTo(expected.isEmpty() ? List.of() : List.of(expected.split(" ", -1)));
  }
}
