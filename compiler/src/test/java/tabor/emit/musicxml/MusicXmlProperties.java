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
import tabor.groove.Ornament;
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
      for (int bar = groove.firstBar(); bar <= groove.bars(); bar++) {
        ReadBack.Read measure = read.measures().get(index++);
        Time length = bar == 0 ? groove.pickup() : groove.meter().bar();
        assertThat(measure.number()).isEqualTo(Integer.toString(bar));
        assertThat(measure.totals().values()).isNotEmpty().allMatch(length::equals);
        List<String> struck = onsets(groove, bar);
        assertThat(measure.onsets()).containsAll(struck).doesNotHaveDuplicates();
        for (String onset : measure.onsets()) {
          assertThat(struck.contains(onset) || isInRoll(groove, bar, onset)).as(onset).isTrue();
        }
      }
    }
    assertThat(read.measures()).hasSize(Math.max(1, index));
  }

  /** True if a measured roll goes on there, which may be written out stroke by stroke. */
  private static boolean isInRoll(Groove groove, int bar, String onset) {
    Time first = bar == 0 ? groove.meter().bar().minus(groove.pickup()) : Time.ZERO;
    return groove.strokes().stream()
        .filter(
            stroke ->
                stroke.ornaments().has(Ornament.DIDDLE)
                    || stroke.ornaments().has(Ornament.OPEN_ROLL))
        .anyMatch(
            roll -> {
              String[] words = onset.split(" P1-", -1);
              String[] parts = words[0].split("/", -1);
              long den = parts.length > 1 ? Long.parseLong(parts[1]) : 1;
              Time at = groove.position(bar, Time.of(Long.parseLong(parts[0]), den).plus(first));
              Time start = groove.position(roll);
              return roll.surface().name().equals(words[1])
                  && start.before(at)
                  && at.before(start.plus(roll.length()));
            });
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
