package tabor.testing;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * Writes the lanes of a random valid groove. In bar 1 the right foot strikes the kick on 1, and
 * where {@link #hasHands} says so the right hand strikes plainly on 1 and the left on 2: places
 * that edits can count on.
 */
final class GrooveWriter {
  private final Random dice;
  private final int beats;
  private final List<String> patterns;
  private boolean hands;

  GrooveWriter(Random dice, int beats, List<String> patterns) {
    this.dice = dice;
    this.beats = beats;
    this.patterns = patterns;
  }

  /** True if both hands strike where edits expect them. */
  boolean hasHands() {
    return hands;
  }

  /** The lines of all lanes. */
  String lanes(int bars) {
    return switch (dice.nextInt(6)) {
      case 0 -> stickings(bars);
      case 1 -> limbs(bars);
      case 2 -> surfaces(bars);
      case 3 -> line(bars);
      case 4 -> played(bars);
      default -> systems(bars);
    };
  }

  private String stickings(int bars) {
    hands = true;
    return lane(
            "hands",
            bars,
            List.of(
                "r", "l", "rl", "rlrl", "r(l)", "'r", "l/", "{rl}r", "R.", "rlr", "r~", "x", "xx",
                "r-l", "b", "(rl)R", "l^"),
            "r",
            "l")
        + (dice.nextBoolean()
            ? lane("feet", bars, List.of("r", ".", "rr", ".l", "rl"), "r", ".")
            : "  ostinato kick : x" + " .".repeat(beats - 1) + "\n");
  }

  private String limbs(int bars) {
    hands = true;
    return lane(
            dice.nextBoolean() ? "right" : "right hand",
            bars,
            List.of("h", "hh", "hhhh", "d", "dd", "b.", "hH", "h=", "x", "hhh", "c!"),
            "h",
            "h")
        + lane("left", bars, List.of(".", "s", ".(s)", "S", ".s.s", "s^", "n"), ".", "s")
        + lane("right foot", bars, List.of("k", ".", "k.k", "kk"), "k", ".")
        + (dice.nextBoolean() ? lane("left foot", bars, List.of("p", "."), ".", "p") : "");
  }

  private String surfaces(int bars) {
    hands = true;
    return lane("hihat", bars, List.of("r", "rr", "rR", "r.r.", "(r)r", "r="), "r", "r")
        + lane("snare", bars, List.of(".", "l", "L", ".(l)", "l/", "..l."), ".", "l")
        + lane("kick", bars, List.of("x", ".", ".x", "x.x", "x.x.:1"), "x", ".")
        + (dice.nextBoolean() ? "  ostinato hihat.foot : ." + " x".repeat(beats - 1) + "\n" : "");
  }

  private String line(int bars) {
    return "  line : "
        + bars(
            bars,
            List.of("rlkk", "r", "k", "rl", "rlk", "Rl", ".k", "r{ll}", "rlp", "(rl)k"),
            "k",
            "r")
        + "\n";
  }

  private String played(int bars) {
    List<String> names =
        new ArrayList<>(List.of("paradiddle", "double-paradiddle", "single-stroke-roll"));
    names.addAll(patterns);
    String name = names.get(dice.nextInt(names.size()));
    String value = List.of("eighths", "triplets", "sixteenths").get(dice.nextInt(3));
    return "  hands play "
        + name
        + (dice.nextInt(3) == 0 ? " left-lead" : "")
        + " in "
        + value
        + "\n"
        + lane("kick", bars, List.of("x", ".", "xx"), "x", ".");
  }

  private String systems(int bars) {
    int first = Math.max(1, bars / 2);
    String above = surfaces(first);
    return bars == first || above.contains("ostinato")
        ? bars == first ? above : surfaces(bars)
        : above
            + "next\n"
            + "  hihat : "
            + more(bars - first, List.of("r", "rr", "rrrr", "R"))
            + "\n  kick  : "
            + more(bars - first, List.of("x", ".", "x."))
            + "\n";
  }

  private String lane(String subject, int bars, List<String> words, String one, String two) {
    String colon = List.of(" : ", ":", "   :  ").get(dice.nextInt(3));
    return "  " + subject + colon + bars(bars, words, one, two) + end() + "\n";
  }

  private String end() {
    return List.of("", "", "", " |", "   # as before", "\t").get(dice.nextInt(6));
  }

  private String bars(int bars, List<String> words, String one, String two) {
    StringBuilder text = new StringBuilder(bar(words, one, two));
    for (int i = 1; i < bars; i++) {
      text.append(dice.nextBoolean() ? " | " : "|  ");
      text.append(dice.nextInt(5) == 0 ? "%" : bar(words, "", ""));
    }
    return text.toString();
  }

  private String more(int bars, List<String> words) {
    StringBuilder text = new StringBuilder(bar(words, "", ""));
    for (int i = 1; i < bars; i++) {
      text.append(" | ").append(bar(words, "", ""));
    }
    return text.toString();
  }

  /** A bar whose first two beats are given, where they are not empty. */
  private String bar(List<String> words, String one, String two) {
    List<String> bar = new ArrayList<>();
    if (!one.isEmpty()) {
      bar.add(one);
      bar.add(two);
    }
    while (bar.size() < beats) {
      bar.add(words.get(dice.nextInt(words.size())));
    }
    int last = bar.size() - 1;
    if (one.isEmpty() && beats >= 2 && dice.nextInt(6) == 0) {
      String word = bar.get(last - 1);
      if (word.matches("[a-z]{1,4}")) {
        bar.remove(last);
        bar.set(last - 1, word + ":2");
      }
    }
    return String.join(dice.nextInt(4) == 0 ? "  " : " ", bar);
  }
}
