package tabor.lsp;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitOption;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import org.jspecify.annotations.Nullable;
import tabor.compile.Loader;
import tabor.ide.UseLinks;

/**
 * The folders that the client works in. Files are read only inside them; beside a file that was
 * opened from elsewhere, only inside that file's own folder. Open files win over what is on disk.
 * Any thread may ask.
 */
final class Workspace {
  /** In bytes; larger files are not read: no lesson is. */
  private static final long LARGEST = 4L << 20;

  private static final int MOST_FILES = 2000;

  /** Beside a file without a folder, files are looked for in its own and the folders in that. */
  private static final int DEPTH_WITHOUT_FOLDER = 2;

  private final OpenDocuments documents;
  private final RealPaths paths;

  private final List<Path> folders = new CopyOnWriteArrayList<>();

  Workspace(OpenDocuments documents, RealPaths paths) {
    this.documents = documents;
    this.paths = paths;
  }

  /** Adds a folder. */
  void add(Path folder) {
    folders.add(paths.ofFolder(folder));
  }

  /** Takes a folder out. */
  void remove(Path folder) {
    folders.remove(paths.ofFolder(folder));
  }

  /** The folder tree that a file may use files of: the innermost workspace folder, else its own. */
  Path rootOf(Path file) {
    return folderOf(file).orElseGet(() -> file.getParent() == null ? file : file.getParent());
  }

  private Optional<Path> folderOf(Path file) {
    return folders.stream()
        .filter(file::startsWith)
        .max(Comparator.comparingInt(Path::getNameCount));
  }

  /** The URI that the client knows a file by. */
  String uri(Path file) {
    return documents
        .at(file)
        .map(OpenDocument::uri)
        .orElseGet(() -> Uris.of(paths.asWritten(file)));
  }

  /** The text of a file as it is now, unsaved changes included; empty if it may not be read. */
  Optional<String> read(Path file) {
    Path path = paths.ofFile(file);
    Optional<OpenDocument> open = documents.at(path);
    if (open.isPresent()) {
      return open.map(OpenDocument::text);
    }
    if (!isInside(path)) {
      return Optional.empty();
    }
    try {
      if (!Files.isRegularFile(path) || Files.size(path) > LARGEST) {
        return Optional.empty();
      }
      return Optional.of(decode(path));
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  /**
   * The file that {@code user} names.
   *
   * @param folder that of the file which is compiled, where those that it uses must lie
   */
  Loader.Found load(@Nullable Path folder, Path user, String written) {
    Path named = UseLinks.path(user, written).orElse(user);
    if (folder == null || !named.startsWith(folder) || written.startsWith("/")) {
      return Loader.Found.trouble(named, Loader.Trouble.OUTSIDE);
    }
    Path path = paths.ofFile(named);
    Optional<OpenDocument> open = documents.at(path);
    if (open.isPresent()) {
      return path.startsWith(folder)
          ? Loader.Found.text(path, open.get().text())
          : Loader.Found.trouble(path, Loader.Trouble.OUTSIDE);
    }
    try {
      if (!Files.isRegularFile(path)) {
        return Loader.Found.trouble(path, Loader.Trouble.MISSING);
      }
      if (!staysInside(folder, path)) {
        return Loader.Found.trouble(path, Loader.Trouble.OUTSIDE);
      }
      if (Files.size(path) > LARGEST) {
        return Loader.Found.trouble(path, Loader.Trouble.TOO_LONG);
      }
      return Loader.Found.text(path, decode(path));
    } catch (IOException e) {
      return Loader.Found.trouble(path, Loader.Trouble.UNREADABLE);
    }
  }

  private static String decode(Path path) throws IOException {
    return StandardCharsets.UTF_8
        .newDecoder()
        .decode(ByteBuffer.wrap(Files.readAllBytes(path)))
        .toString();
  }

  /** The open file at this path. */
  Optional<OpenDocument> open(Path path) {
    return documents.at(path);
  }

  /** True for a file in a workspace folder or in the tree of an open file, links followed. */
  private boolean isInside(Path path) {
    List<Path> roots = new ArrayList<>(folders);
    for (OpenDocument document : documents.all()) {
      if (document.onDisk()) {
        roots.add(rootOf(document.path()));
      }
    }
    return roots.stream().anyMatch(root -> path.startsWith(root) && staysInside(root, path));
  }

  /** True if a file or folder lies in a tree, links followed. */
  static boolean staysInside(Path root, Path path) {
    try {
      return path.toRealPath().startsWith(root.toRealPath());
    } catch (IOException e) {
      return false;
    }
  }

  /** The {@code .tabor} files of all folders, the open ones, and those beside open ones. */
  List<Path> files() {
    Set<Path> found = new LinkedHashSet<>();
    Set<Path> beside = new LinkedHashSet<>();
    for (OpenDocument document : documents.all()) {
      found.add(document.path());
      if (document.onDisk() && folderOf(document.path()).isEmpty()) {
        beside.add(rootOf(document.path()));
      }
    }
    folders.forEach(folder -> collect(folder, Integer.MAX_VALUE, found));
    beside.forEach(folder -> collect(folder, DEPTH_WITHOUT_FOLDER, found));
    return List.copyOf(found);
  }

  private static void collect(Path folder, int depth, Set<Path> found) {
    try {
      Files.walkFileTree(
          folder,
          Set.<FileVisitOption>of(),
          depth,
          new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult preVisitDirectory(Path dir, BasicFileAttributes attributes) {
              Path name = dir.getFileName();
              boolean skipped =
                  !dir.equals(folder)
                      && name != null
                      && (name.toString().startsWith(".")
                          || name.toString().equals("node_modules"));
              return skipped ? FileVisitResult.SKIP_SUBTREE : FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
              if (file.toString().endsWith(".tabor") && attributes.isRegularFile()) {
                found.add(file);
              }
              return found.size() < MOST_FILES
                  ? FileVisitResult.CONTINUE
                  : FileVisitResult.TERMINATE;
            }

            @Override
            public FileVisitResult visitFileFailed(Path file, IOException e) {
              return FileVisitResult.CONTINUE;
            }
          });
    } catch (IOException e) {
      // A folder that cannot be walked has no files for us.
    }
  }
}
