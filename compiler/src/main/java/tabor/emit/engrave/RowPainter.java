package tabor.emit.engrave;

import java.util.ArrayList;
import java.util.List;

/** Draws the straight rows of a system: counts above, stickings below, bar number. */
record RowPainter(Canvas canvas, PlacedSystem line) {
  /** In place of a hand's letter: a box to write it in. */
  static final String BOX = "\u25a1";

  /** The counts, each row on one base line, clear of the highest sign. */
  void counts() {
    int rows = 0;
    for (BarPlan bar : line.bars()) {
      for (Slice slice : bar.slices()) {
        rows = Math.max(rows, slice.counts().size());
      }
    }
    for (int row = 0; row < rows; row++) {
      counts(row);
    }
  }

  private void counts(int row) {
    List<Mark> marks = new ArrayList<>();
    double base = -Math.max(canvas.above.most() + (row == 0 ? 0.6 : 0.35), 1.2);
    for (int bar = 0; bar < line.bars().size(); bar++) {
      for (int i = 0; i < line.bars().get(bar).slices().size(); i++) {
        List<String> said = line.bars().get(bar).slices().get(i).counts();
        if (row < said.size() && !said.get(row).isEmpty()) {
          marks.add(
              canvas.words(
                  said.get(row), middle(bar, i), base, Rule.COUNT_SIZE, Mark.Align.MIDDLE));
        }
      }
    }
    if (!marks.isEmpty()) {
      canvas.marks.add(Mark.Group.of("counts", marks));
    }
  }

  /** The stickings: a row for the hands and, where the feet have some, one for the feet. */
  void stickings() {
    for (int row = 0; row < 2; row++) {
      sticking(row);
    }
  }

  private void sticking(int row) {
    boolean any = false;
    for (int bar = 0; bar < line.bars().size(); bar++) {
      for (int i = 0; i < line.bars().get(bar).slices().size(); i++) {
        any |= !text(bar, i, row).isEmpty();
      }
    }
    if (!any) {
      return;
    }
    double base = Math.max(canvas.below.most() + 0.5, 5.0) + Rule.STICKING_SIZE * 0.73;
    List<Mark> marks = new ArrayList<>();
    for (int bar = 0; bar < line.bars().size(); bar++) {
      for (int i = 0; i < line.bars().get(bar).slices().size(); i++) {
        String text = text(bar, i, row);
        if (text.equals(BOX)) {
          double half = Rule.STICKING_SIZE * 0.42;
          double x = middle(bar, i);
          Box box = new Box(x - half, base - half * 1.8, x + half, base + half * 0.2);
          marks.add(new Mark.Ink(Contour.rounded(box, 0.1, 0.11)));
        } else if (!text.isEmpty()) {
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
