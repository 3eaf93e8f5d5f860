package tabor.source;

/**
 * How wide text is in a monospaced font: in columns, not characters. East Asian wide and full-width
 * forms and pictures take two columns, combining marks none (Unicode Standard Annex 11, the ranges
 * rounded to blocks).
 */
public final class DisplayWidth {
  private DisplayWidth() {}

  private static final int[][] WIDE = {
    {0x1100, 0x115F},
    {0x2E80, 0x303E},
    {0x3041, 0x33FF},
    {0x3400, 0x4DBF},
    {0x4E00, 0x9FFF},
    {0xA000, 0xA4CF},
    {0xA960, 0xA97F},
    {0xAC00, 0xD7A3},
    {0xF900, 0xFAFF},
    {0xFE30, 0xFE6F},
    {0xFF00, 0xFF60},
    {0xFFE0, 0xFFE6},
    {0x1F300, 0x1F64F},
    {0x1F680, 0x1F6FF},
    {0x1F900, 0x1FAFF},
    {0x20000, 0x3FFFD}
  };

  /** A text and spaces up to a width. */
  public static String padded(String text, int width) {
    return text + " ".repeat(Math.max(0, width - of(text)));
  }

  /** Columns of a text without line ends and tabs. */
  public static int of(String text) {
    int width = 0;
    for (int i = 0; i < text.length(); ) {
      int point = text.codePointAt(i);
      width += of(point);
      i += Character.charCount(point);
    }
    return width;
  }

  /** Columns of a code point: 0, 1 or 2. */
  public static int of(int point) {
    if (point < 0x300) {
      return 1;
    }
    int type = Character.getType(point);
    if (type == Character.NON_SPACING_MARK
        || type == Character.ENCLOSING_MARK
        || type == Character.FORMAT) {
      return 0;
    }
    for (int[] range : WIDE) {
      if (point >= range[0] && point <= range[1]) {
        return 2;
      }
    }
    return 1;
  }
}
