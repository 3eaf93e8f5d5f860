package tabor.compare;

import java.util.ArrayList;
import java.util.List;
import tabor.groove.Groove;

/** Finds which bar was which, so that a bar put in front changes one bar and not all. */
final class BarPairs {
  /**
   * A bar with nothing in it costs this much to leave alone, a full one half its strokes more: a
   * bar that is put in is one change, but a bar that was worked over is not a new one.
   */
  private static final int EMPTY = 3;

  private BarPairs() {}

  /** Every bar of both sections once, in order; the pickup is none of them. */
  static List<SectionChange.Bars> of(Groove before, Groove after) {
    BarContents contents = new BarContents();
    List<BarContents.Bar> left = contents.of(before);
    List<BarContents.Bar> right = contents.of(after);
    Alignment.Cost cost =
        new Alignment.Cost() {
          @Override
          public int pair(int a, int b) {
            return (before.meter(a + 1).equals(after.meter(b + 1)) ? 0 : 1)
                + contents.distance(left.get(a), right.get(b));
          }

          @Override
          public int left(int index) {
            return EMPTY + left.get(index).strokes() / 2;
          }

          @Override
          public int right(int index) {
            return EMPTY + right.get(index).strokes() / 2;
          }
        };
    return Alignment.of(left.size(), right.size(), cost).stream()
        .map(pair -> new SectionChange.Bars(pair.left() + 1, pair.right() + 1))
        .toList();
  }

  /** Every bar as itself. */
  static List<SectionChange.Bars> inPlace(int bars) {
    List<SectionChange.Bars> pairs = new ArrayList<>();
    for (int bar = 1; bar <= bars; bar++) {
      pairs.add(new SectionChange.Bars(bar, bar));
    }
    return pairs;
  }
}
