package tabor.emit.engrave;

import java.util.ArrayList;
import java.util.List;
import tabor.notation.Score;
import tabor.rhythm.Time;

/**
 * A section as engraved: its systems from top to bottom.
 *
 * @param score what was engraved
 * @param systems at least one, all drawn from the same left edge
 * @param title what the section is called
 * @param words the section in words
 */
public record Engraving(Score score, List<StaffSystem> systems, String title, String words) {
  /** Space between the boxes of two systems, in staff spaces. */
  private static final double BETWEEN = 2.5;

  /** Copies the list. */
  public Engraving {
    systems = List.copyOf(systems);
  }

  /**
   * One system.
   *
   * @param drawing its marks; its height holds everything that belongs to it
   * @param moments where the onsets of its bars stand, in order of time
   * @param staffTop the top line of the staff
   */
  public record StaffSystem(Drawing drawing, List<Moment> moments, double staffTop) {
    /** Copies the list. */
    public StaffSystem {
      moments = List.copyOf(moments);
    }
  }

  /**
   * Where a place of the music stands on the page: for a moving mark.
   *
   * @param bar its bar; 0 is the pickup
   * @param at distance from the barline in whole notes
   * @param x the middle of its note heads, in staff spaces from the left edge
   */
  public record Moment(int bar, Time at, double x) {}

  /** All systems under one another in one drawing. */
  public Drawing whole() {
    double width = 0;
    double y = 0;
    List<Mark> marks = new ArrayList<>();
    for (StaffSystem system : systems) {
      width = Math.max(width, system.drawing().width());
      marks.add(Mark.Group.of("system", Mark.moved(system.drawing().marks(), 0, y, 1)));
      y += system.drawing().height() + BETWEEN;
    }
    return new Drawing(width, y - BETWEEN, title, words, marks);
  }
}
