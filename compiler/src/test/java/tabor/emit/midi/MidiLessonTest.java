package tabor.emit.midi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.Ornament;
import tabor.groove.Section;
import tabor.kit.Limb;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;
import tabor.testing.Goldens;
import tabor.testing.Sketch;

class MidiLessonTest {
  private static final Limb RIGHT = Limb.RIGHT_HAND;
  private static final Limb LEFT = Limb.LEFT_HAND;
  private static final Limb KICK = Limb.RIGHT_FOOT;
  private static final Limb FOOT = Limb.LEFT_FOOT;

  private static Lesson lesson(Section... sections) {
    Groove.Setting setting = Sketch.groove("header").done().setting();
    return new Lesson("saturday", "Saturday class", null, setting, List.of(sections));
  }

  private static Groove backbeat() {
    Sketch made = Sketch.groove("backbeat").tempo(96);
    for (int beat = 0; beat < 4; beat++) {
      made.word(1, beat, RIGHT, "hihat", "xx");
    }
    return made.word(1, 0, KICK, "kick", "x")
        .word(1, 2, KICK, "kick", "xx")
        .word(1, 1, LEFT, "snare", "X")
        .word(1, 3, LEFT, "snare", "X", Ornament.FLAM)
        .word(1, 1, FOOT, "hihat.foot", ".x")
        .done();
  }

  private static Groove six() {
    return Sketch.groove("six")
        .meter(Meter.of(6, 8))
        .tempo(60)
        .pickup(Time.of(3, 8))
        .word(0, 1, RIGHT, "ride", "xxx")
        .word(1, 0, RIGHT, "ride.bell", "xxxx")
        .word(1, 0, LEFT, "hihat.open", "..x")
        .word(1, 1, FOOT, "hihat.splash", "x")
        .done();
  }

  private static void golden(String name, byte[] bytes) {
    Goldens.check("tabor/emit/midi/" + name + ".txt", SmfDump.of(bytes).text());
  }

  @Test
  void aLoopFileWithItsCountIn() {
    golden("backbeat", MidiLesson.of(lesson(backbeat())).bytes(backbeat(), true));
  }

  @Test
  void aPickupIsAShortBarWithoutCountIn() {
    golden("pickup", MidiLesson.of(lesson(six())).bytes(six(), false));
    golden("pickup-counted", MidiLesson.of(lesson(six())).bytes(six(), true));
  }

  @Test
  void aChartWithItsLadder() {
    Groove groove = backbeat();
    Chart chart =
        Sketch.chart(
            new Chart.CountIn(1, groove, groove.setting().tempo()),
            new Chart.SetClick(Chart.Click.ON),
            new Chart.Play(List.of(Sketch.turn(groove)), 2),
            new Chart.SetClick(Chart.Click.OFF),
            new Chart.Rest(1, groove, groove.setting().tempo()),
            new Chart.Climb(
                groove,
                List.of(
                    groove.setting().tempo().at(Time.of(100)),
                    groove.setting().tempo().at(Time.of(205, 2))),
                Feel.STRAIGHT,
                Time.of(5, 2),
                1,
                Chart.Every.TIMES,
                null,
                Chart.Extras.NONE));
    golden("chart", MidiLesson.of(lesson(groove, chart)).bytes(chart, true));
  }

  @Test
  void tracksAreNamedAfterTheLimbs() {
    SmfDump dump = SmfDump.of(MidiLesson.of(lesson(backbeat())).bytes(backbeat(), true));
    assertThat(dump.format()).isEqualTo(1);
    assertThat(dump.events().stream().filter(e -> e.status() == 0xFF && e.type() == 3))
        .extracting(SmfDump.Event::text)
        .containsExactly(
            "name \"Saturday class: backbeat\"",
            "name \"right hand\"",
            "name \"left hand\"",
            "name \"right foot\"",
            "name \"left foot\"",
            "name \"click\"");
  }

  @Test
  void allFilesOfALessonShareADivisionThatHoldsEveryStroke() {
    Groove five = Sketch.groove("five").word(1, 0, RIGHT, "snare", "xxxxx").done();
    Groove seven =
        Sketch.groove("seven")
            .swing(Feel.Unit.EIGHTHS, 62, 100)
            .word(1, 0, RIGHT, "snare", "xx")
            .word(1, 1, RIGHT, "snare", "xxxxxxx")
            .done();
    MidiLesson midi = MidiLesson.of(lesson(five, seven));
    assertThat(midi.rounded()).isEmpty();
    assertThat(midi.ticks().division()).isGreaterThanOrEqualTo(960);
    assertThat(midi.ticks().division() % 350).isZero();
    assertThat(SmfDump.of(midi.bytes(five, true)).division())
        .isEqualTo(SmfDump.of(midi.bytes(seven, true)).division());
  }

  @Test
  void placesTooFineForAnyDivisionAreRoundedOneByOne() {
    Sketch made = Sketch.groove("odd").tempo(60);
    int[] slots = {13, 11, 19, 17};
    for (int beat = 0; beat < 4; beat++) {
      made.word(1, beat, RIGHT, "snare", "x".repeat(slots[beat]));
    }
    Groove groove = made.done();
    MidiLesson midi = MidiLesson.of(lesson(groove));
    assertThat(midi.rounded()).get().extracting(d -> d.code().word()).isEqualTo("rounded-ticks");
    List<SmfDump.Event> notes =
        SmfDump.of(midi.bytes(groove, false)).events().stream()
            .filter(SmfDump.Event::isOn)
            .toList();
    int division = midi.ticks().division();
    for (int i = 0; i < notes.size(); i++) {
      Time exact = groove.position(groove.strokes().get(i)).times(4L * division);
      // Never more than half a tick off, the last note no more than the first.
      assertThat(Math.abs(Time.of(notes.get(i).tick()).minus(exact).times(2).rounded()))
          .isLessThanOrEqualTo(1);
    }
    assertThat(notes).hasSize(13 + 11 + 19 + 17);
  }

