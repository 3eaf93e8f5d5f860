package tabor.emit.midi;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.TreeMap;
import java.util.TreeSet;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.emit.strokes.StrokeList;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.Ornament;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.resolve.Options;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;
import tabor.testing.Files;
import tabor.testing.Sketch;

/** The strokes of random grooves and the bytes of their files agree. */
class OnsetsProperties {
  private record Word(
      int bar, int beat, Limb limb, String surface, String letters, Ornament with) {}

  /** The track after those of the limbs. */
  private static final int CLICK = 5;

  private static Lesson lesson(Groove groove) {
    return new Lesson("l", "L", null, groove.setting(), List.of(groove));
  }

  @Property(tries = 150)
  void everyStrokeIsANoteAtItsExactTick(@ForAll("grooves") Groove groove) {
    MidiLesson midi = MidiLesson.of(lesson(groove));
    SmfDump dump = SmfDump.of(midi.bytes(groove, true));
    assertThat(midi.rounded()).isEmpty();
    exact(groove, dump);
  }

  /** Without swing a stroke's tick follows from its written place alone. */
  private static void exact(Groove groove, SmfDump dump) {
    Time countIn = groove.meter().bar().minus(groove.pickup());
    Map<Integer, NavigableSet<Long>> wanted = new TreeMap<>();
    for (Stroke stroke : groove.strokes()) {
      Time ticks = countIn.plus(groove.position(stroke)).times(4L * dump.division());
      assertThat(ticks.isWhole()).isTrue();
      wanted.computeIfAbsent(stroke.surface().key(), k -> new TreeSet<>()).add(ticks.num());
    }
    Map<Integer, NavigableSet<Long>> found = notes(dump);
    wanted.forEach((key, ticks) -> assertThat(found.get(key)).containsAll(ticks));
    if (groove.strokes().stream().allMatch(s -> s.ornaments().isEmpty())) {
      assertThat(found).isEqualTo(wanted);
    }
  }

  /** Ticks of the limbs' notes by key. On the way: no note is struck while its key still sounds. */
  private static Map<Integer, NavigableSet<Long>> notes(SmfDump dump) {
    Map<Integer, NavigableSet<Long>> found = new TreeMap<>();
    Map<Integer, Long> sounding = new TreeMap<>();
    dump.events().stream()
        .filter(e -> e.isOn() || e.isOff())
        // As a player merges the tracks: by tick, then by track.
        .sorted(
            Comparator.comparingLong(SmfDump.Event::tick).thenComparingInt(SmfDump.Event::track))
        .forEach(
            e -> {
              if (e.isOn()) {
                assertThat(sounding.put(e.type(), e.tick())).isNull();
                if (e.track() < CLICK) {
                  found.computeIfAbsent(e.type(), k -> new TreeSet<>()).add(e.tick());
                }
              } else {
                assertThat(sounding.remove(e.type())).isLessThan(e.tick());
              }
            });
    assertThat(sounding).isEmpty();
    return found;
  }

  @Property(tries = 60)
  void theListAndTheFileOfAnyTextAgree(@ForAll("texts") String text) {
    Lesson lesson =
        new Compiler(Loader.NONE).compile(Path.of("lesson.tabor"), text, Options.NONE).lesson();
    MidiLesson midi = MidiLesson.of(lesson);
    for (Groove groove : lesson.grooves()) {
      SmfDump dump = SmfDump.of(midi.bytes(groove, true));
      if (groove.setting().feel().isStraight() && midi.rounded().isEmpty()) {
        exact(groove, dump);
      }
      listed(groove, dump);
    }
    for (Chart chart : lesson.charts()) {
      notes(SmfDump.of(midi.bytes(chart, true)));
    }
  }

  /** By the clock: the list's milliseconds against tick, division and tempo of the file. */
  private static void listed(Groove groove, SmfDump dump) {
    Map<Integer, NavigableSet<Long>> notes = notes(dump);
    String[] rows = StrokeList.tsv(List.of(groove)).split("\n");
    int tempo =
        dump.events().stream()
            .filter(e -> e.status() == 0xFF && e.type() == 0x51)
            .mapToInt(
                e -> (e.data()[0] & 0xFF) << 16 | (e.data()[1] & 0xFF) << 8 | (e.data()[2] & 0xFF))
            .findFirst()
            .orElseThrow();
    double tick = tempo / 1000.0 / dump.division();
    double countIn =
        groove.meter().bar().minus(groove.pickup()).times(4L * dump.division()).rounded() * tick;
    assertThat(rows).hasSize(groove.strokes().size() + 1);
    for (int i = 0; i < groove.strokes().size(); i++) {
      double millis = Double.parseDouble(rows[i + 1].split("\t", -1)[9]) + countIn;
      NavigableSet<Long> ticks = notes.get(groove.strokes().get(i).surface().key());
      long near = Math.round(millis / tick);
      Long before = ticks.floor(near);
      Long after = ticks.ceiling(near);
      double off =
          Math.min(
              before == null ? 1e9 : Math.abs(before * tick - millis),
              after == null ? 1e9 : Math.abs(after * tick - millis));
      // Half a tick, and the tempo's own rounding over the length of the section.
      assertThat(off).as(rows[i + 1]).isLessThan(tick / 2 + 0.002 + millis / tempo);
    }
  }

  @Provide
  Arbitrary<String> texts() {
    return Files.valid();
  }

  @Provide
  Arbitrary<Groove> grooves() {
    Arbitrary<Meter> meters =
        Arbitraries.of(Meter.COMMON, Meter.of(6, 8), Meter.of(3, 4), Meter.of(7, 8));
    Arbitrary<Ornament> ornament = Arbitraries.of(Ornament.values()).injectNull(0.8);
    Arbitrary<Word> words =
        Combinators.combine(
                Arbitraries.integers().between(1, 2),
                Arbitraries.integers().between(0, 1),
                Arbitraries.of(Limb.values()),
                Arbitraries.integers().between(0, 3),
                Arbitraries.strings().withChars("xXg.-").ofMinLength(1).ofMaxLength(7),
                ornament)
            .as(
                (bar, beat, limb, surface, letters, with) ->
                    new Word(bar, beat, limb, surface(limb, surface), letters, with));
    return Combinators.combine(
            meters, words.list().ofMaxSize(10), Arbitraries.integers().between(30, 300))
        .as(
            (meter, list, tempo) -> {
              Sketch made = Sketch.groove("g").meter(meter).tempo(tempo).bars(2);
              for (Word word : list) {
                if (word.with() == null) {
                  made.word(word.bar(), word.beat(), word.limb(), word.surface(), word.letters());
                } else {
                  made.word(
                      word.bar(),
                      word.beat(),
                      word.limb(),
                      word.surface(),
                      word.letters(),
                      word.with());
                }
              }
              return made.done();
            });
  }

  private static String surface(Limb limb, int index) {
    return limb.isHand()
        ? List.of("snare", "hihat", "hihat.open", "crash").get(index)
        : List.of("kick", "kick", "hihat.foot", "hihat.splash").get(index);
  }
}
