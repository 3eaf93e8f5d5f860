package tabor.lsp;

import java.util.regex.Pattern;

/**
 * Markdown for a client that would show its signs: the words, with the layout of what is fenced.
 */
final class PlainText {
  private static final Pattern FENCE = Pattern.compile("(?m)^```[a-z]*\n?");
  private static final Pattern LINK = Pattern.compile("\\[([^]]*)]\\([^)]*\\)");
  private static final Pattern SIGNS = Pattern.compile("\\*\\*|(?<![\\\\`])`");
  private static final Pattern ESCAPED = Pattern.compile("\\\\([\\\\`*_{}\\[\\]()#+.!|<>-])");

  private static final Pattern BREAK = Pattern.compile(" {2}\n");

  private PlainText() {}

  /** The text without the signs. */
  static String of(String markdown) {
    StringBuilder plain = new StringBuilder();
    boolean fenced = false;
    for (String part : FENCE.split(markdown, -1)) {
      plain.append(fenced ? part : withoutSigns(part));
      fenced = !fenced;
    }
    return BREAK.matcher(plain.toString().strip()).replaceAll("\n");
  }

  private static String withoutSigns(String text) {
    String linked = LINK.matcher(text).replaceAll("$1");
    return ESCAPED.matcher(SIGNS.matcher(linked).replaceAll("")).replaceAll("$1");
  }
}
