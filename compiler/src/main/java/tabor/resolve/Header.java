package tabor.resolve;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Lesson;
import tabor.groove.Levels;
import tabor.kit.Limits;
import tabor.rhythm.Feel;
import tabor.rhythm.Meters;
import tabor.source.Spot;

/**
 * What a header says; null for what it does not say.
 *
 * @param title as written
 * @param by as written
 * @param meters the meters; null also if those written do not add up
 * @param meterIn what stands between signature and numbers of a meter with {@code in}
 * @param saysTime true if a meter is written, whether it adds up or not
 * @param tempo the tempo
 * @param feel where off-beats sound
 * @param levels velocities
 * @param shows what is printed
 * @param kit name of the kit
 * @param limits limits of players by name; the empty name is everybody
 * @param uses files named by {@code use}
 * @param extras what it says for the printed page; no players
 * @param diagnostics what is wrong with it
 */
public record Header(
    @Nullable String title,
    @Nullable String by,
    @Nullable Meters meters,
    @Nullable Spot meterIn,
    boolean saysTime,
    @Nullable TempoMark tempo,
    @Nullable Feel feel,
    @Nullable Levels levels,
    @Nullable Shows shows,
    @Nullable Named kit,
    Map<String, Limits> limits,
    List<Named> uses,
    Lesson.Extras extras,
    List<Diagnostic> diagnostics) {
  /** Copies the collections. */
  public Header {
    limits = Map.copyOf(limits);
    uses = List.copyOf(uses);
    diagnostics = List.copyOf(diagnostics);
  }

  /** A name or file name and where it is written. */
  public record Named(String name, Spot spot) {}
}
