package tabor.emit.pdf;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tabor.lists.Lists;

/** Sizes of paper, in points of 1/72 inch. */
public enum Paper {
  /** 210 by 297 mm (ISO 216). */
  A4(595.28, 841.89),
  /** 8.5 by 11 inches (ANSI/ASME Y14.1). */
  LETTER(612, 792);

  private final double width;
  private final double height;

  Paper(double width, double height) {
    this.width = width;
    this.height = height;
  }

  /** From edge to edge, in points. */
  public double width() {
    return width;
  }

  /** From edge to edge, in points. */
  public double height() {
    return height;
  }

  /** {@code a4} or {@code letter}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The paper that a word names. */
  public static Optional<Paper> of(String word) {
    return Lists.first(List.of(values()), paper -> paper.word().equals(word));
  }
}
