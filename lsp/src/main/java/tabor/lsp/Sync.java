package tabor.lsp;

import java.util.Optional;
import org.eclipse.lsp4j.DidChangeTextDocumentParams;
import org.eclipse.lsp4j.DidChangeWatchedFilesParams;
import org.eclipse.lsp4j.DidChangeWorkspaceFoldersParams;
import org.eclipse.lsp4j.DidCloseTextDocumentParams;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.DidSaveTextDocumentParams;
import org.eclipse.lsp4j.FileEvent;
import org.eclipse.lsp4j.SetTraceParams;
import org.eclipse.lsp4j.WorkspaceFolder;

/** Keeps the open files, the folders and the files on disk as the client has them. */
final class Sync {
  private final Session session;

  Sync(Session session) {
    this.session = session;
  }

  void declare(Routes routes) {
    routes.told("textDocument/didOpen", DidOpenTextDocumentParams.class, this::opened);
    routes.told("textDocument/didChange", DidChangeTextDocumentParams.class, this::changed);
    routes.told("textDocument/didClose", DidCloseTextDocumentParams.class, this::closed);
    routes.told("textDocument/didSave", DidSaveTextDocumentParams.class, params -> {});
    routes.told("$/setTrace", SetTraceParams.class, params -> {});
    routes.told("workspace/didChangeConfiguration", Object.class, params -> {});
    routes.told("workspace/didChangeWatchedFiles", DidChangeWatchedFilesParams.class, this::onDisk);
    routes.told(
        "workspace/didChangeWorkspaceFolders",
        DidChangeWorkspaceFoldersParams.class,
        this::folders);
  }

  private void opened(DidOpenTextDocumentParams params) {
    Document document = session.documents().open(params.getTextDocument());
    session.checks().touched(document.path());
  }

  private void changed(DidChangeTextDocumentParams params) {
    Optional<Document> after =
        session
            .documents()
            .change(params.getTextDocument(), params.getContentChanges(), session.encoding());
    if (after.isEmpty()) {
      session
          .log()
          .say("a change of a file that is not open: " + params.getTextDocument().getUri());
      return;
    }
    session.checks().touched(after.get().path());
  }

  private void closed(DidCloseTextDocumentParams params) {
    session
        .documents()
        .close(params.getTextDocument().getUri())
        .ifPresent(document -> session.checks().closed(document));
  }

  private void onDisk(DidChangeWatchedFilesParams params) {
    for (FileEvent event : params.getChanges()) {
      Uris.path(event.getUri()).ifPresent(path -> session.checks().touched(path));
    }
  }

  private void folders(DidChangeWorkspaceFoldersParams params) {
    for (WorkspaceFolder folder : params.getEvent().getRemoved()) {
      Uris.path(folder.getUri()).ifPresent(session.workspace()::remove);
    }
    for (WorkspaceFolder folder : params.getEvent().getAdded()) {
      Uris.path(folder.getUri()).ifPresent(session.workspace()::add);
    }
    for (Document document : session.documents().all()) {
      session.checks().touched(document.path());
    }
  }
}
