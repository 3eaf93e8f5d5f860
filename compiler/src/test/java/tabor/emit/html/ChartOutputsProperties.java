package tabor.emit.html;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import tabor.emit.midi.MidiLesson;
import tabor.emit.midi.Smf;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.Loudness;
import tabor.groove.Ornament;
import tabor.groove.Part;
import tabor.kit.Limb;
import tabor.perform.Performance;
import tabor.perform.Performer;
import tabor.perform.RoadMap;
import tabor.perform.Segment;
import tabor.perform.Sound;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;
import tabor.testing.Sketch;
import tabor.words.Words;

/** Charts of all practice lines, at random: every output plays them at the same times. */
class ChartOutputsProperties {
  private static final Groove A =
      Sketch.groove("a")
          .bars(2)
          .tempo(80)
          .pickup(1)
          .word(1, 0, Limb.RIGHT_HAND, "snare", "xx")
          .word(1, 2, Limb.LEFT_HAND, "tom1", "x", Ornament.FLAM)
          .word(2, 0, Limb.RIGHT_HAND, "snare", "xxx")
          .word(2, 3, Limb.LEFT_HAND, "tom1", ".x")
          .done();
  private static final Groove B =
      Sketch.groove("b")
          .meter(Meter.of(3, 4))
          .swing(Feel.Unit.EIGHTHS, 2, 3)
          .tempo(80)
          .word(1, 0, Limb.RIGHT_HAND, "crash", "x")
          .word(1, 1, Limb.LEFT_HAND, "snare", "xx", Ornament.DRAG)
          .done();
  private static final Groove FILL =
      Sketch.groove("fill").tempo(80).word(1, 3, Limb.RIGHT_HAND, "floor", "xxxx").done();

  private static Chart.Turn turn(Groove groove, Tempo tempo) {
    return new Chart.Turn(groove, tempo, groove.setting().feel());
  }

  private static Chart.Amount amount(Random random) {
    return switch (random.nextInt(3)) {
      case 0 -> new Chart.Amount(1 + random.nextInt(4), 0, null);
      case 1 -> new Chart.Amount(0, 1 + random.nextInt(7), null);
      default -> new Chart.Amount(0, 0, Time.of(1 + random.nextInt(40), 1 + random.nextInt(2)));
    };
  }

  private static Chart.Extras extras(Random random, Groove last) {
    Part left = new Part("left hand", Set.of(Limb.LEFT_HAND), null, false);
    return new Chart.Extras(
        random.nextInt(3) == 0 ? List.of(left) : List.of(),
        last == A && random.nextInt(3) == 0 ? FILL : null);
  }

  static Chart chart(long seed) {
    Random random = new Random(seed);
    Tempo tempo = A.setting().tempo();
    List<Chart.Item> items = new ArrayList<>();
    boolean played = false;
    for (int i = 0; i < 9; i++) {
      Groove one = random.nextBoolean() ? A : B;
      switch (random.nextInt(12)) {
        case 0 -> items.add(new Chart.CountIn(1, one, tempo));
        case 1 -> {
          int on = random.nextInt(3);
          List<Integer> beats = random.nextBoolean() ? List.of() : List.of(2, 4);
          items.add(new Chart.SetClick(Chart.Click.ON, beats, on, on == 0 ? 0 : 1));
        }
        case 2 -> items.add(new Chart.Rest(1 + random.nextInt(2), one, tempo));
        case 3 -> items.add(new Chart.Pause(Time.of(1 + random.nextInt(9), 4)));
        case 4 -> {
          Tempo to = tempo.at(Time.of(60 + random.nextInt(80)));
          items.add(new Chart.Ramp(tempo, to, 1 + random.nextInt(5)));
          tempo = to;
        }
        case 5 -> items.add(new Chart.SetDynamic(Loudness.P));
        case 6 -> {
          if (played) {
            items.add(new Chart.Hold(1 + random.nextInt(5)));
          }
        }
        case 7 -> items.add(new Chart.Cue("cue", random.nextInt(2)));
        case 8 -> {
          List<Tempo> tempi = List.of(tempo.at(Time.of(70)), tempo.at(Time.of(75)));
          Time seconds = random.nextBoolean() ? null : Time.of(20);
          Chart.Extras extras = extras(random, one);
          Chart.Every unit = Chart.Every.TIMES;
          Feel feel = one.setting().feel();
          items.add(new Chart.Climb(one, tempi, feel, Time.of(5), 2, unit, seconds, extras));
          played = true;
        }
        case 9 -> {
          Chart.Amount amount = new Chart.Amount(1 + random.nextInt(4), 0, null);
          items.add(new Chart.Trade(turn(one, tempo), 1, amount, extras(random, one)));
          played = true;
        }
        default -> {
          List<Chart.Turn> turns = new ArrayList<>(List.of(turn(one, tempo)));
          Chart.Extras extras = extras(random, one);
          if (random.nextBoolean() && extras.fill() == null) {
            turns.add(0, turn(B, tempo));
          }
          boolean each = random.nextBoolean() && extras.fill() == null;
          List<tabor.groove.Section> named =
              turns.stream().map(t -> (tabor.groove.Section) t.groove()).toList();
          items.add(new Chart.Play(turns, amount(random), each, extras, named));
          played = true;
        }
      }
    }
    return Sketch.chart(items.toArray(new Chart.Item[0]));
  }

