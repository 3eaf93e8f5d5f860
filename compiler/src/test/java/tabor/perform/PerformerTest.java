package tabor.perform;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.Loudness;
import tabor.groove.Ornament;
import tabor.kit.Limb;
import tabor.perform.Sound.Kind;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;
import tabor.testing.Sketch;

class PerformerTest {
  private static final Limb RIGHT = Limb.RIGHT_HAND;
  private static final Limb LEFT = Limb.LEFT_HAND;

  private static String starts(Performance performance, Kind... kinds) {
    return performance.sounds().stream()
        .filter(s -> List.of(kinds).contains(s.kind()))
        .map(s -> s.start().toString())
        .collect(Collectors.joining(" "));
  }

  private static String millis(Performance performance, Kind... kinds) {
    return performance.sounds().stream()
        .filter(s -> List.of(kinds).contains(s.kind()))
        .map(s -> "" + Math.floorDiv(s.micros() + 500, 1000))
        .collect(Collectors.joining(" "));
  }

  @Test
  void straightStrokesSoundWhereTheyAreWritten() {
    Groove groove =
        Sketch.groove("g")
            .tempo(60)
            .word(1, 0, RIGHT, "hihat", "xx")
            .word(1, 1, LEFT, "snare", "xxx")
            .done();
    Performance played = Performer.once(groove, 0);
    assertThat(starts(played, Kind.STROKE)).isEqualTo("0 1/8 1/4 1/3 5/12");
    assertThat(millis(played, Kind.STROKE)).isEqualTo("0 500 1000 1333 1667");
    assertThat(played.length()).isEqualTo(Time.ONE);
    assertThat(played.lengthMicros()).isEqualTo(4_000_000);
  }

  @Test
  void swungEighthsMoveTheHalfAndStretchWhatLiesBetween() {
    Groove groove =
        Sketch.groove("g")
            .swing(Feel.Unit.EIGHTHS, 62, 100)
            .word(1, 0, RIGHT, "ride", "xx")
            .word(1, 1, RIGHT, "ride", "xxxx")
            .word(1, 2, RIGHT, "ride", "xxxxx")
            .done();
    assertThat(starts(Performer.once(groove, 0), Kind.STROKE))
        .isEqualTo("0 31/200 1/4 131/400 81/200 181/400 1/2 11/20 3/5 13/20 7/10");
  }

  @Test
  void swungSixteenthsMoveTheHalvesOfEachHalfBeat() {
    Groove groove =
        Sketch.groove("g")
            .swing(Feel.Unit.SIXTEENTHS, 60, 100)
            .word(1, 0, RIGHT, "hihat", "xxxx")
            .word(1, 1, RIGHT, "hihat", "xx")
            .done();
    assertThat(starts(Performer.once(groove, 0), Kind.STROKE)).isEqualTo("0 3/40 1/8 1/5 1/4 3/8");
  }

  @Test
  void besideATripletASwungAndSoundsOnItsThirdPlace() {
    Groove groove =
        Sketch.groove("g")
            .swing(Feel.Unit.EIGHTHS, 55, 100)
            .word(1, 0, RIGHT, "ride", "xx")
            .word(1, 0, LEFT, "snare", ".xx")
            .word(1, 1, RIGHT, "ride", "xx")
            // A quarter-note triplet over the last two beats: 2/3 of the third, 1/3 of the fourth.
            .word(1, 2, RIGHT, "ride", "xx")
            .word(1, 2, 2, LEFT, "snare", "xxx")
            .done();
    assertThat(starts(Performer.once(groove, 0), Kind.STROKE))
        .isEqualTo("0 1/12 1/6 1/6 1/4 31/80 1/2 1/2 2/3 2/3 5/6");
  }

