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
record DocumentNotifications(Session session) {
  void declare(Requests requests) {
    requests.told(
        "textDocument/didOpen",
        DidOpenTextDocumentParams.class,
        this::opened,
        "textDocument.uri",
        "textDocument.text");
    requests.told(
        "textDocument/didChange",
        DidChangeTextDocumentParams.class,
        this::changed,
        "textDocument.uri",
        "contentChanges");
    requests.told(
        "textDocument/didClose",
        DidCloseTextDocumentParams.class,
        this::closed,
        "textDocument.uri");
    requests.told("textDocument/didSave", DidSaveTextDocumentParams.class, params -> {});
    requests.told("$/setTrace", SetTraceParams.class, params -> {});
    requests.told(
        "workspace/didChangeWatchedFiles",
        DidChangeWatchedFilesParams.class,
        this::onDisk,
        "changes");
    requests.told(
        "workspace/didChangeWorkspaceFolders",
        DidChangeWorkspaceFoldersParams.class,
        this::folders,
        "event.added",
        "event.removed");
  }

  private void opened(DidOpenTextDocumentParams params) {
    OpenDocument document = session.documents().open(params.getTextDocument());
    session.diagnostics().touched(document.path());
  }

  private void changed(DidChangeTextDocumentParams params) {
    Optional<OpenDocument> after =
        session
            .documents()
            .change(params.getTextDocument(), params.getContentChanges(), session.encoding());
    if (after.isEmpty()) {
      session
          .log()
          .say("a change of a file that is not open: " + params.getTextDocument().getUri());
      return;
    }
    session.requests().edited(after.get().path());
    session.diagnostics().touched(after.get().path());
  }

  private void closed(DidCloseTextDocumentParams params) {
    session
        .documents()
        .close(params.getTextDocument().getUri())
        .ifPresent(document -> session.diagnostics().closed(document));
  }

  private void onDisk(DidChangeWatchedFilesParams params) {
    for (FileEvent event : params.getChanges()) {
      Uris.path(event.getUri())
          .map(session.paths()::ofFile)
          .ifPresent(path -> session.diagnostics().touched(path));
    }
  }

  private void folders(DidChangeWorkspaceFoldersParams params) {
    for (WorkspaceFolder folder : params.getEvent().getRemoved()) {
      Uris.path(folder.getUri()).ifPresent(session.workspace()::remove);
    }
    for (WorkspaceFolder folder : params.getEvent().getAdded()) {
      Uris.path(folder.getUri()).ifPresent(session.workspace()::add);
    }
    for (OpenDocument document : session.documents().all()) {
      session.diagnostics().touched(document.path());
    }
  }
}
