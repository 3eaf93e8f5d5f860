package tabor.kit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import tabor.testing.PageTables;
import tabor.testing.PageTables.Row;

/** Kits: what they have, what stands in for what they lack, and where it stands. */
class KitsTest {
  private static List<String> names() {
    return Kits.NAMES;
  }

  private static Kit kit(String name) {
    return Kits.named(name).orElseThrow();
  }

  @Test
  void fourKitsAreBuiltIn() {
    assertThat(Kits.NAMES).containsExactly("five-piece", "four-piece", "junior", "practice-pad");
    assertThat(Kits.named("six-piece")).isEmpty();
  }

  /** Any lesson plays on any built-in kit: every standard surface is struck somewhere. */
  @ParameterizedTest
  @MethodSource("names")
  void everyStandardSurfaceIsStruckSomewhere(String name) {
    Kit kit = kit(name);
    for (Surface surface : Kits.FIVE_PIECE.surfaces().values()) {
      Surface struck = kit.struck(surface);
      assertThat(struck).as(surface.name()).isNotNull();
      assertThat(kit.lacks(struck.name())).as(surface.name()).isFalse();
      assertThat(struck.isFoot()).as(surface.name()).isEqualTo(surface.isFoot());
    }
  }

  /** What a kit of this name lacks, and what is written to be struck instead. */
  private static Map<String, String> lacking(String kit) {
    Map<String, String> instead = new HashMap<>();
    for (Row row : PageTables.of("surfaces.md").with("in the kits")) {
      if (List.of(row.cell("in the kits").split(", ", -1)).contains(kit)) {
        instead.put(row.first(), row.cell("played instead on"));
      }
    }
    return instead;
  }

  @ParameterizedTest
  @ValueSource(strings = {"five-piece", "four-piece", "junior"})
  void whatAKitLacksIsPlayedOnItsStandIn(String name) {
    Map<String, String> instead = lacking(name);
    Kit kit = kit(name);
    for (String written : kit.surfaceNames()) {
      String struck = written;
      while (instead.containsKey(struck)) {
        struck = instead.get(struck);
      }
      assertThat(kit.struck(kit.surface(written)).name()).as(written).isEqualTo(struck);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "four-piece,   tom2,        floor",
    "junior,       splash,      ride",
    "junior,       cowbell,     ride",
    "practice-pad, snare.cross, snare",
    "practice-pad, crash,       snare",
    "practice-pad, floor,       snare",
    "practice-pad, hihat.half,  snare",
    "practice-pad, kick,        kick",
    "practice-pad, hihat.foot,  hihat.foot",
  })
  void standInsAreFollowedToWhatTheKitHas(String name, String written, String struck) {
    Kit kit = kit(name);
    assertThat(kit.struck(kit.surface(written)).name()).isEqualTo(struck);
  }

  private static Kit with(Map<String, Optional<String>> standIns) {
    Kit like = Kits.FIVE_PIECE;
    return new Kit("own", like.surfaces(), like.letters(), standIns, Map.of(), Map.of(), false);
  }

  @Test
  void chainsOfStandInsAreFollowed() {
    Kit kit = with(Map.of("splash", Optional.of("china"), "china", Optional.of("crash2")));
    assertThat(kit.struck(kit.surface("splash")).name()).isEqualTo("crash2");
  }

  @Test
  void nothingIsStruckAtTheEndOfACircleOrWithoutAStandIn() {
    Kit circle = with(Map.of("splash", Optional.of("china"), "china", Optional.of("splash")));
    assertThat(circle.struck(circle.surface("splash"))).isNull();
    Kit without = with(Map.of("splash", Optional.empty()));
    assertThat(without.struck(without.surface("splash"))).isNull();
    assertThat(without.struck(without.surface("china")).name()).isEqualTo("china");
  }

  @Test
  void aKitsOwnSurfaceTakesEverySignAndIsSaidByItsName() {
    Surface gong = Surface.own("gong", 52, new StaffPlace('A', 5), Surface.Head.X, null);
    assertThat(gong.canChoke()).isTrue();
    assertThat(gong.canRimshot()).isTrue();
    assertThat(gong.isCymbal()).isFalse();
    assertThat(gong.isFoot()).isFalse();
    assertThat(gong.words()).isEqualTo("gong");
    assertThat(Kits.FIVE_PIECE.position(gong)).isNull();
  }

  @Test
  void aZoneOfAPieceStandsWhereThePieceDoes() {
    Kit kit = Kits.FIVE_PIECE;
    Surface rim =
        Surface.own("snare.rim", 37, new StaffPlace('C', 5), Surface.Head.X, kit.surface("snare"));
    assertThat(kit.position(rim)).isEqualTo(kit.position(kit.surface("snare")));
    assertThat(rim.words()).isEqualTo("snare rim");
    Surface loose =
        Surface.own("hihat.loose", 46, rim.place(), Surface.Head.X, kit.surface("hihat"));
    assertThat(loose.isHiHat()).isTrue();
    assertThat(loose.keepsTime()).isTrue();
    assertThat(rim.keepsTime()).isFalse();
    assertThat(rim.isHiHat()).isFalse();
  }

  @Test
  void theRideComesCloserWhereThereIsNoSecondTom() {
    Position usual = Kits.FIVE_PIECE.position(Kits.FIVE_PIECE.surface("ride"));
    for (String name : Kits.NAMES) {
      Kit kit = kit(name);
      Position here = kit.position(kit.surface("ride.bell"));
      assertThat(here).isEqualTo(kit.position(kit.surface("ride")));
      if (kit.lacks("tom2")) {
        assertThat(here.distance()).as(name).isLessThan(usual.distance());
      } else {
        assertThat(here).isEqualTo(usual);
      }
    }
  }

  @Test
  void whatAKitSaysOfAPlaceHoldsForThePieceAndItsZones() {
    Kit like = Kits.FIVE_PIECE;
    Position here = new Position(90, 10, 100);
    Kit kit =
        new Kit(
            "own",
            like.surfaces(),
            like.letters(),
            Map.of(),
            Map.of("ride", here),
            Map.of(),
            false);
    assertThat(kit.position(kit.surface("ride.bell"))).isEqualTo(here);
    assertThat(kit.position(kit.surface("crash"))).isNotEqualTo(here);
  }

  @Test
  void aLetterOfASurfaceIsTheFirstInTheAlphabet() {
    Kit like = Kits.FIVE_PIECE;
    Map<Character, String> letters = new LinkedHashMap<>(like.letters());
    letters.put('z', "snare");
    letters.put('a', "snare");
    Kit kit = new Kit("own", like.surfaces(), letters, Map.of(), Map.of(), Map.of(), false);
    assertThat(kit.letterOf(kit.surface("snare"))).isEqualTo('a');
    assertThat(kit.letterOf(kit.surface("china"))).isEqualTo((char) 0);
    assertThat(kit.letter('z').name()).isEqualTo("snare");
    assertThat(kit.letter('y')).isNull();
  }

  @Test
  void mirroringTwiceChangesNothing() {
    Kit kit = Kits.FIVE_PIECE;
    assertThat(kit.mirrored().leftHanded()).isTrue();
    assertThat(kit.mirrored().mirrored()).isEqualTo(kit);
  }

  @Test
  void numbersOutOfRangeAreRefused() {
    assertThatThrownBy(() -> new Position(0, 0, 0)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Position(1, 181, 0)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Limits.Range(5, 4)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new StaffPlace('H', 4)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Surface.own("gong", 128, new StaffPlace('A', 5), Surface.Head.X, null))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
