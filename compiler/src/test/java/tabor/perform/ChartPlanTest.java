package tabor.perform;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.Loudness;
import tabor.groove.Part;
import tabor.kit.Limb;
import tabor.perform.Sound.Kind;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;
import tabor.testing.Sketch;

/** What the practice lines of charts do; expected times are worked out by hand. */
class ChartPlanTest {
  private static final Limb RIGHT = Limb.RIGHT_HAND;
  private static final Limb LEFT = Limb.LEFT_HAND;

  /** Two bars of 4/4 at 60: a snare on the first beat of each, a tom on the third of each. */
  private static Groove two() {
    return Sketch.groove("two")
        .bars(2)
        .tempo(60)
        .word(1, 0, RIGHT, "snare", "x")
        .word(1, 2, LEFT, "tom1", "x")
        .word(2, 0, RIGHT, "snare", "x")
        .word(2, 2, LEFT, "tom1", "x")
        .done();
  }

  /** One bar of 4/4 at 60: the kick's place is a stroke of the right hand on each beat. */
  private static Groove fill() {
    return Sketch.groove("fill").tempo(60).word(1, 0, RIGHT, "tom2", "x").done();
  }

  private static Chart.Amount times(int times) {
    return new Chart.Amount(times, 0, null);
  }

  private static Chart.Amount seconds(long seconds) {
    return new Chart.Amount(0, 0, Time.of(seconds));
  }

  private static Chart.Play play(Chart.Amount amount, Chart.Extras extras, Groove... grooves) {
    List<Chart.Turn> turns = List.of(grooves).stream().map(Sketch::turn).toList();
    return new Chart.Play(turns, amount, false, extras, List.of(grooves));
  }

  private static Chart.Extras fill(@Nullable Groove fill) {
    return new Chart.Extras(List.of(), fill);
  }

  private static String millis(Performance performance, Kind kind) {
    return performance.sounds().stream()
        .filter(sound -> sound.kind() == kind)
        .map(sound -> String.valueOf(Math.round(sound.micros() / 1000.0)))
        .collect(Collectors.joining(" "));
  }

  private static Performance played(Chart.Item... items) {
    Chart chart = Sketch.chart(items);
    Performance performance = Performer.chart(chart);
    // Total time against the sum of the parts, and the road map against both.
    long sum =
        performance.segments().stream()
            .mapToLong(segment -> Clock.picos(segment.length(), segment.tempo()))
            .sum();
    assertThat(performance.lengthMicros()).isEqualTo((sum + 500_000) / 1_000_000);
    RoadMap map = RoadMap.of(chart);
    assertThat(map.micros()).isEqualTo(performance.lengthMicros());
    assertThat(map.stops().stream().mapToInt(RoadMap.Stop::segments).sum())
        .isEqualTo(performance.segments().size());
    for (RoadMap.Stop stop : map.stops()) {
      if (stop.segments() > 0) {
        Segment first = performance.segments().get(stop.first());
        assertThat(stop.start()).isEqualTo(performance.micros(first.start()));
      }
    }
    return performance;
  }

  @Test
  void aFillTakesTheLastBarOfTheLastTime() {
    Performance played = played(play(times(2), fill(fill()), two()));
    assertThat(millis(played, Kind.STROKE)).isEqualTo("0 2000 4000 6000 8000 10000 12000");
    assertThat(played.sounds().get(6).stroke()).isEqualTo(fill().strokes().get(0));
    assertThat(played.lengthMicros()).isEqualTo(16_000_000);
  }

  @Test
  void aFillIsLeftOutOnlyWhereItStands() {
    Performance once = played(play(times(1), fill(fill()), two()));
    assertThat(millis(once, Kind.STROKE)).isEqualTo("0 2000 4000");
    // Longer than what is played: its end only, here all of it.
    Groove one = Sketch.groove("one").tempo(60).word(1, 1, RIGHT, "snare", "x").done();
    assertThat(millis(played(play(times(1), fill(two()), one)), Kind.STROKE)).isEqualTo("0 2000");
  }

  @Test
  void barsAreCutAtTheEnd() {
    Performance played = played(play(new Chart.Amount(0, 3, null), Chart.Extras.NONE, two()));
    assertThat(millis(played, Kind.STROKE)).isEqualTo("0 2000 4000 6000 8000 10000");
    assertThat(played.lengthMicros()).isEqualTo(12_000_000);
  }

