package tabor.weave;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Near;

/** Reads the words behind {@code tabor} at the head of a block. */
final class WishReader {
  /** The word that a block of notation begins with. */
  static final String WORD = "tabor";

  /** The same as a class in braces, which Pandoc reads. */
  private static final String BRACED = "{." + WORD;

  /** On the command line all players of a lesson; a block has one. */
  private static final String EVERYBODY = "all";

  private static final List<String> NAMES =
      List.of("as", "file", "section", "width", "counts", "caption", "for");

  private final String text;
  private int at;

  private WishReader(String text) {
    this.text = text;
  }

  /** True if a block with these words behind its fence holds notation. */
  static boolean isNotation(@Nullable String info) {
    if (info == null) {
      return false;
    }
    String head = info.startsWith("{") ? BRACED : WORD;
    return info.regionMatches(true, 0, head, 0, head.length())
        && (info.length() == head.length()
            || Character.isWhitespace(info.charAt(head.length()))
            || (head.equals(BRACED) && info.charAt(head.length()) == '}'));
  }

  /** What a block asks for; {@code info} is that of {@link #isNotation}. */
  static Wish read(String info) throws Trouble {
    if (!info.startsWith("{")) {
      return of(new WishReader(info.substring(WORD.length())).attributes());
    }
    String inside = info.substring(BRACED.length()).stripTrailing();
    if (!inside.endsWith("}")) {
      throw new Trouble("the braces around this block's attributes are not closed");
    }
    // A further class is a flag: {.tabor .counts}.
    String attributes = inside.substring(0, inside.length() - 1).replaceAll("\\s\\.", " ");
    return of(new WishReader(attributes).attributes());
  }

  /** What named values ask for, the names as a block writes them; a flag's value is empty. */
  static Wish of(Map<String, String> values) throws Trouble {
    for (String name : values.keySet()) {
      if (!NAMES.contains(name)) {
        List<String> near = Near.names(name, NAMES);
        throw new Trouble(
            "a block of notation has no attribute " + name,
            near.isEmpty()
                ? "It takes " + String.join(", ", NAMES) + "."
                : "Did you mean " + near.get(0) + "?");
      }
    }
    Wish.As as = as(values.get("as"));
    String player = player(values.get("for"));
    if (player != null && as == Wish.As.SOURCE) {
      throw new Trouble(
          "as=source shows the text as it is written, which is the same for every player",
          "Leave out for=, or write as=both.");
    }
    String file = values.get("file");
    if (file != null && file.isBlank()) {
      throw new Trouble("file= names no lesson", "Write file=lesson.tabor.");
    }
    return new Wish(
        as,
        width(values.get("width")),
        flag(values.get("counts")),
        values.getOrDefault("caption", "").strip(),
        file,
        sections(values.get("section")),
        player);
  }

  private static @Nullable String player(@Nullable String word) throws Trouble {
    if (word != null && (word.isBlank() || word.contains(",") || word.equals(EVERYBODY))) {
      throw new Trouble(
          "for= names one player, not " + quoted(word), "Write for=mia; a block for each player.");
    }
    return word == null ? null : word.strip();
  }

  private static Wish.As as(@Nullable String word) throws Trouble {
    if (word == null) {
      return Wish.As.SVG;
    }
    return Wish.As.of(word)
        .orElseThrow(() -> new Trouble("as= takes " + Wish.As.words() + ", not " + quoted(word)));
  }

  private static int width(@Nullable String word) throws Trouble {
    if (word == null) {
      return Wish.USUAL.width();
    }
    String digits = word.endsWith("px") ? word.substring(0, word.length() - 2) : word;
    if (!digits.isEmpty()
        && digits.length() <= 5
        && digits.chars().allMatch(c -> c >= '0' && c <= '9')) {
      int width = Integer.parseInt(digits);
      if (width >= Wish.LEAST && width <= Wish.MOST) {
        return width;
      }
    }
    throw new Trouble(
        "width= takes a number of pixels from "
            + Wish.LEAST
            + " to "
            + Wish.MOST
            + ", not "
            + quoted(word));
  }

  private static boolean flag(@Nullable String word) throws Trouble {
    if (word == null || word.equals("no") || word.equals("false")) {
      return false;
    }
    if (word.isEmpty() || word.equals("yes") || word.equals("true") || word.equals("counts")) {
      return true;
    }
    throw new Trouble("counts stands alone, or takes yes or no, not " + quoted(word));
  }

  private static List<String> sections(@Nullable String words) throws Trouble {
    if (words == null) {
      return List.of();
    }
    List<String> names = new ArrayList<>();
    for (String word : words.split(",", -1)) {
      if (word.isBlank()) {
        throw new Trouble("section= names no section", "Write section=answer.");
      }
      names.add(word.strip());
    }
    return names;
  }

  private static String quoted(String word) {
    return word.isEmpty() ? "nothing" : "“" + word + "”";
  }

  private Map<String, String> attributes() throws Trouble {
    Map<String, String> found = new LinkedHashMap<>();
    Set<String> seen = new HashSet<>();
    skip();
    while (at < text.length()) {
      int from = at;
      while (at < text.length() && isNamePart(text.charAt(at))) {
        at++;
      }
      String name = text.substring(from, at);
      if (name.isEmpty()) {
        throw new Trouble(
            "this cannot be read as an attribute: " + quoted(text.substring(from).strip()),
            "Write name=value, with double quotes around a value that has spaces.");
      }
      if (!seen.add(name)) {
        throw new Trouble(name + " is said twice");
      }
      found.put(name, at < text.length() && text.charAt(at) == '=' ? value(name) : "");
      if (at < text.length() && !Character.isWhitespace(text.charAt(at))) {
        throw new Trouble(
            "this cannot be read as an attribute: " + quoted(text.substring(from).strip()),
            "Write name=value, with double quotes around a value that has spaces.");
      }
      skip();
    }
    return found;
  }

  private String value(String name) throws Trouble {
    at++;
    if (at < text.length() && text.charAt(at) == '"') {
      int end = text.indexOf('"', at + 1);
      if (end < 0) {
        throw new Trouble(name + "= has no closing quote");
      }
      String value = text.substring(at + 1, end);
      at = end + 1;
      return value;
    }
    int from = at;
    while (at < text.length() && !Character.isWhitespace(text.charAt(at))) {
      at++;
    }
    return text.substring(from, at);
  }

  private void skip() {
    while (at < text.length() && Character.isWhitespace(text.charAt(at))) {
      at++;
    }
  }

  private static boolean isNamePart(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '-' || c == '_';
  }
}
