package tabor.body;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.kit.Kits;
import tabor.kit.Limb;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;

class DealerTest {
  @Test
  void nothingOpenNothingDealt() {
    assertThat(new Dealt().part("snare", "r l r l").deal()).isEmpty();
  }

  @Test
  void theHiHatIsUnderTheRightHandAndTheSnareUnderTheLeft() {
    Dealt groove =
        new Dealt().part("hihat", "xx xx xx xx").part("snare", ". x . x").part("kick", "x . x .");
    assertThat(groove.of("hihat")).isEqualTo("RRRRRRRR");
    assertThat(groove.of("snare")).isEqualTo("LL");
    assertThat(groove.of("kick")).isEqualTo("RR");
  }

  @Test
  void theSnareIsTheLeftHandsAlsoBetweenTheHats() {
    Dealt groove = new Dealt().part("hihat", "x. x. x. x.").part("snare", ".x .x .. .x");
    assertThat(groove.of("hihat")).isEqualTo("RRRR");
    assertThat(groove.of("snare")).isEqualTo("LLL");
    Dealt quarters = new Dealt().part("hihat", "x . x .").part("snare", ". x . x");
    assertThat(quarters.of("snare")).isEqualTo("LL");
  }

  @Test
  void sixteenthsOnTheHiHatStayOnOneHand() {
    Dealt groove = new Dealt().part("hihat", "xxxx xxxx xxxx xxxx").part("snare", ". x . x");
    assertThat(groove.of("hihat")).isEqualTo("R".repeat(16));
    assertThat(groove.of("snare")).isEqualTo("LL");
  }

  @Test
  void aBurstOnTheHiHatIsShared() {
    Dealt groove = new Dealt().part("hihat", "x x xxxxxxxx x").part("kick", "x . . .");
    assertThat(groove.of("hihat").substring(2, 10)).isEqualTo("RLRLRLRL");
  }

  @Test
  void theStandardBellStaysOnOneHand() {
    Dealt bell = new Dealt().meter(Meter.of(12, 8)).part("ride.bell", "x.x .xx .x. x.x");
    assertThat(bell.of("ride.bell")).isEqualTo("RRRRRRR");
    Dealt free =
        new Dealt()
            .meter(Meter.of(12, 8))
            .part("ride.bell", "x.x .xx .x. x.x | x.x .xx .x. x.x")
            .part("snare", "..x ... ..x ... | ..x ... ..x ...");
    assertThat(free.of("ride.bell")).isEqualTo("R".repeat(14));
  }

  @Test
  void aSnareRollComesOutAlternating() {
    assertThat(new Dealt().part("snare", "xxxx xxxx xxxx xxxx").of("snare"))
        .isEqualTo("RL".repeat(8));
    assertThat(new Dealt().part("snare", "xxx xxx xxx xxx").of("snare")).isEqualTo("RL".repeat(6));
    assertThat(new Dealt().part("snare", "xx xx xx xx").of("snare")).isEqualTo("RL".repeat(4));
    assertThat(new Dealt().part("snare", "xxxxxx xxxxxx xxxxxx xxxxxx").of("snare"))
        .isEqualTo("RL".repeat(12));
  }

  @Test
  void theLeadHandTakesTheEighths() {
    assertThat(new Dealt().part("snare", "x.xx x.xx x.xx x.xx").of("snare"))
        .isEqualTo("RRL".repeat(4));
  }

  @Test
  void handsPartsAlternateFromTheRight() {
    assertThat(new Dealt().alternating("snare", "xx xx xx xx").of("snare")).isEqualTo("RLRLRLRL");
    assertThat(new Dealt().alternating("snare", "x x x x").of("snare")).isEqualTo("RLRL");
    // gaps do not shift the hands
    assertThat(new Dealt().alternating("snare", ".xxx .xxx .xxx .xxx").of("snare"))
        .isEqualTo("LRL".repeat(4));
    assertThat(new Dealt().alternating("snare", "x x xx x").of("snare")).isEqualTo("RRRLR");
    assertThat(new Dealt().meter(Meter.of(3, 4)).alternating("snare", "x x x").of("snare"))
        .isEqualTo("RLR");
    assertThat(new Dealt().meter(Meter.of(5, 4)).alternating("snare", "x x x x x").of("snare"))
        .isEqualTo("RLRLR");
    assertThat(new Dealt().alternating("kick", "x x x x").of("kick")).isEqualTo("RLRL");
  }

  @Test
  void theKickIsTheRightFootsAndThePedalTheLefts() {
    Dealt feet = new Dealt().part("kick", "x.xx x. x. xx").part("hihat.foot", ". x . x");
    assertThat(feet.of("kick")).isEqualTo("RRRRRRR");
    assertThat(feet.of("hihat.foot")).isEqualTo("LL");
    assertThat(new Dealt().part("hihat.foot", "r x x x").part("kick", "x . . .").of("kick"))
        .isEqualTo("L");
  }

