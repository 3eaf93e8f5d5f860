package tabor.lsp;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DocumentDiagnosticParams;
import org.eclipse.lsp4j.DocumentDiagnosticReport;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.RelatedFullDocumentDiagnosticReport;
import org.eclipse.lsp4j.RelatedUnchangedDocumentDiagnosticReport;
import tabor.compile.Compiled;

/**
 * Diagnostics: pushed after every change, or kept ready for a client that pulls them. All of it
 * runs on the worker, which takes the newest text each time: a result for an older text can not
 * come after one for a newer.
 */
final class Checks {
  private final Session session;

  /** What each open file was last told, or would be. */
  private final Map<Path, Told> told = new HashMap<>();

  private record Told(Document document, List<Diagnostic> diagnostics, String id) {}

  Checks(Session session) {
    this.session = session;
  }

  void declare(Routes routes) {
    routes.about(
        "textDocument/diagnostic",
        DocumentDiagnosticParams.class,
        params -> params.getTextDocument().getUri(),
        this::pulled);
  }

  private boolean pulls() {
    return session.capabilities().has("textDocument", "diagnostic");
  }

  /** A file changed, in the editor or on disk: it and what rests on it is checked again. */
  void touched(Path path) {
    session.analyses().outdate();
    session.worker().soon(() -> check(path));
  }

  /** A file was closed: it has no diagnostics any more, and what is on disk counts again. */
  void closed(Document document) {
    session.analyses().outdate();
    session
        .worker()
        .later(
            () -> {
              if (session.documents().at(document.path()).isEmpty()) {
                session.analyses().forget(document.path());
                session.colours().forget(document.path());
                told.remove(document.path());
                if (!pulls()) {
                  session.client().publish(new PublishDiagnosticsParams(document.uri(), List.of()));
                }
                checkDependents(document.path());
              }
            });
  }

  private void check(Path path) {
    Document document = session.documents().at(path).orElse(null);
    if (document != null) {
      Told before = told.get(path);
      if (before != null && before.document == document) {
        return; // a later change was answered already, by the same text
      }
      tell(document, true);
    }
    checkDependents(path);
  }

  private void checkDependents(Path changed) {
    boolean different = false;
    for (Document other : session.documents().all()) {
      if (!other.path().equals(changed)
          && session.analyses().dependencies(other.path()).contains(changed)) {
        different |= tell(other, false);
      }
    }
    if (different
        && pulls()
        && session.capabilities().has("workspace", "diagnostics", "refreshSupport")) {
      session.client().refresh("diagnostic");
    }
  }

  /** Checks a document and publishes; true if its diagnostics are different from before. */
  private boolean tell(Document document, boolean always) {
    Told before = told.get(document.path());
    Told now = look(document);
    boolean different = before == null || !before.diagnostics.equals(now.diagnostics);
    if (!pulls() && (always || different)) {
      session
          .client()
          .publish(
              new PublishDiagnosticsParams(document.uri(), now.diagnostics, document.version()));
    }
    return different;
  }

  private Told look(Document document) {
    Compiled compiled = session.analyses().of(document);
    List<Diagnostic> found = new ArrayList<>();
    ToLsp to = new ToLsp(session, compiled, document);
    for (tabor.diagnostic.Diagnostic diagnostic : compiled.diagnostics()) {
      found.add(to.diagnostic(diagnostic));
    }
    Told before = told.get(document.path());
    String id =
        before != null && before.diagnostics.equals(found)
            ? before.id
            : document.version() + "-" + Integer.toHexString(found.hashCode());
    Told now = new Told(document, found, id);
    told.put(document.path(), now);
    return now;
  }

  private DocumentDiagnosticReport pulled(
      Document document, DocumentDiagnosticParams params, Worker.Wanted wanted) {
    Told now = look(document);
    if (Objects.equals(params.getPreviousResultId(), now.id)) {
      return new DocumentDiagnosticReport(new RelatedUnchangedDocumentDiagnosticReport(now.id));
    }
    RelatedFullDocumentDiagnosticReport full =
        new RelatedFullDocumentDiagnosticReport(now.diagnostics);
    full.setResultId(now.id);
    return new DocumentDiagnosticReport(full);
  }
}
