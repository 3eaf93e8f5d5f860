package tabor.fuzz;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.function.IntFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Texts that ask for a lot: short ones whose sections are huge, and long ones of one kind of line.
 * As a program it writes them into a folder, each as a lesson of its own.
 */
public final class HostileFiles {
  /** What a short text may be long. */
  public static final int SHORT = 64 << 10;

  /** What a long text may be long, with room for what an edited copy of it says more. */
  public static final int LONG = (4 << 20) - 1024;

  static final String COMMON = "groove g\n  kick : x . x .\n";

  private HostileFiles() {}

  /** Writes all texts into the folder that is named. */
  public static void main(String[] args) throws IOException {
    Path folder = Files.createDirectories(Path.of(args[0]));
    for (Map.Entry<String, String> file : files().entrySet()) {
      Path path = folder.resolve(file.getKey() + ".tabor");
      Files.createDirectories(path.getParent());
      Files.writeString(path, file.getValue());
    }
  }

  /**
   * The texts by name, the same at all times. A name with a slash is a file in a folder of files
   * that use each other; the one to be looked at is called {@code a}.
   */
  public static Map<String, String> files() {
    Map<String, String> files = new LinkedHashMap<>();
    results(files);
    HostileLessons.add(files);
    for (int size : new int[] {SHORT, LONG}) {
      String name = size == SHORT ? "short" : "long";
      for (Map.Entry<String, String> text : texts(size).entrySet()) {
        files.put(name + "-" + text.getKey(), text.getValue());
      }
    }
    chains(files);
    return files;
  }

  /** Few words, much to do. */
  private static void results(Map<String, String> files) {
    String word = "r".repeat(900);
    files.put(
        "result-word-900-by-512-bars",
        "groove g\n  bars 512\n  ostinato snare : "
            + word
            + " . . .\n"
            + steps(8, "accent snare at 1"));
    String full = "groove g\n  bars 512\n  ostinato hihat : rrrr rrrr rrrr rrrr\n";
    String half =
        "groove g\n  bars 512\n  ostinato hands : rlrl rlrl rlrl rlrl\n  ostinato kick : x x x x\n";
    files.put("result-512-bars-by-24-steps", half + steps(23, "accent hands at 1"));
    files.put("result-beat-of-4000", "groove g\n  snare : " + "x".repeat(4000) + " . . .\n");
    files.put(
        "result-beat-of-4000-by-hand", "groove g\n  snare : " + "rl".repeat(2000) + " . . .\n");
    files.put(
        "result-four-beats-of-4000",
        "groove g\n  hands : " + ("rl".repeat(2000) + " ").repeat(4) + "\n");
    files.put(
        "result-primes-in-one-beat",
        "groove g\n"
            + lines(
                8,
                i ->
                    "  tom1 : "
                        + "x".repeat(new int[] {2, 3, 5, 7, 11, 13, 17, 19}[i])
                        + " . . ."));
    files.put(
        "result-shift-512-bars", full + lines(1000, i -> "  shift hihat later by 1 sixteenth"));
    files.put(
        "result-charts-of-100000",
        COMMON + lines(2, i -> "chart c" + i + "\n  play g 100000 times"));
    files.put("result-chart-of-a-day", COMMON + "chart c\n  play g 30000 times at tempo 90\n");
    files.put(
        "result-climb", COMMON + "chart c\n  climb g from 10 to 600 by 0.001 every 1 times\n");
    files.put("result-rests", COMMON + "chart c\n" + lines(3000, i -> "  rest 2 bars"));
    files.put(
        "result-rolls",
        "groove g\n  bars 512\n  ostinato snare : r/// - - -\n" + steps(6, "accent snare at 1"));
    files.put(
        "result-ruffs",
        "groove g\n  tempo 30\n  bars 512\n  ostinato snare : '''r'''r'''r'''r '''r'''r . .\n"
            + steps(6, "accent snare at 1"));
    files.put(
        "result-open-512-bars",
        "groove g\n"
            + "  bars 512\n"
            + "  ostinato snare : xxxx xxxx xxxx xxxx\n"
            + "  ostinato ride : xx xx xx xx\n"
            + "  ostinato kick : x xx . x\n"
            + steps(8, "accent snare at 1"));
    files.put(
        "result-doubled",
        "groove g\n  bars 64\n  ostinato snare : rlrl rlrl rlrl rlrl\n"
            + lines(12, i -> "  double snare at every beat"));
    files.put(
        "result-two-feels",
        "feel swing eighths 66%\n"
            + "groove g\n"
            + "  bars 512\n"
            + "  ostinato ride : xxx xx xxx xx\n"
            + "  ostinato hihat : xx xxx xx xxx\n");
  }

