package tabor.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tabor.build.LibraryPages;
import tabor.find.LessonSummary;
import tabor.find.Overview;
import tabor.words.Words;

/** {@code tabor overview}: a term on one page. */
@Command(
    name = "overview",
    description = "Writes one page about a folder of lessons: what is in each, what is new when.",
    footer = {
      "",
      "Lessons stand in the order of their files, week-2 before week-10. A file without grooves,",
      "such as a class, is left out; a lesson with errors is told and passed over."
    })
final class OverviewCommand implements Callable<Integer> {
  private final Io io;

  @Parameters(arity = "1..*", paramLabel = "FOLDER", description = "Where the lessons are.")
  private List<String> folders = List.of();

  @Option(
      names = {"-o", "--output"},
      required = true,
      paramLabel = "FILE",
      description = "The page (HTML) that is written.")
  private String output = "";

  @Option(
      names = "--title",
      paramLabel = "TEXT",
      description = "The title of the page; the folder's name if not given.")
  private @Nullable String title;

  @Mixin private final PageLanguage speaks = new PageLanguage();

  OverviewCommand(Io io) {
    this.io = io;
  }

  @Override
  public Integer call() {
    speaks.read();
    Path page = SourceFiles.path(output);
    LessonFolders library = new LessonFolders(io, folders);
    List<LessonSummary> lessons =
        library.each(
            (file, lesson) -> {
              speaks.note(lesson);
              return LessonSummary.of(file.toString(), lesson);
            });
    if (lessons.isEmpty()) {
      throw Failure.outside("there is no lesson to show; nothing is written");
    }
    String text =
        LibraryPages.overview(heading(speaks.words()), Overview.of(lessons), speaks.words());
    Path into = page.toAbsolutePath().getParent();
    if (into != null) {
      OutputFiles.makeFolder(into);
    }
    OutputFiles.write(page, text);
    io.out()
        .print(
            BuildPlan.shown(page)
                + ": "
                + (lessons.size() == 1 ? "1 lesson" : lessons.size() + " lessons")
                + "\n");
    return library.isWhole() ? ExitCode.FINE : ExitCode.ERRORS;
  }

  private String heading(Words words) {
    if (title != null && !title.isBlank()) {
      return title;
    }
    Path folder = SourceFiles.path(folders.get(0)).toAbsolutePath().normalize().getFileName();
    return folders.size() > 1 || folder == null ? words.text("library.heading") : folder.toString();
  }
}