  @Test
  void aWordOverTwoBeatsSwingsLikeItsPlacesAndHalfNoteBeatsByTheirOwnHalves() {
    Groove two =
        Sketch.groove("g")
            .swing(Feel.Unit.EIGHTHS, 2, 3)
            .word(1, 0, 2, RIGHT, "ride", "xxxx")
            .done();
    Groove cut =
        Sketch.groove("g")
            .meter(new Meter(4, 4, List.of(Time.of(1, 2), Time.of(1, 2))))
            .swing(Feel.Unit.EIGHTHS, 2, 3)
            .word(1, 0, RIGHT, "ride", "xxxx")
            .done();
    assertThat(starts(Performer.once(two, 0), Kind.STROKE)).isEqualTo("0 1/6 1/4 5/12");
    assertThat(starts(Performer.once(cut, 0), Kind.STROKE)).isEqualTo("0 1/6 1/3 5/12");
  }

  @Test
  void graceNotesComeBeforeTheMainStrokeByTheOtherHand() {
    Groove groove =
        Sketch.groove("g")
            .tempo(120)
            .word(1, 1, RIGHT, "snare", "X", Ornament.FLAM)
            .word(1, 2, LEFT, "snare", "x", Ornament.DRAG)
            .word(1, 3, RIGHT, "tom1", "x", Ornament.RUFF)
            .done();
    Performance played = Performer.once(groove, 0);
    List<Sound> small = played.sounds().stream().filter(s -> s.kind() == Kind.GRACE).toList();
    assertThat(small)
        .extracting(Sound::limb)
        .containsExactly(LEFT, RIGHT, RIGHT, LEFT, RIGHT, LEFT);
    assertThat(small).allMatch(s -> s.velocity() == 35);
    assertThat(small.get(5).surface().name()).isEqualTo("tom1");
    assertThat(millis(played, Kind.STROKE)).isEqualTo("500 1000 1500");
    // Each 25 to 30 ms before the next; the main strokes at 500, 1000 and 1500 ms.
    long[][] follows = {{0, 500_000}, {2, 1_000_000}, {5, 1_500_000}};
    for (long[] pair : follows) {
      assertThat(pair[1] - small.get((int) pair[0]).micros()).isBetween(25_000L, 30_000L);
    }
    for (int i : new int[] {1, 3, 4}) {
      assertThat(small.get(i + 1).micros() - small.get(i).micros()).isBetween(25_000L, 30_000L);
    }
  }

  @Test
  void noGraceNoteComesBeforeTheStart() {
    Groove atStart = Sketch.groove("g").word(1, 0, RIGHT, "snare", "x", Ornament.FLAM).done();
    // The second of 64 slots at 240: 15.6 ms after the start.
    Groove soon =
        Sketch.groove("g")
            .tempo(240)
            .word(1, 0, RIGHT, "snare", ".x" + ".".repeat(14), Ornament.DRAG)
            .done();
    assertThat(Performer.once(atStart, 0).sounds()).hasSize(1);
    assertThat(Performer.once(atStart, 1).sounds()).hasSize(6);
    assertThat(starts(Performer.once(soon, 0), Kind.GRACE, Kind.STROKE)).isEqualTo("0 1/128 1/64");
    assertThat(Performer.round(atStart).sounds())
        .extracting(Sound::kind)
        .containsExactly(Kind.STROKE, Kind.GRACE);
  }

  @Test
  void diddlesAndOpenRollsAreMeasuredAndGoOnWhileHeld() {
    Groove groove =
        Sketch.groove("g")
            .word(1, 0, RIGHT, "snare", "X-", Ornament.DIDDLE)
            .word(1, 1, LEFT, "snare", "x-", Ornament.OPEN_ROLL)
            .done();
    Performance played = Performer.once(groove, 0);
    assertThat(starts(played, Kind.STROKE, Kind.ROLL))
        .isEqualTo("0 1/16 1/8 3/16 1/4 9/32 5/16 11/32 3/8 13/32 7/16 15/32");
    assertThat(played.sounds()).extracting(Sound::velocity).startsWith(115, 78).doesNotContain(35);
    assertThat(played.sounds().subList(4, 12))
        .extracting(Sound::limb)
        .containsExactly(LEFT, LEFT, RIGHT, RIGHT, LEFT, LEFT, RIGHT, RIGHT);
  }