  static String steps(int count, String edit) {
    return lines(count, i -> "step \"more\"\n  " + edit);
  }

  static String lines(int count, IntFunction<String> line) {
    return IntStream.range(0, count).mapToObj(line).collect(Collectors.joining("\n", "", "\n"));
  }

  /** A text of {@code size} characters at most that begins as told and repeats a line. */
  static String filled(int size, String head, IntFunction<String> line) {
    StringBuilder text = new StringBuilder(head);
    for (int i = 0; ; i++) {
      String next = line.apply(i) + "\n";
      if (text.length() + next.length() > size) {
        return text.toString();
      }
      text.append(next);
    }
  }

  private static Map<String, String> texts(int size) {
    Map<String, String> texts = new LinkedHashMap<>();
    int room = size - 100;
    texts.put(
        "kits-in-a-chain",
        filled(size - 100, "kit k0 like five-piece\n", i -> "kit k" + (i + 1) + " like k" + i)
            + COMMON);
    texts.put(
        "unknown-names", filled(size, COMMON + "step s\n", i -> "  accent snrae" + i + " at 1"));
    texts.put("unknown-sections", filled(size, COMMON + "chart c\n", i -> "  play sectoin" + i));
    texts.put(
        "unknown-kits",
        filled(size, COMMON, i -> "groove h" + i + "\n  on kti" + i + "\n  kick : x x x x"));
    texts.put("repeated-lanes", filled(size, "groove g\n", i -> "  kick : x . x ."));
    texts.put(
        "repeated-lanes-that-clash",
        filled(size, "groove g\n", i -> i % 2 == 0 ? "  right : h h h h" : "  right : s s s s"));
    texts.put("quotes", COMMON + "  text \"" + "\" \"".repeat(room / 3 - 20) + "\n");
    texts.put("quotes-alone", "\"".repeat(room));
    texts.put("quote-lines", filled(size, COMMON, i -> "  text \"\"\""));
    texts.put("triple-quotes", "title \"\"\"" + "\"\"\" \"\"\"".repeat(room / 7 - 10));
    texts.put("one-word-of-prose", COMMON + "  text \"" + "x".repeat(room - 60) + "\"\n");
    texts.put("one-word-of-title", "title \"" + "x".repeat(room - 60) + "\"\n" + COMMON);
    texts.put("prose", COMMON + "  text \"" + "words and ".repeat(room / 10 - 10) + "\"\n");
    texts.put("one-lane", "groove g\n  hands : " + "rlrl ".repeat(room / 5 - 10) + "\n");
    texts.put("one-word", "groove g\n  hands : " + "rl".repeat(room / 2 - 20) + " . . .\n");
    texts.put("one-letter-a-beat", "groove g\n  hands : " + "r ".repeat(room / 2 - 20) + "\n");
    texts.put("grooves", filled(size, "", i -> "groove g" + i + "\n  hands : rlrl rlrl rlrl rlrl"));
    texts.put("steps", filled(size, COMMON, i -> "step \"s\"\n  add snare at 2"));
    texts.put(
        "steps-that-change",
        filled(
            size,
            COMMON,
            i -> "step \"s\"\n  move kick from " + (i % 2 == 0 ? "1 to 2" : "2 to 1")));
    texts.put(
        "edits",
        filled(
            size, COMMON + "step s\n", i -> i % 2 == 0 ? "  add snare at 2" : "  drop snare at 2"));
    texts.put(
        "places",
        filled(
            size,
            "groove g\n  hands : rlrl rlrl rlrl rlrl\nstep s\n",
            i -> "  accent hands at 1 1e 1& 1a 2 2e 2& 2a 3 3e 3& 3a"));
    texts.put(
        "one-line-of-places",
        "groove g\n  hands : rl rl rl rl\nstep s\n  accent hands at "
            + "1 2& ".repeat(room / 5 - 20)
            + "\n");
    texts.put(
        "groups",
        "groove g\n  snare : "
            + "{".repeat(room / 2 - 20)
            + "x"
            + "}".repeat(room / 2 - 40)
            + "\n");
    texts.put(
        "patterns",
        filled(size - 100, "", i -> "pattern p" + i + " : rlrrlrll")
            + "groove g\n  hands play p0 in sixteenths\n");
    texts.put(
        "long-pattern",
        "pattern p : " + "rl".repeat(room / 2 - 60) + "\ngroove g\n  hands play p in sixteenths\n");
    texts.put("charts", filled(size, COMMON, i -> "chart c" + i + "\n  play g 100 times"));
    texts.put("chart-lines", filled(size, COMMON + "chart c\n", i -> "  play g"));
    texts.put("next", filled(size, "groove g\n", i -> i % 2 == 0 ? "  kick : x . x ." : "  next"));
    texts.put("same-names", filled(size, "", i -> "groove g\n  kick : x . x ."));
    texts.put("headings", filled(size, "", i -> "groove g" + i));
    texts.put("comments", filled(size, COMMON, i -> "# " + "x".repeat(70)));
    texts.put("nonsense", filled(size, "", i -> "hnads " + Integer.toString(i, 36) + " : % & *"));
    texts.put("meter", "time 4/4 grouped " + "1+".repeat(room / 2 - 20) + "1\n" + COMMON);
    texts.put("meters", "time " + "4/4 3/4 ".repeat(room / 8 - 20) + "\n" + COMMON);
    texts.put(
        "surfaces",
        filled(
                size - 100,
                "kit k like five-piece\n",
                i -> "  surface s" + i + " key " + (27 + i % 60))
            + "groove g\n  on k\n  kick : x . x .\n");
    texts.put("astral", COMMON + "  text \"" + "\uD83E\uDD41".repeat(room / 4 - 20) + "\"\n");
    texts.put("digits", COMMON + "step s\n  add snare at " + "9".repeat(room - 60) + "\n");
    texts.put(
        "dynamics",
        filled(
            size,
            "groove g\n  kick : x . x .\n",
            i -> "  dynamic " + (i % 2 == 0 ? "p" : "f") + " at " + (i % 4 + 1)));
    texts.put("carriage-returns", COMMON.replace('\n', '\r').repeat(1) + "\r".repeat(room - 60));
    return texts;
  }

