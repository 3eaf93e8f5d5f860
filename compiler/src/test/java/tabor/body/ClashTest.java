package tabor.body;

import static org.assertj.core.api.Assertions.assertThat;
import static tabor.kit.Limb.LEFT_FOOT;
import static tabor.kit.Limb.LEFT_HAND;
import static tabor.kit.Limb.RIGHT_FOOT;
import static tabor.kit.Limb.RIGHT_HAND;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Groove;
import tabor.kit.Kit;
import tabor.kit.Kits;
import tabor.kit.Position;

/** What two hands and two feet cannot do at one instant, and how it is said. */
class ClashTest {
  private static Diagnostic only(Played played) {
    List<Diagnostic> all = BodyChecks.check(played.groove());
    assertThat(all).hasSize(1);
    return all.get(0);
  }

  private static List<String> codes(Played played) {
    return BodyChecks.check(played.groove()).stream().map(d -> d.code().word()).toList();
  }

  @Test
  void oneHandInTwoPlacesWhileTheOtherIsBusy() {
    Diagnostic told =
        only(
            new Played()
                .part(RIGHT_HAND, "hihat", "x . . .")
                .part(RIGHT_HAND, "snare", "x . . .")
                .part(LEFT_HAND, "tom1", "x . . ."));
    assertThat(told.code().word()).isEqualTo("limb-conflict");
    assertThat(told.help()).isEqualTo("leave one of the two out, or move it to another count");
    Diagnostic feet =
        only(
            new Played()
                .part(LEFT_FOOT, "kick", ". x . .")
                .part(LEFT_FOOT, "hihat.foot", ". x . ."));
    assertThat(feet.message())
        .isEqualTo(
            "the left foot cannot strike the hi-hat with the foot and the kick at once at 2");
    assertThat(feet.help())
        .isEqualTo("the right foot is free here: give it one of the two, or leave one out");
  }

  @Test
  void oneSurfaceTwiceIsNoClash() {
    assertThat(
            codes(
                new Played()
                    .part(RIGHT_HAND, "snare", "x . . .")
                    .part(LEFT_HAND, "snare", "x . . .")
                    .part(RIGHT_FOOT, "kick", "x . . .")
                    .part(LEFT_FOOT, "kick", "x . . .")))
        .isEmpty();
  }

  @Test
  void whatWouldTakeThreeHandsIsNamed() {
    Diagnostic three =
        only(
            new Played()
                .part(RIGHT_HAND, "crash", ". x . .")
                .part(LEFT_HAND, "snare", ". x . .")
                .part(RIGHT_HAND, "tom1", ". x . .")
                .dealt());
    assertThat(three.message())
        .isEqualTo("the crash, the first tom and the snare together at 2 would take three hands");
    assertThat(three.help()).isEqualTo("leave one of them out, or move it to another count");
    Diagnostic four =
        only(
            new Played()
                .part(RIGHT_HAND, "crash", "x . . .")
                .part(LEFT_HAND, "snare", "x . . .")
                .part(LEFT_HAND, "floor", "x . . .")
                .part(RIGHT_HAND, "tom1", "x . . .")
                .dealt());
    assertThat(four.code().word()).isEqualTo("three-hands");
    assertThat(four.message()).endsWith("would take more than two hands");
  }

  @Test
  void threeWrittenStrokesAreAConflictOfTheirLimb() {
    assertThat(
            codes(
                new Played()
                    .part(RIGHT_HAND, "crash", "x . . .")
                    .part(LEFT_HAND, "snare", "x . . .")
                    .part(RIGHT_HAND, "tom1", "x . . .")))
        .containsExactly("limb-conflict");
  }

  /** One hand on two surfaces with the other idle is that hand's conflict, whoever dealt it. */
  @Test
  void twoDealtStrokesAreNoThirdHand() {
    Played two =
        new Played()
            .part(RIGHT_HAND, "crash", "x . . .")
            .part(RIGHT_HAND, "tom1", "x . . .")
            .dealt();
    assertThat(codes(two)).containsExactly("limb-conflict");
    assertThat(codes(two.part(RIGHT_FOOT, "kick", "x . . .")))
        .as("a foot is no hand")
        .containsExactly("limb-conflict");
    assertThat(
            codes(
                new Played()
                    .part(RIGHT_HAND, "crash", "x . . .")
                    .part(LEFT_HAND, "snare", "x . . .")
                    .part(LEFT_FOOT, "kick", "x . . .")
                    .part(LEFT_FOOT, "hihat.foot", "x . . .")))
        .as("nor a hand a foot")
        .containsExactly("limb-conflict");
  }

