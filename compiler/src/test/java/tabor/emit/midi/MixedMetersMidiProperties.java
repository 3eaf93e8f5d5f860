package tabor.emit.midi;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.emit.strokes.StrokeList;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.resolve.Options;
import tabor.rhythm.Time;
import tabor.testing.MixedMeters;

/** Meters in turn: lists and MIDI files against sums of the signatures as they are written. */
class MixedMetersMidiProperties {
  private static final int HIGH_WOOD = 76;
  private static final int LOW_WOOD = 77;

  @Provide
  Arbitrary<MixedMeters> files() {
    return MixedMeters.any();
  }

  private static Lesson lesson(MixedMeters file) {
    Compiled compiled =
        new Compiler(Loader.NONE).compile(Path.of("lesson.tabor"), file.text(), Options.NONE);
    Assume.that(!compiled.hasErrors());
    return compiled.lesson();
  }

  /** Where a bar would begin, from the first sound of the groove. */
  private static Time start(MixedMeters file, int bar) {
    return bar < 1
        ? file.pickup().minus(file.length(0))
        : file.pickup().plus(file.lengthOf(bar - 1));
  }

  private static List<String[]> rows(Groove groove) {
    List<String[]> rows = new ArrayList<>();
    for (String row : StrokeList.tsv(List.of(groove)).lines().skip(1).toList()) {
      rows.add(row.split("\t", -1));
    }
    return rows;
  }

  private static Time place(MixedMeters file, String[] row) {
    String[] at = row[2].split("/", -1);
    Time inBar = Time.of(Long.parseLong(at[0]), at.length == 1 ? 1 : Long.parseLong(at[1]));
    int bar = Integer.parseInt(row[1]);
    assertThat(inBar.before(file.length(bar))).as("%s in bar %s", inBar, bar).isTrue();
    return start(file, bar).plus(inBar);
  }

  @Property(tries = 150)
  void theListsMillisecondsAreThoseOfTheSignatures(@ForAll("files") MixedMeters file) {
    if (!file.straight()) {
      return;
    }
    for (String[] row : rows(lesson(file).grooves().get(0))) {
      Time place = place(file, row);
      double millis = file.whole() * place.num() / place.den();
      assertThat(Double.parseDouble(row[9]))
          .as("%s", List.of(row))
          .isEqualTo(millis, within(0.001));
    }
  }

  @Property(tries = 100)
  void theNotesStandWhereTheListSays(@ForAll("files") MixedMeters file) {
    Lesson lesson = lesson(file);
    Groove groove = lesson.grooves().get(0);
    MidiLesson midi = MidiLesson.of(lesson);
    SmfDump dump = SmfDump.of(midi.bytes(groove, true));
    Time countIn = file.length(0).minus(file.pickup());
    double tick = file.whole() / (4.0 * dump.division());
    TreeSet<Long> wanted = new TreeSet<>();
    for (String[] row : rows(groove)) {
      double millis = Double.parseDouble(row[9]) + file.whole() * countIn.num() / countIn.den();
      wanted.add(Math.round(millis / tick));
    }
    TreeSet<Long> found = new TreeSet<>();
    for (SmfDump.Event event : dump.events()) {
      if (event.isOn() && event.type() != HIGH_WOOD && event.type() != LOW_WOOD) {
        found.add(event.tick());
      }
    }
    assertThat(midi.rounded()).isEmpty();
    assertThat(found).isEqualTo(wanted);
  }

  @Property(tries = 150)
  void everyBarHasItsSignature(@ForAll("files") MixedMeters file) {
    Lesson lesson = lesson(file);
    SmfDump dump = SmfDump.of(MidiLesson.of(lesson).bytes(lesson.grooves().get(0), true));
    Time countIn = file.length(0).minus(file.pickup());
    TreeSet<Long> barlines = new TreeSet<>();
    for (int bar = 0; bar <= file.bars(); bar++) {
      long tick = ticks(dump, bar == 0 ? Time.ZERO : countIn.plus(start(file, bar)));
      barlines.add(tick);
      assertThat(signature(dump, tick)).as("bar %s", bar).isEqualTo(file.signature(bar));
    }
    for (SmfDump.Event event : dump.events()) {
      if (isMeter(event)) {
        assertThat(barlines).contains(event.tick());
      }
    }
  }

  private static boolean isMeter(SmfDump.Event event) {
    return event.status() == 0xFF && event.type() == 0x58;
  }

  /** The signature in force. */
  private static String signature(SmfDump dump, long tick) {
    String found = "";
    for (SmfDump.Event event : dump.events()) {
      if (isMeter(event) && event.tick() <= tick) {
        found = event.data()[0] + "/" + (1 << event.data()[1]);
      }
    }
    return found;
  }

  private static long ticks(SmfDump dump, Time place) {
    Time ticks = place.times(4L * dump.division());
    assertThat(ticks.isWhole()).isTrue();
    return ticks.num();
  }

  /** Two bars of count-in, the groove twice, its pickup once, a rest: a click on every beat. */
  @Property(tries = 150)
  void theClickFallsOnEveryBarline(@ForAll("files") MixedMeters file) {
    Lesson lesson = lesson(file);
    Chart chart = lesson.charts().get(0);
    SmfDump dump = SmfDump.of(MidiLesson.of(lesson).bytes(chart, true));
    List<Long> lines = new ArrayList<>();
    int beats = 0;
    Time at = Time.ZERO;
    for (int bar = -1; bar <= 0; bar++) {
      lines.add(ticks(dump, at));
      beats += file.beats(bar);
      at = at.plus(file.length(bar));
    }
    for (int bars : new int[] {file.bars(), file.bars(), MixedMeters.REST}) {
      for (int bar = 1; bar <= bars; bar++) {
        lines.add(ticks(dump, at));
        beats += file.beats(bar);
        at = at.plus(file.length(bar));
      }
    }
    List<Long> high = clicks(dump, HIGH_WOOD);
    assertThat(high).isEqualTo(lines);
    assertThat(clicks(dump, LOW_WOOD)).hasSize(beats - high.size());
  }

  private static List<Long> clicks(SmfDump dump, int key) {
    return dump.events().stream()
        .filter(event -> event.isOn() && event.type() == key)
        .map(SmfDump.Event::tick)
        .toList();
  }
}
