package tabor.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.text.MessageFormat;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** Patterns put together in two ways, compared with Java's own. */
class WordPatternTest {
  private static void same(String pattern, Object... parts) {
    WordPattern words = new WordPattern(pattern, Locale.GERMAN);
    String plain = words.plain(parts);
    assertThat(plain == null ? words.format(parts) : plain)
        .isEqualTo(new MessageFormat(pattern, Locale.GERMAN).format(parts));
  }

  @Test
  void textsGoIntoTheirPlaces() {
    same("nothing at all");
    same("{0}", "a");
    same("{1}, then {0}: {1}", "a", "b");
    same("bars {0} to {1}", "1", "{2}");
    assertThat(new WordPattern("bars {0}", Locale.ENGLISH).plain(new Object[] {"1"}))
        .isEqualTo("bars 1");
  }

  @Test
  void quotedTextsNumbersAndPluralsAreLeftToJava() {
    same("l''{0}", "a");
    same("'{0}' {0}", "a");
    same("{0} bars", 12_345);
    same("{0,choice,0#no bars|1#1 bar|1<{1} bars}", 2, "2");
    assertThat(new WordPattern("l''{0}", Locale.ENGLISH).plain(new Object[] {"a"})).isNull();
  }

  @Test
  void lateNumbersAreTheFirstPartsInDigits() {
    assertThat(new WordPattern("{5} of {0}", Locale.ENGLISH).plain(new Object[] {"7"}))
        .isEqualTo("7 of 7");
    assertThat(new WordPattern("{6}", Locale.ENGLISH).plain(new Object[] {"x", 12_345}))
        .isEqualTo("12345");
  }
}