  /** What the compiler dealt has no limb left: the mark stands on it, not on what was written. */
  @Test
  void theThirdHandIsTheOneThatWasDealt() {
    Diagnostic later =
        only(
            new Played()
                .part(RIGHT_HAND, "crash", "x . . .")
                .part(LEFT_HAND, "snare", "x . . .")
                .part(RIGHT_HAND, "tom1", "x . . .")
                .dealt());
    assertThat(later.spot().span().start()).isBetween(300, 399);
    Diagnostic earlier =
        only(
            new Played()
                .part(RIGHT_HAND, "tom1", "x . . .")
                .dealt()
                .part(LEFT_HAND, "snare", "x . . .")
                .part(RIGHT_HAND, "crash", "x . . ."));
    assertThat(earlier.labels()).hasSize(2);
    assertThat(earlier.message()).endsWith("would take three hands");
  }

  @Test
  void graceNotesOfBothHandsAreSaidOnceOfTheRight() {
    Diagnostic both =
        only(new Played().part(RIGHT_HAND, "snare", "f . . .").part(LEFT_HAND, "snare", "f . . ."));
    assertThat(both.message())
        .isEqualTo("the flam at 1 needs the left hand, which strikes the snare there");
  }

  /** Ten centimetres are side by side, eleven are crossed. */
  @Test
  void armsThatCrossAtOneInstant() {
    Kit near =
        Played.placed(
            Map.of(
                "ride", new Position(20, -90, 90),
                "tom1", new Position(10, -90, 75),
                "tom2", new Position(9, -90, 75)));
    assertThat(
            codes(
                new Played()
                    .kit(near)
                    .part(RIGHT_HAND, "ride", "x . . .")
                    .part(LEFT_HAND, "tom1", "x . . .")))
        .isEmpty();
    assertThat(
            codes(
                new Played()
                    .kit(near)
                    .part(RIGHT_HAND, "ride", "x . . .")
                    .part(LEFT_HAND, "tom2", "x . . .")))
        .containsExactly("crossed-arms");
  }

  @Test
  void theFootAndTheHiHat() {
    Diagnostic closed =
        only(
            new Played()
                .part(RIGHT_HAND, "hihat", "x . . .")
                .part(LEFT_FOOT, "hihat.foot", "x . . ."));
    assertThat(closed.message())
        .isEqualTo("the hi-hat is struck closed at 1 where the foot is to close it");
    Diagnostic open =
        only(
            new Played()
                .part(RIGHT_HAND, "hihat.open", "x . . .")
                .part(LEFT_FOOT, "hihat.foot", "x . . ."));
    assertThat(open.message()).isEqualTo("the open hi-hat is struck at 1 where the foot closes it");
    Diagnostic half =
        only(
            new Played()
                .part(RIGHT_HAND, "hihat.half", "x . . .")
                .part(LEFT_FOOT, "hihat.foot", "x . . ."));
    assertThat(half.code().word()).isEqualTo("hihat-contradiction");
    Diagnostic pedal =
        only(new Played().part(RIGHT_HAND, "hihat", "x . . .").part(LEFT_FOOT, "kick", "x . . ."));
    assertThat(pedal.message())
        .isEqualTo(
            "the hi-hat is struck closed at 1 while the foot that keeps it closed is on the kick"
                + " pedal");
    assertThat(
            codes(
                new Played()
                    .part(RIGHT_HAND, "hihat.open", "x . . .")
                    .part(LEFT_FOOT, "kick", "x . . .")))
        .as("open, the foot is free")
        .isEmpty();
    assertThat(
            codes(
                new Played()
                    .part(RIGHT_HAND, "ride", "x . . .")
                    .part(LEFT_FOOT, "hihat.foot", "x . . .")))
        .isEmpty();
  }

