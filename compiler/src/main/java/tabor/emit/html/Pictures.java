package tabor.emit.html;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.rhythm.Time;

/** Where the page gets its drawings from. */
public interface Pictures {
  /** The notation of a section. */
  Score score(Groove groove);

  /** The key of the note heads that these sections use. */
  Key key(List<Groove> grooves);

  /**
   * A section drawn for two widths.
   *
   * @param wide for a desk screen and for paper
   * @param narrow for a phone; null where the wide one is narrow enough
   */
  record Score(Picture wide, @Nullable Picture narrow) {}

  /**
   * The key for two widths, each one {@code <svg>}, both empty for none.
   *
   * @param wide for a desk screen and for paper
   * @param narrow for a phone
   */
  record Key(String wide, String narrow) {}

  /**
   * A drawing of a section.
   *
   * @param svg one {@code <svg>} element, well formed, without script, style or outside references,
   *     whose ids no other drawing of the lesson has
   * @param places where the moving mark goes, in order of time; without any there is no mark
   */
  record Picture(String svg, List<Place> places) {
    /** Copies the list. */
    public Picture {
      places = List.copyOf(places);
    }
  }

  /**
   * A place of the music on a drawing, lengths in its user units.
   *
   * @param at whole notes from the start of bar 1; below zero in the pickup
   * @param x the middle of its note heads
   * @param top where the mark begins: a little above the staff of its system
   * @param bottom where the mark ends
   */
  record Place(Time at, double x, double top, double bottom) {}
}
