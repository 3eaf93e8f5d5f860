package tabor.perform;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.groove.Level;
import tabor.groove.Levels;
import tabor.groove.Loudness;
import tabor.rhythm.Time;

/**
 * Velocities: a level's own, scaled by the dynamic at that place.
 *
 * <p>Each mark scales all three levels by so many percent: pp 40, p 60, mp 80, mf 100, f 110, ff
 * 120 (ours to set, no source: steps of equal weight below mf, smaller ones above it, since accents
 * already stand near the top). A hairpin goes evenly from the percentage at its start to that of
 * its target, which holds from its end on; of two that overlap the later one counts. The result is
 * rounded and kept within 1 to 127.
 */
public final class Volume {
  private record Turn(Time from, Time to, Time before, Time target) {}

  private final Levels levels;
  private final @Nullable Loudness over;
  private final List<Turn> turns = new ArrayList<>();

  /** Reads the marks and hairpins of a section. */
  public Volume(Groove groove) {
    this(groove, null, false);
  }

  /** {@code over} holds in place of what the section says; null for none. */
  Volume(Groove groove, @Nullable Loudness over, boolean coarse) {
    this.over = over;
    levels = groove.setting().levels();
    record Sign(Time from, Time to, Loudness target) {}
    List<Sign> signs = new ArrayList<>();
    for (Loudness.Mark mark : groove.marks()) {
      Time at = bounded(groove.position(mark.bar(), mark.at()), coarse);
      signs.add(new Sign(at, at, mark.loudness()));
    }
    for (Loudness.Hairpin pin : groove.hairpins()) {
      Time from = bounded(groove.position(pin.fromBar(), pin.from()), coarse);
      Time to = bounded(groove.position(pin.toBar(), pin.to()), coarse);
      signs.add(new Sign(from, to, pin.target()));
    }
    // Stable: at one place a mark comes before the hairpin that grows out of it.
    signs.sort((a, b) -> a.from().compareTo(b.from()));
    for (Sign sign : signs) {
      turns.add(new Turn(sign.from(), sign.to(), percent(sign.from()), percent(sign.target())));
    }
  }

  private static Time bounded(Time position, boolean coarse) {
    return coarse ? BoundedTime.rounded(position) : position;
  }

  /** Percent of a level at {@code mf} for a dynamic mark. */
  public static Time percent(Loudness loudness) {
    return Time.of(
        switch (loudness) {
          case PP -> 40;
          case P -> 60;
          case MP -> 80;
          case MF -> 100;
          case F -> 110;
          case FF -> 120;
        });
  }

  /** Percent at a place of the section, in whole notes from its start, pickup included. */
  public Time percent(Time position) {
    if (over != null) {
      return percent(over);
    }
    Turn last = null;
    for (Turn turn : turns) {
      if (position.before(turn.from())) {
        break;
      }
      last = turn;
    }
    if (last == null) {
      return percent(Loudness.MF);
    }
    if (!position.before(last.to())) {
      return last.target();
    }
    Time way = position.minus(last.from()).over(last.to().minus(last.from()));
    return last.before().plus(last.target().minus(last.before()).times(way));
  }

  /** The velocity of a level at a place of the section. */
  public int of(Level level, Time position) {
    return scaled(Time.of(levels.of(level)), position);
  }

  /** A velocity at {@code mf} scaled by the dynamic at a place, 1 to 127. */
  int scaled(Time velocity, Time position) {
    long rounded = velocity.times(percent(position)).over(100).rounded();
    return (int) Math.max(1, Math.min(127, rounded));
  }
}