  @Test
  void aLeftHandersHiHatFootIsTheRight() {
    Played right =
        new Played()
            .kit(Kits.FIVE_PIECE.mirrored())
            .part(LEFT_HAND, "hihat", "x . . .")
            .part(RIGHT_FOOT, "kick", "x . . .");
    assertThat(codes(right)).containsExactly("hihat-contradiction");
    Played left =
        new Played()
            .kit(Kits.FIVE_PIECE.mirrored())
            .part(LEFT_HAND, "hihat", "x . . .")
            .part(LEFT_FOOT, "kick", "x . . .");
    assertThat(codes(left)).isEmpty();
  }

  @Test
  void graceNotesNeedTheOtherHand() {
    Diagnostic told =
        only(new Played().part(RIGHT_HAND, "snare", ". f . .").part(LEFT_HAND, "tom1", ". x . ."));
    assertThat(told.message())
        .isEqualTo("the flam at 2 needs the left hand, which strikes the first tom there");
    assertThat(told.help())
        .isEqualTo(
            "grace notes are made by the other hand: leave them out, or free it at this count");
    Diagnostic feet =
        only(new Played().part(RIGHT_FOOT, "kick", "f . . .").part(LEFT_FOOT, "kick", "x . . ."));
    assertThat(feet.help()).startsWith("grace notes are made by the other foot");
    assertThat(
            codes(
                new Played()
                    .part(RIGHT_HAND, "snare", "f . . .")
                    .part(RIGHT_FOOT, "kick", "x . . .")))
        .isEmpty();
  }

  @Test
  void strokesInsideARollAreTold() {
    Diagnostic both =
        only(new Played().part(LEFT_HAND, "tom1", ".x . . .").part(RIGHT_HAND, "snare", "o . . ."));
    assertThat(both.message())
        .isEqualTo(
            "the left hand strikes the first tom at 1& inside the open roll at 1, which takes both"
                + " hands");
    assertThat(both.help())
        .isEqualTo("leave the stroke out, or roll with one hand: a diddle is written with one /");
    assertThat(
            codes(
                new Played()
                    .part(LEFT_HAND, "tom1", ". x . .")
                    .part(RIGHT_HAND, "snare", "o . . .")))
        .as("right after it is not inside")
        .isEmpty();
    assertThat(
            codes(
                new Played()
                    .part(LEFT_HAND, "tom1", "x . . .")
                    .part(RIGHT_HAND, "snare", "o . . .")))
        .as("at its beginning, by the hand that it takes too")
        .containsExactly("no-free-hand");
    Diagnostic own =
        only(
            new Played().part(RIGHT_HAND, "tom1", ".x . . .").part(RIGHT_HAND, "snare", "d . . ."));
    assertThat(own.message())
        .isEqualTo(
            "the right hand strikes the first tom at 1& inside the diddle at 1, which it is still"
                + " playing");
  }

  @Test
  void crossedArmsNameBothHands() {
    Diagnostic told =
        only(new Played().part(RIGHT_HAND, "hihat", ". x . .").part(LEFT_HAND, "floor", ". x . ."));
    assertThat(told.message())
        .isEqualTo("the arms cross at 2: the right hand on the hi-hat, the left on the floor tom");
    assertThat(told.help()).isEqualTo("the hands could change places here");
    assertThat(
            codes(
                new Played()
                    .kit(Kits.FIVE_PIECE.mirrored())
                    .part(LEFT_HAND, "hihat", "x . . .")
                    .part(RIGHT_HAND, "floor", "x . . .")))
        .as("mirrored the same way round")
        .containsExactly("crossed-arms");
  }

  @Test
  void inTwoBarsTheSamePlaceInTheSourceIsToldOnce() {
    Groove clash =
        new Played()
            .part(RIGHT_HAND, "hihat", "x . . .")
            .part(RIGHT_HAND, "snare", "x . . .")
            .groove();
    List<tabor.groove.Stroke> twice = new java.util.ArrayList<>(clash.strokes());
    clash.strokes().forEach(one -> twice.add(one.moved(2, one.at(), one.length(), one.slot())));
    List<Diagnostic> told =
        BodyChecks.check(Played.like(clash, null, 2, tabor.rhythm.Time.ZERO, twice));
    assertThat(told).hasSize(1);
    assertThat(told.get(0).message()).endsWith(" and in 1 more bar");
    assertThat(told.get(0).place().bar()).isEqualTo(1);
  }
}
