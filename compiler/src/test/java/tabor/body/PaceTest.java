package tabor.body;

import static org.assertj.core.api.Assertions.assertThat;
import static tabor.kit.Limb.LEFT_FOOT;
import static tabor.kit.Limb.LEFT_HAND;
import static tabor.kit.Limb.RIGHT_FOOT;
import static tabor.kit.Limb.RIGHT_HAND;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Groove;
import tabor.groove.Ornament;
import tabor.groove.Ornaments;
import tabor.groove.Stroke;
import tabor.kit.Kit;
import tabor.kit.Limb;
import tabor.kit.Limits;
import tabor.kit.Position;
import tabor.rhythm.Time;

/**
 * How fast, how far and how much: every figure is worked out by hand from the limits (7 and 10
 * strokes a second of a hand, 7 and 9 of a foot, 14 and 22 within a double, 300 and 450 centimetres
 * a second) and from beats of 60 seconds over the tempo.
 */
class PaceTest {
  /** The snare 30 cm to the left, the floor tom 30 cm to the right: 60 cm apart. */
  private static final Kit APART =
      Played.placed(Map.of("snare", new Position(30, -90, 75), "floor", new Position(30, 90, 75)));

  private static Difficulty difficulty(Played played) {
    return Difficulty.of(played.groove());
  }

  private static Fastest.Bound comfortable(Played played) {
    return Fastest.of(played.groove()).comfortable();
  }

  private static Fastest.Bound extreme(Played played) {
    return Fastest.of(played.groove()).extreme();
  }

  @Test
  void strokesASecondOfEachLimb() {
    // A bar of 4/4 at 60 lasts four seconds.
    Difficulty one =
        difficulty(
            new Played()
                .tempo(60)
                .part(RIGHT_HAND, "hihat", "xx xx xx xx")
                .part(LEFT_HAND, "snare", ". x . x")
                .part(RIGHT_FOOT, "kick", "x . . ."));
    assertThat(one.perSecond())
        .isEqualTo(
            Map.of(RIGHT_HAND, Time.of(2), LEFT_HAND, Time.of(1, 2), RIGHT_FOOT, Time.of(1, 4)));
    assertThat(one.limbs()).isEqualTo(3);
    assertThat(one.together()).as("kick on 1, snare on 2 and 4").isEqualTo(3);
    assertThat(
            difficulty(
                    new Played().tempo(120).part(RIGHT_HAND, "hihat", "xx xx xx xx | xx xx xx xx"))
                .perSecond())
        .isEqualTo(Map.of(RIGHT_HAND, Time.of(4)));
  }

  private static Difficulty with(Ornament... ornaments) {
    Groove plain = new Played().tempo(60).part(RIGHT_HAND, "snare", "x . . .").groove();
    Ornaments all = Ornaments.NONE;
    for (Ornament one : ornaments) {
      all = all.with(one);
    }
    Ornaments with = all;
    List<Stroke> strokes = plain.strokes().stream().map(stroke -> stroke.with(with)).toList();
    return Difficulty.of(Played.like(plain, null, 1, Time.ZERO, strokes));
  }

  @Test
  void graceNotesAndBothStrokesOfADiddleCount() {
    assertThat(with().perSecond()).isEqualTo(Map.of(RIGHT_HAND, Time.of(1, 4)));
    assertThat(with(Ornament.DIDDLE).perSecond()).isEqualTo(Map.of(RIGHT_HAND, Time.of(2, 4)));
    assertThat(with(Ornament.OPEN_ROLL).perSecond())
        .as("two and two")
        .isEqualTo(Map.of(RIGHT_HAND, Time.of(2, 4), LEFT_HAND, Time.of(2, 4)));
    assertThat(with(Ornament.FLAM).perSecond())
        .isEqualTo(Map.of(RIGHT_HAND, Time.of(1, 4), LEFT_HAND, Time.of(1, 4)));
    assertThat(with(Ornament.DRAG).perSecond())
        .as("the other hand plays both")
        .isEqualTo(Map.of(RIGHT_HAND, Time.of(1, 4), LEFT_HAND, Time.of(2, 4)));
    assertThat(with(Ornament.RUFF).perSecond())
        .as("three alternate into the main stroke")
        .isEqualTo(Map.of(RIGHT_HAND, Time.of(2, 4), LEFT_HAND, Time.of(2, 4)));
  }

