package tabor.groove;

import java.util.ArrayList;
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
    List<String> said = new ArrayList<>();
    for (Surface surface : kit.surfaces().values()) {
      Surface struck = kit.struck(surface);
      if (struck != null && named.containsKey(surface.name()) && kit.lacks(surface.name())) {
        said.add(words.text("stand-in", words.surface(surface), words.surface(struck, Form.ON)));
      }
    }
    return said;
  }
}
