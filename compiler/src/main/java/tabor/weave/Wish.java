package tabor.weave;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tabor.lists.Lists;

/**
 * What a block of a document asks for.
 *
 * @param as what stands in its place
 * @param width how wide a line of music may be, in pixels, {@link #LEAST} to {@link #MOST}
 * @param counts the counts stand above the notes, where the section shows them
 * @param caption a line below; empty for none
 * @param file the lesson it shows, as written; null for the block's own text
 * @param sections names of the sections shown; empty for all
 * @param player the player of the lesson who gets it; null for nobody in particular
 */
public record Wish(
    As as,
    int width,
    boolean counts,
    String caption,
    @Nullable String file,
    List<String> sections,
    @Nullable String player) {
  /** The narrowest line of music, in pixels. */
  public static final int LEAST = 180;

  /** The widest. */
  public static final int MOST = 4000;

  /** A picture as wide as a column of text. */
  public static final Wish USUAL = new Wish(As.SVG, 700, false, "", null, List.of(), null);

  /** Copies the list; throws {@link IllegalArgumentException} for a width out of range. */
  public Wish {
    sections = List.copyOf(sections);
    if (width < LEAST || width > MOST) {
      throw new IllegalArgumentException("width " + width);
    }
  }

  /** What stands in the place of a block. */
  public enum As {
    /** A picture of each section. */
    SVG,
    /** The counted grid, as text. */
    GRID,
    /** The notation with a player. */
    PLAYER,
    /** The text as it is written. */
    SOURCE,
    /** The text and a picture of each section. */
    BOTH;

    /** As a block names it. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }

    /** What a word names. */
    static Optional<As> of(String word) {
      return Lists.first(List.of(values()), as -> as.word().equals(word));
    }

    /** All words, with commas. */
    static String words() {
      return Arrays.stream(values()).map(As::word).collect(Collectors.joining(", "));
    }
  }

  /** The same with lines of music of another width, in pixels. */
  Wish at(int other) {
    return new Wish(as, other, counts, caption, file, sections, player);
  }
}
