package tabor.emit.pdf;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import tabor.emit.engrave.Drawing;
import tabor.emit.engrave.Mark;
import tabor.emit.engrave.Moving;
import tabor.emit.engrave.TextMetrics;
import tabor.groove.Groove;
import tabor.groove.Stroke;

/** The key of the handout as a drawing of its own, for a page of another kind. */
public final class KeyDrawing {
  /** Size of its letters in staff spaces. */
  private static final double SIZE = 1.7;

  private KeyDrawing() {}

  /**
   * The key of the note heads and signs that these sections use; null if they hold no stroke.
   *
   * @param width of a line in staff spaces
   */
  public static @Nullable Drawing of(List<Groove> grooves, double width, TextMetrics font) {
    List<Mark> marks = new ArrayList<>();
    double y = 0;
    for (Block block : new Key(font, 1, width, SIZE).of(grooves)) {
      marks.add(Mark.Group.of("row", Moving.down(block.marks(), y)));
      y += block.height() + block.after();
    }
    if (marks.isEmpty()) {
      return null;
    }
    TreeSet<String> names = new TreeSet<>();
    for (Groove groove : grooves) {
      for (Stroke stroke : groove.strokes()) {
        names.add(stroke.surface().words());
      }
    }
    return new Drawing(width, y, "Key", String.join(", ", names), marks);
  }
}
