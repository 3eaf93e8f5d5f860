package tabor.cli;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tabor.weave.Problem;

/** {@code tabor weave}: documents with pictures in the place of notation. */
@Command(
    name = "weave",
    description = "Puts pictures and players in the place of notation in Markdown documents.",
    footer = {
      "",
      "A block of notation is a fenced block that begins with the word tabor; tabor: in inline",
      "code becomes a small staff in the line. The page docs/weave.md says what a block can ask",
      "for. A document with a problem in one of its blocks is not written."
    })
final class WeaveCommand implements Callable<Integer> {
  private final Io io;

  @Parameters(
      arity = "1..*",
      paramLabel = "FILE.md|FOLDER",
      description = "The documents; other files of a folder are copied along.")
  private List<String> words = List.of();

  @Option(
      names = {"-o", "--out"},
      paramLabel = "DIR",
      description = "The folder to write into; made if it is not there.")
  private @Nullable String folder;

  @Option(
      names = "--to",
      paramLabel = "FORM",
      description =
          "markdown (pictures as files, all else as it is) or html (complete pages, the default).",
      defaultValue = "html")
  private String to = "";

  @Option(
      names = "--pictures",
      paramLabel = "NAME",
      description = "The folder in DIR that pictures go to; ${DEFAULT-VALUE} if not given.",
      defaultValue = WeaveRun.PICTURES)
  private String pictures = "";

  @Option(
      names = "--lessons",
      paramLabel = "DIR",
      description =
          "Blocks may name lessons in DIR and below; the folder of documents if not given.")
  private @Nullable String lessons;

  @Option(
      names = "--keep-going",
      description = "Write documents with problems too, each shown in a box.")
  private boolean keepGoing;

  @Option(names = "--force", description = "Weave everything, also what has not changed.")
  private boolean force;

  @Option(
      names = "--in-place",
      description =
          "Keep the documents' text where it is, and put or renew the pictures below each block.")
  private boolean inPlace;

  @Option(
      names = "--check",
      description = "With --in-place: write nothing, and fail if something is out of date.")
  private boolean check;

  WeaveCommand(Io io) {
    this.io = io;
  }

  @Override
  public Integer call() {
    if (!pictures.matches("[A-Za-z0-9_-][A-Za-z0-9._-]*(/[A-Za-z0-9_-][A-Za-z0-9._-]*)*")) {
      throw Failure.usage(
          "--pictures takes the name of a folder of letters, digits and - _ . alone, not "
              + pictures);
    }
    if (check && !inPlace) {
      throw Failure.usage("--check goes with --in-place");
    }
    String into = folder;
    if (inPlace) {
      if (into != null || keepGoing || force || lessons != null) {
        throw Failure.usage("--in-place goes with --pictures and --check alone");
      }
      return weaveInPlace();
    }
    if (into == null) {
      throw Failure.usage("say with -o which folder to write into, or --in-place");
    }
    Path out = SourceFiles.path(into);
    Weave weave = new Weave(out, form(), keepGoing, force, pictures, WeaveRun.lessons(lessons));
    return WeaveRun.into(out, words, weave, io);
  }

  private Weave.To form() {
    return Arrays.stream(Weave.To.values())
        .filter(form -> form.word().equals(to.toLowerCase(Locale.ROOT)))
        .findFirst()
        .orElseThrow(() -> Failure.usage("--to takes markdown or html, not " + to));
  }

  private int weaveInPlace() {
    InPlace work = new InPlace(pictures, check);
    boolean errors = false;
    int stale = 0;
    for (InPlace.Outcome outcome : work.run(DocumentFiles.find(words, null), new Progress(io))) {
      for (Problem problem : outcome.problems()) {
        io.err().print(problem.report());
        errors |= problem.isError();
      }
      for (Path file : outcome.stale()) {
        stale++;
        io.out().print(file + (check ? " is out of date\n" : "\n"));
      }
    }
    if (stale == 0 && !errors) {
      io.out().print("everything is up to date\n");
    }
    return errors || (check && stale > 0) ? ExitCode.ERRORS : ExitCode.FINE;
  }
}
