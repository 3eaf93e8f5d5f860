package tabor.merge;

/** The line ends of a text, where all are alike. */
final class LineEnd {
  private LineEnd() {}

  /** The one line end of the merged text; empty where the lines keep their own. */
  static String of(String base, String ours, String theirs) {
    String was = of(base);
    String our = of(ours);
    String their = of(theirs);
    if (was.isEmpty() || our.isEmpty() || their.isEmpty()) {
      return "";
    }
    return our.equals(was) ? their : our;
  }

  /** The line end that every line of a text has; empty where they are not alike. */
  private static String of(String text) {
    String found = "";
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c != '\n' && c != '\r') {
        continue;
      }
      String end = c == '\n' ? "\n" : "\r";
      if (c == '\r' && i + 1 < text.length() && text.charAt(i + 1) == '\n') {
        end = "\r\n";
        i++;
      }
      if (!found.isEmpty() && !found.equals(end)) {
        return "";
      }
      found = end;
    }
    return found.isEmpty() ? "\n" : found;
  }
}
