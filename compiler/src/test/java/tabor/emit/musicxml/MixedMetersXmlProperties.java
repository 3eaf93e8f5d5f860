package tabor.emit.musicxml;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.audiveris.proxymusic.Attributes;
import org.audiveris.proxymusic.ScorePartwise.Part.Measure;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.resolve.Options;
import tabor.rhythm.Time;
import tabor.testing.MixedMeters;

/** Meters in turn: each measure states its time and holds it, read by classes that are not ours. */
class MixedMetersXmlProperties {
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

  @Property(tries = 100)
  void everyMeasureIsOfItsMeter(@ForAll("files") MixedMeters file) {
    ReadBack read = ReadBack.of(MusicXml.bytes(lesson(file), Groove.class::isInstance));
    int first = file.pickup().sign() > 0 ? 0 : 1;
    assertThat(read.measures()).hasSize(file.bars() + 1 - first);
    List<Measure> measures = read.score().getPart().get(0).getMeasure();
    String time = "";
    for (int bar = first; bar <= file.bars(); bar++) {
      time = time(measures.get(bar - first), time);
      assertThat(time).as("bar %s", bar).isEqualTo(file.signature(bar));
      Time length = bar == 0 ? file.pickup() : file.length(bar);
      assertThat(read.measures().get(bar - first).totals().values()).allMatch(length::equals);
    }
  }

  /** A count-in has the first meter, a rest takes them in turn. */
  @Property(tries = 60)
  void measuresOfRestAreOfTheirMeters(@ForAll("files") MixedMeters file) {
    ReadBack read =
        ReadBack.of(MusicXml.bytes(lesson(file), section -> !(section instanceof Groove)));
    List<Measure> measures = read.score().getPart().get(0).getMeasure();
    int size = measures.size();
    String time = "";
    for (int i = 0; i < size; i++) {
      time = time(measures.get(i), time);
      int bar = i < 2 ? i - 1 : i - (size - MixedMeters.REST) + 1;
      if (i == 1 && file.pickup().sign() > 0) {
        assertThat(read.measures().get(i).length()).isEqualTo(file.length(0).minus(file.pickup()));
      } else if (i < 2 || bar >= 1) {
        assertThat(time).isEqualTo(file.signature(bar));
        assertThat(read.measures().get(i).length()).isEqualTo(file.length(bar));
      }
    }
  }

  /** The time from a measure on, as one number over the other. */
  private static String time(Measure measure, String before) {
    String time = before;
    for (Object element : measure.getNoteOrBackupOrForward()) {
      if (element instanceof Attributes attributes && !attributes.getTime().isEmpty()) {
        List<jakarta.xml.bind.JAXBElement<String>> said =
            attributes.getTime().get(0).getTimeSignature();
        assertThat(said).hasSize(2);
        int count =
            Arrays.stream(said.get(0).getValue().split("\\+", -1))
                .mapToInt(Integer::parseInt)
                .sum();
        time = count + "/" + said.get(1).getValue();
      }
    }
    return time;
  }
}
