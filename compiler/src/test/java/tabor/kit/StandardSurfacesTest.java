package tabor.kit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.kit.Surface.Sort;
import tabor.kit.SurfaceFacts.HiHat;

/**
 * Every standard surface against published tables.
 *
 * <p>Staff places and heads: Norman Weinberg, "Guidelines for Drumset Notation", Percussive Notes,
 * June 1994, pp. 15-26, as read off in secondary sources; second crash, splash, china and foot
 * splash from memory. Lines and spaces are counted from the bottom. Keys: General MIDI System Level
 * 1 (MMA 0007 / RP-003), table 3. Exclusive groups: General MIDI 2 (RP-024), appendix B. Words of
 * the standard sounds: sounds.xml of MusicXML 4.0.
 */
class StandardSurfacesTest {
  private static Surface surface(String name) {
    Surface found = Kits.FIVE_PIECE.surface(name);
    assertThat(found).as(name).isNotNull();
    return found;
  }

  @ParameterizedTest
  @CsvSource({
    "kick,         space 1,                       normal",
    "snare,        space 3,                       normal",
    "snare.cross,  space 3,                       x",
    "hihat,        space above the staff,         x",
    "hihat.open,   space above the staff,         x",
    "hihat.half,   space above the staff,         x",
    "hihat.foot,   space below the staff,         x",
    "hihat.splash, space below the staff,         x",
    "ride,         line 5,                        x",
    "ride.bell,    line 5,                        diamond",
    "crash,        ledger line 1 above,           x",
    "crash2,       space above ledger line 1,     x",
    "splash,       space above ledger line 1,     diamond",
    "china,        ledger line 2 above,           x",
    "cowbell,      space 4,                       triangle",
    "tom1,         space 4,                       normal",
    "tom2,         line 4,                        normal",
    "floor,        space 2,                       normal"
  })
  void standsWhereThePublishedGuideHasIt(String name, String place, String head) {
    assertThat(surface(name).place().halfSpaces()).isEqualTo(halfSpaces(place));
    assertThat(surface(name).head().word()).isEqualTo(head);
  }

  /** Half spaces above the bottom line, worked out from the words of the table. */
  private static int halfSpaces(String place) {
    String[] words = place.split(" ", -1);
    return switch (place) {
      case "space above the staff" -> 9;
      case "space below the staff" -> -1;
      case "space above ledger line 1" -> 11;
      default ->
          switch (words[0]) {
            case "line" -> 2 * Integer.parseInt(words[1]) - 2;
            case "space" -> 2 * Integer.parseInt(words[1]) - 1;
            case "ledger" -> 8 + 2 * Integer.parseInt(words[2]);
            default -> throw new IllegalArgumentException(place);
          };
    };
  }

  @ParameterizedTest
  @CsvSource({
    "kick, 36, drum.bass-drum",
    "snare, 38, drum.snare-drum",
    "snare.cross, 37, drum.snare-drum",
    "hihat, 42, metal.hi-hat",
    "hihat.open, 46, metal.hi-hat",
    "hihat.half, 46, metal.hi-hat",
    "hihat.foot, 44, metal.hi-hat",
    "hihat.splash, 46, metal.hi-hat",
    "ride, 51, metal.cymbal.ride",
    "ride.bell, 53, metal.cymbal.ride",
    "crash, 49, metal.cymbal.crash",
    "crash2, 57, metal.cymbal.crash",
    "splash, 55, metal.cymbal.splash",
    "china, 52, metal.cymbal.chinese",
    "cowbell, 56, metal.bells.cowbell",
    "tom1, 50, drum.tom-tom",
    "tom2, 47, drum.tom-tom",
    "floor, 43, drum.tom-tom"
  })
  void soundsOnItsStandardKey(String name, int key, String sound) {
    assertThat(surface(name).key()).isEqualTo(key);
    assertThat(surface(name).facts().sound()).isEqualTo(sound);
  }

  @Test
  void theTablesAboveNameEverySurface() {
    assertThat(Kits.FIVE_PIECE.surfaceNames()).hasSize(18).doesNotHaveDuplicates();
  }

