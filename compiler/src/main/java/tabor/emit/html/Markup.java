package tabor.emit.html;

/**
 * Text into markup. Whatever a title or a prose text holds comes out as text.
 *
 * <p>Control characters, which a browser would drop or read as something else, are shown as their
 * Unicode control pictures; half of a surrogate pair becomes U+FFFD. Marks of direction stay: the
 * elements around foreign text keep their effect inside.
 */
final class Markup {
  private Markup() {}

  /** Fit to stand between tags and in a quoted attribute. */
  static String text(String raw) {
    StringBuilder out = new StringBuilder(raw.length() + 16);
    for (char c : clean(raw).toCharArray()) {
      switch (c) {
        case '&' -> out.append("&amp;");
        case '<' -> out.append("&lt;");
        case '>' -> out.append("&gt;");
        case '"' -> out.append("&quot;");
        case '\'' -> out.append("&#39;");
        default -> out.append(c);
      }
    }
    return out.toString();
  }

  /** The text without characters that no page may hold; lines end in a line feed. */
  static String clean(String raw) {
    StringBuilder out = new StringBuilder(raw.length());
    String text = raw.replace("\r\n", "\n").replace('\r', '\n');
    for (int i = 0, c; i < text.length(); i += Character.charCount(c)) {
      c = text.codePointAt(i);
      append(out, c);
    }
    return out.toString();
  }

  private static void append(StringBuilder out, int c) {
    if (c == '\n' || c == '\t' || (c >= 0x20 && c < 0x7f)) {
      out.append((char) c);
    } else if (c < 0x20) {
      out.append((char) (0x2400 + c));
    } else if (c == 0x7f) {
      out.append('\u2421');
    } else if (c < 0xa0 || (c >= 0xd800 && c <= 0xdfff) || (c & 0xfffe) == 0xfffe) {
      out.append('\ufffd');
    } else {
      out.appendCodePoint(c);
    }
  }
}
