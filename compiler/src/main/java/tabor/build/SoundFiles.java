package tabor.build;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tabor.diagnostic.Diagnostic;
import tabor.emit.midi.MidiLesson;
import tabor.groove.Lesson;
import tabor.groove.Section;

/** Files that sound. */
final class SoundFiles {
  private SoundFiles() {}

  static Optional<Diagnostic> rounded(Lesson lesson) {
    return MidiLesson.of(lesson).rounded();
  }

  static List<Output> midi(Lesson lesson, BuildOptions options) {
    MidiLesson midi = MidiLesson.of(lesson);
    List<Output> files = new ArrayList<>();
    for (Section section : lesson.sections()) {
      if (options.wants(section)) {
        String name = lesson.file() + "." + section.name() + ".mid";
        files.add(new Output(name, () -> midi.bytes(section, options.countIn())));
      }
    }
    return files;
  }
}