  @Test
  void aTimeIsFilledWithWholeRepeats() {
    // Eight seconds once through: 24 s are three times to the instant, 25 s are four.
    assertThat(played(play(seconds(24), Chart.Extras.NONE, two())).lengthMicros())
        .isEqualTo(24_000_000);
    assertThat(played(play(seconds(25), Chart.Extras.NONE, two())).lengthMicros())
        .isEqualTo(32_000_000);
    // A bar at 70 lasts 24/7 s; thirty-five of them are two minutes, though no part of it is exact.
    Groove odd = Sketch.groove("odd").tempo(70).word(1, 0, RIGHT, "snare", "x").done();
    assertThat(played(play(seconds(120), Chart.Extras.NONE, odd)).segments()).hasSize(35);
    assertThat(played(play(seconds(120), fill(fill()), odd)).segments()).hasSize(35);
  }

  @Test
  void whatIsLeftToTheStudentIsNotHeard() {
    Part left = new Part("left hand", Set.of(LEFT), null, false);
    Performance played = played(play(times(1), new Chart.Extras(List.of(left), null), two()));
    assertThat(millis(played, Kind.STROKE)).isEqualTo("0 4000");
  }

  @Test
  void tradedBarsAreSilentButForTheClick() {
    Chart.Turn turn = Sketch.turn(two());
    Performance played =
        played(
            new Chart.SetClick(Chart.Click.ON),
            new Chart.Trade(turn, 1, times(3), Chart.Extras.NONE));
    assertThat(millis(played, Kind.STROKE)).isEqualTo("0 2000 8000 10000 16000 18000");
    assertThat(millis(played, Kind.CLICK))
        .isEqualTo(
            LongStream.range(0, 24)
                .mapToObj(beat -> String.valueOf(beat * 1000))
                .collect(Collectors.joining(" ")));
    // The section pauses: its second bar comes after the student's first.
    assertThat(played.segments().get(2).firstBar()).isEqualTo(2);
    Performance minute = played(new Chart.Trade(turn, 2, seconds(60), Chart.Extras.NONE));
    assertThat(minute.lengthMicros()).isEqualTo(64_000_000);
  }

  @Test
  void aPauseIsTimedByTheClockAndHasNoClick() {
    Performance played =
        played(
            new Chart.SetClick(Chart.Click.ON),
            play(new Chart.Amount(0, 1, null), Chart.Extras.NONE, two()),
            new Chart.Pause(Time.of(61, 2)),
            play(new Chart.Amount(0, 1, null), Chart.Extras.NONE, two()));
    assertThat(millis(played, Kind.CLICK)).isEqualTo("0 1000 2000 3000 34500 35500 36500 37500");
  }

  @Test
  void rungsShareTheMinutes() {
    Groove two = two();
    Tempo sixty = two.setting().tempo();
    Chart.Climb climb =
        new Chart.Climb(
            two,
            List.of(sixty, sixty.at(Time.of(120))),
            Feel.STRAIGHT,
            Time.of(60),
            1,
            Chart.Every.TIMES,
            Time.of(60),
            Chart.Extras.NONE);
    // Thirty seconds each: four times eight seconds, eight times four.
    assertThat(played(climb).lengthMicros()).isEqualTo(32_000_000 + 32_000_000);
  }

  @Test
  void theTempoChangesAtEachBeatByEqualSteps() {
    Groove slow = two();
    Tempo to = slow.setting().tempo();
    Chart.Ramp ramp = new Chart.Ramp(to.at(Time.of(92)), to, 4);
    Performance played =
        played(new Chart.SetClick(Chart.Click.ON), ramp, play(times(3), Chart.Extras.NONE, slow));
    // The closed form of the steps: beat i lasts 60 / (92 - 2i) seconds, i below sixteen.
    double at = 0;
    StringBuilder expected = new StringBuilder();
    for (int beat = 0; beat < 24; beat++) {
      expected.append(beat == 0 ? "" : " ").append(Math.round(at * 1000));
      at += 60.0 / (beat < 16 ? 92 - 2 * beat : 60);
    }
    assertThat(millis(played, Kind.CLICK)).isEqualTo(expected.toString());
    assertThat(played.segments().get(0).tempo().perMinute()).isEqualTo(Time.of(92));
    assertThat(played.segmentAt(Time.of(4)).tempo().perMinute()).isEqualTo(Time.of(60));
  }

