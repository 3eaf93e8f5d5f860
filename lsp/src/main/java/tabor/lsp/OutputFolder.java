package tabor.lsp;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import tabor.cli.OutputFiles;

/**
 * A folder that outputs are written into. It lies in the workspace by its name and through its
 * links, and what is written there replaces plain files and nothing else: a command that a lens
 * sends must not reach farther. A file appears whole or not at all, and one that has these bytes
 * already keeps its time stamp.
 */
final class OutputFolder {
  private final Path root;
  private final Path folder;

  /**
   * A folder in a workspace folder.
   *
   * @param root the real workspace folder
   * @param folder what was asked for, which need not be there yet
   */
  OutputFolder(Path root, Path folder) {
    this.root = root;
    this.folder = new RealPaths().ofFolder(folder);
    if (!this.folder.startsWith(root)) {
      throw Requests.refused("The folder must lie in the workspace: " + folder);
    }
  }

  /** The real folder. */
  Path path() {
    return folder;
  }

  /**
   * Makes the folder, and those above it.
   *
   * @throws IOException if that cannot be done
   */
  void make() throws IOException {
    Files.createDirectories(folder);
    if (!Workspace.staysInside(root, folder)) {
      throw new IOException("it leads out of the workspace");
    }
  }

  /**
   * Writes a file.
   *
   * @throws IOException if it cannot be written, or if something else than a file has its name
   */
  void write(String name, byte[] bytes) throws IOException {
    Path file = folder.resolve(name);
    boolean there = Files.exists(file, LinkOption.NOFOLLOW_LINKS);
    if (there && !Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
      throw new IOException(name + " is there and is no plain file");
    }
    if (there && OutputFiles.holds(file, bytes)) {
      return;
    }
    Path beside = beside();
    try {
      OutputFiles.replace(file, beside, bytes);
    } finally {
      Files.deleteIfExists(beside);
    }
  }

  /** A new file that others may read like any other: a temporary one would be its maker's alone. */
  private Path beside() throws IOException {
    for (int number = 0; ; number++) {
      Path part =
          folder.resolve(".tabor-" + ProcessHandle.current().pid() + "-" + number + ".part");
      try {
        return Files.createFile(part);
      } catch (FileAlreadyExistsException e) {
        // Left by an earlier process, or in use by another machine on the same disk.
      }
    }
  }
}