  private static void chains(Map<String, String> files) {
    int levels = 24;
    for (int i = 0; i < levels; i++) {
      String name = i == 0 ? "a" : "f" + i;
      String next = i + 1 < levels ? ("use \"f" + (i + 1) + ".tabor\"\n").repeat(2) : "";
      files.put("use-twice/" + name, next + COMMON.replace("groove g", "groove g" + i));
    }
    for (int i = 0; i < levels; i++) {
      for (String side : new String[] {"l", "r"}) {
        String name = i == 0 && side.equals("l") ? "a" : side + i;
        String next =
            i + 1 < levels
                ? "use \"l" + (i + 1) + ".tabor\"\nuse \"r" + (i + 1) + ".tabor\"\n"
                : "";
        files.put("use-both/" + name, next + COMMON.replace("groove g", "groove g" + side + i));
      }
    }
    for (int i = 0; i < 2000; i++) {
      String name = i == 0 ? "a" : "f" + i;
      String next = i + 1 < 2000 ? "use \"f" + (i + 1) + ".tabor\"\n" : "";
      files.put("use-chain/" + name, next + "groove g" + i + "\n  kick : x . x .\n");
    }
    for (int i = 0; i < 30; i++) {
      String name = i == 0 ? "a" : "f" + i;
      String next = i + 1 < 30 ? "use \"f" + (i + 1) + ".tabor\"\n" : "";
      files.put(
          "use-settings/" + name,
          next + String.format(Locale.ROOT, "tempo %d%ngroove g%d%n  kick : x . x .%n", 60 + i, i));
    }
  }
}
