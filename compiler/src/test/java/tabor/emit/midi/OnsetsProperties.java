package tabor.emit.midi;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.Ornament;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.perform.Made;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;

/** The strokes of random grooves and the bytes of their files agree. */
class OnsetsProperties {
  private record Word(
      int bar, int beat, Limb limb, String surface, String letters, Ornament with) {}

  private static Lesson lesson(Groove groove) {
    return new Lesson("l", "L", null, groove.setting(), List.of(groove));
  }

  @Property(tries = 150)
  void everyStrokeIsANoteAtItsExactTick(@ForAll("grooves") Groove groove) {
    MidiLesson midi = MidiLesson.of(lesson(groove));
    SmfDump dump = SmfDump.of(midi.bytes(groove, true));
    assertThat(midi.rounded()).isEmpty();
    Time bar = groove.meter().bar();
    Map<Integer, TreeSet<Long>> wanted = new TreeMap<>();
    for (Stroke stroke : groove.strokes()) {
      Time ticks = bar.plus(groove.position(stroke)).times(4L * dump.division());
      assertThat(ticks.isWhole()).isTrue();
      wanted.computeIfAbsent(stroke.surface().key(), k -> new TreeSet<>()).add(ticks.num());
    }
    Map<Integer, TreeSet<Long>> found = new TreeMap<>();
    Map<Integer, Long> sounding = new TreeMap<>();
    dump.events().stream()
        .filter(e -> e.isOn() || e.isOff())
        .sorted(
            java.util.Comparator.comparingLong(SmfDump.Event::tick)
                .thenComparingInt(SmfDump.Event::track))
        .forEach(
            e -> {
              if (e.isOn()) {
                assertThat(sounding.put(e.type(), e.tick())).isNull();
                if (e.track() < 5) {
                  found.computeIfAbsent(e.type(), k -> new TreeSet<>()).add(e.tick());
                }
              } else {
                assertThat(sounding.remove(e.type())).isLessThan(e.tick());
              }
            });
    assertThat(sounding).isEmpty();
    wanted.forEach((key, ticks) -> assertThat(found.get(key)).containsAll(ticks));
    if (groove.strokes().stream().allMatch(s -> s.ornaments().isEmpty())) {
      assertThat(found).isEqualTo(wanted);
    }
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
              Made made = Made.groove("g").meter(meter).tempo(tempo).bars(2);
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
