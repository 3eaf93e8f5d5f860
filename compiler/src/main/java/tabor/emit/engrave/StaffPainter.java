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

  /** Room on both sides of the plus of an additive meter, beside its own. */
  private static final double PLUS_AIR = 0.12;

  /** From a repeat's dots to the thin line. */
  private static final double DOTS_GAP = 0.4;

  /** How far the thin line of a final barline stands left of the thick one's right edge. */
  private static final double FINAL = Rule.THICK_BAR + Rule.BAR_GAP + Rule.THIN_BAR;

  /** Room for the sign that a repeat begins: thick line, thin line, dots. */
  static final double OPENING = FINAL + DOTS_GAP + Sign.of("repeatDots").box().width();

  private final Canvas canvas;
  private final Look.Ending ending;

  StaffPainter(Canvas canvas, Look.Ending ending) {
    this.canvas = canvas;
    this.ending = ending;
  }

  /** Room of the end of a section, beside its last bar. */
  static double tail(Look.Ending ending) {
    return switch (ending) {
      case FINAL -> FINAL;
      case LOOP -> FINAL + DOTS_GAP + Sign.of("repeatDots").box().width() - 0.25;
    };
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
      lines.add(Mark.Line.rule(0, i, end, i, Rule.STAFF_LINE));
    }
    canvas.marks.add(Mark.Group.of("staff", lines));
    Sign clef = Sign.of("unpitchedPercussionClef1");
    canvas.marks.add(Mark.Group.of("clef", List.of(canvas.sign(clef, CLEF_AT, 2))));
    if (first) {
      meter(meter, CLEF_AT + clef.box().width() + AFTER_CLEF);
    }
    List<Mark> bars = new ArrayList<>();
    double[] starts = line.places().starts();
    for (int i = 0; i < starts.length; i++) {
      if (line.bars().get(i).opening() > 0) {
        double thick = starts[i] - (i == 0 ? 0 : Rule.THIN_BAR) + Rule.THICK_BAR;
        bars.add(barline(thick, Rule.THICK_BAR));
        double thin = thick + Rule.BAR_GAP + Rule.THIN_BAR;
        bars.add(barline(thin, Rule.THIN_BAR));
        bars.add(dots(thin + DOTS_GAP));
      } else if (i > 0) {
        bars.add(barline(starts[i], Rule.THIN_BAR));
      }
    }
    if (last) {
      double thin = end - Rule.THICK_BAR - Rule.BAR_GAP;
      bars.add(barline(thin, Rule.THIN_BAR));
      bars.add(barline(end, Rule.THICK_BAR));
      if (ending == Look.Ending.LOOP) {
        double width = Sign.of("repeatDots").box().width();
        bars.add(dots(thin - Rule.THIN_BAR - DOTS_GAP - width));
      }
    } else {
      bars.add(barline(end, Rule.THIN_BAR));
    }
    canvas.marks.add(Mark.Group.of("barlines", bars));
  }

  private Mark barline(double right, double thickness) {
    double half = Rule.STAFF_LINE / 2;
    double x = right - thickness / 2;
    return canvas.rule(x, -half, x, 4 + half, thickness);
  }

  private Mark dots(double left) {
    Sign dots = Sign.of("repeatDots");
    return canvas.sign(dots, left - dots.box().left(), 2);
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

  private static double meterWidth(Meter meter) {
    return Math.max(length(upper(meter)), length(signs(Integer.toString(meter.unit()))));
  }

  private static double length(List<Sign> signs) {
    return signs.stream()
        .mapToDouble(sign -> sign.advance() + (isPlus(sign) ? 2 * PLUS_AIR : 0))
        .sum();
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
