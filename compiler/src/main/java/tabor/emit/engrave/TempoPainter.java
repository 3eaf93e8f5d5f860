package tabor.emit.engrave;

import java.util.ArrayList;
import java.util.List;
import tabor.groove.Groove;
import tabor.notation.Written;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/** Draws what stands over the first system: the title, the tempo and the swing mark. */
public final class TempoPainter {
  private static final double NOTE_SCALE = 0.7;

  private TempoPainter() {}

  /** The tempo and swing marks on the free row above the system. */
  static void paint(Canvas canvas, Groove groove) {
    double base = -(canvas.above.reach(0, 45) + 0.9);
    List<Mark> marks =
        mark(groove.setting().tempo(), groove.setting().feel(), canvas.font, 0, base);
    for (Mark mark : marks) {
      canvas.take(boxOf(mark));
    }
    canvas.marks.add(Mark.Group.of("tempo", marks));
  }

  /** The section's title above all. */
  static void heading(Canvas canvas, String title, double width) {
    double size = Rule.HEADING_SIZE;
    double measured = canvas.font.width(canvas.font.showable(title), size);
    if (measured > width) {
      size = Math.max(1.2, size * width / measured);
    }
    double base = -(canvas.above.most() + 1.1);
    canvas.marks.add(
        Mark.Group.of("heading", List.of(canvas.words(title, 0, base, size, Mark.Align.LEFT))));
  }

  private static Box boxOf(Mark mark) {
    return mark.match(
        new Mark.Cases<Box>() {
          @Override
          public Box ink(Mark.Ink ink) {
            return ink.outline().bounds();
          }

          @Override
          public Box words(Mark.Words words) {
            return words.box();
          }

          @Override
          public Box group(Mark.Group group) {
            return group.marks().stream().map(TempoPainter::boxOf).reduce(Box::union).orElseThrow();
          }
        });
  }

  /**
   * A tempo, and the swing where there is one: a small note, {@code = 92}, {@code swing eighths
   * 62%}.
   *
   * @param x its left edge
   * @param base the base line of its text
   */
  public static List<Mark> mark(Tempo tempo, Feel feel, TextMetrics font, double x, double base) {
    List<Mark> marks = new ArrayList<>();
    double right = note(tempo.beat(), x, base - 0.35, marks);
    String text =
        "= " + tempo.perMinute().decimal() + (feel.isStraight() ? "" : "    " + feel.words());
    double size = Rule.TEMPO_SIZE;
    marks.add(
        new Mark.Words(text, right + 0.5, base, size, Mark.Align.LEFT, font.width(text, size)));
    return marks;
  }

  /** The beat as a small note; returns its right edge. */
  private static double note(Time beat, double x, double y, List<Mark> marks) {
    boolean dotted = Meter.isDotted(beat);
    Time plain = dotted ? beat.times(2).over(3) : beat;
    Written.Type type = Written.Type.QUARTER;
    for (Written.Type candidate : Written.Type.values()) {
      if (candidate.length().equals(plain)) {
        type = candidate;
      }
    }
    Sign head = Heads.of(tabor.kit.Surface.Head.NORMAL, type);
    marks.add(new Mark.Ink(head.at(x, y, NOTE_SCALE)));
    double right = x + head.box().width() * NOTE_SCALE;
    if (type.hasStem()) {
      double top = y - 3.1 * NOTE_SCALE;
      double stem = right - Rule.STEM;
      marks.add(new Mark.Ink(Contour.of(new Box(stem, top, right, y - 0.1))));
      if (type.flags() > 0) {
        marks.add(new Mark.Ink(Heads.flag(type, true).at(stem, top, NOTE_SCALE * 0.85)));
        right += 0.55;
      }
    }
    if (dotted) {
      Sign dot = Sign.of("augmentationDot");
      marks.add(new Mark.Ink(dot.at(right + 0.25, y, NOTE_SCALE)));
      right += 0.25 + dot.box().width() * NOTE_SCALE;
    }
    return right;
  }
}
