package tabor.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tabor.format.Formatter;
import tabor.source.VisibleText;

/** {@code tabor format}: files in the one way that Tabor writes them. */
@Command(
    name = "format",
    description = {
      "Lines up the parts beat under beat and writes everything else in one way.",
      "No stroke changes; a line that cannot be read stays as it is."
    })
final class FormatCommand implements Callable<Integer> {
  private final Io io;

  @Parameters(
      arity = "1..*",
      paramLabel = "FILE",
      description =
          "Files, or folders with their .tabor files; - formats standard input to standard output.")
  private List<String> files = List.of();

  @Option(
      names = "--check",
      description = "Change nothing; name the files that are not formatted, and exit with 1.")
  private boolean check;

  FormatCommand(Io io) {
    this.io = io;
  }

  @Override
  public Integer call() {
    List<Path> found = SourceFiles.find(files);
    List<String> texts = new ArrayList<>();
    for (Path file : found) {
      texts.add(text(file));
    }
    int code = ExitCode.FINE;
    for (int i = 0; i < found.size(); i++) {
      Path file = found.get(i);
      String formatted = formatted(file, texts.get(i));
      boolean input = file.toString().equals(SourceReader.STDIN);
      if (check) {
        if (!formatted.equals(texts.get(i))) {
          io.out().print((input ? "standard input" : VisibleText.line(file.toString())) + "\n");
          code = ExitCode.ERRORS;
        }
      } else if (input) {
        io.out().print(formatted);
      } else {
        OutputFiles.write(file, formatted);
      }
    }
    return code;
  }

  private static String formatted(Path file, String text) {
    try {
      return Formatter.format(text);
    } catch (RuntimeException | StackOverflowError e) {
      throw new Faults.OfLesson(file.toString(), e);
    }
  }

  /** All files are read before the first is written, so that one bad name changes none. */
  private String text(Path file) {
    boolean input = file.toString().equals(SourceReader.STDIN);
    if (!input && Files.exists(file) && !Files.isRegularFile(file) && !Files.isDirectory(file)) {
      throw Failure.outside(file + ": this is a device or a pipe; format - reads standard input");
    }
    return SourceReader.text(file, io.in());
  }
}
