package tabor.build;

import java.nio.charset.StandardCharsets;
import java.util.List;
import tabor.emit.grid.Grid;
import tabor.groove.Lesson;

/** Files to read. */
final class PageFiles {
  private PageFiles() {}

  static List<Output> grid(Lesson lesson, BuildOptions options) {
    return List.of(text(lesson.file() + ".txt", () -> Grid.of(lesson, options::wants)));
  }

  private static Output text(String name, java.util.function.Supplier<String> text) {
    return new Output(name, () -> text.get().getBytes(StandardCharsets.UTF_8));
  }
}
