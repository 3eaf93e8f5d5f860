package tabor.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import tabor.groove.Lesson;

/** A command on one lesson, which must have no errors: its file, and who plays it. */
abstract class LessonCommand implements Callable<Integer> {
  private final Io io;

  @Parameters(index = "0", paramLabel = "FILE", description = "The lesson; - is standard input.")
  private String file = "";

  @Mixin private PlayerOptions player = new PlayerOptions();

  LessonCommand(Io io) {
    this.io = io;
  }

  /** What goes wrong inside Tabor is told with the name of the lesson. */
  @Override
  public final Integer call() {
    try {
      return run();
    } catch (Failure e) {
      throw e;
    } catch (RuntimeException | StackOverflowError | OutOfMemoryError e) {
      throw new Faults.OfLesson(file, e);
    }
  }

  /** The work; gives the exit code. */
  abstract int run();

  final Io io() {
    return io;
  }

  /** The file as it was typed. */
  final String file() {
    return file;
  }

  /** What the options make other than written, in words. */
  final String playerWords() {
    return player.words();
  }

  /** Compiles the lesson; its errors end the command. */
  final Lesson lesson() {
    return ReadyLesson.of(io, file, player.options());
  }
}
