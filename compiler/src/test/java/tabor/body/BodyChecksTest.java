package tabor.body;

import static org.assertj.core.api.Assertions.assertThat;
import static tabor.kit.Limb.LEFT_FOOT;
import static tabor.kit.Limb.LEFT_HAND;
import static tabor.kit.Limb.RIGHT_FOOT;
import static tabor.kit.Limb.RIGHT_HAND;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.PageNotes;
import tabor.kit.Kits;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

class BodyChecksTest {
  private static List<String> codes(Played section) {
    return codes(section.groove());
  }

  private static List<String> codes(Groove section) {
    return BodyChecks.check(section).stream().map(d -> d.code().word()).toList();
  }

  private static String message(Played section) {
    List<Diagnostic> found = BodyChecks.check(section.groove());
    assertThat(found).hasSize(1);
    return found.get(0).message();
  }

  @Test
  void anOrdinaryGrooveIsClean() {
    assertThat(
            codes(
                new Played()
                    .part(RIGHT_HAND, "hihat", "xx xx xx xx")
                    .part(LEFT_HAND, "snare", ". x . x")
                    .part(RIGHT_FOOT, "kick", "x . x .")))
        .isEmpty();
  }

  @Test
  void oneHandInTwoPlacesStandsAtTheLaterLine() {
    Groove section =
        new Played()
            .part(RIGHT_HAND, "hihat", "x x x x")
            .part(RIGHT_HAND, "snare", ". x . .")
            .groove();
    List<Diagnostic> found = BodyChecks.check(section);
    assertThat(found).hasSize(1);
    Diagnostic clash = found.get(0);
    assertThat(clash.code()).isEqualTo(Code.LIMB_CONFLICT);
    assertThat(clash.spot().span().start()).isBetween(200, 299);
    assertThat(clash.labels().get(0).spot().span().start()).isBetween(100, 199);
    assertThat(clash.place()).isEqualTo(new Diagnostic.Place("test", 1, "2"));
    assertThat(clash.message())
        .isEqualTo("the right hand cannot strike the hi-hat and the snare at once at 2");
    assertThat(clash.help()).startsWith("the left hand is free here");
  }

  @Test
  void unisonOfTwoHandsIsFine() {
    assertThat(
            codes(
                new Played()
                    .part(RIGHT_HAND, "hihat", "xx xx xx xx")
                    .part(LEFT_HAND, "snare", ".x x. x. .x")))
        .isEmpty();
  }

  @Test
  void threeHandsAndThreeFeet() {
    Played hands =
        new Played()
            .part(RIGHT_HAND, "crash", "x . . .")
            .part(LEFT_HAND, "snare", "x . . .")
            .part(RIGHT_HAND, "tom1", "x . . .")
            .dealt();
    assertThat(message(hands)).contains("three hands");
    Played feet =
        new Played()
            .part(RIGHT_FOOT, "kick", "x . . .")
            .part(LEFT_FOOT, "kick", "x . . .")
            .part(LEFT_FOOT, "hihat.foot", "x . . .")
            .dealt();
    assertThat(codes(feet)).containsExactly("three-feet");
  }

  @Test
  void theHiHatAndTheFoot() {
    assertThat(
            codes(
                new Played()
                    .part(RIGHT_HAND, "hihat.open", "x . . .")
                    .part(LEFT_FOOT, "hihat.foot", "x . . .")))
        .containsExactly("hihat-contradiction");
    assertThat(
            codes(
                new Played()
                    .part(RIGHT_HAND, "hihat", "x . . .")
                    .part(LEFT_FOOT, "hihat.foot", "x . . .")))
        .containsExactly("foot-on-closed-hihat");
    assertThat(
            codes(
                new Played()
                    .part(RIGHT_HAND, "hihat.open", "x . . .")
                    .part(LEFT_FOOT, "hihat.splash", "x . . .")))
        .isEmpty();
    assertThat(
            codes(
                new Played()
                    .part(RIGHT_HAND, "hihat", "x . . .")
                    .part(LEFT_FOOT, "kick", "x . . .")))
        .containsExactly("hihat-contradiction");
    assertThat(
            codes(
                new Played()
                    .part(RIGHT_HAND, "hihat", "x . . .")
                    .part(RIGHT_FOOT, "kick", "x . . .")))
        .isEmpty();
  }

  @Test
  void noHandForGraceNotes() {
    assertThat(
            codes(
                new Played()
                    .part(RIGHT_HAND, "ride", "x . . .")
                    .part(LEFT_HAND, "snare", "f . . .")))
        .containsExactly("no-free-hand");
    Played both =
        new Played().part(RIGHT_HAND, "snare", "f . . .").part(LEFT_HAND, "snare", "f . . .");
    assertThat(codes(both)).containsExactly("no-free-hand");
    // a sixteenth at 240 is 63 ms: a flam fits in; a thirty-second at 300 leaves no time
    assertThat(
            codes(
                new Played()
                    .tempo(300)
                    .part(LEFT_HAND, "snare", "x....... . . .")
                    .part(RIGHT_HAND, "snare", ".f...... . . .")))
        .containsExactly("no-free-hand");
  }