  @Test
  void noNoteIsStruckBeforeTheOneOnItsKeyHasEnded() {
    // Both hands on the snare at once, then in turn; a flam on the same drum.
    Groove groove =
        Sketch.groove("b")
            .word(1, 0, RIGHT, "snare", "xxxx")
            .word(1, 0, LEFT, "snare", "Xxxx")
            .word(1, 1, RIGHT, "snare", "x.x.", Ornament.FLAM)
            .word(1, 1, LEFT, "snare", ".x.x")
            .word(1, 2, RIGHT, "snare", "x", Ornament.BUZZ)
            .word(1, 3, LEFT, "snare", "x")
            .done();
    SmfDump dump = SmfDump.of(MidiLesson.of(lesson(groove)).bytes(groove, true));
    assertEndedFirst(dump);
    List<SmfDump.Event> first =
        dump.events().stream().filter(e -> e.isOn() && e.tick() == 4L * dump.division()).toList();
    assertThat(first).singleElement().extracting(SmfDump.Event::text).isEqualTo("on ch 10 38 115");
  }

  /** No note is struck while its key still sounds. */
  private static void assertEndedFirst(SmfDump dump) {
    Map<Integer, Long> sounding = new HashMap<>();
    dump.events().stream()
        .filter(e -> e.isOn() || e.isOff())
        // As a player merges the tracks: by tick, then by track.
        .sorted(
            java.util.Comparator.comparingLong(SmfDump.Event::tick)
                .thenComparingInt(SmfDump.Event::track))
        .forEach(
            e -> {
              if (e.isOn()) {
                assertThat(sounding.put(e.type(), e.tick())).as("note at %d", e.tick()).isNull();
              } else {
                assertThat(sounding.remove(e.type())).isNotNull().isLessThan(e.tick());
              }
            });
    assertThat(sounding).isEmpty();
  }

  /**
   * A flam at the 36th part of a beat after a stroke on the same drum: at about 60 beats per minute
   * its grace note falls on that stroke, at other tempi a tick or two beside it. Whichever hand
   * plays which, both strokes stay where they are written.
   */
  @Test
  void aGraceNoteNeverMovesOrHidesAStroke() {
    boolean apart = false;
    boolean together = false;
    for (int tempo = 57_000; tempo <= 64_000; tempo += 20) {
      for (Limb first : List.of(RIGHT, LEFT)) {
        Groove groove =
            Sketch.groove("r")
                .tempo(Time.of(tempo, 1000))
                .word(1, 0, first, "snare", "X" + ".".repeat(35))
                .word(1, 0, RIGHT, "snare", ".x" + ".".repeat(34), Ornament.FLAM)
                .done();
        SmfDump dump = SmfDump.of(MidiLesson.of(lesson(groove)).bytes(groove, true));
        Map<Long, String> notes = new HashMap<>();
        dump.events().stream()
            .filter(e -> e.isOn() && e.type() == 38)
            .forEach(e -> notes.put(e.tick(), e.text()));
        assertEndedFirst(dump);
        long bar = 4L * dump.division();
        assertThat(notes.get(bar)).as("%d", tempo).isEqualTo("on ch 10 38 115");
        assertThat(notes.get(bar + dump.division() / 36)).isEqualTo("on ch 10 38 78");
        together |= notes.size() == 2;
        apart |= notes.containsKey(bar - 1) || notes.containsKey(bar + 1);
      }
    }
    assertThat(together && apart).isTrue();
  }

  @Test
  void graceNotesLastTwentyFiveToThirtyMilliseconds() {
    for (int tempo : new int[] {20, 61, 97, 180, 320}) {
      Groove groove =
          Sketch.groove("r").tempo(tempo).word(1, 0, RIGHT, "snare", "x", Ornament.RUFF).done();
      SmfDump dump = SmfDump.of(MidiLesson.of(lesson(groove)).bytes(groove, true));
      List<Long> ticks =
          dump.events().stream()
              .filter(e -> e.isOn() && e.type() == 38)
              .map(SmfDump.Event::tick)
              .sorted()
              .toList();
      assertThat(ticks).hasSize(4);
      assertThat(ticks.get(3)).isEqualTo(4L * dump.division());
      for (int i = 0; i < 3; i++) {
        double millis = (ticks.get(i + 1) - ticks.get(i)) * 60_000.0 / tempo / dump.division();
        assertThat(millis).isCloseTo(27.5, within(2.5));
      }
    }
  }

  @Test
  void aChokedCymbalEndsWithItsLength() {
    Groove groove =
        Sketch.groove("c")
            .word(1, 0, RIGHT, "crash", "x", Ornament.CHOKE)
            .word(1, 2, RIGHT, "crash", "x")
            .done();
    MidiLesson midi = MidiLesson.of(lesson(groove));
    assertThat(SmfDump.of(midi.bytes(groove, false)).text())
        .contains(
            """
                  0 on ch 10 49 78
                960 pressure ch 10 49 127
                960 off ch 10 49 0
                961 pressure ch 10 49 0
               1920 on ch 10 49 78
               3840 off ch 10 49 0
            """);
  }

  @Test
  void theSameBytesEveryTime() {
    assertThat(MidiLesson.of(lesson(backbeat())).bytes(backbeat(), true))
        .isEqualTo(MidiLesson.of(lesson(backbeat())).bytes(backbeat(), true));
  }
}
