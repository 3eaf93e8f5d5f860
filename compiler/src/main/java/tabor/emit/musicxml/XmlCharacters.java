package tabor.emit.musicxml;

/** Text as XML 1.0 can hold it. */
final class XmlCharacters {
  private XmlCharacters() {}

  /**
   * The text with every character that XML 1.0 does not allow shown as a sign: control characters
   * as their control pictures, others as the replacement character. Line ends become LF.
   */
  static String of(String text) {
    StringBuilder clean = new StringBuilder(text.length());
    text.replace("\r\n", "\n")
        .replace('\r', '\n')
        .codePoints()
        .forEach(point -> clean.appendCodePoint(shown(point)));
    return clean.toString();
  }

  private static int shown(int point) {
    if (point == '\t' || point == '\n') {
      return point;
    }
    if (point < 0x20) {
      return 0x2400 + point;
    }
    if (point == 0x7F) {
      return 0x2421;
    }
    boolean surrogate = point >= 0xD800 && point <= 0xDFFF;
    boolean c1 = point > 0x7F && point < 0xA0;
    return surrogate || c1 || point == 0xFFFE || point == 0xFFFF ? 0xFFFD : point;
  }

  /** The text in one line. */
  static String line(String text) {
    return of(text).replace('\n', ' ').replace('\t', ' ').strip();
  }
}
