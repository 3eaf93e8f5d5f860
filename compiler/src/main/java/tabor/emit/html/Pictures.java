package tabor.emit.html;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.emit.engrave.Drawing;
import tabor.groove.Groove;
import tabor.lists.Lists;
import tabor.rhythm.Time;

/** Where the page gets its drawings from. */
public interface Pictures {
  /** The notation of a section. */
  Score score(Groove groove);

  /** A section as it is printed: without the parts that a student is to write in. */
  default Groove printed(Groove groove) {
    return groove;
  }

  /** The key of the note heads that these sections use. */
  Key key(List<Groove> grooves);

  /**
   * A section drawn for two widths.
   *
   * @param wide for a desk screen and for paper
   * @param narrow for a phone; null where the wide one is narrow enough
   */
  record Score(Picture wide, @Nullable Picture narrow) {
    /** All its drawings. */
    List<Drawing> drawings() {
      List<Drawing> all = new ArrayList<>(wide.drawings());
      if (narrow != null) {
        all.addAll(narrow.drawings());
      }
      return all;
    }
  }

  /**
   * The key for two widths, both null for none.
   *
   * @param wide for a desk screen and for paper
   * @param narrow for a phone
   */
  record Key(@Nullable Drawing wide, @Nullable Drawing narrow) {
    /** No key. */
    public static final Key NONE = new Key(null, null);
  }

  /**
   * A section as drawn, system by system, so that no printed page cuts a staff in two.
   *
   * @param systems from top to bottom, at least one
   */
  record Picture(List<StaffRow> systems) {
    /** Copies the list. */
    public Picture {
      systems = List.copyOf(systems);
    }

    /** The drawings of its systems. */
    List<Drawing> drawings() {
      return Lists.map(systems, StaffRow::drawing);
    }
  }

  /**
   * One system. Lengths in staff spaces from its upper left corner.
   *
   * @param drawing its notes
   * @param bead the height on which the moving mark travels: the middle of its counts, or a line
   *     over the staff where there are none
   * @param moments where the moving mark stands when, in order of time; without any there is no
   *     mark
   */
  record StaffRow(Drawing drawing, double bead, List<Moment> moments) {
    /** Copies the list. */
    public StaffRow {
      moments = List.copyOf(moments);
    }
  }

  /**
   * A place of the music on a drawing.
   *
   * @param at whole notes from the start of bar 1; below zero in the pickup
   * @param x the middle of its note heads, in staff spaces
   */
  record Moment(Time at, double x) {}
}
