package tabor.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.Map;

/** Files that are all written, or none of them; nothing that is there already is replaced. */
final class NewFiles {
  private static final String SCRIPT = "#!";

  private final Map<Path, String> texts = new LinkedHashMap<>();
  private final Deque<Path> made = new ArrayDeque<>();

  /** Plans one file; a text that begins with {@code #!} may be run. */
  void add(Path file, String text) {
    texts.put(file, text);
  }

  /** Writes them; if one fails, takes back what was made and fails with a sentence. */
  void write() {
    texts.forEach(this::one);
  }

  private void one(Path file, String text) {
    try {
      folder(file.toAbsolutePath().getParent());
      // Fails if somebody has made it meanwhile.
      Files.write(file, new byte[0], StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
      made.push(file);
      Files.write(file, text.getBytes(StandardCharsets.UTF_8));
      PosixFileAttributeView view = Files.getFileAttributeView(file, PosixFileAttributeView.class);
      if (text.startsWith(SCRIPT) && view != null) {
        view.setPermissions(PosixFilePermissions.fromString("rwxr-xr-x"));
      }
    } catch (IOException e) {
      takeBack();
      throw Failure.outside(
          "cannot write " + file + ": " + SourceReader.reason(e) + "; nothing is written");
    }
  }

  private void folder(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) {
      folder(folder.getParent());
      Files.createDirectory(folder);
      made.push(folder);
    }
  }

  private void takeBack() {
    for (Path path : made) {
      try {
        Files.deleteIfExists(path);
      } catch (IOException e) {
        // It stays, and the next attempt says that it is there.
      }
    }
  }
}