  @Test
  void strokesInsideRolls() {
    assertThat(
            codes(
                new Played()
                    .part(LEFT_HAND, "hihat", ".x . . .")
                    .part(RIGHT_HAND, "snare", "o . . .")))
        .containsExactly("no-free-hand");
    assertThat(
            codes(
                new Played()
                    .part(LEFT_HAND, "snare", "o . . .")
                    .part(RIGHT_HAND, "snare", "o . . .")))
        .isEmpty();
    assertThat(
            codes(
                new Played()
                    .part(LEFT_HAND, "hihat", "xx . . .")
                    .part(RIGHT_HAND, "snare", "d . . .")))
        .isEmpty();
  }

  @Test
  void sixteenthsOfOneLimbAtNinetyAreNeverReported() {
    for (tabor.kit.Limb limb : tabor.kit.Limb.values()) {
      String surface = limb.isHand() ? "hihat" : limb == RIGHT_FOOT ? "kick" : "hihat.foot";
      assertThat(codes(new Played().part(limb, surface, "xxxx xxxx xxxx xxxx"))).isEmpty();
    }
  }

  @Test
  void anyMoveWithinAnEighthAtOneTwentyIsNeverReported() {
    List<String> names =
        Kits.FIVE_PIECE.surfaces().values().stream()
            .filter(s -> !s.isFoot())
            .map(tabor.kit.Surface::name)
            .toList();
    for (String from : names) {
      for (String to : names) {
        for (String sign : List.of("x", "f")) {
          assertThat(
                  codes(
                      new Played()
                          .tempo(120)
                          .part(RIGHT_HAND, from, "x. ".repeat(4))
                          .part(RIGHT_HAND, to, ("." + sign + " ").repeat(4))))
              .as(from + " to " + to)
              .isEmpty();
        }
      }
    }
  }

  @Test
  void tooFastSaysHowFast() {
    assertThat(message(new Played().tempo(240).part(RIGHT_HAND, "snare", "xxxx xxxx xxxx xxxx")))
        .startsWith("the right hand plays 16 strokes per second from 1 to 1&: 10 is the extreme");
    assertThat(message(new Played().tempo(240).part(RIGHT_HAND, "snare", "x... x... dd.. .d..")))
        .contains("doubles at 3");
  }

  @Test
  void diddlesOfTwoHandsAreOneMovementEach() {
    // an open roll of thirty-seconds at 120: each hand moves eight times a second
    assertThat(
            codes(
                new Played()
                    .tempo(120)
                    .part(RIGHT_HAND, "snare", "d.d. d.d. d.d. d.d.")
                    .part(LEFT_HAND, "snare", ".d.d .d.d .d.d .d.d")))
        .isEmpty();
  }

  @Test
  void farReachInMilliseconds() {
    assertThat(
            message(
                new Played()
                    .tempo(120)
                    .part(LEFT_HAND, "floor", "x . . .")
                    .part(LEFT_HAND, "hihat", ".x.. . . .")))
        .startsWith("the left hand has 125 ms from floor tom to hi-hat at 1e");
  }

  @Test
  void theEndLeadsBackToTheBeginning() {
    assertThat(
            message(
                new Played()
                    .tempo(120)
                    .part(LEFT_HAND, "floor", "x . . .")
                    .part(LEFT_HAND, "hihat", ". . . ...x")))
        .startsWith("the left hand has 125 ms from hi-hat to floor tom at 1");
  }

  @Test
  void oneClashInManyBarsIsToldOnce() {
    Played once =
        new Played().part(RIGHT_HAND, "hihat", "x . . .").part(RIGHT_HAND, "snare", "x . . .");
    Groove bar = once.groove();
    List<tabor.groove.Stroke> more = new java.util.ArrayList<>();
    for (int i = 1; i <= 4; i++) {
      for (tabor.groove.Stroke stroke : bar.strokes()) {
        more.add(stroke.moved(i, stroke.at(), stroke.length(), stroke.slot()));
      }
    }
    Groove four = Played.like(bar, null, 4, Time.ZERO, more);
    List<Diagnostic> found = BodyChecks.check(four);
    assertThat(found).hasSize(1);
    assertThat(found.get(0).message()).endsWith("and in 3 more bars");
  }

