package tabor.ide;

import java.util.ArrayList;
import java.util.List;
import tabor.groove.Stroke;
import tabor.kit.Kits;
import tabor.kit.Limb;
import tabor.kit.Surface;

/** Which strokes the words of a target mean. */
final class Targets {
  private Targets() {}

  /** True if the stroke is meant by one of the words. */
  static boolean matches(Stroke stroke, List<String> words) {
    return words.stream().anyMatch(word -> matches(stroke, word));
  }

  private static boolean matches(Stroke stroke, String word) {
    return switch (word) {
      case "all", "line" -> true;
      case "hands" -> stroke.limb().isHand();
      case "feet" -> !stroke.limb().isHand();
      case "right", "right hand" -> stroke.limb() == Limb.RIGHT_HAND;
      case "left", "left hand" -> stroke.limb() == Limb.LEFT_HAND;
      case "right foot" -> stroke.limb() == Limb.RIGHT_FOOT;
      case "left foot" -> stroke.limb() == Limb.LEFT_FOOT;
      default -> onSurface(stroke, word);
    };
  }

  /** A surface by its name, or a piece by its first zone: its zones, hand and foot kept apart. */
  private static boolean onSurface(Stroke stroke, String word) {
    if (stroke.surface().name().equals(word)) {
      return true;
    }
    Surface whole = Kits.FIVE_PIECE.surface(word);
    return stroke.surface().piece().equals(word)
        && stroke.surface().isFoot() == (whole != null && whole.isFoot());
  }

  /** Reads a target from finished words, such as {@code right foot , snare}. */
  static List<String> read(List<String> words) {
    List<String> targets = new ArrayList<>();
    for (int i = 0; i < words.size(); i++) {
      String word = words.get(i);
      boolean limb = word.equals("right") || word.equals("left");
      if (limb && i + 1 < words.size() && words.get(i + 1).equals("foot")) {
        targets.add(word + " foot");
        i++;
      } else if (!word.equals(",") && !word.equals("hand")) {
        targets.add(word);
      }
    }
    return targets;
  }
}
