package tabor.words;

import java.text.Format;
import java.text.MessageFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * A pattern of a bundle. Most are words with texts between them; these are put together without
 * {@link MessageFormat}, since a drawing is spoken stroke by stroke.
 */
final class WordPattern {
  /** Parts of a pattern: as many as a digit can name. */
  private static final int PLACES = 10;

  /** Stands for a part while the pattern is cut into pieces; occurs in no words. */
  private static final char MARK = '\uFFFF';

  private final MessageFormat format;

  /** What stands before each part and after the last; null if a part needs more than its text. */
  private final @Nullable List<String> words;

  private final int[] places;

  WordPattern(String pattern, Locale locale) {
    this.format = new MessageFormat(pattern, locale);
    List<String> pieces = new ArrayList<>();
    List<Integer> found = new ArrayList<>();
    boolean plain = true;
    for (Format part : format.getFormats()) {
      plain &= part == null;
    }
    if (plain) {
      Object[] marks = new Object[PLACES];
      for (int i = 0; i < PLACES; i++) {
        marks[i] = "" + MARK + i;
      }
      String cut = format.format(marks);
      int from = 0;
      for (int at = cut.indexOf(MARK); at >= 0; at = cut.indexOf(MARK, from)) {
        pieces.add(cut.substring(from, at));
        found.add(cut.charAt(at + 1) - '0');
        from = at + 2;
      }
      pieces.add(cut.substring(from));
    }
    this.words = plain ? pieces : null;
    this.places = found.stream().mapToInt(Integer::intValue).toArray();
  }

  /** The phrase with texts in its places; null where something else than a text goes into one. */
  @Nullable String plain(Object[] parts) {
    List<String> around = words;
    if (around == null) {
      return null;
    }
    StringBuilder text = new StringBuilder(around.get(0));
    for (int i = 0; i < places.length; i++) {
      boolean digits = places[i] >= Words.DIGITS;
      int part = digits ? places[i] - Words.DIGITS : places[i];
      if (part >= parts.length || !(digits || parts[part] instanceof String)) {
        return null;
      }
      text.append(parts[part]).append(around.get(i + 1));
    }
    return text.toString();
  }

  /** The phrase with all that goes into it. */
  String format(Object[] parts) {
    // A message format keeps notes while it works.
    return ((MessageFormat) format.clone()).format(parts);
  }
}