  @Test
  void whatIsInheritedIsToldWhereItCameFrom() {
    Groove base =
        new Played()
            .part(RIGHT_HAND, "hihat", "x . . .")
            .part(RIGHT_HAND, "snare", "x . . .")
            .groove();
    assertThat(codes(base)).containsExactly("limb-conflict");
    assertThat(codes(new Played().from(base).part(RIGHT_FOOT, "kick", "x . . ."))).isEmpty();
    assertThat(
            codes(
                new Played()
                    .from(base)
                    .part(RIGHT_HAND, "tom1", ". x . .")
                    .part(RIGHT_HAND, "ride", ". x . .")))
        .containsExactly("limb-conflict");
  }

  @Test
  void aTempoOfItsOwnMakesItTheStepsProblem() {
    Groove base = new Played().part(RIGHT_HAND, "hihat", "xxxx xxxx xxxx xxxx").groove();
    assertThat(codes(base)).isEmpty();
    Groove fast = new Played().from(base).tempo(200).groove();
    List<Diagnostic> found = BodyChecks.check(fast);
    assertThat(found).extracting(Diagnostic::code).containsExactly(Code.TOO_FAST);
    assertThat(found.get(0).spot()).isEqualTo(fast.heading());
    assertThat(codes(new Played().from(fast).tempo(200))).isEmpty();
  }

  @Test
  void aProblemThatAStepTouchesButDoesNotMakeIsStillTheBases() {
    Groove base =
        new Played()
            .part(RIGHT_HAND, "hihat", "x . . .")
            .part(LEFT_FOOT, "hihat.foot", "x . . .")
            .groove();
    assertThat(codes(base)).containsExactly("foot-on-closed-hihat");
    Played step = new Played().from(new Played().groove());
    step.part(RIGHT_HAND, "hihat", "x . . .").part(LEFT_FOOT, "hihat.foot", "x . . .");
    Groove again = step.groove();
    Groove touched = Played.like(again, base, 1, Time.ZERO, again.strokes());
    assertThat(codes(touched)).isEmpty();
  }

  @Test
  void aPickupDoesNotGoRound() {
    // bar 0 ends on the floor tom, a sixteenth before the hi-hat: once; the loop itself is easy
    Groove bar = new Played().tempo(120).part(LEFT_HAND, "hihat", "x . . x").groove();
    tabor.groove.Stroke first = bar.strokes().get(0);
    tabor.groove.Stroke up =
        Played.stroke(
            Meter.COMMON,
            0,
            new tabor.rhythm.Slot(new tabor.rhythm.Division(3, 1, 4), 3, List.of()),
            LEFT_HAND,
            "floor",
            'x',
            first.spot());
    List<tabor.groove.Stroke> all = new java.util.ArrayList<>(List.of(up));
    all.addAll(bar.strokes());
    Groove section = Played.like(bar, null, 1, Time.of(1, 4), all);
    List<Diagnostic> found = BodyChecks.check(section);
    assertThat(found).hasSize(1);
    assertThat(found.get(0).message())
        .startsWith("the left hand has 125 ms from floor tom to hi-hat");
  }

  @Test
  void aChartThatPlaysItTooFast() {
    Groove section = new Played().part(RIGHT_HAND, "hihat", "xxxx xxxx xxxx xxxx").groove();
    Tempo fast = section.setting().tempo().at(Time.of(190));
    Chart chart =
        new Chart(
            "practice",
            null,
            section.heading(),
            List.of(new Chart.Play(List.of(new Chart.Turn(section, fast, Feel.STRAIGHT)), 1)),
            List.of(),
            PageNotes.NONE);
    assertThat(BodyChecks.check(chart)).extracting(Diagnostic::code).containsExactly(Code.TOO_FAST);
  }

  @Test
  void crossedArms() {
    assertThat(
            codes(
                new Played()
                    .part(RIGHT_HAND, "hihat", "x . . .")
                    .part(LEFT_HAND, "floor", "x . . .")))
        .containsExactly("crossed-arms");
    Played mirrored =
        new Played()
            .kit(Kits.FIVE_PIECE.mirrored())
            .part(LEFT_HAND, "hihat", "x . . .")
            .part(RIGHT_HAND, "snare", "x . . .");
    assertThat(codes(mirrored)).isEmpty();
    assertThat(
            codes(
                new Played()
                    .part(LEFT_HAND, "hihat", "x . . .")
                    .part(RIGHT_HAND, "snare", "x . . .")))
        .isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"ride", "crash", "crash2", "tom1", "tom2", "floor", "china"})
  void everydayUnisonsDoNotCross(String surface) {
    assertThat(
            codes(
                new Played()
                    .meter(Meter.of(6, 8))
                    .part(RIGHT_HAND, surface, "x .")
                    .part(LEFT_HAND, "snare", "x .")))
        .doesNotContain("crossed-arms", "far-reach");
  }
}
