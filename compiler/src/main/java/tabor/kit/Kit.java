package tabor.kit;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * A drum kit: what can be struck, the letters of limb lanes, and what stands in for what it lacks.
 *
 * @param name the kit's name
 * @param surfaces every surface known by name, those that it lacks included
 * @param letters the surface that each lower-case letter of a limb lane names
 * @param standIns for each surface that the kit lacks, the name of what is struck instead; empty
 *     where nothing is
 * @param positions where its own surfaces stand, as far as the kit says
 * @param limits the player's limits by name, as far as the kit says; the empty name is everybody
 * @param leftHanded true if the player is mirrored
 */
public record Kit(
    String name,
    Map<String, Surface> surfaces,
    Map<Character, String> letters,
    Map<String, Optional<String>> standIns,
    Map<String, Position> positions,
    Map<String, Limits> limits,
    boolean leftHanded) {

  /** Copies the maps, keeping the order of the surfaces. */
  public Kit {
    surfaces = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(surfaces));
    letters = java.util.Collections.unmodifiableMap(new TreeMap<>(letters));
    standIns = Map.copyOf(standIns);
    positions = Map.copyOf(positions);
    limits = Map.copyOf(limits);
  }

  /** The surface of this name, whether the kit has it or not; null if there is none. */
  public @Nullable Surface surface(String surfaceName) {
    return surfaces.get(surfaceName);
  }

  /** True if the kit lacks this surface. */
  public boolean lacks(String surfaceName) {
    return standIns.containsKey(surfaceName);
  }

  /** The surface that a letter of a limb lane names; null if none does. */
  public @Nullable Surface letter(char letter) {
    String named = letters.get(letter);
    return named == null ? null : surfaces.get(named);
  }

  /** The letter that names a surface, the first in the alphabet; 0 if none does. */
  public char letterOf(Surface surface) {
    for (Map.Entry<Character, String> entry : letters.entrySet()) {
      if (entry.getValue().equals(surface.name())) {
        return entry.getKey();
      }
    }
    return 0;
  }

  /**
   * What is struck where {@code surface} is written: itself, or the end of its chain of stand-ins;
   * null if the kit lacks it and nothing stands in, or the chain is a circle.
   */
  public @Nullable Surface struck(Surface surface) {
    if (standIns.isEmpty()) {
      return surface;
    }
    String at = surface.name();
    for (int i = 0; i <= standIns.size(); i++) {
      Optional<String> next = standIns.get(at);
      if (next == null) {
        return at.equals(surface.name()) ? surface : surfaces.get(at);
      }
      if (next.isEmpty()) {
        return null;
      }
      at = next.get();
    }
    return null;
  }

  /** What a limb plays where nothing else is said, by the name that the source knows. */
  public Surface home(Limb limb) {
    for (Surface surface : surfaces.values()) {
      if (surface.isHomeOf(limb)) {
        return surface;
      }
    }
    throw new IllegalStateException("the kit " + name + " gives nothing to the " + limb.words());
  }

  /** The surface that an open stroke on another is played on; null where nothing opens. */
  public @Nullable Surface opened(Surface surface) {
    String open = surface.facts().opened();
    return open == null ? null : surfaces.get(open);
  }

  /**
   * Where a surface stands: as the kit says of it or its piece, else the usual place; null for a
   * kit's own surface of which nothing is said.
   */
  public @Nullable Position position(Surface surface) {
    Position said = positions.get(surface.name());
    if (said == null) {
      said = positions.get(surface.piece());
    }
    if (said != null) {
      return said;
    }
    SurfaceFacts.Gap gap = surface.facts().gap();
    return gap != null && lacks(gap.missing()) ? gap.position() : surface.facts().position();
  }

  /** The limits to check by: everybody's as the file or the kit says, else the usual ones. */
  public Limits limitsInForce() {
    return limits.getOrDefault("", Limits.DEFAULT);
  }

  /** The foot that stands on the pedal of the hi-hat. */
  public Limb hihatFoot() {
    return leftHanded ? Limb.RIGHT_FOOT : Limb.LEFT_FOOT;
  }

  /** The same kit with the player mirrored once more. */
  public Kit mirrored() {
    return new Kit(name, surfaces, letters, standIns, positions, limits, !leftHanded);
  }

  /** The names of all surfaces, in kit order. */
  public List<String> surfaceNames() {
    return List.copyOf(surfaces.keySet());
  }

  /** Without what seldom differs. */
  @Override
  public int hashCode() {
    return name.hashCode() * 31 + surfaces.hashCode();
  }
}