  @Property(tries = 400, seed = "20")
  void partsAddUpAndTheRoadMapSaysSo(@ForAll long seed) {
    Chart chart = chart(seed);
    Performance played = Performer.chart(chart);
    RoadMap map = RoadMap.of(chart);
    if (map.stops().stream().allMatch(stop -> stop.segments() == 0)) {
      return;
    }
    assertThat(map.micros()).isEqualTo(played.lengthMicros());
    Time at = Time.ZERO;
    for (Segment segment : played.segments()) {
      assertThat(segment.start()).isEqualTo(at);
      assertThat(segment.length().sign()).isPositive();
      at = segment.end();
    }
    for (Sound sound : played.sounds()) {
      Segment segment = played.segments().get(sound.segment());
      if (sound.stroke() != null) {
        assertThat(segment.kind()).isIn(Segment.Kind.SECTION, Segment.Kind.HOLD);
      }
      if (sound.kind().isMeasured()) {
        assertThat(sound.start()).isBetween(segment.start(), segment.end());
      }
    }
    for (RoadMap.Stop stop : map.stops()) {
      if (stop.item() instanceof Chart.Play play && play.amount().seconds() != null) {
        boolean held = chart.items().stream().anyMatch(item -> item instanceof Chart.Hold);
        Time least = play.amount().seconds().times(play.each() ? play.turns().size() : 1);
        if (!held) {
          assertThat(stop.micros() + 1).isGreaterThanOrEqualTo(least.times(1_000_000).floor() - 1);
        }
      }
      if (stop.item() instanceof Chart.Play play
          && play.amount().bars() > 0
          && !chart.items().stream().anyMatch(item -> item instanceof Chart.Hold)) {
        int rows = play.each() ? play.turns().size() : 1;
        assertThat(stop.bars()).isEqualTo((long) rows * play.amount().bars());
      }
    }
  }

  @Property(tries = 150, seed = "21")
  void thePageStrikesWhenThePerformanceDoes(@ForAll long seed) {
    Chart chart = chart(seed);
    Performance played = Performer.chart(chart);
    if (RoadMap.of(chart).stops().stream().allMatch(stop -> stop.segments() == 0)) {
      return;
    }
    Takes takes = new Takes();
    Charts.Reading reading = Charts.read(chart, Words.english(), takes, groove -> 0);
    List<Double> page = new ArrayList<>();
    double at = 0;
    for (PlayData.Leg leg : reading.legs()) {
      PlayData.Take take = takes.list().get(leg.take());
      double whole = value(leg.tempo().secondsPerWhole());
      for (int i = 0; i < leg.times(); i++) {
        for (PlayData.Blow blow : take.blows()) {
          page.add(at + value(blow.at()) * whole - blow.lead() / 10_000.0);
        }
        for (PlayData.Tick tick : take.clicks()) {
          if (tick.written()) {
            page.add(at + value(tick.at()) * whole);
          }
        }
        take.counts().forEach(tick -> page.add(0.0));
        at += value(take.length()) * whole;
      }
    }
    page.removeIf(time -> time == 0.0);
    List<Double> heard = new ArrayList<>();
    for (Sound sound : played.sounds()) {
      if (sound.kind() != Sound.Kind.COUNT_IN && sound.micros() > 0) {
        heard.add(sound.micros() / 1e6);
      }
    }
    Collections.sort(page);
    Collections.sort(heard);
    assertThat(page).hasSameSizeAs(heard);
    for (int i = 0; i < page.size(); i++) {
      assertThat(page.get(i)).isCloseTo(heard.get(i), org.assertj.core.data.Offset.offset(5e-4));
    }
    assertThat(at)
        .isCloseTo(played.lengthMicros() / 1e6, org.assertj.core.data.Offset.offset(1e-4));
  }

  @Property(tries = 150, seed = "22")
  void theMidiFileStrikesWhenThePerformanceDoes(@ForAll long seed) {
    Chart chart = chart(seed);
    Lesson lesson = Samples.lesson("all", A, B, FILL, chart);
    MidiLesson midi = MidiLesson.of(lesson);
    Performance played = MidiLesson.performance(chart, false);
    Smf smf = midi.smf(chart, false, sound -> true);
    TreeMap<Long, Integer> tempi = new TreeMap<>();
    List<Smf.Note> notes = new ArrayList<>();
    for (Smf.Track track : smf.tracks()) {
      for (Smf.Event event : track.events()) {
        if (event instanceof Smf.Tempo tempo) {
          tempi.put(tempo.tick(), tempo.micros());
        } else if (event instanceof Smf.Note note) {
          notes.add(note);
        }
      }
    }
    TreeMap<Integer, List<Double>> heard = new TreeMap<>();
    for (Sound sound : played.sounds()) {
      heard.computeIfAbsent(sound.key(), key -> new ArrayList<>()).add(sound.micros() / 1e3);
    }
    for (Smf.Note note : notes) {
      double millis = millis(note.tick(), tempi, smf.division());
      assertThat(heard.get(note.key())).anyMatch(each -> Math.abs(each - millis) < 1.5);
    }
    assertThat(midi.ticks().exact()).isTrue();
  }

  private static double millis(long tick, SortedMap<Long, Integer> tempi, int division) {
    double micros = 0;
    long from = 0;
    int tempo = 500_000;
    for (var change : tempi.entrySet()) {
      if (change.getKey() > tick) {
        break;
      }
      micros += (double) (change.getKey() - from) * tempo / division;
      from = change.getKey();
      tempo = change.getValue();
    }
    return (micros + (double) (tick - from) * tempo / division) / 1000;
  }

  private static double value(Time time) {
    return (double) time.num() / time.den();
  }
}
