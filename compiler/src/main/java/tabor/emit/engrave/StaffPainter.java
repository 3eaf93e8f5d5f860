package tabor.emit.engrave;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;

/** Draws staff lines, clef, meter and barlines of a system. */
final class StaffPainter {
  private static final double CLEF_AT = 0.7;
  private static final double AFTER_CLEF = 0.9;
  private static final double AFTER_METER = 0.7;

  /** How far the thin line of a final barline stands left of the thick one's right edge. */
  static final double FINAL = Rule.THICK_BAR + Rule.BAR_GAP + Rule.THIN_BAR;

  private final Canvas canvas;

  StaffPainter(Canvas canvas) {
    this.canvas = canvas;
  }

  /** Room that clef and, in a first system, meter take from the left edge. */
  static double prefix(Meter meter, boolean first) {
    double clef = CLEF_AT + Sign.of("unpitchedPercussionClef1").box().width();
    return first ? clef + AFTER_CLEF + meterWidth(meter) + AFTER_METER : clef + 0.5;
  }

  void paint(PlacedSystem line, Meter meter, boolean first, boolean last) {
    double end = line.places().end();
    List<Mark> lines = new ArrayList<>();
    for (int i = 0; i < 5; i++) {
      double half = Rule.STAFF_LINE / 2;
      lines.add(new Mark.Ink(Contour.of(new Box(0, i - half, end, i + half))));
    }
    canvas.marks.add(Mark.Group.of("staff", lines));
    Sign clef = Sign.of("unpitchedPercussionClef1");
    canvas.marks.add(Mark.Group.of("clef", List.of(canvas.sign(clef, CLEF_AT, 2))));
    if (first) {
      meter(meter, CLEF_AT + clef.box().width() + AFTER_CLEF);
    }
    List<Mark> bars = new ArrayList<>();
    double[] starts = line.places().starts();
    for (int i = 1; i < starts.length; i++) {
      bars.add(barline(starts[i], Rule.THIN_BAR));
    }
    if (last) {
      bars.add(barline(end - Rule.THICK_BAR - Rule.BAR_GAP, Rule.THIN_BAR));
      bars.add(barline(end, Rule.THICK_BAR));
    } else {
      bars.add(barline(end, Rule.THIN_BAR));
    }
    canvas.marks.add(Mark.Group.of("barlines", bars));
  }

  private Mark barline(double right, double thickness) {
    double half = Rule.STAFF_LINE / 2;
    return canvas.ink(Contour.of(new Box(right - thickness, -half, right, 4 + half)));
  }

  private void meter(Meter meter, double x) {
    double width = meterWidth(meter);
    List<Mark> marks = new ArrayList<>();
    row(upper(meter), x, width, 1, marks);
    row(signs(Integer.toString(meter.unit())), x, width, 3, marks);
    canvas.marks.add(Mark.Group.of("meter", marks));
  }

  private void row(List<Sign> signs, double x, double width, double y, List<Mark> marks) {
    double at = x + (width - length(signs)) / 2;
    for (Sign sign : signs) {
      marks.add(canvas.sign(sign, at, y));
      at += sign.advance();
    }
  }

  private static double meterWidth(Meter meter) {
    return Math.max(length(upper(meter)), length(signs(Integer.toString(meter.unit()))));
  }

  private static double length(List<Sign> signs) {
    return signs.stream().mapToDouble(Sign::advance).sum();
  }

  /** The upper number; of unequal beats their sizes with plus signs. */
  private static List<Sign> upper(Meter meter) {
    if (meter.isEven()) {
      return signs(Integer.toString(meter.count()));
    }
    return signs(
        IntStream.range(0, meter.beatCount())
            .mapToObj(i -> meter.beat(i).over(Time.of(1, meter.unit())).toString())
            .collect(Collectors.joining("+")));
  }

  private static List<Sign> signs(String text) {
    return text.chars()
        .mapToObj(c -> Sign.of(c == '+' ? "timeSigPlus" : "timeSig" + (char) c))
        .toList();
  }
}
