package tabor.emit.engrave;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
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

  /** Every piece is as long as it can be: one more character of the next would not fit. */
  @Property(tries = 300)
  void aCutWordFillsItsLines(
      @ForAll("words") String word, @ForAll @IntRange(min = 1, max = 300) int width) {
    List<String> lines = fill(word, width);
    assertThat(String.join("", lines)).isEqualTo(OpenFont.get().showable(word).strip());
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i);
      assertThat(Character.isLowSurrogate(line.charAt(0))).isFalse();
      boolean one = line.codePointCount(0, line.length()) == 1;
      assertThat(one || OpenFont.get().width(line, 10) <= width).isTrue();
      if (i + 1 < lines.size()) {
        String next = lines.get(i + 1);
        String more = line + next.substring(0, next.offsetByCodePoints(0, 1));
        assertThat(OpenFont.get().width(more, 10)).isGreaterThan(width);
      }
    }
  }

  /** The same as taking one character after the other away until it fits. */
  @Property(tries = 300)
  void aClippedTextIsAsLongAsItCanBe(
      @ForAll("words") String text, @ForAll @IntRange(min = 1, max = 300) int width) {
    String shown = OpenFont.get().showable(text).strip();
    String expected = shown;
    for (int end = shown.length(); OpenFont.get().width(expected, 10) > width && end > 0; ) {
      end = shown.offsetByCodePoints(end, -1);
      expected = shown.substring(0, end).stripTrailing() + "\u2026";
    }
    assertThat(FilledText.clip(text, 10, width, Face.REGULAR, OpenFont.get())).isEqualTo(expected);
  }

  /** A character of two halves stays whole; widths are counted in halves here. */
  @Test
  void noCharacterIsCutInTwo() {
    String word = "a" + "\ud834\udd1e".repeat(300);
    for (int width = 1; width < 400; width++) {
      for (String line : FilledText.fill(word, 1, width, Face.REGULAR, new ByLength())) {
        assertThat(Character.isLowSurrogate(line.charAt(0))).isFalse();
        assertThat(Character.isHighSurrogate(line.charAt(line.length() - 1))).isFalse();
      }
      String clipped = FilledText.clip(word, 1, width, Face.REGULAR, new ByLength());
      assertThat(clipped.length()).isLessThanOrEqualTo(width);
      assertThat(clipped).matches("(a(\ud834\udd1e)*)?\u2026");
    }
  }

  @Provide
  Arbitrary<String> words() {
    return Arbitraries.strings()
        .withChars('i', 'M', 'x', '\u00fc')
        .ofMinLength(1)
        .ofMaxLength(400)
        .flatMap(
            text ->
                Arbitraries.integers()
                    .between(0, text.length())
                    .map(at -> text.substring(0, at) + "\ud834\udd1e" + text.substring(at)));
  }

  /** A word of a thousand lines is looked at a few times, not once for each character. */
  @Test
  void aVeryLongWordIsNotMeasuredAgainAndAgain() {
    String word = "x".repeat(100_000);
    ByLength counting = new ByLength();
    assertThat(FilledText.fill(word, 1, 100, Face.REGULAR, counting)).hasSize(1000);
    assertThat(FilledText.clip(word, 1, 100, Face.REGULAR, counting)).hasSize(100);
    assertThat(counting.measured).isLessThan(20L * word.length());
  }

  /** A font whose every half of a character is one wide. */
  private static final class ByLength implements TextMetrics {
    private long measured;

    @Override
    public double width(String text, double size, Face face) {
      measured += text.length();
      return text.length() * size;
    }

    @Override
    public String showable(String text) {
      return text;
    }
  }
}
