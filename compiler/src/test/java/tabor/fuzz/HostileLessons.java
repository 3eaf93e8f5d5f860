package tabor.fuzz;

import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Lessons without a mistake that ask for a lot in what is made of them: practice, sheets, players,
 * pages.
 */
final class HostileLessons {
  private static final String BEAT =
      "groove beat\n  hihat : xxxx xxxx xxxx xxxx\n  snare : . x . x\n  kick : x . xx .\n";

  private HostileLessons() {}

  /** Adds the texts by name; see {@link HostileFiles#files()}. */
  static void add(Map<String, String> files) {
    small(files);
    // Nearly as much as a file may hold, of each kind.
    int several = 130_000;
    sections(files, "most-", several);
    practice(files, "most-", 44_000);
    printed(files, "most-", several);
    for (int size : new int[] {HostileFiles.SHORT, HostileFiles.LONG}) {
      String name = size == HostileFiles.SHORT ? "short-" : "long-";
      sections(files, name, size);
      practice(files, name, size);
      printed(files, name, size);
    }
  }

  private static void small(Map<String, String> files) {
    files.put(
        "result-20000-strokes",
        "groove g\n  bars 400\n  ostinato hihat : xxxx xxxx xxxx xxxx\n"
            + "  ostinato hands : rlrl rlrl rlrl rlrl\n  ostinato kick : xxxx xxxx xxxx xxxx\n");
    files.put(
        "result-19000-hands",
        "groove g\n  tempo 40\n  bars 250\n  ostinato hands : "
            + "rlrlrlrlrlrlrlrlrlr ".repeat(4)
            + "\n");
    files.put(
        "result-19000-open",
        "groove g\n  tempo 30\n  bars 250\n  ostinato snare : "
            + "xxxxxxxxxxxxxxxxxx ".repeat(4)
            + "\n");
    files.put(
        "result-quintuplets-everywhere",
        "groove g\n  tempo 40\n  bars 512\n  ostinato hihat : xxxxx xxx xxxxxxx xxxxx\n"
            + "  ostinato kick : xxx xxxxx xx xxxxxxx\n");
    files.put(
        "result-dense-beats",
        "groove g\n  tempo 10\n  hands : " + ("rl".repeat(500) + " ").repeat(4) + "\n");
    files.put(
        "result-day-of-practice",
        BEAT + "chart c\n  click quarters\n  play beat for 140 minutes\n");
    files.put(
        "result-climb-for-hours",
        BEAT + "chart c\n  climb beat from 30 to 300 by 0.5 for 70 minutes\n");
    files.put(
        "result-gaps", BEAT + "chart c\n  click 1 bar on 1 off\n  play beat for 120 minutes\n");
    files.put("result-trades", BEAT + "chart c\n  trade beat 1 bar for 120 minutes\n");
    files.put(
        "result-long-chart-of-a-long-section",
        "groove g\n  bars 512\n  ostinato hihat : xxxx xxxx xxxx xxxx\n"
            + "chart c\n  count-in 1 bar\n  play g 12 times\n");
    String bars =
        IntStream.range(1, 64).mapToObj(HostileLessons::places).collect(Collectors.joining(" |"));
    files.put(
        "result-sheets-of-64",
        BEAT
            + HostileFiles.lines(
                40, i -> "sheet s" + i + " from beat\n  each add floor at" + bars));
    files.put(
        "result-sheet-of-a-long-groove",
        "groove g\n  bars 64\n  ostinato hihat : xxxx xxxx xxxx xxxx\n  ostinato kick : x . . .\n"
            + "sheet s from g\n  each add snare at 1& 2& 3& 4&\n  each add kick at 2 3 4\n"
            + "chart c\n  play s each 4 times\n");
  }

  /** Off beats by the bits of a number. */
  private static String places(int number) {
    String[] all = {"1&", "2&", "3&", "4&", "1e", "2e"};
    StringBuilder places = new StringBuilder();
    for (int i = 0; i < all.length; i++) {
      places.append((number >> i & 1) == 0 ? "" : " " + all[i]);
    }
    return places.toString();
  }

  private static void sections(Map<String, String> files, String name, int size) {
    files.put(
        name + "steps-of-a-beat",
        HostileFiles.filled(
            size, BEAT, i -> "step \"More\"\n  accent hihat at " + (i % 4 + 1) + "\n"));
    files.put(
        name + "distinct-grooves",
        HostileFiles.filled(
            size,
            "",
            i -> {
              StringBuilder word = new StringBuilder();
              for (int bit = 0; bit < 16; bit++) {
                word.append((((i * 2654435761L) >> bit) & 1) == 0 ? 'x' : '.');
                word.append(bit % 4 == 3 ? " " : "");
              }
              return "groove g" + i + "\n  hihat : xx xx xx xx\n  kick : " + word;
            }));
    files.put(
        name + "sheets",
        HostileFiles.filled(
            size, BEAT, i -> "sheet s" + i + " from beat\n  each add floor at 1& 2& 3& 4&"));
    files.put(
        name + "shift-many-sections",
        HostileFiles.filled(
            size, BEAT, i -> "step t" + i + " from beat\n  shift hihat later by 1 sixteenth"));
  }

  private static void practice(Map<String, String> files, String name, int size) {
    String fill = BEAT + "groove fill\n  snare : xxxx xxxx xxxx xxxx\nchart c\n";
    files.put(
        name + "practice",
        HostileFiles.filled(
            size - 200,
            fill,
            i ->
                switch (i % 6) {
                  case 0 -> "  mark \"M" + i + "\"";
                  case 1 -> "  climb beat from 60 to 80 by 5 every 2 times";
                  case 2 -> "  play beat 4 bars fill fill";
                  case 3 -> "  trade beat 1 bar 2 times";
                  case 4 -> "  cue \"Count aloud\"";
                  default -> "  rest 1 bar";
                }));
    files.put(
        name + "marks-and-cues",
        HostileFiles.filled(
            size, fill, i -> "  mark \"M" + i + "\"\n  cue \"Watch\"\n  play beat"));
    files.put(
        name + "practice-charts",
        HostileFiles.filled(
            size,
            BEAT,
            i -> "chart c" + i + "\n  climb beat from 60 to 70 by 5 every 2 times\n  rest 1 bar"));
    files.put(
        name + "players",
        HostileFiles.filled(
            size - 300,
            BEAT + "step more\n  accent hihat at 1\n",
            i ->
                "player p" + i + " \"P" + i + "\"\n  tempo " + (50 + i % 50) + "%\n  left-handed"));
  }

  private static void printed(Map<String, String> files, String name, int size) {
    files.put(
        name + "goals", HostileFiles.filled(size, BEAT, i -> "  goal \"Even eighths " + i + "\""));
    files.put(
        name + "texts", HostileFiles.filled(size, BEAT, i -> "  text \"Count aloud " + i + "\""));
    files.put(
        name + "new-pages",
        HostileFiles.filled(
            size, "", i -> "groove g" + i + "\n  page new\n  kick : x . x .\n  text \"New\""));
    files.put(
        name + "empty-staves",
        HostileFiles.filled(size, "", i -> "groove g" + i + "\n  blank 64 bars"));
    files.put(
        name + "steps-of-long-titles",
        HostileFiles.filled(
            size,
            BEAT,
            i ->
                "step \""
                    + "Long words ".repeat(20)
                    + i
                    + "\"\n  accent kick at "
                    + (i % 2 == 0 ? 1 : 3)));
  }
}
