package tabor.cli;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Places in an output folder; nothing leads out of it, not even through a link that lies there. */
final class SafeFolder {
  private SafeFolder() {}

  /**
   * The file of a name with slashes, its folder made; fails if the place lies outside.
   *
   * @param folder must be there
   */
  static Path file(Path folder, String name) {
    Path base = folder.toAbsolutePath().normalize();
    Path file = base.resolve(name).normalize();
    Path parent = file.getParent();
    try {
      if (parent == null || !file.startsWith(base)) {
        throw Failure.outside("nothing is written outside " + folder + ": " + name);
      }
      if (!Files.isDirectory(parent)) {
        Path there = parent;
        while (!Files.exists(there) && there.getParent() != null) {
          there = there.getParent();
        }
        refuseOutside(folder, there, name);
        Files.createDirectories(parent);
      }
      refuseOutside(folder, parent, name);
      if (Files.isSymbolicLink(file)) {
        throw Failure.outside(
            file + " is a link, and nothing is written through links; remove it first");
      }
      return file;
    } catch (FileAlreadyExistsException e) {
      throw Failure.outside("cannot write " + file + ": a file has the name of its folder");
    } catch (IOException e) {
      throw Failure.outside("cannot write " + file + ": " + SourceReader.reason(e));
    }
  }

  private static void refuseOutside(Path folder, Path place, String name) throws IOException {
    if (!place.toRealPath().startsWith(folder.toRealPath())) {
      throw Failure.outside(
          "nothing is written for " + name + ": a link leads out of " + folder + " there");
    }
  }
}
