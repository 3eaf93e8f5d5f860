package tabor.resolve;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Levels;
import tabor.kit.Limits;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/**
 * What the header says.
 *
 * @param title as written; null without one
 * @param by as written; null without one
 * @param meter the meter; null if the one written does not add up
 * @param tempoBeat the note value the tempo counts; null for the meter's own beat
 * @param perMinute beats a minute
 * @param feel where off-beats sound
 * @param levels velocities
 * @param showCounts counts are printed
 * @param showSticking stickings are printed
 * @param kit name of the kit
 * @param limits limits of players by name; the empty name is everybody
 * @param uses files named by {@code use}, with their places
 * @param diagnostics what is wrong with it
 */
public record Header(
    @Nullable String title,
    @Nullable String by,
    @Nullable Meter meter,
    @Nullable Time tempoBeat,
    Time perMinute,
    Feel feel,
    Levels levels,
    boolean showCounts,
    boolean showSticking,
    String kit,
    Map<String, Limits> limits,
    List<Used> uses,
    List<Diagnostic> diagnostics) {
  /** Copies the collections. */
  public Header {
    limits = Map.copyOf(limits);
    uses = List.copyOf(uses);
    diagnostics = List.copyOf(diagnostics);
  }

  /** A file in use and where that is said. */
  public record Used(String file, tabor.source.Spot spot) {}

  /** The tempo in a meter. */
  public Tempo tempo(Meter of) {
    return new Tempo(tempoBeat == null ? of.tempoBeat() : tempoBeat, perMinute);
  }
}
