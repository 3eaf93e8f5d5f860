package tabor.emit.musicxml;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.rhythm.Time;

/** The last time through a line that ends with a fill, as one section. */
final class FilledTime {
  private FilledTime() {}

  /**
   * The section that a line ends with, its end taken by the line's fill; null if there is no fill,
   * or if the two cannot be one section: the fill is longer, or they have other meters.
   */
  static @Nullable Groove of(Chart.Play play) {
    Groove fill = play.extras().fill();
    if (fill == null || play.turns().isEmpty() || play.each() || !isWhole(play)) {
      return null;
    }
    Groove groove = play.turns().get(play.turns().size() - 1).groove();
    boolean brief = fill.isPickupOnly();
    int before = brief ? groove.bars() : groove.bars() - fill.bars();
    boolean room = before > 0 || (before == 0 && fill.pickup().sign() == 0);
    if (!room
        || groove.meters().size() > 1
        || fill.meters().size() > 1
        || !groove.meter().equals(fill.meter())) {
      return null;
    }
    Time bar = groove.meter().bar();
    Time cut = bar.times(before).minus(fill.pickup());
    List<Stroke> strokes = new ArrayList<>();
    for (Stroke stroke : groove.strokes()) {
      if (place(bar, stroke).before(cut)) {
        strokes.add(stroke);
      }
    }
    for (Stroke stroke : fill.strokes()) {
      if (!brief || stroke.bar() == 0) {
        strokes.add(
            stroke.moved(stroke.bar() + before, stroke.at(), stroke.length(), stroke.slot()));
      }
    }
    strokes.sort(Stroke.ORDER);
    Set<Integer> repeats = new HashSet<>(groove.repeats());
    repeats.removeIf(number -> cut.before(bar.times(number)));
    return groove.playing(strokes, strokes, repeats);
  }

  /** True if the line ends with the end of its section. */
  private static boolean isWhole(Chart.Play play) {
    int all = play.turns().stream().mapToInt(turn -> turn.groove().bars()).sum();
    int bars = play.amount().bars();
    return play.amount().times() > 0 || (bars > 0 && bars % all == 0);
  }

  /** From the line of bar 1, in whole notes. */
  private static Time place(Time bar, Stroke stroke) {
    return bar.times(stroke.bar() - 1).plus(stroke.at());
  }
}
