package tabor.parse;

/** Texts in triple quotes. */
final class Prose {
  private Prose() {}

  /**
   * What a triple text says: the first and the last line are left out if they are blank, the
   * indentation common to all lines is taken off (a first line right after the quotes has none to
   * take), lines end with LF.
   */
  static String unindented(String inner) {
    String[] lines = inner.split("\r\n|\r|\n", -1);
    int common = Integer.MAX_VALUE;
    for (int i = 1; i < lines.length; i++) {
      if (!lines[i].isBlank()) {
        common = Math.min(common, indentation(lines[i]));
      }
    }
    StringBuilder text = new StringBuilder();
    boolean first = true;
    for (int i = 0; i < lines.length; i++) {
      boolean blank = lines[i].isBlank();
      if (blank && (i == 0 || i == lines.length - 1)) {
        continue;
      }
      if (!first) {
        text.append('\n');
      }
      first = false;
      if (!blank) {
        text.append(i == 0 ? lines[i].strip() : lines[i].substring(common).stripTrailing());
      }
    }
    return text.toString();
  }

  private static int indentation(String line) {
    int at = 0;
    while (at < line.length() && (line.charAt(at) == ' ' || line.charAt(at) == '\t')) {
      at++;
    }
    return at;
  }
}
