package tabor.resolve;

import java.util.Objects;
import org.jspecify.annotations.Nullable;
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
 */
public record Options(
    @Nullable String on,
    boolean leftHanded,
    boolean openHanded,
    @Nullable Time tempo,
    @Nullable String player) {
  /** Nothing asked for. */
  public static final Options NONE = new Options(null, false, false, null, null);

  // Written out: what records get by themselves is linked anew at every start, at some cost.

  @Override
  public boolean equals(@Nullable Object other) {
    return this == other
        || (other instanceof Options that
            && Objects.equals(on, that.on)
            && leftHanded == that.leftHanded
            && openHanded == that.openHanded
            && Objects.equals(tempo, that.tempo)
            && Objects.equals(player, that.player));
  }

  @Override
  public int hashCode() {
    return Objects.hash(on, leftHanded, openHanded, tempo, player);
  }
}