  @Test
  void theLimbNearestToItsLimit() {
    // Sixteenths at 105 are seven a second: all that is comfortable. Eighths are half of that.
    Difficulty one =
        difficulty(
            new Played()
                .tempo(105)
                .part(RIGHT_HAND, "hihat", "xxxx xxxx xxxx xxxx")
                .part(LEFT_FOOT, "hihat.foot", "xx xx xx xx"));
    assertThat(one.hardest()).isEqualTo(RIGHT_HAND);
    assertThat(one.share()).isEqualTo(100);
    Difficulty feet =
        difficulty(
            new Played()
                .tempo(84)
                .part(RIGHT_HAND, "hihat", "xx xx xx xx")
                .part(RIGHT_FOOT, "kick", "xxxx xxxx xxxx xxxx"));
    assertThat(feet.hardest()).isEqualTo(RIGHT_FOOT);
    assertThat(feet.share()).as("5.6 of 7 a second").isEqualTo(80);
  }

  @ParameterizedTest
  @CsvSource({
    // Sixteenths at T: 4T/60 a second.
    "RIGHT_HAND, hihat, xxxx xxxx xxxx xxxx, 105, 150, STROKES",
    "RIGHT_FOOT, kick, xxxx xxxx xxxx xxxx, 105, 135, STROKES",
    "RIGHT_HAND, hihat, xxx xxx xxx xxx, 140, 200, STROKES",
    // Two in a row only: a double, 4T/60 a second within it.
    "RIGHT_FOOT, kick, xx.. . . ., 210, 330, DOUBLE",
    // A diddle in a sixteenth: 8T/60.
    "RIGHT_HAND, snare, d... . . ., 105, 165, DOUBLE",
  })
  void theFastestTempo(
      Limb limb, String surface, String words, long easy, long most, Fastest.Reason reason) {
    Played played = new Played().part(limb, surface, words);
    assertThat(comfortable(played).perMinute()).isEqualTo(Time.of(easy));
    assertThat(comfortable(played).reason()).isEqualTo(reason);
    assertThat(comfortable(played).limb()).isEqualTo(limb);
    assertThat(extreme(played).perMinute()).isEqualTo(Time.of(most));
    assertThat(extreme(played).tempo()).isEqualTo(most);
    assertThat(extreme(played).reason()).isEqualTo(reason);
  }

  @Test
  void theWayBetweenTwoPieces() {
    // 60 cm take a fifth of a second at ease, 2/15 at most; a sixteenth at T lasts 15/T.
    Played far =
        new Played()
            .kit(APART)
            .part(LEFT_HAND, "snare", "x... . . .")
            .part(LEFT_HAND, "floor", ".x.. . . .");
    assertThat(comfortable(far).perMinute()).isEqualTo(Time.of(75));
    assertThat(comfortable(far).reason()).isEqualTo(Fastest.Reason.WAY);
    assertThat(comfortable(far).from().surface().name()).isEqualTo("snare");
    assertThat(comfortable(far).to().surface().name()).isEqualTo("floor");
    assertThat(extreme(far).perMinute()).isEqualTo(Time.of(225, 2));
    assertThat(extreme(far).tempo()).as("rounded down").isEqualTo(112);
  }

  @Test
  void aWayIsNoLongerThanAnEighthAtOneTwentyTakes() {
    Kit wide =
        Played.placed(
            Map.of("snare", new Position(150, -90, 75), "floor", new Position(150, 90, 75)));
    Played far =
        new Played()
            .kit(wide)
            .part(LEFT_HAND, "snare", "x. . . .")
            .part(LEFT_HAND, "floor", ".x . . .");
    assertThat(extreme(far).perMinute())
        .as("three metres, but an eighth at 120 is never reported")
        .isEqualTo(Time.of(120));
    assertThat(comfortable(far).perMinute()).as("a second for three metres").isEqualTo(Time.of(30));
  }

  @Test
  void nothingPlayedHasNoBound() {
    Groove empty = new Played().groove();
    assertThat(Fastest.of(empty)).isEqualTo(new Fastest(null, null));
    Difficulty none = Difficulty.of(empty);
    assertThat(none.hardest()).isNull();
    assertThat(none.share()).isZero();
    assertThat(none.limbs()).isZero();
    assertThat(none.together()).isZero();
  }

  private static Diagnostic only(Groove groove) {
    List<Diagnostic> all = BodyChecks.check(groove);
    assertThat(all).hasSize(1);
    return all.get(0);
  }

