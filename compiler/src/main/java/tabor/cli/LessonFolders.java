package tabor.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import tabor.compile.Compiled;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Severity;
import tabor.groove.Lesson;
import tabor.resolve.Options;
import tabor.source.DisplayWidth;
import tabor.source.VisibleText;

/**
 * The lessons of some folders, read on all cores in the natural order of their names. What cannot
 * be read or has errors is told and passed over. Nothing is remembered from one run to the next.
 */
final class LessonFolders {
  private final Io io;
  private final List<Path> files;
  private boolean whole = true;

  /**
   * The files that words of a command line name.
   *
   * @throws Failure if one of them is not there, or a folder has no lessons
   */
  LessonFolders(Io io, List<String> words) {
    this.io = io;
    for (String word : words) {
      if (!word.equals(SourceReader.STDIN) && !Files.exists(SourceFiles.path(word))) {
        throw Failure.outside("there is no folder or file " + word);
      }
    }
    this.files = NaturalOrder.sorted(SourceFiles.find(words));
  }

  /** True until something was passed over. */
  boolean isWhole() {
    return whole;
  }

  /** What a piece of work makes of each lesson that has any section, in order. */
  <T> List<T> each(BiFunction<Path, Lesson, T> work) {
    List<T> results = new ArrayList<>();
    each(work, results::add);
    return results;
  }

  /** The same, each result taken on as soon as it and all before it are there. */
  <T> void each(BiFunction<Path, Lesson, T> work, Consumer<T> taker) {
    Toolchain toolchain = new Toolchain(io, Options.NONE);
    Progress progress = new Progress(io);
    AllCores.each(
        files,
        file -> Faults.aside(io, file, aside -> read(toolchain.compile(file), file, work)),
        progress,
        file -> "reading " + file,
        read -> {
          if (!read.said().isEmpty()) {
            progress.done();
            io.err().print(read.said());
            io.err().flush();
          }
          whole &= read.good();
          if (read.result() != null) {
            progress.done();
            taker.accept(read.result());
          }
        });
  }

  /** Columns that the longest name of a file takes. */
  int widestName() {
    int most = 0;
    for (Path file : files) {
      most = Math.max(most, DisplayWidth.of(VisibleText.line(file.toString())));
    }
    return most;
  }

  private <T> @Nullable T read(Compiled compiled, Path file, BiFunction<Path, Lesson, T> work) {
    if (compiled.hasErrors()) {
      throw Failure.outside(why(file, compiled));
    }
    return compiled.lesson().sections().isEmpty() ? null : work.apply(file, compiled.lesson());
  }

  private static String why(Path file, Compiled compiled) {
    List<Diagnostic> errors =
        compiled.diagnostics().stream().filter(d -> d.severity() == Severity.ERROR).toList();
    int more = errors.size() - 1;
    return file
        + " is passed over: "
        + errors.get(0).message()
        + (more == 0 ? "" : more == 1 ? ", and 1 more error" : ", and " + more + " more errors")
        + "; tabor check "
        + VisibleText.shellWord(file.toString())
        + " says more";
  }
}
