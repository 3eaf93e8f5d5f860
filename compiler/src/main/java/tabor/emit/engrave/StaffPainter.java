package tabor.emit.engrave;

import java.util.ArrayList;
import java.util.List;
import tabor.rhythm.Meter;

/** Draws staff lines, clef, meter and barlines of a system. */
record StaffPainter(Canvas canvas, Look.Ending ending) {
  private static final double CLEF_AT = 0.7;
  private static final double AFTER_CLEF = 0.9;
  private static final double AFTER_METER = 0.7;

  /** From a repeat's dots to the thin line. */
  private static final double DOTS_GAP = 0.4;

  /** How far the thin line of a final barline stands left of the thick one's right edge. */
  private static final double FINAL = Rule.THICK_BAR + Rule.BAR_GAP + Rule.THIN_BAR;

  /** Room for the sign that a repeat begins: thick line, thin line, dots. */
  static final double OPENING = FINAL + DOTS_GAP + Sign.of("repeatDots").box().width();

  /** Room of the end of a section, beside its last bar. */
  static double tail(Look.Ending ending) {
    return switch (ending) {
      case FINAL -> FINAL;
      case OPEN -> 0;
      case LOOP -> FINAL + DOTS_GAP + Sign.of("repeatDots").box().width() - 0.25;
    };
  }

  /** Room that the clef and the meters at the start of a section take from the left edge. */
  static double prefix(List<Meter> meters) {
    double clef = CLEF_AT + Sign.of("unpitchedPercussionClef1").box().width();
    return !meters.isEmpty()
        ? clef + AFTER_CLEF + MeterSigns.width(meters) + AFTER_METER
        : clef + 0.5;
  }

  /** Room of the meters after the last barline of a system. */
  static double courtesy(List<Meter> meters) {
    return meters.isEmpty() ? 0 : MeterSigns.room(meters) + AFTER_METER;
  }

  /** Draws a system; {@code head} are the meters after its clef, none but in a first system. */
  void paint(PlacedSystem line, List<Meter> head, boolean last) {
    double end = line.places().end();
    List<Mark> lines = new ArrayList<>();
    for (int i = 0; i < 5; i++) {
      lines.add(Mark.Line.rule(0, i, line.right(), i, Rule.STAFF_LINE));
    }
    canvas.marks.add(Mark.Group.of("staff", lines));
    Sign clef = Sign.of("unpitchedPercussionClef1");
    canvas.marks.add(Mark.Group.of("clef", List.of(canvas.sign(clef, CLEF_AT, 2))));
    MeterSigns.paint(canvas, head, CLEF_AT + clef.box().width() + AFTER_CLEF);
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
      MeterSigns.paintAfter(canvas, line.bars().get(i).meters(), starts[i]);
    }
    if (last && ending != Look.Ending.OPEN) {
      double thin = end - Rule.THICK_BAR - Rule.BAR_GAP;
      bars.add(barline(thin, Rule.THIN_BAR));
      bars.add(barline(end, Rule.THICK_BAR));
      if (ending == Look.Ending.LOOP) {
        double width = Sign.of("repeatDots").box().width();
        bars.add(dots(thin - Rule.THIN_BAR - DOTS_GAP - width));
      }
    } else {
      bars.add(barline(end, Rule.THIN_BAR));
      MeterSigns.paintAfter(canvas, line.courtesy(), end);
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
}
