package tabor.timbre;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What one piece of a kit sounds like.
 *
 * @param name the surface's, {@code click}, {@code key:N} for a General MIDI key, or another
 * @param seconds how long it may ring
 * @param peak its highest amplitude at the highest velocity, before the mix
 * @param place between left (-1) and right (1), as the player sits
 * @param group sounds of one group end one another; null for none
 * @param rings true if its stroke lets the one before it in the group die away slowly
 * @param layers what it is made of
 */
public record Timbre(
    String name,
    double seconds,
    double peak,
    double place,
    @Nullable String group,
    boolean rings,
    List<TimbreLayer> layers) {
  /** Copies the list. */
  public Timbre {
    layers = List.copyOf(layers);
  }
}
