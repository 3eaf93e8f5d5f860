package tabor.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.compile.Compiled;
import tabor.report.JsonReport;
import tabor.report.SarifReport;
import tabor.report.TextReport;
import tabor.resolve.Options;

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
      Style style,
      boolean hints,
      @Nullable String docs) {
    Toolchain toolchain = new Toolchain(io, options);
    TextReport text = new TextReport(io.colourOut());
    List<Compiled> files = new ArrayList<>();
    List<Compiled> alone = new ArrayList<>();
    boolean errors = false;
    for (Path file : SourceFiles.find(words)) {
      errors |= !Faults.catching(io, file.toString(), () -> alone.add(toolchain.compile(file)));
    }
    for (Compiled one : alone) {
      // What one file leaves unused another may use.
      Compiled compiled = one.besides(alone);
      files.add(compiled);
      errors |= compiled.hasErrors();
      if (style == Style.TEXT) {
        io.out().print(text.of(compiled, hints));
        io.out().flush();
      }
    }
    Players.require(options.player(), files.stream().map(Compiled::lesson).toList());
    io.out()
        .print(
            switch (style) {
              case TEXT -> text.summary(files, hints);
              case JSON -> JsonReport.of(files, hints);
              case SARIF -> SarifReport.of(files, hints, docs);
            });
    return errors ? ExitCode.ERRORS : ExitCode.FINE;
  }
}
