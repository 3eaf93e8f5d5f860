package tabor.syntax;

import java.util.Locale;
import java.util.Optional;

/** The header and the kinds of section. */
public enum SectionKind {
  HEADER,
  PATTERN,
  KIT,
  PLAYER,
  GROOVE,
  STEP,
  SHEET,
  CHART;

  /** Asked for with every line of every text. */
  private final String word = name().toLowerCase(Locale.ROOT);

  /** The word that opens such a section: {@code groove}; {@code header} for the header. */
  public String word() {
    return word;
  }

  /** {@code a groove}; {@code the header}. */
  public String words() {
    return (this == HEADER ? "the " : "a ") + word();
  }

  /** The kind of section that a word opens; empty for any other word. */
  public static Optional<SectionKind> opened(String word) {
    for (SectionKind kind : values()) {
      if (kind != HEADER && kind.word().equals(word)) {
        return Optional.of(kind);
      }
    }
    return Optional.empty();
  }
}
