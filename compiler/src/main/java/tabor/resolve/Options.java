package tabor.resolve;

import org.jspecify.annotations.Nullable;
import tabor.groove.Player;
import tabor.rhythm.Time;

/**
 * What the person at the command line or the editor asks for, over what the file says.
 *
 * @param on a kit that takes the place of every section's own; null for what is written
 * @param leftHanded true to mirror the player
 * @param openHanded true to give the stick's hi-hat to the left hand and deal the rest again
 * @param tempo beats per minute in place of every tempo, counted in each section's own value; null
 *     for what is written
 * @param player the name of the limits to check by; null for everybody's
 * @param view what one student's section says besides
 */
public record Options(
    @Nullable String on,
    boolean leftHanded,
    boolean openHanded,
    @Nullable Time tempo,
    @Nullable String player,
    View view) {
  /** Nothing asked for. */
  public static final Options NONE = new Options(null, false, false, null, null);

  /** For no student in particular. */
  public Options(
      @Nullable String on,
      boolean leftHanded,
      boolean openHanded,
      @Nullable Time tempo,
      @Nullable String player) {
    this(on, leftHanded, openHanded, tempo, player, View.NONE);
  }

  /** The same for a student of the lesson; what is asked for here wins over what stands there. */
  public Options of(Player student) {
    return new Options(
        on == null ? student.kit() : on,
        leftHanded || student.leftHanded(),
        openHanded || student.openHanded(),
        tempo,
        student.limits() == null ? player : null,
        new View(
            tempo == null ? student.speed() : null,
            student.limits(),
            student.counts(),
            student.sticking(),
            student.changes(),
            student.words(),
            student.language()));
  }
}