  @Test
  void bothHandsRollWhereBothAreWritten() {
    Groove groove =
        Sketch.groove("g")
            .word(1, 0, RIGHT, "snare", "x", Ornament.OPEN_ROLL)
            .word(1, 0, LEFT, "floor", "x", Ornament.OPEN_ROLL)
            .done();
    Performance played = Performer.once(groove, 0);
    assertThat(played.sounds())
        .hasSize(8)
        .allMatch(s -> (s.limb() == RIGHT) == s.surface().name().equals("snare"));
  }

  @Test
  void aBuzzFillsItsLength() {
    Groove groove =
        Sketch.groove("g").tempo(60).word(1, 0, RIGHT, "snare", "x", Ornament.BUZZ).done();
    Performance played = Performer.once(groove, 0);
    assertThat(played.sounds()).hasSize(25);
    assertThat(played.sounds().get(24).micros()).isEqualTo(960_000);
    assertThat(played.sounds().get(1).velocity()).isEqualTo(47);
  }

  @Test
  void theHiHatIsCutOffByStickAndFootAndACymbalByTheHand() {
    Groove groove =
        Sketch.groove("g")
            .word(1, 0, RIGHT, "hihat.open", "x")
            .word(1, 1, RIGHT, "hihat", "x")
            .word(1, 2, RIGHT, "hihat.open", ".x")
            .word(1, 3, Limb.LEFT_FOOT, "hihat.foot", "x")
            .word(1, 0, LEFT, "crash", "x")
            .word(1, 2, LEFT, "crash2", "x", Ornament.CHOKE)
            .done();
    assertThat(Performer.once(groove, 0).sounds())
        .extracting(s -> s.surface().name() + " " + s.start() + " " + s.length())
        .containsExactly(
            "hihat.open 0 1/4",
            "crash 0 1",
            "hihat 1/4 1/4",
            "crash2 1/2 1/4",
            "hihat.open 5/8 1/8",
            "hihat.foot 3/4 1/4");
  }

  @Test
  void dynamicsScaleTheLevels() {
    Groove groove =
        Sketch.groove("g")
            .word(1, 0, RIGHT, "snare", "Xxg")
            .word(1, 1, RIGHT, "snare", "x")
            .word(1, 2, RIGHT, "snare", "x")
            .word(1, 3, RIGHT, "snare", "xX")
            .mark(1, Time.of(1, 4), Loudness.PP)
            .hairpin(new Loudness.Hairpin(true, 1, Time.of(1, 4), 1, Time.of(3, 4), Loudness.FF))
            .done();
    assertThat(Performer.once(groove, 0).sounds())
        .extracting(Sound::velocity)
        // 78 at 40, 80 and 120 percent; 138 is out of range
        .containsExactly(115, 78, 35, 31, 62, 94, 127);
  }

  @Test
  void theCountInStopsBeforeThePickup() {
    Groove groove =
        Sketch.groove("g")
            .pickup(Time.of(1, 4))
            .word(0, 3, RIGHT, "snare", "xx")
            .word(1, 0, RIGHT, "snare", "x")
            .done();
    Performance played = Performer.once(groove, 1);
    assertThat(starts(played, Kind.COUNT_IN)).isEqualTo("0 1/4 1/2");
    assertThat(starts(played, Kind.STROKE)).isEqualTo("3/4 7/8 1");
    assertThat(played.length()).isEqualTo(Time.of(2));
    assertThat(played.sounds().get(0).bar()).isZero();
    assertThat(starts(Performer.once(groove, 0), Kind.STROKE)).isEqualTo("0 1/8 1/4");
  }

