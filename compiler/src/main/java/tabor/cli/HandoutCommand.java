package tabor.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tabor.build.PlayerLesson;
import tabor.emit.font.OpenFont;
import tabor.emit.pdf.HandoutLook;
import tabor.emit.pdf.HandoutMaker;
import tabor.emit.pdf.PdfWriter;
import tabor.groove.Lesson;
import tabor.groove.Player;
import tabor.source.VisibleText;

/** {@code tabor handout}: the printed page. */
@Command(
    name = "handout",
    description = "Prints a lesson as a PDF handout: every step with its notes, ready to give out.",
    mixinStandardHelpOptions = true)
final class HandoutCommand extends LessonCommand {
  @Option(
      names = {"-o", "--output"},
      paramLabel = "FILE|DIR",
      description = "Where it goes; a folder takes it by the lesson's name (default: here).")
  private @Nullable String output;

  @Mixin private PageOptions page = new PageOptions();

  HandoutCommand(Io io) {
    super(io);
  }

  @Override
  int run() {
    HandoutLook look = page.look();
    List<Student> students = students();
    if (forSeveral() && output != null && !Files.isDirectory(SourceFiles.path(output))) {
      throw Failure.usage("-o takes a folder that is there for several players, not " + output);
    }
    List<Path> targets = new ArrayList<>();
    for (Student student : students) {
      Lesson lesson = student.lesson();
      if (lesson != null) {
        targets.add(print(student, lesson, look.withNote(player().words(student.player()))));
      }
    }
    targets.forEach(target -> io().out().print(VisibleText.line(target.toString()) + "\n"));
    return exitCode();
  }

  private Path print(Student student, Lesson lesson, HandoutLook asked) {
    Player player = student.player();
    HandoutLook look =
        player == null
            ? asked
            : asked.withReader(
                PlayerLesson.reader(student.compiled().lesson(), player, asked.reader()));
    if (lesson.sections().isEmpty()) {
      throw Failure.outside(file() + " has no groove, step or chart to print");
    }
    Path target = target(lesson.file() + ".pdf");
    OutputFiles.write(target, PdfWriter.write(HandoutMaker.make(lesson, look, OpenFont.get())));
    return target;
  }

  private Path target(String name) {
    if (output == null) {
      return Path.of(name);
    }
    Path wanted = SourceFiles.path(output);
    if (Files.isDirectory(wanted)) {
      return wanted.resolve(name);
    }
    Path folder = wanted.toAbsolutePath().getParent();
    if (folder != null) {
      OutputFiles.makeFolder(folder);
    }
    return wanted;
  }
}
