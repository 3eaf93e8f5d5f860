package tabor.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.cores.SpareCores;
import tabor.merge.MergeCheck;
import tabor.merge.Merged;
import tabor.merge.Merger;
import tabor.resolve.Options;
import tabor.source.LineIndex;

/** {@code tabor merge}: two edited copies of a lesson to one. */
@Command(
    name = "merge",
    description = {
      "Merges two edited copies of a lesson, statement by statement.",
      "What only one side changed is taken over. Where both changed the same statement, both stand",
      "in the result between markers. tabor git-setup makes git merge lessons so."
    },
    footerHeading = "%n",
    footer =
        "Exit codes: 0 merged, 1 something is left for you to decide, 2 something cannot be read.")
final class MergeCommand implements Callable<Integer> {
  /** The shortest marker that git asks for; the longest is ours to set. */
  private static final int SHORTEST = 1;

  private static final int LONGEST = 100;

  /** Most lines of a text; so many are empty for the most part. */
  private static final int MOST_LINES = 1_000_000;

  /** Three texts of more letters than that take too much memory at once. */
  private static final int MOST_AT_ONCE = 1 << 18;

  private final Io io;

  @Parameters(index = "0", paramLabel = "BASE", description = "The lesson before both were edited.")
  private String base = "";

  @Parameters(index = "1", paramLabel = "OURS", description = "Your copy.")
  private String ours = "";

  @Parameters(index = "2", paramLabel = "THEIRS", description = "The other copy.")
  private String theirs = "";

  @Option(
      names = {"-o", "--out"},
      paramLabel = "FILE",
      description = "Where the result goes; standard output if not given.")
  private @Nullable String out;

  @Option(
      names = "--path",
      paramLabel = "FILE",
      description =
          "The lesson that the three are copies of: files in use are looked for beside it, and"
              + " messages name it.")
  private @Nullable String path;

  @Option(
      names = "--marker-size",
      paramLabel = "N",
      description = "How many signs a conflict marker has; 7 if not given.")
  private int markerSize = 7;

  MergeCommand(Io io) {
    this.io = io;
  }

  @Override
  public Integer call() {
    if (markerSize < SHORTEST || markerSize > LONGEST) {
      throw Failure.usage("--marker-size takes a number from 1 to 100, not " + markerSize);
    }
    String before = text(base);
    String our = text(ours);
    String their = text(theirs);
    boolean copies = path != null;
    Merged merged =
        Merger.merge(
            before,
            our,
            their,
            new Merger.Markers(markerSize, copies ? "ours" : ours, copies ? "theirs" : theirs));
    List<String> conflicts = new ArrayList<>(merged.conflicts());
    Path lesson = SourceFiles.path(path == null ? ours : path);
    if (merged.marked() == 0) {
      conflicts.addAll(newProblems(lesson, our, their, merged.text()));
    }
    if (out == null) {
      io.out().print(merged.text());
      io.out().flush();
    } else {
      OutputFiles.write(SourceFiles.path(out), merged.text());
    }
    merged.notes().forEach(note -> io.err().print(lesson + ": " + note + "\n"));
    conflicts.forEach(why -> io.err().print(lesson + ": conflict: " + why + "\n"));
    return conflicts.isEmpty() ? ExitCode.FINE : ExitCode.ERRORS;
  }

  /** What is wrong with the merged text and with neither side. */
  private List<String> newProblems(Path lesson, String our, String their, String merged) {
    MergeCheck check = new MergeCheck();
    if (merged.length() > MOST_AT_ONCE) {
      // One after another, each costs no more than its difference from the one before.
      Compiler compiler = new Compiler(new FileLoader(lesson));
      check.side(compiler.compile(lesson, our, Options.NONE));
      check.side(compiler.compile(lesson, their, Options.NONE));
      return check.newProblems(compiler.compile(lesson, merged, Options.NONE));
    }
    List<Compiled> all =
        SpareCores.map(List.of(our, their, merged), text -> compiled(lesson, text));
    check.side(all.get(0));
    check.side(all.get(1));
    return check.newProblems(all.get(2));
  }

  private Compiled compiled(Path lesson, String text) {
    return new Toolchain(io, Options.NONE).compile(lesson, text);
  }

  private String text(String word) {
    SourceReader.Read read = SourceReader.read(SourceFiles.path(word), io.in());
    if (read.problem() != null) {
      throw Failure.usage(word + " cannot be read: " + read.problem().message());
    }
    String text = read.text();
    if (text.length() >= MOST_LINES && new LineIndex(text).lineCount() > MOST_LINES) {
      throw Failure.usage(
          word
              + " has more than "
              + MOST_LINES
              + " lines, which are too many to merge; take empty lines out");
    }
    return text;
  }
}