  @Test
  void whatIsTooFastIsSaidInFigures() {
    Diagnostic singles =
        only(new Played().tempo(160).part(RIGHT_HAND, "snare", "xxxx . . .").groove());
    assertThat(singles.message())
        .isEqualTo(
            "the right hand plays 10.7 strokes per second from 1 to 1&: 10 is the extreme, 7"
                + " comfortable; the same at 1 more place");
    assertThat(singles.help())
        .isEqualTo("it fits up to tempo 150; or give it to another limb, or leave strokes out");
    Diagnostic doubles =
        only(new Played().tempo(340).part(RIGHT_FOOT, "kick", "xx.. . . .").groove());
    assertThat(doubles.message())
        .startsWith(
            "the right foot strikes twice, ending at 1e, as fast as 22.7 strokes per second");
    assertThat(doubles.help()).startsWith("it fits up to tempo 330;");
    Diagnostic inside =
        only(new Played().tempo(180).part(RIGHT_HAND, "snare", "d... . . .").groove());
    assertThat(inside.message())
        .startsWith("the right hand doubles at 1, as fast as 24 strokes per second");
    Diagnostic way =
        only(
            new Played()
                .kit(APART)
                .tempo(120)
                .part(LEFT_HAND, "snare", "x... . . .")
                .part(LEFT_HAND, "floor", ".x.. . . .")
                .groove());
    assertThat(way.message())
        .isEqualTo(
            "the left hand has 125 ms from snare to floor tom at 1e: it needs 133 ms at the very"
                + " least");
    assertThat(way.labels().get(0).text()).isEqualTo("the left hand on the snare at 1");
    assertThat(way.place()).isEqualTo(new Diagnostic.Place("test", 1, "1e"));
  }

  @Test
  void atItsLimitNothingIsSaid() {
    assertThat(
            BodyChecks.check(
                new Played().tempo(150).part(RIGHT_HAND, "snare", "xxxx xxxx xxxx xxxx").groove()))
        .isEmpty();
    assertThat(
            BodyChecks.check(
                new Played().tempo(151).part(RIGHT_HAND, "snare", "xxxx xxxx xxxx xxxx").groove()))
        .hasSize(1);
    assertThat(
            BodyChecks.check(
                new Played().tempo(135).part(LEFT_FOOT, "kick", "xxxx xxxx xxxx xxxx").groove()))
        .isEmpty();
    assertThat(
            BodyChecks.check(
                new Played().tempo(136).part(LEFT_FOOT, "kick", "xxxx xxxx xxxx xxxx").groove()))
        .hasSize(1);
  }

  @Test
  void theQuickLookLeavesOnlyWhatIsNearTheLimit() {
    Groove at100 =
        new Played().tempo(100).part(RIGHT_HAND, "snare", "xxxx xxxx xxxx xxxx").groove();
    assertThat(QuickPace.isEasy(at100, at100.setting().tempo(), Limits.DEFAULT)).isTrue();
    Groove at140 =
        new Played().tempo(140).part(RIGHT_HAND, "snare", "xxxx xxxx xxxx xxxx").groove();
    assertThat(QuickPace.isEasy(at140, at140.setting().tempo(), Limits.DEFAULT)).isTrue();
    Groove at151 =
        new Played().tempo(151).part(RIGHT_HAND, "snare", "xxxx xxxx xxxx xxxx").groove();
    assertThat(QuickPace.isEasy(at151, at151.setting().tempo(), Limits.DEFAULT)).isFalse();
    Groove foot = new Played().tempo(134).part(RIGHT_FOOT, "kick", "xxxx xxxx xxxx xxxx").groove();
    assertThat(QuickPace.isEasy(foot, foot.setting().tempo(), Limits.DEFAULT)).isTrue();
    Groove near =
        new Played()
            .kit(APART)
            .tempo(112)
            .part(LEFT_HAND, "snare", "x... . . .")
            .part(LEFT_HAND, "floor", ".x.. . . .")
            .groove();
    assertThat(QuickPace.isEasy(near, near.setting().tempo(), Limits.DEFAULT)).isTrue();
    Groove far =
        new Played()
            .kit(APART)
            .tempo(113)
            .part(LEFT_HAND, "snare", "x... . . .")
            .part(LEFT_HAND, "floor", ".x.. . . .")
            .groove();
    assertThat(QuickPace.isEasy(far, far.setting().tempo(), Limits.DEFAULT)).isFalse();
    Groove flams = new Played().tempo(60).part(RIGHT_HAND, "snare", "f . . .").groove();
    assertThat(QuickPace.isEasy(flams, flams.setting().tempo(), Limits.DEFAULT)).isFalse();
    Groove diddles = new Played().tempo(60).part(RIGHT_HAND, "snare", "d . . .").groove();
    assertThat(QuickPace.isEasy(diddles, diddles.setting().tempo(), Limits.DEFAULT)).isFalse();
  }

