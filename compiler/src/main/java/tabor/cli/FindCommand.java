package tabor.cli;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tabor.build.LibraryPages;
import tabor.find.Finder;
import tabor.find.Found;
import tabor.find.Likeness;
import tabor.find.Wanted;

/** {@code tabor find}: which sections of many lessons have something. */
@Command(
    name = "find",
    description = "Finds grooves and steps in folders of lessons.",
    footer = {
      "",
      "A section must have everything that is asked for; without a question all are listed.",
      "They stand in the order of the files, week-2 before week-10; with --like the nearest come",
      "first, with --harder-than the easiest. A lesson with errors is told and passed over."
    })
final class FindCommand implements Callable<Integer> {
  private final Io io;

  @Parameters(arity = "1..*", paramLabel = "FOLDER", description = "Where the lessons are.")
  private List<String> folders = List.of();

  @Mixin private final FindQuestion question = new FindQuestion();

  @Option(
      names = "--as",
      paramLabel = "FORM",
      description = "text, json or html, a page with a picture of each; text if not given.")
  private String form = "text";

  @Option(
      names = {"-o", "--output"},
      paramLabel = "FILE",
      description = "Where it is written instead of standard output.")
  private @Nullable String output;

  @Mixin private final PageLanguage speaks = new PageLanguage();

  FindCommand(Io io) {
    this.io = io;
  }

  @Override
  public Integer call() {
    if (!List.of("text", "json", "html").contains(form)) {
      throw Failure.usage("--as takes text, json or html, not " + form);
    }
    if (speaks.isAsked() && !form.equals("html")) {
      throw Failure.usage("--language is for the page: --as html");
    }
    speaks.read();
    Wanted wanted = question.wanted(io);
    LessonFolders library = new LessonFolders(io, folders);
    Finder finder = new Finder(wanted);
    List<Found> all = new ArrayList<>();
    // A table in the order of the files is written as it comes: the first answer is there before
    // the last file is read.
    FoundTable table =
        form.equals("text") && output == null && !sorts(wanted)
            ? new FoundTable(io.out(), library.widestName())
            : null;
    library.each(
        (file, lesson) -> {
          question.noteSurfaces(lesson);
          List<Found> found = finder.in(file.toString(), lesson);
          if (!found.isEmpty()) {
            speaks.note(lesson);
          }
          return found;
        },
        found -> {
          all.addAll(found);
          if (table != null) {
            table.rows(found);
          }
        });
    question.refuseUnknownSurfaces();
    all.removeIf(question::isItself);
    sort(all, wanted);
    String text =
        switch (form) {
          case "json" -> FoundText.json(all);
          case "html" -> LibraryPages.found(question.inWords(speaks.words()), all, speaks.words());
          default -> table == null ? FoundText.table(all, wanted.like() != null) : "";
        };
    if (output == null) {
      io.out().print(text);
    } else {
      OutputFiles.write(SourceFiles.path(output), text);
    }
    if (all.isEmpty()) {
      io.err().print("tabor: nothing found\n");
    }
    return library.isWhole() ? ExitCode.FINE : ExitCode.ERRORS;
  }

  private static boolean sorts(Wanted wanted) {
    return wanted.like() != null || wanted.harderThan() != null;
  }

  private static void sort(List<Found> all, Wanted wanted) {
    if (wanted.like() != null) {
      all.sort(Comparator.comparing(Found::likeness, Likeness.NEAREST));
    } else if (wanted.harderThan() != null) {
      all.sort(Comparator.comparingLong(found -> found.difficulty().share()));
    }
  }
}
