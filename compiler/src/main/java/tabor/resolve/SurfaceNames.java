package tabor.resolve;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import tabor.diagnostic.Near;
import tabor.kit.Kit;
import tabor.kit.Kits;
import tabor.kit.Surface;

/** The surface that was probably meant by a name that there is not. */
final class SurfaceNames {
  private static final List<String> LIMBS = List.of("right", "left", "right foot", "left foot");

  /** Words and marks that stand before a part on paper; common practice, no source. */
  private static final Map<String, String> SAID =
      Map.ofEntries(
          Map.entry("sticking", "hands"),
          Map.entry("hand", "hands"),
          Map.entry("haende", "hands"),
          Map.entry("manos", "hands"),
          Map.entry("mains", "hands"),
          Map.entry("r", "right"),
          Map.entry("l", "left"),
          Map.entry("rh", "right"),
          Map.entry("lh", "left"),
          Map.entry("rechts", "right"),
          Map.entry("links", "left"),
          Map.entry("derecha", "right"),
          Map.entry("izquierda", "left"),
          Map.entry("droite", "right"),
          Map.entry("gauche", "left"),
          Map.entry("rf", "right foot"),
          Map.entry("lf", "left foot"));

  private SurfaceNames() {}

  /** The surface of a kit that a word probably means. */
  static Optional<String> near(String word, Kit kit) {
    return near(word, kit.surfaces().keySet());
  }

  /** The one of some surfaces that a word probably means. */
  static Optional<String> near(String word, Set<String> surfaces) {
    Optional<String> trade = Kits.alsoCalled(word).filter(surfaces::contains);
    return trade.isPresent() ? trade : Near.find(word, surfaces);
  }

  /** The surface or limbs that a word probably means as a target. */
  static Optional<String> nearTarget(String word, Kit kit) {
    return near(word, kit, List.of("hands", "feet", "all"));
  }

  /** The surface or limbs that a word probably means as the name of a part. */
  static Optional<String> nearPart(String word, Kit kit) {
    String said = SAID.get(word);
    if (said != null) {
      return Optional.of(said);
    }
    Surface lettered = word.length() == 1 ? kit.letter(word.charAt(0)) : null;
    return lettered != null
        ? Optional.of(lettered.name())
        : near(word, kit, List.of("hands", "feet", "line"));
  }

  private static Optional<String> near(String word, Kit kit, List<String> groups) {
    Optional<String> trade = Kits.alsoCalled(word).filter(name -> kit.surface(name) != null);
    if (trade.isPresent()) {
      return trade;
    }
    List<String> names = new ArrayList<>(kit.surfaceNames());
    names.addAll(groups);
    names.addAll(LIMBS);
    return Near.find(word, names);
  }
}
