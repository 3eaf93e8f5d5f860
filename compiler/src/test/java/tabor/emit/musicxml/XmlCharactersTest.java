package tabor.emit.musicxml;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What XML 1.0 allows in a text (section 2.2 of the recommendation): tab, line feed, carriage
 * return, 20 to D7FF, E000 to FFFD, 10000 to 10FFFF. Of these it discourages 7F to 84 and 86 to 9F.
 */
class XmlCharactersTest {
  @ParameterizedTest
  @CsvSource({
    "09, 09",
    "0A, 0A",
    "0D, 0A",
    // Control characters become their control pictures (Unicode, block 2400).
    "00, 2400",
    "1F, 241F",
    "20, 20",
    "7E, 7E",
    "7F, 2421",
    "80, FFFD",
    "9F, FFFD",
    "A0, A0",
    "D7FF, D7FF",
    "D800, FFFD",
    "DFFF, FFFD",
    "E000, E000",
    "FFFD, FFFD",
    "FFFE, FFFD",
    "FFFF, FFFD",
    "10000, 10000",
    "1F941, 1F941",
  })
  void eachIsKeptOrShown(String point, String shown) {
    String text = "a" + Character.toString(Integer.parseInt(point, 16)) + "b";
    String expected = "a" + Character.toString(Integer.parseInt(shown, 16)) + "b";
    assertThat(XmlCharacters.of(text)).isEqualTo(expected);
  }

  @Test
  void textInOneLine() {
    assertThat(XmlCharacters.line(" a\r\nb\rc\td\n")).isEqualTo("a b c d");
    assertThat(XmlCharacters.of("a\r\nb\rc")).isEqualTo("a\nb\nc");
  }
}
