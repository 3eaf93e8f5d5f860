package tabor.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import tabor.compile.Compiled;
import tabor.emit.grid.Grid;
import tabor.resolve.Options;
import tabor.syntax.Line;
import tabor.syntax.SettingStatement;

/**
 * The grid of a version of a lesson that git has put into a file of its own, away from the files
 * that it uses. Git shows no difference at all where this fails, so it never does.
 */
final class GridForGit {
  private GridForGit() {}

  /** The grid; the text as it is written where there are errors. */
  static String of(Io io, String word) {
    Path file = SourceFiles.path(word);
    Toolchain toolchain = new Toolchain(io, Options.NONE);
    Compiled compiled = toolchain.compile(file);
    if (usesFiles(compiled) && compiled.hasErrors()) {
      for (Path lesson : lessonsOfThisName(file)) {
        Compiled there = toolchain.compile(lesson, compiled.text());
        if (!there.hasErrors()) {
          compiled = there;
          break;
        }
      }
    }
    return compiled.hasErrors() ? compiled.text() : Grid.of(compiled.lesson(), section -> true);
  }

  private static boolean usesFiles(Compiled compiled) {
    return !compiled.syntax().isEmpty()
        && compiled.syntax().get(0).lines().stream()
            .map(Line::statement)
            .anyMatch(SettingStatement.Use.class::isInstance);
  }

  /** The lessons below the current folder, where git starts its programs at the top. */
  private static List<Path> lessonsOfThisName(Path file) {
    Path name = file.getFileName();
    List<Path> found = new ArrayList<>();
    try {
      for (Path lesson : SourceFiles.find(List.of("."))) {
        if (name != null && lesson.getFileName().equals(name) && Files.isRegularFile(lesson)) {
          found.add(lesson.normalize());
        }
      }
    } catch (Failure nothing) {
      return List.of();
    }
    return List.copyOf(found);
  }
}
