package tabor.words;

import java.util.Locale;
import java.util.Optional;

/** The languages that the fixed words of printed outputs are there in. */
public enum Language {
  DE,
  EN,
  ES,
  FR;

  /** As written: {@code de}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The Java locale of the language, without a country. */
  public Locale locale() {
    return Locale.forLanguageTag(word());
  }

  /** The language that a word names; empty for any other word. */
  public static Optional<Language> of(String word) {
    for (Language language : values()) {
      if (language.word().equals(word)) {
        return Optional.of(language);
      }
    }
    return Optional.empty();
  }
}