  @Test
  void theWayRoundIsLookedAtToo() {
    // The last sixteenth and the first of the next time round.
    Groove twice = new Played().tempo(340).part(RIGHT_FOOT, "kick", "x . . ...x").groove();
    assertThat(QuickPace.isEasy(twice, twice.setting().tempo(), Limits.DEFAULT)).isFalse();
    assertThat(BodyChecks.check(twice)).hasSize(1);
    Groove three = new Played().tempo(140).part(RIGHT_FOOT, "kick", "xx.. . . ...x").groove();
    assertThat(QuickPace.isEasy(three, three.setting().tempo(), Limits.DEFAULT)).isFalse();
    assertThat(only(three).message()).startsWith("the right foot plays 9.3 strokes per second");
    // One stroke a bar of a quarter at 250: four and a bit a second.
    Groove one =
        new Played()
            .meter(tabor.rhythm.Meter.of(1, 4))
            .tempo(250)
            .part(RIGHT_FOOT, "kick", "x")
            .groove();
    assertThat(QuickPace.isEasy(one, one.setting().tempo(), Limits.DEFAULT)).isTrue();
    Groove more =
        new Played()
            .meter(tabor.rhythm.Meter.of(1, 16))
            .tempo(600)
            .part(RIGHT_FOOT, "kick", "x")
            .groove();
    assertThat(QuickPace.isEasy(more, more.setting().tempo(), Limits.DEFAULT)).isFalse();
  }

  @Test
  void everythingStandsWhereTheKitSays() {
    KitPlaces places = KitPlaces.of(APART);
    assertThat(places.of(Played.surface("snare"))).isEqualTo(new KitPlaces.Point(-30, 0, 75));
    assertThat(places.of(Played.surface("floor"))).isEqualTo(new KitPlaces.Point(30, 0, 75));
    assertThat(places.distance(Played.surface("snare"), Played.surface("floor"))).isEqualTo(60);
    assertThat(places.distance(Played.surface("snare"), Played.surface("snare"))).isZero();
    assertThat(KitPlaces.of(APART.mirrored()).of(Played.surface("snare")))
        .as("a left-hander's stands on the other side")
        .isEqualTo(new KitPlaces.Point(30, 0, 75));
    assertThat(KitPlaces.written(APART.mirrored()).of(Played.surface("snare")))
        .isEqualTo(new KitPlaces.Point(-30, 0, 75));
    assertThat(new KitPlaces.Point(1, 2, 3).to(new KitPlaces.Point(4, 6, 15)))
        .as("3, 4, 12: 13")
        .isEqualTo(13);
    // A quarter to the right of straight ahead: as far ahead as aside.
    Kit diagonal = Played.placed(Map.of("ride", new Position(100, 45, 90)));
    assertThat(KitPlaces.of(diagonal).of(Played.surface("ride")))
        .isEqualTo(new KitPlaces.Point(71, 71, 90));
  }

  @Test
  void armsCrossWhereTheRightIsClearlyLeftOfTheLeft() {
    Kit near =
        Played.placed(
            Map.of(
                "ride", new Position(20, -90, 90),
                "tom1", new Position(10, -90, 75),
                "tom2", new Position(9, -90, 75)));
    KitPlaces places = KitPlaces.of(near);
    assertThat(places.crosses(Played.surface("ride"), Played.surface("tom1")))
        .as("10 cm apart: side by side")
        .isFalse();
    assertThat(places.crosses(Played.surface("ride"), Played.surface("tom2"))).isTrue();
    assertThat(places.crosses(Played.surface("tom2"), Played.surface("ride"))).isFalse();
    assertThat(places.crosses(Played.surface("ride"), Played.surface("snare")))
        .as("over the left on the snare is how people sit")
        .isFalse();
  }

  @Test
  void wordsOfFigures() {
    assertThat(FindingWords.rate(Time.of(10))).isEqualTo("10");
    assertThat(FindingWords.rate(Time.of(32, 3))).isEqualTo("10.7");
    assertThat(FindingWords.millis(Time.of(1, 8))).isEqualTo(125);
    assertThat(FindingWords.and(List.of("a"))).isEqualTo("a");
    assertThat(FindingWords.and(List.of("a", "b"))).isEqualTo("a and b");
    assertThat(FindingWords.and(List.of("a", "b", "c"))).isEqualTo("a, b and c");
  }
}
