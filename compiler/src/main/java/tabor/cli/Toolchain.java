package tabor.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.Levels;
import tabor.groove.SectionWords;
import tabor.kit.Kits;
import tabor.resolve.Options;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Meters;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;
import tabor.source.Passage;

/**
 * From a path to what was compiled: reads, compiles, and turns what cannot be read into a result.
 */
record Toolchain(Io io, Options options) {
  /** Compiles one file, or standard input for {@code -}. */
  Compiled compile(Path file) {
    return compile(file, file);
  }

  /** Compiles one file for each of some students; see {@link Students#of}. */
  List<Student> students(Path file, List<String> names) {
    SourceReader.Read read = SourceReader.read(file, io.in());
    Diagnostic problem = read.problem();
    if (problem != null) {
      Compiled unread = unread(file, read.text(), problem);
      return List.of(new Student(null, unread, unread.lesson()));
    }
    Compiler compiler = new Compiler(new FileLoader(file));
    boolean unnamed = file.toString().equals(SourceReader.STDIN);
    return Students.of(
        names,
        options,
        asked -> {
          Compiled compiled = compiler.compile(file, read.text(), asked);
          return unnamed ? named(compiled) : compiled;
        });
  }

  /** The same for one file of several: a player that it lacks does not stop the others. */
  List<Student> studentsOfOne(Path file, List<String> names) {
    if (names.isEmpty()) {
      return students(file, names);
    }
    try {
      return students(file, names);
    } catch (Failure e) {
      throw Failure.outside(file + ": " + e.getMessage());
    }
  }

  /** Compiles one file as if it had another name: files in use are looked for beside that. */
  Compiled compile(Path file, Path as) {
    SourceReader.Read read = SourceReader.read(file, io.in());
    Diagnostic problem = read.problem();
    return problem == null ? compile(as, read.text()) : unread(as, read.text(), problem);
  }

  /** Compiles a text as that of a file. */
  Compiled compile(Path file, String text) {
    Compiled compiled = new Compiler(new FileLoader(file)).compile(file, text, options);
    return file.toString().equals(SourceReader.STDIN) ? named(compiled) : compiled;
  }

  /** Standard input has no name that a title or an output could take. */
  private static Compiled named(Compiled compiled) {
    Lesson lesson = compiled.lesson();
    String name = SourceFiles.lessonName(compiled.file());
    String title = lesson.title().equals(lesson.file()) ? name : lesson.title();
    return compiled.with(lesson.named(name, title));
  }

  private static Compiled unread(Path file, String text, Diagnostic problem) {
    Passage passage = problem.spot().passage();
    Groove.Setting setting =
        new Groove.Setting(
            Meters.of(Meter.COMMON),
            Kits.FIVE_PIECE,
            new Tempo(Time.of(1, 4), Time.of(90)),
            Feel.STRAIGHT,
            Levels.DEFAULT,
            true,
            true,
            true,
            SectionWords.USUAL);
    String name = SourceFiles.lessonName(file);
    return new Compiled(
        file,
        text,
        new Lesson(name, name, null, setting, List.of()),
        List.of(),
        List.of(problem),
        Map.of(passage, new Compiled.Where(file, 0)));
  }
}
