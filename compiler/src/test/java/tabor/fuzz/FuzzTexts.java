package tabor.fuzz;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.regex.Pattern;
import tabor.kit.Kits;
import tabor.syntax.StatementRow;
import tabor.syntax.StatementTable;
import tabor.testing.Files;
import tabor.testing.ShapedFiles;

/** Random texts, each the same for the same number. */
final class FuzzTexts {
  /** Where a text comes from. */
  enum Kind {
    /** A file with statements of every kind, valid. */
    ORDINARY,
    /** A file of unusual shape, mostly valid. */
    SHAPED,
    /** A file with a few lines of the table of statements put in, on any kit, often valid. */
    SPLICED,
    /** One of these with anything changed. */
    MUTATED
  }

  private static final List<String> EXAMPLES =
      StatementTable.rows().stream()
          .filter(row -> !row.isSign() && !row.isHeading())
          .map(StatementRow::example)
          .toList();

  private static final Pattern HEADING =
      Pattern.compile("(pattern|kit|player|groove|step|sheet|chart)\\b.*");

  private static final List<String> SNIPPETS =
      List.of(
          "\"",
          "\"\"\"",
          "{",
          "}",
          "(",
          ")",
          "|",
          ":",
          "%",
          ".",
          "-",
          "'",
          "/",
          "~",
          "=",
          "!",
          "^",
          ",",
          "#",
          "\r",
          "\n",
          "\t",
          " ",
          "x",
          "rl",
          "512",
          "0",
          "1/0",
          "in bar 1",
          "at 1",
          "every",
          "\u201C",
          "\uD83E\uDD41",
          "\uD800",
          "\u0000",
          "\u202E",
          "use \"lesson.tabor\"\n",
          "next\n",
          "bars 64\n",
          "99999999999999999999",
          "tempo 600\n",
          "plays",
          "all",
          "from",
          "{{{{{{{{{",
          "xxx:7",
          "x///");

  private FuzzTexts() {}

  static Kind kind(long number) {
    return Kind.values()[(int) Math.floorMod(number, (long) Kind.values().length)];
  }

  static String text(Kind kind, long seed) {
    Random random = new Random(seed);
    return switch (kind) {
      case ORDINARY -> Files.ofSeed(seed);
      case SHAPED -> ShapedFiles.ofSeed(seed);
      case SPLICED -> splicedWell(random);
      case MUTATED -> mutated(text(Kind.values()[random.nextInt(3)], random.nextLong()), random);
    };
  }

  /** Most lines do not fit most files: of a few tries the first without an error is taken. */
  private static String splicedWell(Random random) {
    String text = spliced(random);
    for (int tries = 0; tries < 20 && FuzzChecks.compiled(text).hasErrors(); tries++) {
      text = spliced(random);
    }
    return text;
  }

  private static String spliced(Random random) {
    boolean shaped = random.nextInt(4) == 0;
    String text = shaped ? ShapedFiles.ofSeed(random.nextLong()) : Files.ofSeed(random.nextLong());
    List<String> lines = new ArrayList<>(text.lines().toList());
    for (int i = random.nextInt(3); i >= 0; i--) {
      String example = EXAMPLES.get(random.nextInt(EXAMPLES.size()));
      lines.add(place(lines, random), "  " + example.strip());
    }
    if (random.nextBoolean()) {
      lines.add(0, "on " + Kits.NAMES.get(random.nextInt(Kits.NAMES.size())));
    }
    return String.join("\n", lines) + "\n";
  }

  private static int place(List<String> lines, Random random) {
    // Mostly at the end of a section, where what it speaks of is there.
    for (int tries = 0; tries < 20; tries++) {
      int at = 1 + random.nextInt(lines.size());
      if (at == lines.size() || HEADING.matcher(lines.get(at)).matches()) {
        return at;
      }
    }
    return random.nextInt(lines.size() + 1);
  }

  private static String mutated(String from, Random random) {
    StringBuilder text = new StringBuilder(from);
    for (int i = random.nextInt(6); i >= 0; i--) {
      int at = random.nextInt(text.length() + 1);
      int to = Math.min(text.length(), at + 1 + random.nextInt(random.nextInt(8) == 0 ? 80 : 4));
      switch (random.nextInt(6)) {
        case 0 -> text.delete(at, to);
        case 1 -> text.insert(at, SNIPPETS.get(random.nextInt(SNIPPETS.size())));
        case 2 -> text.replace(at, to, SNIPPETS.get(random.nextInt(SNIPPETS.size())));
        case 3 -> text.insert(at, text.substring(at, to));
        case 4 -> text.insert(at, SNIPPETS.get(random.nextInt(SNIPPETS.size())).repeat(20));
        default -> swapLines(text, random);
      }
    }
    return text.toString();
  }

  private static void swapLines(StringBuilder text, Random random) {
    List<String> lines = new ArrayList<>(text.toString().lines().toList());
    if (lines.size() > 1) {
      lines.add(random.nextInt(lines.size()), lines.remove(random.nextInt(lines.size())));
      text.setLength(0);
      text.append(String.join("\n", lines)).append('\n');
    }
  }
}
