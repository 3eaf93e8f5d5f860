package tabor.kit;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The built-in kits. Each has something to strike for every standard surface: what it lacks is
 * played on its stand-in, so that any lesson can be played on any of them.
 */
public final class Kits {
  private Kits() {}

  /** Five drums: kick, snare, two rack toms and a floor tom, with every standard cymbal. */
  public static final Kit FIVE_PIECE =
      new Kit(
          "five-piece",
          StandardSurfaces.byName(),
          StandardSurfaces.letters(),
          Map.of(),
          Map.of(),
          Map.of(),
          false);

  /** One rack tom. */
  private static final Kit FOUR_PIECE = smaller("four-piece");

  /** One rack tom, and one cymbal that does the work of all. */
  private static final Kit JUNIOR = smaller("junior");

  private static final Kit PRACTICE_PAD = practicePad();

  private static final Map<String, Kit> ALL = all();

  /** Names of the built-in kits. */
  public static final List<String> NAMES = List.copyOf(ALL.keySet());

  /** Which kits there are, for somebody who named one that there is not. */
  public static final String BUILT_IN = "the built-in kits are " + String.join(", ", NAMES);

  private static final Map<String, String> ALSO_CALLED = StandardSurfaces.alsoCalled();

  /** The standard surface that another word of the trade means: {@code snare} for {@code sd}. */
  public static Optional<String> alsoCalled(String word) {
    return Optional.ofNullable(ALSO_CALLED.get(word));
  }

  /** The built-in kit of this name. */
  public static Optional<Kit> named(String name) {
    return Optional.ofNullable(ALL.get(name));
  }

  private static Map<String, Kit> all() {
    Map<String, Kit> all = new LinkedHashMap<>();
    for (Kit kit : List.of(FIVE_PIECE, FOUR_PIECE, JUNIOR, PRACTICE_PAD)) {
      all.put(kit.name(), kit);
    }
    return all;
  }

  /** The five-piece kit without some surfaces, each replaced by its usual stand-in. */
  private static Kit smaller(String name) {
    Set<String> missing = StandardSurfaces.lackedBy(name);
    Map<String, Optional<String>> standIns = new LinkedHashMap<>();
    for (Surface surface : FIVE_PIECE.surfaces().values()) {
      if (missing.contains(surface.name())) {
        standIns.put(surface.name(), Optional.ofNullable(surface.facts().standIn()));
      }
    }
    return like(name, standIns);
  }

  /** One pad: what hands strike is struck where they are at home. The feet tap as ever. */
  private static Kit practicePad() {
    Surface pad = FIVE_PIECE.home(Limb.RIGHT_HAND);
    Map<String, Optional<String>> standIns = new LinkedHashMap<>();
    for (Surface surface : FIVE_PIECE.surfaces().values()) {
      if (!surface.isFoot() && !surface.equals(pad)) {
        standIns.put(surface.name(), Optional.of(pad.name()));
      }
    }
    return like("practice-pad", standIns);
  }

  private static Kit like(String name, Map<String, Optional<String>> standIns) {
    Kit base = FIVE_PIECE;
    return new Kit(
        name, base.surfaces(), base.letters(), standIns, base.positions(), base.limits(), false);
  }
}
