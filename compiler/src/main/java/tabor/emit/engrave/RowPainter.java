package tabor.emit.engrave;

import java.util.ArrayList;
import java.util.List;

/** Draws the straight rows of a system: counts above, stickings below, bar number. */
final class RowPainter {
  private final Canvas canvas;
  private final Line line;

  RowPainter(Canvas canvas, Line line) {
    this.canvas = canvas;
    this.line = line;
  }

  /** All counts on one base line, as near to the notes as the highest sign allows. */
  void counts() {
    double reach = Double.NEGATIVE_INFINITY;
    for (int bar = 0; bar < line.bars().size(); bar++) {
      for (int i = 0; i < line.bars().get(bar).slices().size(); i++) {
        Slice slice = line.bars().get(bar).slices().get(i);
        if (!slice.count().isEmpty()) {
          double x = middle(bar, i);
          double half = slice.countWidth() / 2 + 0.1;
          reach = Math.max(reach, canvas.above.reach(x - half, x + half));
        }
      }
    }
    if (reach == Double.NEGATIVE_INFINITY) {
      return;
    }
    double base = -Math.max(reach + 0.6, 1.2);
    List<Mark> marks = new ArrayList<>();
    for (int bar = 0; bar < line.bars().size(); bar++) {
      for (int i = 0; i < line.bars().get(bar).slices().size(); i++) {
        Slice slice = line.bars().get(bar).slices().get(i);
        if (!slice.count().isEmpty()) {
          marks.add(
              canvas.words(
                  slice.count(), middle(bar, i), base, Rule.COUNT_SIZE, Mark.Align.MIDDLE));
        }
      }
    }
    canvas.marks.add(Mark.Group.of("counts", marks));
  }

  /** The stickings: a row for the hands and, where the feet have some, one for the feet. */
  void stickings() {
    for (int row = 0; row < 2; row++) {
      sticking(row);
    }
  }

  private void sticking(int row) {
    double reach = Double.NEGATIVE_INFINITY;
    for (int bar = 0; bar < line.bars().size(); bar++) {
      for (int i = 0; i < line.bars().get(bar).slices().size(); i++) {
        if (!text(bar, i, row).isEmpty()) {
          double x = middle(bar, i);
          reach = Math.max(reach, canvas.below.reach(x - 0.7, x + 0.7));
        }
      }
    }
    if (reach == Double.NEGATIVE_INFINITY) {
      return;
    }
    double base = Math.max(reach + 0.5, 5.0) + Rule.STICKING_SIZE * 0.73;
    List<Mark> marks = new ArrayList<>();
    for (int bar = 0; bar < line.bars().size(); bar++) {
      for (int i = 0; i < line.bars().get(bar).slices().size(); i++) {
        String text = text(bar, i, row);
        if (!text.isEmpty()) {
          marks.add(
              canvas.words(text, middle(bar, i), base, Rule.STICKING_SIZE, Mark.Align.MIDDLE));
        }
      }
    }
    canvas.marks.add(Mark.Group.of(row == 0 ? "sticking" : "sticking-feet", marks));
  }

  private String text(int bar, int slice, int row) {
    return line.bars().get(bar).slices().get(slice).sticking().get(row);
  }

  private double middle(int bar, int slice) {
    return line.places().columns()[bar][slice] + Rule.HEAD / 2;
  }

  /** The number of the system's first bar, over the clef. */
  void barNumber(int number) {
    String text = Integer.toString(number);
    double width = canvas.font.width(text, Rule.NUMBER_SIZE);
    double base = -Math.max(canvas.above.reach(0, width) + 0.4, 1.0);
    Mark words = canvas.words(text, 0, base, Rule.NUMBER_SIZE, Mark.Align.LEFT);
    canvas.marks.add(Mark.Group.of("bar-number", List.of(words)));
  }
}
