package tabor.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import java.util.function.Function;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import tabor.compile.Compiled;
import tabor.groove.Lesson;
import tabor.report.TextReport;
import tabor.source.VisibleText;

/** A command on one lesson, which must have no errors: its file, and who plays it. */
abstract class LessonCommand implements Callable<Integer> {
  private final Io io;

  @Parameters(index = "0", paramLabel = "FILE", description = "The lesson; - is standard input.")
  private String file = "";

  @Mixin private PlayerOptions player = new PlayerOptions();

  private boolean failed;

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

  /** Who plays, on what and how fast, as typed. */
  final PlayerOptions player() {
    return player;
  }

  /** True if several students may get something. */
  final boolean forSeveral() {
    return player.students().size() > 1 || player.students().contains(Students.ALL);
  }

  /** Does something with what each student gets, below who it is; gives the exit code. */
  final int each(Consumer<Lesson> work) {
    List<Student> students = students();
    for (Student student : students) {
      Lesson lesson = student.lesson();
      if (lesson != null) {
        heading(student, students.size());
        work.accept(lesson);
      }
    }
    return exitCode();
  }

  /** Prints a text of the lesson, or one of each student's; gives the exit code. */
  final int print(Function<Lesson, String> text) {
    return each(lesson -> io.out().print(text.apply(lesson)));
  }

  /** Says for whom the following is, if there are several students. */
  private void heading(Student student, int all) {
    if (all > 1) {
      io.out().print("# " + VisibleText.line(student.heading()) + "\n");
    }
  }

  /** Fine, unless a student got nothing. */
  final int exitCode() {
    return failed ? ExitCode.ERRORS : ExitCode.FINE;
  }

  /**
   * Compiles the lesson for each student that was asked for. What a student cannot get is told, and
   * the others stay; errors of a lesson for nobody in particular end the command.
   */
  final List<Student> students() {
    return students(file);
  }

  /** The same of another file. */
  final List<Student> students(String file) {
    if (player.students().isEmpty()) {
      Compiled compiled = ReadyLesson.of(io, file, player.options());
      return List.of(new Student(null, compiled, compiled.lesson()));
    }
    List<Student> all =
        new Toolchain(io, player.options()).students(SourceFiles.path(file), player.students());
    List<Compiled> told = Students.toldOnce(all);
    List<Student> ready = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      Student student = all.get(i);
      if (student.compiled().hasErrors()) {
        failed = true;
        if (!student.heading().isEmpty()) {
          io.err().print("# " + VisibleText.line(student.heading()) + "\n");
        }
        io.err().print(new TextReport(io.colourErr()).of(told.get(i), false));
        io.err()
            .print(
                "tabor: "
                    + file
                    + " has errors, so nothing can be made of it"
                    + student.words()
                    + "\n");
      } else if (student.lesson() == null) {
        failed = true;
        io.err().print("tabor: " + VisibleText.line(file + ": " + student.nothing()) + "\n");
      } else {
        ready.add(student);
      }
    }
    return ready;
  }
}
