package tabor.kit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import tabor.kit.Surface.Sort;
import tabor.kit.SurfaceFacts.HiHat;
import tabor.testing.PageTables;
import tabor.testing.PageTables.Row;

/**
 * Every standard surface against docs/surfaces.md, which names its published sources. Exclusive
 * groups: General MIDI 2 (RP-024), appendix B.
 */
class StandardSurfacesTest {
  private static Surface surface(String name) {
    Surface found = Kits.FIVE_PIECE.surface(name);
    assertThat(found).as(name).isNotNull();
    return found;
  }

  private static List<Row> places() {
    return PageTables.of("surfaces.md").with("place on the staff");
  }

  @ParameterizedTest
  @MethodSource("places")
  void standsWhereThePublishedGuideHasIt(Row row) {
    assertThat(surface(row.first()).place().halfSpaces())
        .isEqualTo(halfSpaces(row.cell("place on the staff")));
    assertThat(surface(row.first()).head().word()).isEqualTo(row.cell("note head"));
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

  private static List<Row> sounds() {
    return PageTables.of("surfaces.md").with("letter");
  }

  @ParameterizedTest
  @MethodSource("sounds")
  void soundsOnItsStandardKeyAndIsSaidAsDrummersSayIt(Row row) {
    Surface surface = surface(row.first());
    assertThat(surface.key()).isEqualTo(row.number("key"));
    assertThat(surface.facts().sound()).isEqualTo(row.cell("MusicXML sound"));
    assertThat(surface.words()).isEqualTo(row.cell("a drummer says"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"letter", "place on the staff", "distance"})
  void thePageNamesEverySurfaceInKitOrder(String column) {
    assertThat(PageTables.of("surfaces.md").with(column).stream().map(Row::first))
        .containsExactlyElementsOf(Kits.FIVE_PIECE.surfaceNames());
  }

  @Test
  void eachLetterNamesItsSurface() {
    Map<Character, String> letters = new HashMap<>();
    for (Row row : sounds()) {
      if (!row.cell("letter").isEmpty()) {
        letters.put(row.cell("letter").charAt(0), row.first());
      }
    }
    assertThat(Kits.FIVE_PIECE.letters()).isEqualTo(letters);
    assertThat(letters).hasSizeGreaterThan(12);
  }

  private static List<Row> positions() {
    return PageTables.of("surfaces.md").with("distance");
  }

  @ParameterizedTest
  @MethodSource("positions")
  void standsAroundThePlayerAsThePageSays(Row row) {
    Position position = Kits.FIVE_PIECE.position(surface(row.first()));
    assertThat(position)
        .isEqualTo(
            new Position(row.number("distance"), row.number("degrees"), row.number("height")));
  }

  private static Set<String> where(String column, String text) {
    Set<String> names = new HashSet<>();
    for (Row row : positions()) {
      if (row.cell(column).contains(text)) {
        names.add(row.first());
      }
    }
    return names;
  }

  @Test
  void signsAndTimeAreAsThePageSays() {
    assertThat(all(Surface::canRimshot)).isEqualTo(where("signs", "^ rimshot")).contains("snare");
    assertThat(all(Surface::canChoke)).isEqualTo(where("signs", "! choke")).contains("crash");
    assertThat(all(Surface::keepsTime)).isEqualTo(where("time", "kept")).contains("ride");
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
  void tablesPutThePieceFirst() {
    assertThat(surface("hihat.open").label()).isEqualTo("hi-hat open");
    assertThat(surface("tom2").label()).isEqualTo("second tom");
  }
}