  /** The letters of the notation, copied from its description. */
  @Test
  void eachLetterNamesItsSurface() {
    Map<Character, String> letters = new HashMap<>();
    letters.put('k', "kick");
    letters.put('s', "snare");
    letters.put('n', "snare.cross");
    letters.put('h', "hihat");
    letters.put('o', "hihat.open");
    letters.put('p', "hihat.foot");
    letters.put('d', "ride");
    letters.put('b', "ride.bell");
    letters.put('c', "crash");
    letters.put('w', "cowbell");
    letters.put('t', "tom1");
    letters.put('m', "tom2");
    letters.put('f', "floor");
    assertThat(Kits.FIVE_PIECE.letters()).isEqualTo(letters);
  }

  private static Set<String> all(java.util.function.Predicate<Surface> which) {
    Set<String> names = new HashSet<>();
    for (Surface surface : Kits.FIVE_PIECE.surfaces().values()) {
      if (which.test(surface)) {
        names.add(surface.name());
      }
    }
    return names;
  }

  @Test
  void feetPlayTheKickAndThePedal() {
    assertThat(all(Surface::isFoot))
        .containsExactlyInAnyOrder("kick", "hihat.foot", "hihat.splash");
  }

  @Test
  void cymbalsAreMetalWithACrossForAHead() {
    assertThat(all(Surface::isCymbal))
        .containsExactlyInAnyOrder(
            "hihat",
            "hihat.open",
            "hihat.half",
            "hihat.foot",
            "hihat.splash",
            "ride",
            "ride.bell",
            "crash",
            "crash2",
            "splash",
            "china");
  }

  @Test
  void cymbalsRingUnlessTheHiHatIsClosed() {
    assertThat(all(Surface::rings))
        .isEqualTo(all(s -> s.isCymbal() && s.hihat() != HiHat.CLOSED && s.hihat() != HiHat.CHICK));
  }

  @Test
  void handsChokeCymbalsAndTheirHiHat() {
    assertThat(all(Surface::canChoke)).isEqualTo(all(s -> s.isCymbal() && !s.isFoot()));
  }

  @Test
  void rimshotsAreForSnareAndToms() {
    assertThat(all(Surface::canRimshot))
        .containsExactlyInAnyOrder("snare", "tom1", "tom2", "floor");
  }

  @Test
  void timeIsKeptOnHiHatRideAndBells() {
    assertThat(all(Surface::keepsTime))
        .containsExactlyInAnyOrder(
            "hihat", "hihat.open", "hihat.half", "ride", "ride.bell", "cowbell");
  }

  /** General MIDI 2: keys 42, 44 and 46 end each other. */
  @Test
  void hiHatSoundsEndEachOther() {
    assertThat(all(Surface::isHiHat)).isEqualTo(all(s -> List.of(42, 44, 46).contains(s.key())));
  }

  @Test
  void openStrokesOpenTheHiHatUnderStickAndFoot() {
    Kit kit = Kits.FIVE_PIECE;
    for (Surface surface : kit.surfaces().values()) {
      String open =
          surface.sort() == Sort.STICK_HIHAT
              ? "hihat.open"
              : surface.sort() == Sort.FOOT_HIHAT ? "hihat.splash" : null;
      Surface found = kit.opened(surface);
      assertThat(found == null ? null : found.name()).as(surface.name()).isEqualTo(open);
    }
  }

  @Test
  void limbsAreAtHomeWhereEverybodySits() {
    Kit kit = Kits.FIVE_PIECE;
    assertThat(kit.home(Limb.RIGHT_HAND).name()).isEqualTo("snare");
    assertThat(kit.home(Limb.LEFT_HAND).name()).isEqualTo("snare");
    assertThat(kit.home(Limb.RIGHT_FOOT).name()).isEqualTo("kick");
    assertThat(kit.home(Limb.LEFT_FOOT).name()).isEqualTo("hihat.foot");
  }

  @Test
  void namesAreSaidAsDrummersSayThem() {
    assertThat(surface("hihat.open").words()).isEqualTo("open hi-hat");
    assertThat(surface("hihat.open").label()).isEqualTo("hi-hat open");
    assertThat(surface("snare.cross").words()).isEqualTo("cross-stick");
    assertThat(surface("tom2").label()).isEqualTo("second tom");
    assertThat(surface("china").words()).isEqualTo("china");
  }
}
