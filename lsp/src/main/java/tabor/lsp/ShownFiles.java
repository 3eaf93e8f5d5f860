package tabor.lsp;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.Set;
import org.eclipse.lsp4j.ShowDocumentParams;
import org.jspecify.annotations.Nullable;

/** Files that are made to be looked at, in a folder of their own that goes with the server. */
final class ShownFiles {
  private final Session session;
  private final Set<Path> made = new LinkedHashSet<>();
  private @Nullable Path folder;
  private boolean closed;

  ShownFiles(Session session) {
    this.session = session;
  }

  /**
   * Puts a file where the client can open it, and asks it to.
   *
   * @param external true for what an editor shows as text, and another program as it is meant
   */
  synchronized Path show(String name, byte[] bytes, boolean external) {
    if (closed) {
      throw Requests.refused("The server is shutting down"); // nobody would take the file away
    }
    try {
      if (folder == null) {
        folder = Files.createTempDirectory("tabor-show");
      }
      Path file = folder.resolve(name);
      Files.write(file, bytes);
      made.add(file);
      if (session.settings().showsDocuments()
          && session.capabilities().has("window", "showDocument", "support")) {
        ShowDocumentParams params = new ShowDocumentParams(Uris.of(file));
        params.setExternal(external);
        params.setTakeFocus(false);
        session.client().showDocument(params);
      }
      return file;
    } catch (IOException e) {
      throw Requests.refused("Cannot write " + name + ": " + e.getMessage());
    }
  }

  /** Takes away what was made. */
  synchronized void close() {
    closed = true;
    try {
      for (Path file : made) {
        Files.deleteIfExists(file);
      }
      if (folder != null) {
        Files.deleteIfExists(folder);
      }
    } catch (IOException e) {
      session.log().say("a file that was shown stays", e);
    }
    made.clear();
    folder = null;
  }
}
