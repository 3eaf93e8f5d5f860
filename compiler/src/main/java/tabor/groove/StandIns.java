package tabor.groove;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tabor.kit.Kit;
import tabor.kit.Surface;
import tabor.words.Words;
import tabor.words.Words.Form;

/** Says what a kit does not have and what is played instead. */
public final class StandIns {
  private StandIns() {}

  /**
   * One phrase for each surface that the section names and its kit lacks, such as {@code second tom
   * on the floor tom}, in kit order; empty where the kit has them all.
   */
  public static List<String> words(Groove groove) {
    Words words = Terms.of(groove).words();
    Kit kit = groove.setting().kit();
    if (kit.standIns().isEmpty()) {
      return List.of();
    }
    Map<String, Surface> named = new LinkedHashMap<>();
    groove.written().forEach(stroke -> named.put(stroke.surface().name(), stroke.surface()));
    return kit.surfaces().values().stream()
        .filter(surface -> named.containsKey(surface.name()) && kit.lacks(surface.name()))
        .filter(surface -> kit.struck(surface) != null)
        .map(
            surface ->
                words.text(
                    "stand-in",
                    words.surface(surface),
                    words.surface(java.util.Objects.requireNonNull(kit.struck(surface)), Form.ON)))
        .toList();
  }
}
