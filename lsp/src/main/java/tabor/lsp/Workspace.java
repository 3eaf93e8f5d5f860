package tabor.lsp;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import org.jspecify.annotations.Nullable;
import tabor.compile.Loader;
import tabor.ide.Catalog;

/**
 * The folders that the client works in. Files are read only inside them; beside a file that was
 * opened from elsewhere, only inside that file's own folder. Open files win over what is on disk.
 */
final class Workspace implements Loader {
  /** In bytes; larger files are not read: no lesson is. */
  private static final long LARGEST = 4L << 20;

  private static final int MOST_FILES = 2000;

  private final Documents documents;

  /** The folder of the file that is being compiled, which its {@code use} must stay in. */
  private @Nullable Path compiling;

  private final List<Path> folders = new CopyOnWriteArrayList<>();

  Workspace(Documents documents) {
    this.documents = documents;
  }

  /** From here on files are found for this one. Called by the worker alone. */
  void compiling(Path file) {
    compiling = file.getParent();
  }

  /** Adds a folder. */
  void add(Path folder) {
    folders.add(folder.toAbsolutePath().normalize());
  }

  /** Takes a folder out. */
  void remove(Path folder) {
    folders.remove(folder.toAbsolutePath().normalize());
  }

  /** The folder tree that a file may use files of: the innermost workspace folder, else its own. */
  Path rootOf(Path file) {
    return folders.stream()
        .filter(file::startsWith)
        .max(Comparator.comparingInt(Path::getNameCount))
        .orElseGet(() -> file.getParent() == null ? file : file.getParent());
  }

  /** The text of a file as it is now, unsaved changes included; empty if it may not be read. */
  Optional<String> read(Path file) {
    Path path = file.toAbsolutePath().normalize();
    Optional<Document> open = documents.at(path);
    if (open.isPresent()) {
      return open.map(Document::text);
    }
    if (!isInside(path)) {
      return Optional.empty();
    }
    try {
      if (!Files.isRegularFile(path) || Files.size(path) > LARGEST) {
        return Optional.empty();
      }
      return Optional.of(
          StandardCharsets.UTF_8
              .newDecoder()
              .decode(java.nio.ByteBuffer.wrap(Files.readAllBytes(path)))
              .toString());
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  @Override
  public Found load(Path user, String written) {
    Path path = Catalog.used(user, written).orElse(user);
    Path folder = compiling;
    if (folder == null || !path.startsWith(folder) || written.startsWith("/")) {
      return Found.trouble(path, Trouble.OUTSIDE);
    }
    Optional<Document> open = documents.at(path);
    if (open.isPresent()) {
      return Found.text(path, open.get().text());
    }
    try {
      if (!Files.isRegularFile(path)) {
        return Found.trouble(path, Trouble.MISSING);
      }
      if (!staysInside(folder, path)) {
        return Found.trouble(path, Trouble.OUTSIDE);
      }
      if (Files.size(path) > LARGEST) {
        return Found.trouble(path, Trouble.TOO_LONG);
      }
      return Found.text(path, decode(path));
    } catch (IOException e) {
      return Found.trouble(path, Trouble.UNREADABLE);
    }
  }

  private static String decode(Path path) throws IOException {
    return StandardCharsets.UTF_8
        .newDecoder()
        .decode(ByteBuffer.wrap(Files.readAllBytes(path)))
        .toString();
  }

  /** The open file at this path. */
  Optional<Document> open(Path path) {
    return documents.at(path);
  }

  /** True for a file in a workspace folder or in the tree of an open file, links followed. */
  private boolean isInside(Path path) {
    List<Path> roots = new ArrayList<>(folders);
    for (Document document : documents.all()) {
      if (document.onDisk()) {
        roots.add(rootOf(document.path()));
      }
    }
    return roots.stream().anyMatch(root -> path.startsWith(root) && staysInside(root, path));
  }

  private static boolean staysInside(Path root, Path path) {
    try {
      return path.toRealPath().startsWith(root.toRealPath());
    } catch (IOException e) {
      return false;
    }
  }

  /** The {@code .tabor} files of all folders, and the open ones. */
  List<Path> files() {
    List<Path> found = new ArrayList<>();
    for (Document document : documents.all()) {
      found.add(document.path());
    }
    for (Path folder : folders) {
      collect(folder, found);
    }
    return found.stream().distinct().toList();
  }

  private static void collect(Path folder, List<Path> found) {
    try {
      Files.walkFileTree(
          folder,
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
