package tabor.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tabor.weave.PandocFilter;
import tabor.weave.Problem;
import tabor.weave.Woven;

/** {@code tabor pandoc}: a filter between Pandoc's reader and its writer. */
@Command(
    name = "pandoc",
    description = "A filter for Pandoc: its document as JSON on standard input and output.",
    footer = {
      "",
      "pandoc page.md --filter tabor-pandoc -o page.pdf",
      "or pandoc -t json page.md | tabor pandoc latex | pandoc -f json -o page.pdf",
      "Lessons that a block names with file= lie in the current folder or below it."
    })
final class PandocCommand implements Callable<Integer> {
  /** The largest document in bytes. */
  private static final int MOST = 256 << 20;

  private final Io io;

  @Parameters(
      arity = "0..1",
      paramLabel = "FORMAT",
      description =
          "The output format by Pandoc's name for it: latex, pdf and the like get pictures as"
              + " PDF, docx and odt as PNG, all others as SVG.",
      defaultValue = "html")
  private String format = "";

  @Option(
      names = "--pictures",
      paramLabel = "DIR",
      description =
          "The folder in the current one that pictures go to; ${DEFAULT-VALUE} if not given.",
      defaultValue = "tabor-pictures")
  private String pictures = "";

  PandocCommand(Io io) {
    this.io = io;
  }

  @Override
  public Integer call() {
    Path here = Path.of("");
    Woven woven;
    try {
      byte[] bytes = io.in().readNBytes(MOST);
      String json = new String(bytes, StandardCharsets.UTF_8);
      PageLessons lessons = new PageLessons(here, PageLessons.store());
      woven = PandocFilter.filter(json, format, lessons, pictures + "/");
    } catch (IllegalArgumentException e) {
      throw Failure.outside(
          "standard input: " + e.getMessage() + "; give it the output of pandoc -t json");
    } catch (IOException e) {
      throw Failure.outside("standard input cannot be read: " + SourceReader.reason(e));
    }
    for (Problem problem : woven.problems()) {
      io.err().print(problem.report());
    }
    if (woven.hasErrors()) {
      return ExitCode.ERRORS;
    }
    if (!woven.files().isEmpty()) {
      Path folder = SourceFiles.path(pictures);
      OutputFiles.makeFolder(folder);
      for (Woven.Shown shown : woven.files()) {
        OutputFiles.write(SafeFolder.file(folder, shown.name()), shown.bytes());
      }
    }
    io.out().print(woven.text());
    return ExitCode.FINE;
  }
}
