package tabor.kit;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tabor.kit.Surface.Head;
import tabor.kit.Surface.Sort;

/**
 * The built-in kits and their surfaces.
 *
 * <p>Keys: General MIDI System Level 1 (MMA 0007 / RP-003), table 3; the half-open hi-hat and the
 * foot splash have no key of their own and take the open hi-hat's. Staff places and note heads:
 * Norman Weinberg, "Guidelines for Drumset Notation", Percussive Notes, June 1994, as read off in
 * secondary sources; second crash, splash and china from memory.
 */
public final class Kits {
  private Kits() {}

  /** Names of the built-in kits. */
  public static final List<String> NAMES =
      List.of("five-piece", "four-piece", "junior", "practice-pad");

  /** Five drums: kick, snare, two rack toms and a floor tom, with every standard cymbal. */
  public static final Kit FIVE_PIECE = fivePiece();

  private static final Kit FOUR_PIECE = variant("four-piece", Map.of("tom2", Optional.empty()));
  private static final Kit JUNIOR = junior();
  private static final Kit PRACTICE_PAD = practicePad();

  /** The built-in kit of this name. */
  public static Optional<Kit> named(String name) {
    return switch (name) {
      case "five-piece" -> Optional.of(FIVE_PIECE);
      case "four-piece" -> Optional.of(FOUR_PIECE);
      case "junior" -> Optional.of(JUNIOR);
      case "practice-pad" -> Optional.of(PRACTICE_PAD);
      default -> Optional.empty();
    };
  }

  private static Kit fivePiece() {
    Map<String, Surface> surfaces = new LinkedHashMap<>();
    Map<Character, String> letters = new LinkedHashMap<>();
    add(surfaces, letters, 'k', "kick", 36, 'F', 4, Head.NORMAL, Sort.KICK);
    add(surfaces, letters, 's', "snare", 38, 'C', 5, Head.NORMAL, Sort.SNARE);
    add(surfaces, letters, 'n', "snare.cross", 37, 'C', 5, Head.X, Sort.SNARE);
    add(surfaces, letters, 'h', "hihat", 42, 'G', 5, Head.X, Sort.STICK_HIHAT);
    add(surfaces, letters, 'o', "hihat.open", 46, 'G', 5, Head.X, Sort.STICK_HIHAT);
    add(surfaces, letters, ' ', "hihat.half", 46, 'G', 5, Head.X, Sort.STICK_HIHAT);
    add(surfaces, letters, 'p', "hihat.foot", 44, 'D', 4, Head.X, Sort.FOOT_HIHAT);
    add(surfaces, letters, ' ', "hihat.splash", 46, 'D', 4, Head.X, Sort.FOOT_HIHAT);
    add(surfaces, letters, 'd', "ride", 51, 'F', 5, Head.X, Sort.CYMBAL);
    add(surfaces, letters, 'b', "ride.bell", 53, 'F', 5, Head.DIAMOND, Sort.CYMBAL);
    add(surfaces, letters, 'c', "crash", 49, 'A', 5, Head.X, Sort.CYMBAL);
    add(surfaces, letters, ' ', "crash2", 57, 'B', 5, Head.X, Sort.CYMBAL);
    add(surfaces, letters, ' ', "splash", 55, 'B', 5, Head.DIAMOND, Sort.CYMBAL);
    add(surfaces, letters, ' ', "china", 52, 'C', 6, Head.X, Sort.CYMBAL);
    add(surfaces, letters, 'w', "cowbell", 56, 'E', 5, Head.TRIANGLE, Sort.BELL);
    add(surfaces, letters, 't', "tom1", 50, 'E', 5, Head.NORMAL, Sort.TOM);
    add(surfaces, letters, 'm', "tom2", 47, 'D', 5, Head.NORMAL, Sort.TOM);
    add(surfaces, letters, 'f', "floor", 43, 'A', 4, Head.NORMAL, Sort.TOM);
    return new Kit("five-piece", surfaces, letters, Map.of(), Map.of(), Map.of(), false);
  }

  private static void add(
      Map<String, Surface> surfaces,
      Map<Character, String> letters,
      char letter,
      String name,
      int key,
      char step,
      int octave,
      Head head,
      Sort sort) {
    surfaces.put(name, new Surface(name, key, new StaffPlace(step, octave), head, sort));
    if (letter != ' ') {
      letters.put(letter, name);
    }
  }

  private static Kit variant(String name, Map<String, Optional<String>> standIns) {
    Kit base = FIVE_PIECE;
    return new Kit(
        name, base.surfaces(), base.letters(), standIns, base.positions(), base.limits(), false);
  }

  private static Kit junior() {
    // One cymbal does the work of all; one rack tom.
    Map<String, Optional<String>> standIns = new LinkedHashMap<>();
    standIns.put("tom2", Optional.empty());
    for (String cymbal : List.of("ride.bell", "crash", "crash2")) {
      standIns.put(cymbal, Optional.of("ride"));
    }
    for (String missing : List.of("splash", "china", "cowbell")) {
      standIns.put(missing, Optional.empty());
    }
    return variant("junior", standIns);
  }

  private static Kit practicePad() {
    Map<String, Optional<String>> standIns = new LinkedHashMap<>();
    for (Surface surface : FIVE_PIECE.surfaces().values()) {
      if (!surface.isFoot() && !surface.name().equals("snare")) {
        standIns.put(surface.name(), Optional.of("snare"));
      }
    }
    return variant("practice-pad", standIns);
  }
}