  @Test
  void aFillRoundTheKitAlternates() {
    Dealt fill =
        new Dealt()
            .part("snare", "xxxx . . .")
            .part("tom1", ". xxxx . .")
            .part("tom2", ". . xxxx .")
            .part("floor", ". . . xxxx");
    for (String drum : new String[] {"snare", "tom1", "tom2", "floor"}) {
      assertThat(fill.of(drum)).as(drum).isEqualTo("RLRL");
    }
  }

  @Test
  void writtenHandsAreKeptAndWorkedAround() {
    assertThat(new Dealt().part("ride", "rr rr rr rr").part("snare", "xx .x x. xx").of("snare"))
        .isEqualTo("LLLLL L".replace(" ", ""));
    assertThat(
            new Dealt()
                .part("crash", "r . . .")
                .part("snare", "l . . .")
                .part("tom1", "x . . .")
                .of("tom1"))
        .isEqualTo("-");
  }

  @Test
  void aHandThatIsNeededForGraceNotesStaysFree() {
    // the flam is the left hand's, so its grace note is the right hand's, and neither is free at
    // 2
    Dealt flam = new Dealt().part("snare", "x f x .").part("hihat", "x. .x x. xx");
    assertThat(flam.deal()).doesNotContainNull();
    // a diddle of the right hand is still sounding at 1e
    Dealt diddle =
        new Dealt()
            .part("tom1", "d. . . .")
            .part("snare", ".... . . .")
            .part("floor", ".x.. . . .");
    assertThat(diddle.of("floor")).isNotEqualTo(diddle.of("tom1"));
  }

  @Test
  void theSameEveryTime() {
    Dealt a = new Dealt().part("snare", "x.xx .xx. xxx x").part("tom1", ".x.. x..x . x");
    Dealt b = new Dealt().part("snare", "x.xx .xx. xxx x").part("tom1", ".x.. x..x . x");
    assertThat(a.deal()).isEqualTo(b.deal()).isEqualTo(a.deal());
  }

  @Test
  void onAPadEverythingIsInOnePlace() {
    Dealt pad =
        new Dealt()
            .kit(Kits.named("practice-pad").orElseThrow())
            .part("tom1", "xxxx . xxxx .")
            .part("floor", ". xxxx . xxxx");
    assertThat(pad.of("tom1")).isEqualTo("RLRLRLRL");
  }

  /**
   * Common practice, no source: no hand reaches across the one that has just struck. The ride
   * stands right of the toms and the snare.
   */
  @Test
  void noHandReachesAcrossTheOtherFromOneStrokeToTheNext() {
    assertThat(new Dealt().part("tom1", "r... . . .").part("ride", ".x.. . . .").of("ride"))
        .isEqualTo("R");
    assertThat(new Dealt().part("ride", "ll.. r . .").part("snare", "..x. . . .").of("snare"))
        .isEqualTo("L");
    Dealt back = new Dealt().part("snare", "x.l. . . .").part("ride", ".x.. . . .");
    assertThat(back.of("snare") + back.of("ride")).isEqualTo("LR");
  }

  /**
   * On a pad two toms at once are as good either way: the section before decides, else the right
   * takes the first.
   */
  @ParameterizedTest
  @CsvSource({
    "x . . ., '', RL",
    "x . . ., RL, RL",
    "x . . ., LR, LR",
    "x x . ., '', RLRL",
    "x x . ., LRLR, LRLR",
    "x x . ., LRLL, LRLR",
    "x x . x, LRLRLR, LRLRLR",
    // Each hand stays on its drum: drums that change hands are not as good.
    "x x . ., RLLR, RLRL",
    "x x . x, LRRLLR, LRLRLR",
  })
  void ofEquallyGoodDealingsTheNearestToTheSectionBefore(String words, String before, String now) {
    Dealt pad =
        new Dealt()
            .kit(Kits.named("practice-pad").orElseThrow())
            .part("floor", words)
            .part("tom1", words);
    pad.open.sort(Comparator.comparing(Dealer.Open::stroke, Dealer.BY_SURFACE));
    List<Dealer.Open> open = new ArrayList<>();
    for (int i = 0; i < pad.open.size(); i++) {
      Dealer.Open one = pad.open.get(i);
      Limb limb =
          before.isEmpty() ? null : before.charAt(i) == 'R' ? Limb.RIGHT_HAND : Limb.LEFT_HAND;
      open.add(new Dealer.Open(one.stroke(), true, false, limb));
    }
    StringBuilder letters = new StringBuilder();
    Dealer.deal(pad.setting(), pad.bars, Time.ZERO, List.of(), open)
        .forEach(limb -> letters.append(limb.letter()));
    assertThat(letters.toString()).isEqualTo(now);
  }
}