  @Test
  void beatsOfAChangeAreThoseOfTheMetersPlayed() {
    Groove three =
        Sketch.groove("three")
            .meter(Meter.of(3, 4))
            .tempo(60)
            .word(1, 0, RIGHT, "snare", "x")
            .done();
    Tempo to = three.setting().tempo();
    Performance played =
        played(
            new Chart.Ramp(to.at(Time.of(120)), to, 2), play(times(3), Chart.Extras.NONE, three));
    assertThat(played.segments())
        .extracting(segment -> segment.tempo().perMinute().decimal())
        .containsExactly("120", "110", "100", "90", "80", "70", "60");
  }

  @Test
  void aCountInBeforeAChangeCountsAtItsFirstTempo() {
    Groove slow = two();
    Tempo to = slow.setting().tempo();
    Performance played =
        played(
            new Chart.CountIn(1, slow, to),
            new Chart.Ramp(to.at(Time.of(120)), to, 1),
            play(times(1), Chart.Extras.NONE, slow));
    assertThat(millis(played, Kind.COUNT_IN)).isEqualTo("0 500 1000 1500");
  }

  @Test
  void aDynamicHoldsOverWhatSectionsSay() {
    Groove loud =
        Sketch.groove("loud")
            .word(1, 0, RIGHT, "snare", "x")
            .mark(1, Time.ZERO, Loudness.FF)
            .done();
    int normal = loud.setting().levels().of(tabor.groove.Level.PLAIN);
    Performance played =
        played(
            play(times(1), Chart.Extras.NONE, loud),
            new Chart.SetDynamic(Loudness.P),
            play(times(1), Chart.Extras.NONE, loud));
    assertThat(played.sounds())
        .extracting(Sound::velocity)
        .containsExactly(Math.round(normal * 1.2f), Math.round(normal * 0.6f));
  }

  @Test
  void theLastStrokeOfAHoldRingsAndTheCountStops() {
    Performance played =
        played(
            new Chart.SetClick(Chart.Click.ON),
            play(times(2), Chart.Extras.NONE, two()),
            new Chart.Hold(5),
            play(new Chart.Amount(0, 1, null), Chart.Extras.NONE, two()));
    // The last stroke is at 14 s; it rings for five beats, and the music goes on after that.
    assertThat(millis(played, Kind.STROKE))
        .isEqualTo("0 2000 4000 6000 8000 10000 12000 14000 19000 21000");
    Sound held = played.sounds().stream().filter(s -> s.micros() == 14_000_000).findFirst().get();
    assertThat(held.length()).isEqualTo(Time.of(5, 4));
    assertThat(millis(played, Kind.CLICK))
        .isEqualTo(
            "0 1000 2000 3000 4000 5000 6000 7000 8000 9000 10000 11000 12000 13000"
                + " 19000 20000 21000 22000");
  }

  @Test
  void theClickKeepsToBeatsAndPausesInTurn() {
    Performance beats =
        played(
            new Chart.SetClick(Chart.Click.ON, List.of(2, 4, 7), 0, 0),
            play(times(1), Chart.Extras.NONE, two()));
    assertThat(millis(beats, Kind.CLICK)).isEqualTo("1000 3000 5000 7000");
    Performance turns =
        played(
            new Chart.SetClick(Chart.Click.ON, List.of(1), 2, 1),
            play(times(3), Chart.Extras.NONE, two()));
    assertThat(millis(turns, Kind.CLICK)).isEqualTo("0 4000 12000 16000");
  }

  @Test
  void cuesAndMarksStandWhereTheyAreSaid() {
    Performance played =
        played(
            new Chart.Mark("A"),
            new Chart.Cue("drop", 4),
            play(times(2), Chart.Extras.NONE, two()),
            new Chart.Cue("look up", 0));
    assertThat(played.words())
        .extracting(words -> words.text() + " " + played.micros(words.start()) / 1000)
        .containsExactly("A 0", "drop 12000", "look up 16000");
    assertThat(millis(played, Kind.STROKE)).isEqualTo("0 2000 4000 6000 8000 10000 12000 14000");
  }
}
