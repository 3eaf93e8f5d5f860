package tabor.testing;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import tabor.kit.Kits;

/**
 * Random files of unusual shape, most of them valid: very long and very short sections, one part or
 * many, names of one letter and of forty, every built-in kit, words of every division, signs of
 * every kind.
 */
public final class ShapedFiles {
  private static final List<String> METERS =
      List.of("4/4", "3/4", "2/4", "6/8", "12/8", "5/4", "7/8 in 2+2+3", "6/8 in 6", "1/4", "4/2");

  private static final List<String> PARTS = List.copyOf(Kits.FIVE_PIECE.surfaces().keySet());

  private static final List<String> WORDS =
      List.of(
          "x",
          ".",
          "xx",
          "x.",
          ".x",
          "xxx",
          "xxxx",
          "x..x",
          "(x)",
          "X",
          "x/",
          "x//",
          "x~",
          "'x",
          "''x.",
          "'''x",
          "{xx}x",
          "x{x{xx}}",
          "xxxxx",
          "xxxxxx",
          "xxxxxxx",
          "x-",
          "x/-",
          "(x)X(x)x");

  private static final List<String> FEELS =
      List.of(
          "straight", "swing eighths as triplets", "swing eighths 62%", "swing sixteenths 58.5%");

  private final Random random;
  private final StringBuilder text = new StringBuilder();

  private ShapedFiles(long seed) {
    random = new Random(seed);
  }

  /** Texts that are mostly without errors. */
  public static Arbitrary<String> any() {
    return Arbitraries.longs().map(ShapedFiles::ofSeed);
  }

  /** One such text, the same for the same seed. */
  public static String ofSeed(long seed) {
    return new ShapedFiles(seed).file();
  }

  private <T> T one(List<T> of) {
    return of.get(random.nextInt(of.size()));
  }

  private String file() {
    text.append("on ").append(one(Kits.NAMES)).append('\n');
    text.append("feel ").append(one(FEELS)).append('\n');
    text.append("tempo ").append(20 + random.nextInt(40)).append('\n');
    String meter = one(METERS);
    text.append("time ").append(meter).append('\n');
    String name = random.nextBoolean() ? "s" : "a" + "-long".repeat(7) + "-name";
    int bars = one(List.of(1, 2, 9, 10, 12, 99, 101, 120));
    groove(name, beats(meter), bars);
    if (random.nextBoolean()) {
      text.append("step t\n  bars ").append(one(List.of(1, 3, 11))).append('\n');
    }
    if (random.nextBoolean()) {
      text.append("chart c\n  count-in 2 bars\n  click eighths\n  play ");
      text.append(name).append(" 2 times\n  rest 1 bar\n");
    }
    return text.toString();
  }

  private static int beats(String meter) {
    if (meter.contains("+")) {
      return 3;
    }
    return meter.contains("in 6")
        ? 6
        : meter.equals("6/8")
            ? 2
            : meter.equals("12/8") ? 4 : Integer.parseInt(meter.split("/", -1)[0]);
  }

  private void groove(String name, int beats, int bars) {
    text.append("groove ").append(name);
    if (random.nextBoolean()) {
      text.append(" \"")
          .append(one(List.of("A", "Für Élise's drum — \u6f22\u5b57", "<b>&")))
          .append('"');
    }
    text.append("\n  bars ").append(bars).append('\n');
    if (random.nextInt(4) == 0) {
      text.append("  pickup 1 beat\n");
    }
    List<String> parts = new ArrayList<>(PARTS);
    Collections.shuffle(parts, random);
    int many = one(List.of(1, 1, 2, 3, 4, 8));
    for (String part : parts.subList(0, many)) {
      text.append("  ostinato ").append(part).append(" :");
      for (int beat = 0; beat < beats; beat++) {
        // Where many parts meet, few strokes keep them playable.
        text.append(' ').append(many > 2 && random.nextInt(many) > 0 ? "." : one(WORDS));
      }
      text.append('\n');
    }
    if (random.nextInt(3) == 0) {
      text.append("  dynamic p at 1 in bar 1\n");
      text.append("  crescendo to f from 1 in bar 1 to 1 in bar ").append(bars).append('\n');
    }
    if (random.nextInt(4) == 0) {
      text.append("  text \"").append("word ".repeat(random.nextInt(60))).append("\"\n");
    }
  }
}
