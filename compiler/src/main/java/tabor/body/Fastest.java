package tabor.body;

import org.jspecify.annotations.Nullable;
import tabor.body.Demands.Grade;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.rhythm.Time;

/**
 * How fast a section could go before one limb lacks time, by the figures of its limits. It says
 * nothing about any player: the figures are general, and a student's own are lower.
 *
 * @param comfortable where something goes beyond a comfortable figure; null if nothing ever does
 * @param extreme where something goes beyond an extreme figure; null if nothing ever does
 */
public record Fastest(@Nullable Bound comfortable, @Nullable Bound extreme) {

  /** What sets a bound. */
  public enum Reason {
    /** Strokes in a row. */
    STROKES,
    /** Two strokes right after each other. */
    DOUBLE,
    /** The way between two surfaces. */
    WAY
  }

  /**
   * A bound.
   *
   * @param perMinute the fastest tempo, counted as the section's own tempo is
   * @param limb whose time runs out
   * @param from where it starts
   * @param to where it ends; {@code from} itself for a diddle or a roll
   */
  public record Bound(Time perMinute, Limb limb, Stroke from, Stroke to, Reason reason) {
    /** The tempo in whole beats, rounded down. */
    public long tempo() {
      return perMinute.floor();
    }
  }

  /** The bounds of a section by the limits in force; the first of equals in order of time. */
  public static Fastest of(Groove groove) {
    return new Fastest(bound(groove, Grade.COMFORTABLE), bound(groove, Grade.EXTREME));
  }

  private static @Nullable Bound bound(Groove groove, Grade grade) {
    Time beat = groove.setting().tempo().beat();
    @Nullable Demand[] hardest = new Demand[1];
    Demands.each(
        groove,
        groove.setting().kit().limitsInForce(),
        grade,
        demand -> {
          Demand before = hardest[0];
          if (before == null || demand.fastest(beat).before(before.fastest(beat))) {
            hardest[0] = demand;
          }
        });
    Demand found = hardest[0];
    return found == null
        ? null
        : new Bound(
            found.fastest(beat),
            found.limb(),
            found.from().stroke(),
            found.to().stroke(),
            switch (found.kind()) {
              case SINGLES -> Reason.STROKES;
              case DOUBLES -> Reason.DOUBLE;
              case REACH -> Reason.WAY;
            });
  }
}
