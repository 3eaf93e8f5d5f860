package tabor.cli;

import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Parameters;
import tabor.groove.Groove;
import tabor.groove.Lesson;

/** A command that prints something of one groove or step, or of all in the lesson. */
abstract class GroovesCommand extends LessonCommand {
  @Parameters(
      index = "1",
      arity = "0..1",
      paramLabel = "SECTION",
      description = "The groove or step; all of them if not given.")
  private @Nullable String section;

  GroovesCommand(Io io) {
    super(io);
  }

  /** What is printed of these grooves. */
  abstract String text(Lesson lesson, List<Groove> grooves);

  @Override
  int run() {
    return print(lesson -> text(lesson, ReadyLesson.grooves(lesson, section)));
  }
}
