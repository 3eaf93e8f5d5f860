package tabor.emit.engrave;

import java.util.ArrayList;
import java.util.List;
import tabor.groove.Groove;
import tabor.lists.Lists;
import tabor.rhythm.Meter;
import tabor.rhythm.Meters;

/**
 * Which meters are printed where, and the signs that they are made of. A meter stands where it
 * begins to hold. Two or three that take turns bar by bar, each unlike the one before it, are
 * printed once, side by side at the start, as engravers do for meters that alternate regularly
 * (common practice, no source).
 */
final class MeterSigns {
  /** More meters side by side would be no help. */
  private static final int MOST_TOGETHER = 3;

  /** Between two meters that stand side by side. */
  private static final double BETWEEN = 0.8;

  /** From a barline to a meter that stands after it. */
  private static final double AFTER_BARLINE = 0.6;

  /** Room on both sides of the plus of an additive meter, beside its own. */
  private static final double PLUS_AIR = 0.12;

  private MeterSigns() {}

  /** The meters printed at the start of a bar, in order; none where nothing changes. */
  static List<Meter> at(Groove groove, int bar) {
    Meters meters = groove.meters();
    boolean together = groove.bars() >= meters.size() && takeTurns(meters);
    if (bar == groove.firstBar()) {
      return together ? meters.cycle() : List.of(meters.of(bar));
    }
    return together || looksLike(meters.of(bar), meters.of(bar - 1))
        ? List.of()
        : List.of(meters.of(bar));
  }

  /** True if each bar has another meter than the bar before, in a short round. */
  private static boolean takeTurns(Meters meters) {
    int size = meters.size();
    if (size < 2 || size > MOST_TOGETHER) {
      return false;
    }
    for (int i = 0; i < size; i++) {
      if (looksLike(meters.cycle().get(i), meters.cycle().get((i + 1) % size))) {
        return false;
      }
    }
    return true;
  }

  private static boolean looksLike(Meter a, Meter b) {
    return a.unit() == b.unit() && a.upper().equals(b.upper());
  }

  /** Width of meters side by side. */
  static double width(List<Meter> meters) {
    return Lists.sum(meters, MeterSigns::width) + BETWEEN * Math.max(0, meters.size() - 1);
  }

  /** Room that meters need after a barline; 0 for none. */
  static double room(List<Meter> meters) {
    return meters.isEmpty() ? 0 : AFTER_BARLINE + width(meters);
  }

  /** Draws meters side by side from a place on. */
  static void paint(Canvas canvas, List<Meter> meters, double left) {
    double x = left;
    for (Meter meter : meters) {
      double width = width(meter);
      List<Mark> marks = new ArrayList<>();
      row(canvas, signs(meter.upper()), x, width, 1, marks);
      row(canvas, signs(Integer.toString(meter.unit())), x, width, 3, marks);
      canvas.marks.add(Mark.Group.of("meter", marks));
      x += width + BETWEEN;
    }
  }

  /** Draws meters in the room that they have after a barline. */
  static void paintAfter(Canvas canvas, List<Meter> meters, double barline) {
    paint(canvas, meters, barline + AFTER_BARLINE);
  }

  private static void row(
      Canvas canvas, List<Sign> signs, double x, double width, double y, List<Mark> marks) {
    double at = x + (width - length(signs)) / 2;
    for (Sign sign : signs) {
      // A plus would be lost on the line that goes through the middle of the digits.
      double height = isPlus(sign) ? y - 0.5 : y;
      at += isPlus(sign) ? PLUS_AIR : 0;
      marks.add(canvas.sign(sign, at, height));
      at += sign.advance() + (isPlus(sign) ? PLUS_AIR : 0);
    }
  }

  private static boolean isPlus(Sign sign) {
    return sign.name().equals("timeSigPlus");
  }

  private static double width(Meter meter) {
    return Math.max(length(signs(meter.upper())), length(signs(Integer.toString(meter.unit()))));
  }

  private static double length(List<Sign> signs) {
    return Lists.sum(signs, sign -> sign.advance() + (isPlus(sign) ? 2 * PLUS_AIR : 0));
  }

  private static List<Sign> signs(String text) {
    List<Sign> signs = new ArrayList<>();
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      signs.add(Sign.of(c == '+' ? "timeSigPlus" : "timeSig" + c));
    }
    return signs;
  }
}
