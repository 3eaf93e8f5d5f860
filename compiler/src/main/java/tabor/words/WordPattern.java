package tabor.words;

import java.text.MessageFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * A pattern of a bundle. Most are words with texts between them; these are put together without
 * {@link MessageFormat}, since a drawing is spoken stroke by stroke and most pages need no other.
 */
final class WordPattern {
  private final String pattern;
  private final Locale locale;

  /** What stands before each part and after the last; null if a part needs more than its text. */
  private final @Nullable List<String> words;

  private final List<Integer> places = new ArrayList<>();

  WordPattern(String pattern, Locale locale) {
    this.pattern = pattern;
    this.locale = locale;
    this.words = cut();
  }

  private @Nullable List<String> cut() {
    List<String> pieces = new ArrayList<>();
    int from = 0;
    for (int at = pattern.indexOf('{'); at >= 0; at = pattern.indexOf('{', from)) {
      if (pattern.indexOf('}', at) != at + 2) {
        return null;
      }
      pieces.add(pattern.substring(from, at));
      places.add(pattern.charAt(at + 1) - '0');
      from = at + 3;
    }
    pieces.add(pattern.substring(from));
    return pattern.indexOf('\'') < 0 ? pieces : null;
  }

  /** The phrase with texts in its places; null where something else than a text goes into one. */
  @Nullable String plain(Object[] parts) {
    List<String> around = words;
    if (around == null) {
      return null;
    }
    StringBuilder text = new StringBuilder(around.get(0));
    for (int i = 0; i < places.size(); i++) {
      boolean digits = places.get(i) >= Words.DIGITS;
      int part = digits ? places.get(i) - Words.DIGITS : places.get(i);
      if (part >= parts.length || !(digits || parts[part] instanceof String)) {
        return null;
      }
      text.append(parts[part]).append(around.get(i + 1));
    }
    return text.toString();
  }

  /** The phrase with all that goes into it. */
  String format(Object[] parts) {
    // A message format keeps notes while it works, so each has its own.
    return new MessageFormat(pattern, locale).format(parts);
  }
}
