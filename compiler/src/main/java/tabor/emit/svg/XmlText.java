package tabor.emit.svg;

/** Text in XML. */
public final class XmlText {
  private XmlText() {}

  /**
   * The text with markup characters escaped, fit for content and for attributes in double or single
   * quotes. Characters that XML 1.0 does not allow, and those that steer the direction of the text
   * around them, are left out.
   */
  public static String text(String text) {
    if (isPlain(text)) {
      return text;
    }
    StringBuilder safe = new StringBuilder(text.length() + 16);
    for (int i = 0, c; i < text.length(); i += Character.charCount(c)) {
      c = text.codePointAt(i);
      add(safe, c);
    }
    return safe.toString();
  }

  /** True for what stays as it is, as nearly every text of a drawing does. */
  private static boolean isPlain(String text) {
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c < 0x20 || c > 0x7E || c == '&' || c == '<' || c == '>' || c == '"' || c == '\'') {
        return false;
      }
    }
    return true;
  }

  private static void add(StringBuilder safe, int c) {
    switch (c) {
      case '&' -> safe.append("&amp;");
      case '<' -> safe.append("&lt;");
      case '>' -> safe.append("&gt;");
      case '"' -> safe.append("&quot;");
      case '\'' -> safe.append("&#39;");
      default -> {
        if (isAllowed(c) && !isDirection(c)) {
          safe.appendCodePoint(c);
        }
      }
    }
  }

  private static boolean isAllowed(int c) {
    return c == '\t'
        || c == '\n'
        || (c >= 0x20 && c < 0x7F)
        || (c >= 0xA0 && c <= 0xD7FF)
        || (c >= 0xE000 && c <= 0xFFFD)
        || (c >= 0x10000 && (c & 0xFFFE) != 0xFFFE);
  }

  /** Marks, embeddings, overrides and isolates of the Unicode bidirectional algorithm. */
  private static boolean isDirection(int c) {
    return c == 0x200E
        || c == 0x200F
        || c == 0x061C
        || (c >= 0x202A && c <= 0x202E)
        || (c >= 0x2066 && c <= 0x2069);
  }
}
