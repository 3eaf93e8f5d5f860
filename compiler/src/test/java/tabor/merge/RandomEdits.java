package tabor.merge;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import tabor.format.Formatter;

/** Edits a text as people do: at random, line by line. */
final class RandomEdits {
  private final Random dice;
  private final String mark;
  private int number;

  /** Every line that it makes up holds {@code mark}, so that two of them never make up the same. */
  RandomEdits(long seed, String mark) {
    this.dice = new Random(seed);
    this.mark = mark;
  }

  String edited(String text, int edits) {
    String edited = text;
    for (int i = 0; i < edits; i++) {
      edited = once(edited);
    }
    return edited;
  }

  private String once(String text) {
    List<String> lines = new ArrayList<>(text.lines().toList());
    if (lines.isEmpty()) {
      return text;
    }
    int at = dice.nextInt(lines.size());
    boolean inText = lines.get(at).contains("\"\"\"") || lines.get(at).startsWith("    ");
    switch (dice.nextInt(11)) {
      case 0 -> lines.add("step " + name() + "\n  text \"" + name() + "\"");
      case 1 ->
          lines.add(
              "\n# " + name() + "\nstep " + name() + " \"A step\"\n  text \"" + name() + "\"");
      case 2 -> lines.add(at, "  text \"" + name() + "\"");
      case 3 -> lines.add(at, "# " + name());
      case 4 -> lines.add(at, "");
      case 5 -> lines.set(at, inText ? lines.get(at) : lines.get(at) + "  # " + name());
      case 6 -> lines.set(at, lines.get(at).replaceFirst("\\d+", "7" + dice.nextInt(9)));
      case 7 -> {
        if (!inText) {
          lines.remove(at);
        }
      }
      case 8 -> {
        // A line that is moved into a text would tear it, and with it all lines below.
        if (!inText && !text.contains("\"\"\"")) {
          String line = lines.remove(at);
          lines.add(dice.nextInt(lines.size() + 1), line);
        }
      }
      case 9 -> {
        return Formatter.format(text);
      }
      default -> {
        return text.endsWith("\n") ? text.substring(0, text.length() - 1) : text + "\n";
      }
    }
    return String.join("\n", lines) + "\n";
  }

  private String name() {
    return mark + "-" + ++number + "x" + dice.nextInt(1000);
  }
}
