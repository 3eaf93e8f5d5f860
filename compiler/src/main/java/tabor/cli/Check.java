package tabor.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.compile.Compiled;
import tabor.lists.Lists;
import tabor.report.JsonReport;
import tabor.report.SarifReport;
import tabor.report.TextReport;
import tabor.resolve.Options;
import tabor.source.VisibleText;

/** The work of {@code tabor check}. */
final class Check {
  private Check() {}

  /** How diagnostics are printed. */
  enum Style {
    TEXT,
    JSON,
    SARIF
  }

  /** Compiles everything named and prints what was noticed. */
  static int run(
      Io io,
      List<String> words,
      Options options,
      List<String> students,
      Style style,
      boolean hints,
      @Nullable String docs) {
    Toolchain toolchain = new Toolchain(io, options);
    TextReport text = new TextReport(io.colourOut());
    List<Compiled> files = new ArrayList<>();
    List<List<Compiled>> alone = new ArrayList<>();
    List<List<String>> headings = new ArrayList<>();
    List<String> nothing = new ArrayList<>();
    boolean errors = false;
    for (Path file : SourceFiles.find(words)) {
      errors |=
          !Faults.catching(
              io,
              file.toString(),
              () -> {
                if (students.isEmpty()) {
                  alone.add(List.of(toolchain.compile(file)));
                  headings.add(List.of(""));
                  return;
                }
                List<Student> all = toolchain.studentsOfOne(file, students);
                headings.add(Lists.map(all, Student::heading));
                alone.add(Students.toldOnce(all));
                for (Student student : all) {
                  if (student.lesson() == null && !student.isClassFile()) {
                    nothing.add(file + ": " + student.nothing());
                  }
                }
              });
    }
    List<Compiled> everything = new ArrayList<>();
    alone.forEach(everything::addAll);
    for (int i = 0; i < alone.size(); i++) {
      // What one file leaves unused another may use.
      List<Compiled> copies = Lists.map(alone.get(i), one -> one.besides(everything));
      Compiled compiled = Students.together(copies);
      files.add(compiled);
      errors |= compiled.hasErrors();
      for (int k = 0; style == Style.TEXT && k < copies.size(); k++) {
        String told = text.of(copies.get(k), hints);
        String heading = headings.get(i).get(k);
        if (!told.isEmpty() && !heading.isEmpty()) {
          io.out().print("# " + VisibleText.line(heading) + "\n");
        }
        io.out().print(told);
        io.out().flush();
      }
    }
    Players.require(options.player(), Lists.map(files, Compiled::lesson));
    io.out()
        .print(
            switch (style) {
              case TEXT -> files.isEmpty() ? "" : text.summary(files, hints);
              case JSON -> JsonReport.of(files, hints);
              case SARIF -> SarifReport.of(files, hints, docs);
            });
    nothing.forEach(one -> io.err().print("tabor: " + VisibleText.line(one) + "\n"));
    return errors || !nothing.isEmpty() ? ExitCode.ERRORS : ExitCode.FINE;
  }
}
