package tabor.cli;

import java.util.Iterator;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import tabor.diagnostic.Near;

/** {@code tabor new}: a lesson or a course to begin with. */
@Command(
    name = "new",
    customSynopsis = "tabor new [-hV] lesson|course NAME",
    description = "Writes a lesson or a course to begin with, which can be built at once.",
    footer = {
      "",
      "tabor new lesson week-3      writes week-3.tabor",
      "tabor new course our-class   makes a folder with lessons, a class file that stays out of",
      "                             the shared repository, the pages of a site, and a script",
      "                             that makes everything",
      "Nothing that is there already is changed."
    })
final class NewCommand implements Callable<Integer> {
  private static final String LESSON = "lesson";
  private static final String COURSE = "course";

  private final Io io;

  @Parameters(
      index = "0",
      paramLabel = "lesson|course",
      completionCandidates = Kinds.class,
      description = "What to write.")
  private String kind = "";

  @Parameters(
      index = "1",
      arity = "0..1", // a better word than the parser's where it is missing
      paramLabel = "NAME",
      hideParamSyntax = true,
      description = "Its name; a folder may stand before it: lessons/week-3.")
  private String name = "";

  /** The words that a shell completes. */
  static final class Kinds implements Iterable<String> {
    @Override
    public Iterator<String> iterator() {
      return List.of(LESSON, COURSE).iterator();
    }
  }

  NewCommand(Io io) {
    this.io = io;
  }

  @Override
  public Integer call() {
    if (name.isEmpty()) {
      throw Failure.usage(
          List.of(LESSON, COURSE).contains(kind)
              ? "new needs a name: tabor new " + kind + " week-3"
              : "write tabor new lesson " + kind + ", or tabor new course " + kind);
    }
    switch (kind) {
      case LESSON -> NewLesson.write(io, name);
      case COURSE -> NewCourse.write(io, name);
      default -> {
        List<String> near = Near.names(kind, List.of(LESSON, COURSE));
        throw Failure.usage(
            "new writes a lesson or a course, not "
                + kind
                + (near.isEmpty() ? "" : "; did you mean " + near.get(0) + "?"));
      }
    }
    return ExitCode.FINE;
  }
}
