package tabor.cli;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tabor.compare.ChangePictures;
import tabor.compare.ChangeReport;
import tabor.compare.ComparedFile;
import tabor.emit.pdf.Paper;

/** {@code tabor diff}: what changed in the music. */
@Command(
    name = "diff",
    description = {
      "Says what changed in the music from one file or folder to another.",
      "Another way to write the same strokes is no change. Also takes what git hands to a program",
      "for differences: tabor git-setup sees to that."
    },
    footerHeading = "%n",
    footer = {
      "Exit codes: 0 the same music, 1 other music, 2 something cannot be read.",
      "Called by git it is always 0, as git wants it."
    })
final class DiffCommand implements Callable<Integer> {
  /** What git hands over: the path, then file, hash and mode of the old and of the new. */
  private static final int OF_GIT = 7;

  /** The same for a renamed file: the new path and a line about the renaming follow. */
  private static final int RENAMED = 9;

  /** What git sets for the programs that show differences, from version 1.8.5 on. */
  private static final String GIT = "GIT_DIFF_PATH_COUNTER";

  private final Io io;

  @Parameters(
      arity = "1..*",
      paramLabel = "OLD NEW",
      description = "Two files or two folders; - is standard input.")
  private List<String> words = List.of();

  @Option(
      names = "--report",
      paramLabel = "FORM",
      description = "text (as people read it), markdown or json; text if not given.")
  private String report = "text";

  @Option(
      names = "--as",
      paramLabel = "FORM",
      description =
          "svg, html or pdf in place of a report: the old and the new staff one above the other.")
  private @Nullable String picture;

  @Option(
      names = {"-o", "--out"},
      paramLabel = "FILE",
      description = "Where it goes; standard output if not given, but for pdf.")
  private @Nullable String out;

  DiffCommand(Io io) {
    this.io = io;
  }

  @Override
  public Integer call() {
    Compare.Style style = style(report);
    if (words.size() == OF_GIT || words.size() == RENAMED) {
      return ofGit(style);
    }
    if (words.size() == 1 && io.env().containsKey(GIT)) {
      io.out().print(words.get(0) + ": not merged yet\n");
      return ExitCode.FINE;
    }
    if (words.size() != 2) {
      throw Failure.usage("diff takes two files or two folders, the old one and the new one");
    }
    List<ComparedFile> files = new Compare(io).compare(words.get(0), words.get(1));
    if (picture != null || out != null) {
      output(files, picture, style, Compare.isFolder(words.get(0)));
      return exitCode(files);
    }
    boolean folders = files.size() != 1 || Compare.isFolder(words.get(0));
    io.out().print(report(files, style, folders, false));
    return exitCode(files);
  }

  private static int exitCode(List<ComparedFile> files) {
    return files.stream().allMatch(ComparedFile::isSame) ? ExitCode.FINE : ExitCode.ERRORS;
  }

  private void output(
      List<ComparedFile> files, @Nullable String form, Compare.Style style, boolean names) {
    if (form != null) {
      ChangePictures.refusal(files)
          .ifPresent(
              why -> {
                throw Failure.outside(why + "; without --as the changes are told in words");
              });
    }
    byte[] bytes =
        switch (form == null ? "" : form) {
          case "" -> utf8(report(files, style, names, false));
          case "svg" -> utf8(ChangePictures.svg(files));
          case "html" -> utf8(ChangePictures.html(files));
          case "pdf" -> ChangePictures.pdf(files, Paper.A4);
          default -> throw Failure.usage("--as takes svg, html or pdf, not " + form);
        };
    if (out != null) {
      OutputFiles.write(SourceFiles.path(out), bytes);
    } else if ("pdf".equals(form)) {
      throw Failure.usage("--as pdf needs -o FILE");
    } else {
      io.out().writeBytes(bytes);
    }
  }

  private static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private Integer ofGit(Compare.Style style) {
    String path = words.get(0);
    String now = words.size() == RENAMED ? words.get(7) : path;
    ComparedFile file;
    try {
      file = new Compare(io).ofGit(path, words.get(1), now, words.get(4));
    } catch (Failure unreadable) {
      // Any other end than 0 would keep git from showing the files after this one.
      io.out().print(now + ": " + unreadable.getMessage() + "\n");
      return ExitCode.FINE;
    }
    if (!path.equals(now)) {
      io.out().print(path + " is now called " + now + "\n");
    }
    io.out().print(report(List.of(file), style, true, true));
    return ExitCode.FINE;
  }

  private static String report(
      List<ComparedFile> files, Compare.Style style, boolean names, boolean rewritten) {
    return switch (style) {
      case TEXT -> ChangeReport.text(files, names, rewritten);
      case MARKDOWN -> ChangeReport.markdown(files);
      case JSON -> ChangeReport.json(files);
    };
  }

  private static Compare.Style style(@Nullable String report) {
    return switch (report == null ? "text" : report) {
      case "text" -> Compare.Style.TEXT;
      case "markdown" -> Compare.Style.MARKDOWN;
      case "json" -> Compare.Style.JSON;
      default -> throw Failure.usage("--report takes text, markdown or json, not " + report);
    };
  }
}
