package tabor.emit.musicxml;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.Roll;
import tabor.groove.Snap;
import tabor.groove.Stroke;
import tabor.resolve.Options;
import tabor.rhythm.Time;
import tabor.testing.Files;
import tabor.testing.RandomSections;

/** What an independent reader finds in the document of any lesson. */
class MusicXmlProperties {
  @Provide
  Arbitrary<Groove> grooves() {
    return RandomSections.grooves();
  }

  @Provide
  Arbitrary<String> files() {
    return Files.valid();
  }

  @Property(tries = 60)
  void anySectionIsReadBackStrokeByStroke(@ForAll("grooves") Groove groove) {
    Lesson lesson = new Lesson("g", "g", null, groove.setting(), List.of(groove));
    check(lesson, ReadBack.of(MusicXml.bytes(lesson, section -> true)));
  }

  @Property(tries = 30)
  void anyFileIsReadBackStrokeByStroke(@ForAll("files") String text) {
    Lesson lesson =
        new Compiler(Loader.NONE).compile(Path.of("lesson.tabor"), text, Options.NONE).lesson();
    byte[] bytes = MusicXml.bytes(lesson, section -> true);
    check(lesson, ReadBack.of(MusicXml.bytes(lesson, Groove.class::isInstance)));
    assertThat(Arrays.equals(bytes, MusicXml.bytes(lesson, section -> true))).isTrue();
    ReadBack.of(bytes);
  }

  private static void check(Lesson lesson, ReadBack read) {
    int index = 0;
    for (Groove groove : lesson.grooves()) {
      // A short fill is its pickup and no more.
      int bars = groove.isPickupOnly() ? 0 : groove.bars();
      for (int bar = groove.firstBar(); bar <= bars; bar++) {
        ReadBack.Read measure = read.measures().get(index++);
        Time length = bar == 0 ? groove.pickup() : groove.meter(bar).bar();
        assertThat(measure.number()).isEqualTo(bar == 0 ? "null" : Integer.toString(bar));
        assertThat(measure.totals().values()).isNotEmpty().allMatch(length::equals);
        List<String> onsets = onsets(groove, bar);
        assertThat(measure.onsets()).containsAll(onsets).hasSizeGreaterThanOrEqualTo(onsets.size());
        List<String> more = new ArrayList<>(measure.onsets());
        onsets.forEach(more::remove);
        // Only strokes of a roll may be written that are in no list.
        assertThat(rolled(groove, bar)).containsAll(more);
      }
    }
    assertThat(read.measures()).hasSize(Math.max(1, index));
  }

  /** Where rolls go on in a bar. */
  private static List<String> rolled(Groove groove, int bar) {
    Time first = bar == 0 ? groove.meter().bar().minus(groove.pickup()) : Time.ZERO;
    Time line = groove.position(bar, first);
    List<String> found = new ArrayList<>();
    for (Stroke stroke : groove.strokes()) {
      Roll.of(groove, Snap.of(groove), stroke)
          .ifPresent(
              roll -> {
                for (long i = 1; i < roll.count(); i++) {
                  Time at = groove.position(stroke).plus(roll.after(i)).minus(line);
                  found.add(at + " P1-" + stroke.surface().name());
                }
              });
    }
    return found;
  }

  /** Where each surface is struck; two limbs of a pair on one surface are one note. */
  private static List<String> onsets(Groove groove, int bar) {
    Time first = bar == 0 ? groove.meter().bar().minus(groove.pickup()) : Time.ZERO;
    Map<String, String> found = new TreeMap<>();
    for (Stroke stroke : groove.strokes()) {
      if (stroke.bar() == bar) {
        String at = stroke.at().minus(first) + " P1-" + stroke.surface().name();
        found.put(at + stroke.limb().isHand(), at);
      }
    }
    return new ArrayList<>(found.values());
  }
}
