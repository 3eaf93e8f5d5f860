package tabor.ide;

import java.nio.file.Path;
import java.util.Optional;
import tabor.compile.Compiled;

/** From a {@code use} to its file. */
public final class Links {
  private Links() {}

  /** The file that the cursor's {@code use} names. */
  public static Optional<Path> at(Compiled compiled, int offset) {
    Leaf leaf = Cursor.at(compiled, offset).leaf();
    return leaf != null && leaf.role() == Leaf.Role.FILE
        ? Catalog.used(compiled.file(), leaf.text())
        : Optional.empty();
  }
}
