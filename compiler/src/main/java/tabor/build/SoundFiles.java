package tabor.build;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tabor.audio.WavFile;
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
    for (Section section : options.sections(lesson)) {
      String name = lesson.file() + "." + section.name() + ".mid";
      files.add(new Output(name, () -> midi.bytes(section, options.countIn())));
    }
    return files;
  }

  static List<Output> wav(Lesson lesson, BuildOptions options) {
    List<Output> files = new ArrayList<>();
    for (Section section : options.sections(lesson)) {
      String name = lesson.file() + "." + section.name() + ".wav";
      files.add(new Output(name, () -> WavFile.bytes(section, options.countIn())));
    }
    return files;
  }

  /** The first wanted section that is too long for a sound file. */
  static Optional<Section> tooLong(Lesson lesson, BuildOptions options) {
    return options.sections(lesson).stream()
        .filter(section -> WavFile.seconds(section) > WavFile.LONGEST_SECONDS)
        .findFirst();
  }
}
