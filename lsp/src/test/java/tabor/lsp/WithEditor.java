package tabor.lsp;

import org.eclipse.lsp4j.services.TextDocumentService;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;

/** Tests that talk to a server of their own through a small editor. */
abstract class WithEditor {
  Editor editor;

  @BeforeEach
  void start() throws Exception {
    editor = Editor.start();
  }

  @AfterEach
  void stop() throws Exception {
    editor.close();
  }

  TextDocumentService documents() {
    return editor.server.getTextDocumentService();
  }
}
