package tabor.bench;

/** Texts of a wanted size, like what a teacher writes. */
final class LongFile {
  private LongFile() {}

  private static final int BARS_IN_A_SECTION = 10;

  /** A text of about so many bars: sections of ten, in turn written out, edited and poured. */
  static String ofBars(int bars) {
    StringBuilder text = new StringBuilder("title \"Long\"\ntempo 92\n");
    for (int section = 0; section * BARS_IN_A_SECTION < bars; section++) {
      String name = "s" + section;
      switch (section % 4) {
        case 0 -> written(text, name);
        case 1 -> text.append("step ").append(name).append(" \"Kick\"\n  add kick at 2& 3a\n");
        case 2 ->
            text.append("step ")
                .append(name)
                .append(" \"Ride\"\n  right plays ride\n  ghost left at 2 in bar 3\n");
        default ->
            text.append("groove ")
                .append(name)
                .append("\n  bars 10\n  hands play double-paradiddle in triplets\n");
      }
    }
    return text.toString();
  }

  private static void written(StringBuilder text, String name) {
    text.append("groove ").append(name).append(" \"Written out\"\n");
    part(text, "hihat", "rr rr rrrr rr");
    part(text, "snare", ". l . .l");
    part(text, "kick", "x . .x .");
  }

  private static void part(StringBuilder text, String subject, String bar) {
    text.append("  ").append(subject).append(" : ");
    for (int i = 0; i < BARS_IN_A_SECTION; i++) {
      text.append(i == 0 ? "" : " | ").append(bar);
    }
    text.append('\n');
  }
}
