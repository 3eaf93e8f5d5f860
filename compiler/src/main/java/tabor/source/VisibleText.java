package tabor.source;

/**
 * Text that shows every character that it holds. Control characters could steer a terminal, and
 * direction characters hide what a name says, so they are replaced by something to see.
 */
public final class VisibleText {
  private VisibleText() {}

  /** A text for one line: C0 controls become their control pictures, the others U+FFFD. */
  public static String line(String text) {
    for (int i = 0; i < text.length(); ) {
      int point = text.codePointAt(i);
      if (point(point) != point) {
        return replaced(text);
      }
      i += Character.charCount(point);
    }
    return text;
  }

  /** A file's name as a person can hand it to a shell: in quotes where it would be taken apart. */
  public static String shellWord(String name) {
    boolean plain = name.codePoints().noneMatch(point -> " '&();<>|*?[]#~!{}".indexOf(point) >= 0);
    return plain && !name.isEmpty() ? name : "\"" + name + "\"";
  }

  private static String replaced(String text) {
    StringBuilder line = new StringBuilder(text.length());
    text.codePoints().forEach(point -> line.appendCodePoint(point(point)));
    return line.toString();
  }

  /** What is shown for a code point: itself, or its stand-in. */
  public static int point(int point) {
    if (point < 0x20) {
      return 0x2400 + point;
    }
    boolean hidden =
        point == 0x7F
            || (point >= 0x80 && point < 0xA0)
            || (point >= 0xD800 && point <= 0xDFFF)
            || (point >= 0x200B && point <= 0x200F)
            || (point >= 0x2028 && point <= 0x202E)
            || (point >= 0x2066 && point <= 0x2069)
            || point == 0xFEFF;
    return hidden ? 0xFFFD : point;
  }
}
