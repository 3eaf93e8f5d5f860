package tabor.cli;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tabor.compile.Compiled;
import tabor.diagnostic.Near;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.Section;
import tabor.groove.Sheet;
import tabor.report.TextReport;
import tabor.resolve.Options;

/** The lesson of one file, for commands that need one without errors. */
final class ReadyLesson {
  private ReadyLesson() {}

  /**
   * Compiles a file. If it has errors they are printed on standard error, and the command goes no
   * further.
   */
  static Compiled of(Io io, String word, Options options) {
    Compiled compiled = new Toolchain(io, options).compile(SourceFiles.path(word));
    if (compiled.hasErrors()) {
      TextReport report = new TextReport(io.colourErr());
      io.err().print(report.of(compiled, false));
      io.err().print(report.summary(List.of(compiled), false));
      throw Failure.outside(word + " has errors, so nothing can be made of it");
    }
    Players.require(options.player(), List.of(compiled.lesson()));
    return compiled;
  }

  /** The section that a word names; with no word the file's only section or null. */
  static @Nullable Section section(Lesson lesson, @Nullable String name) {
    if (name == null) {
      return null;
    }
    Optional<Section> found = lesson.section(name);
    if (found.isPresent()) {
      return found.get();
    }
    List<String> names = lesson.sections().stream().map(Section::name).toList();
    List<String> near = Near.names(name, names);
    String offer =
        near.isEmpty() ? "it has " + String.join(", ", names) : "did you mean " + near.get(0) + "?";
    throw Failure.usage("there is no section " + name + " in this file; " + offer);
  }

  /** The groove or step that a word names; with no word all of the file's. */
  static List<Groove> grooves(Lesson lesson, @Nullable String name) {
    Section section = section(lesson, name);
    if (section == null) {
      return lesson.grooves();
    }
    if (section instanceof Groove groove) {
      return List.of(groove);
    }
    if (section instanceof Sheet sheet) {
      return sheet.grooves();
    }
    throw Failure.usage(
        section.name() + " is a chart, which has no strokes of its own; name a groove or step");
  }
}
