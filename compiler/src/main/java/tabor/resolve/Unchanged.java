package tabor.resolve;

import java.util.List;
import tabor.groove.Groove;
import tabor.groove.Stroke;

/**
 * Tells whether a step asks of a pair of limbs just what the section it came from asked of them:
 * then the dealing there is the best one here too, and nothing nearer to it can be found.
 */
final class Unchanged {
  private Unchanged() {}

  /**
   * Compares everything that a dealing hangs on.
   *
   * @param hands true for the hands, false for the feet
   */
  static boolean pair(SectionFrame frame, SectionDraft draft, boolean hands) {
    Groove base = frame.base();
    if (base == null
        || base.bars() != draft.bars()
        || !base.setting().tempo().equals(frame.setting().tempo())
        || !base.setting().kit().equals(frame.kit())) {
      return false;
    }
    List<Stroke> before = base.written();
    List<Stroke> now = draft.strokes();
    int i = next(before, 0, hands);
    int j = next(now, 0, hands);
    while (i < before.size() && j < now.size()) {
      if (!isSame(before.get(i), now.get(j))) {
        return false;
      }
      i = next(before, i + 1, hands);
      j = next(now, j + 1, hands);
    }
    return i == before.size() && j == now.size();
  }

  private static int next(List<Stroke> strokes, int from, boolean hands) {
    int i = from;
    while (i < strokes.size() && strokes.get(i).limb().isHand() != hands) {
      i++;
    }
    return i;
  }

  private static boolean isSame(Stroke a, Stroke b) {
    return a == b
        || (a.bar() == b.bar()
            && a.at().equals(b.at())
            && a.limb() == b.limb()
            && a.surface().name().equals(b.surface().name())
            && a.open() == b.open()
            && a.hasLimb() == b.hasLimb()
            && asksTheSame(a, b));
  }

  /** Ornaments need the other hand or keep hands busy, rolls as long as they last. */
  private static boolean asksTheSame(Stroke a, Stroke b) {
    return a.ornaments().equals(b.ornaments())
        && (a.ornaments().isEmpty() || a.length().equals(b.length()));
  }
}
