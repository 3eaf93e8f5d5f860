package tabor.ide;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tabor.compile.Compiled;
import tabor.source.Span;
import tabor.syntax.Line;
import tabor.syntax.SettingStatement;

/** The files that a file names after {@code use}. */
public final class UseLinks {
  private UseLinks() {}

  /**
   * A named file.
   *
   * @param file its path
   * @param span where it is named in the file that uses it, quotes included
   */
  public record Link(Path file, Span span) {}

  /** The links of a file's header in order; what cannot be a path is left out. */
  public static List<Link> of(Compiled compiled) {
    List<Link> found = new ArrayList<>();
    if (compiled.syntax().isEmpty()) {
      return found;
    }
    for (Line line : compiled.syntax().get(0).lines()) {
      if (line.statement() instanceof SettingStatement.Use use) {
        Span span = compiled.span(line.spot(use.file().span()));
        path(compiled.file(), use.file().value())
            .ifPresent(path -> found.add(new Link(path, span)));
      }
    }
    return found;
  }

  /** The file that the {@code use} under the cursor names. */
  public static Optional<Path> at(Compiled compiled, int offset) {
    return of(compiled).stream()
        .filter(link -> link.span().touches(offset))
        .map(Link::file)
        .findFirst();
  }

  /** How a file may name the other files of its folder tree. */
  static List<String> usable(Compiled compiled, Library library) {
    Path self = compiled.file();
    Path folder = self.getParent();
    return folder == null
        ? List.of()
        : library.files().stream()
            .filter(file -> file.startsWith(folder) && !file.equals(self))
            .map(file -> folder.relativize(file).toString().replace('\\', '/'))
            .toList();
  }

  /** The path of a file that another one names; empty if it cannot be one. */
  public static Optional<Path> path(Path from, String name) {
    try {
      return Optional.of(from.resolveSibling(name).normalize());
    } catch (InvalidPathException e) {
      return Optional.empty();
    }
  }
}
