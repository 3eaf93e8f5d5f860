package tabor.emit.engrave;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import tabor.emit.font.OpenFont;

class FilledTextTest {
  private static List<String> fill(String text, double width) {
    return FilledText.fill(text, 10, width, Face.REGULAR, OpenFont.get());
  }

  @Test
  void linesOfTheSourceAreFilled() {
    assertThat(fill("Slowly\nand\nevenly, both hands.", 400))
        .containsExactly("Slowly and evenly, both hands.");
    assertThat(fill("One two three", 35)).containsExactly("One", "two", "three");
  }

  @Test
  void anEmptyLineStartsAParagraph() {
    assertThat(fill("First\nhere.\n  \nSecond.\n\n\nThird.", 400))
        .containsExactly("First here.", "", "Second.", "", "Third.");
    assertThat(fill("First \u2028\u2029 second.", 400)).containsExactly("First", "", "second.");
  }

  @Test
  void aWordWiderThanTheLineIsCut() {
    List<String> lines = fill("Donaudampfschifffahrt", 40);
    assertThat(String.join("", lines)).isEqualTo("Donaudampfschifffahrt");
    assertThat(lines).allMatch(line -> OpenFont.get().width(line, 10) <= 40);
  }

  @Test
  void whatIsTooLongEndsWithAnEllipsis() {
    String clipped =
        FilledText.clip("A very long title of a lesson", 10, 80, Face.REGULAR, OpenFont.get());
    assertThat(clipped).startsWith("A very").endsWith("\u2026").doesNotContain(" \u2026");
    assertThat(OpenFont.get().width(clipped, 10)).isLessThanOrEqualTo(80);
    assertThat(FilledText.clip("Short", 10, 80, Face.REGULAR, OpenFont.get())).isEqualTo("Short");
  }

  /** Widths from the font's own metrics: bold is wider, italic as wide as upright. */
  @Test
  void theCutsDiffer() {
    double upright = OpenFont.get().width("The kick", 10);
    assertThat(OpenFont.get().width("The kick", 10, Face.BOLD)).isGreaterThan(upright * 1.02);
    assertThat(OpenFont.get().width("The kick", 10, Face.ITALIC)).isEqualTo(upright);
  }
}