  @Test
  void aChartPlaysOutRepeatsRestsClicksAndTheTempoLadder() {
    Groove a = Sketch.groove("a").tempo(60).word(1, 0, RIGHT, "snare", "x").done();
    Groove b =
        Sketch.groove("b")
            .meter(Meter.of(6, 8))
            .tempo(60)
            .pickup(Time.of(1, 8))
            .word(0, 1, LEFT, "snare", "..x")
            .word(1, 0, LEFT, "tom1", "x")
            .done();
    Tempo sixty = a.setting().tempo();
    Chart chart =
        Sketch.chart(
            new Chart.CountIn(1, a, sixty),
            new Chart.SetClick(Chart.Click.ON),
            new Chart.Play(List.of(Sketch.turn(a)), 2),
            new Chart.SetClick(Chart.Click.OFF),
            new Chart.Rest(1, a, sixty),
            new Chart.Climb(
                b,
                List.of(b.setting().tempo(), b.setting().tempo().at(Time.of(120))),
                Feel.STRAIGHT,
                Time.of(60),
                2,
                Chart.Every.TIMES,
                null,
                Chart.Extras.NONE));
    Performance played = Performer.chart(chart);
    assertThat(millis(played, Kind.COUNT_IN)).isEqualTo("0 1000 2000 3000");
    assertThat(millis(played, Kind.CLICK)).isEqualTo("4000 5000 6000 7000 8000 9000 10000 11000");
    // The pickup of b, an eighth, sounds once: b follows itself after that.
    assertThat(millis(played, Kind.STROKE)).isEqualTo("4000 8000 16000 16333 18333 20333 21333");
    assertThat(played.lengthMicros()).isEqualTo(22_333_333);
    assertThat(Performer.seconds(chart)).isEqualTo(23);
  }

  @Test
  void aFlamAfterAChangeOfTempoIsTimedByTheTempoBeforeIt() {
    Groove a = Sketch.groove("a").tempo(60).word(1, 0, RIGHT, "snare", "x").done();
    Groove b = Sketch.groove("b").tempo(240).word(1, 0, RIGHT, "snare", "x", Ornament.FLAM).done();
    Performance played =
        Performer.chart(Sketch.chart(new Chart.Play(List.of(Sketch.turn(a), Sketch.turn(b)), 1)));
    Sound small = played.sounds().get(1);
    assertThat(small.kind()).isEqualTo(Kind.GRACE);
    assertThat(4_000_000 - small.micros()).isBetween(25_000L, 30_000L);
  }

  @Test
  void aChartThatIsTooLongIsMeasuredWithoutPlayingIt() {
    Groove a = Sketch.groove("a").tempo(60).done();
    Chart chart = Sketch.chart(new Chart.Play(List.of(Sketch.turn(a)), 999_999_999));
    assertThat(Performer.seconds(chart)).isEqualTo(3_999_999_996L);
    assertThatThrownBy(() -> Performer.chart(chart)).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void aChartOfExactlyADayIsPlayed() {
    // A bar of 4/4 at 90 lasts 8/3 of a second.
    Groove a = Sketch.groove("a").tempo(90).done();
    Chart day = Sketch.chart(new Chart.Play(List.of(Sketch.turn(a)), 32_400));
    assertThat(Performer.seconds(day)).isEqualTo(Performer.LONGEST_SECONDS);
    assertThat(Performer.chart(day).length()).isEqualTo(Time.of(32_400));
    Chart more = Sketch.chart(new Chart.Play(List.of(Sketch.turn(a)), 32_401));
    assertThat(Performer.seconds(more)).isEqualTo(Performer.LONGEST_SECONDS + 3);
  }

  @Test
  void aLoopIsCutOffByItsOwnBeginning() {
    Groove groove =
        Sketch.groove("g")
            .word(1, 0, RIGHT, "hihat", "x")
            .word(1, 3, RIGHT, "hihat.open", ".x")
            .done();
    assertThat(Performer.round(groove).sounds())
        .extracting(s -> s.length().toString())
        .containsExactly("1/4", "1/8");
  }
}
