package tabor.weave;

/** Pictures in words, for whoever cannot see them. */
final class Alternative {
  /** Longer than this nobody listens to the end; a file's own description says everything. */
  private static final int MOST = 600;

  private Alternative() {}

  /**
   * Title, then bar by bar what is played; whole bars are left out at the end of a long section.
   *
   * @param words sentences, the first about the whole, then one for each bar
   */
  static String of(String title, String words) {
    String all = title.strip() + ": " + words.strip();
    if (all.length() <= MOST) {
      return clean(all);
    }
    int end = all.lastIndexOf(". ", MOST);
    int least = all.indexOf(". ");
    String kept = all.substring(0, (Math.max(end, least) < 0 ? MOST : Math.max(end, least)) + 1);
    return clean(kept + " And so on.");
  }

  private static String clean(String text) {
    return text.replaceAll("\\s+", " ").strip();
  }
}
