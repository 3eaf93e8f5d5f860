package tabor.lsp;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.eclipse.lsp4j.DocumentDiagnosticParams;
import tabor.lsp.Scheduler.Lane;
import tabor.lsp.Scheduler.Rank;
import tabor.lsp.transport.JsonText;

/**
 * Diagnostics: pushed after every change, or kept ready for a client that pulls them. All of it
 * runs in the typing lane, which takes the newest text each time: a result for an older text can
 * not come after one for a newer. The file that was changed goes first, those that rest on it
 * follow when nothing else waits.
 */
final class DiagnosticPublisher {
  private final Session session;

  /** What each open file was last told, or would be. */
  private final Map<Path, Told> told = new HashMap<>();

  /** The version of each open file that was answered, by the document itself. */
  private final Map<Path, OpenDocument> answered = new HashMap<>();

  /** Changed files whose dependents were not looked at since. */
  private final Set<Path> changed = new LinkedHashSet<>();

  private int number;

  private record Told(String diagnostics, String id) {}

  DiagnosticPublisher(Session session) {
    this.session = session;
  }

  void declare(Requests requests) {
    requests.inFile(
        Lane.TYPING,
        "textDocument/diagnostic",
        DocumentDiagnosticParams.class,
        params -> params.getTextDocument().getUri(),
        (file, params) -> pulled(file.document(), params));
  }

  private boolean pulls() {
    return session.capabilities().has("textDocument", "diagnostic");
  }

  /** A file changed, in the editor or on disk: it and what rests on it is checked again. */
  void touched(Path path) {
    session.compiled().outdate();
    session.scheduler().soon(() -> check(path));
  }

  /** A file was closed: it has no diagnostics any more, and what is on disk counts again. */
  void closed(OpenDocument document) {
    session.compiled().outdate();
    session
        .scheduler()
        .later(
            Rank.CHECK,
            () -> {
              if (session.documents().at(document.path()).isEmpty()) {
                session.compiled().forget(document.path());
                session.tokens().forget(document.path());
                told.remove(document.path());
                answered.remove(document.path());
                if (!pulls()) {
                  session.client().publish(about(document).add(",\"diagnostics\":[]}"));
                }
                dependentsOf(document.path());
              }
            });
    session.scheduler().later(Rank.DEPENDENTS, () -> forgetInLanes(document.path()));
  }

  /** After the requests that came before the file was closed: these may compile it once more. */
  private void forgetInLanes(Path path) {
    if (session.documents().at(path).isPresent()) {
      return;
    }
    for (Lane lane : Lane.values()) {
      if (session.library(lane).isUsed()) {
        session.scheduler().ahead(lane, () -> session.library(lane).forget(path));
      }
    }
  }

  private void check(Path path) {
    OpenDocument document = session.documents().at(path).orElse(null);
    if (document != null) {
      if (answered.get(path) == document) {
        return; // a later change was answered already, by the same text
      }
      tell(document);
    }
    dependentsOf(path);
  }

  private void dependentsOf(Path path) {
    boolean others =
        session.documents().all().stream().anyMatch(document -> !document.path().equals(path));
    if (others && changed.add(path) && changed.size() == 1) {
      session.scheduler().later(Rank.DEPENDENTS, this::checkDependents);
    }
  }

  private void checkDependents() {
    Set<Path> causes = Set.copyOf(changed);
    changed.clear();
    boolean different = false;
    for (OpenDocument other : session.documents().all()) {
      Set<Path> rests = session.compiled().dependencies(other.path());
      if (causes.stream().anyMatch(rests::contains)) {
        different |= tell(other);
      }
    }
    if (different
        && pulls()
        && session.capabilities().has("workspace", "diagnostics", "refreshSupport")) {
      session.client().refresh("diagnostic");
    }
  }

  /**
   * Checks a document and publishes; true if its diagnostics are different from before. Those of a
   * version that the client was told nothing of yet are published even where they are the same.
   */
  private boolean tell(OpenDocument document) {
    Told before = told.get(document.path());
    Told now = look(document);
    boolean different = before == null || !before.diagnostics.equals(now.diagnostics);
    boolean isNew = answered.put(document.path(), document) != document;
    if (!pulls() && (isNew || different)) {
      session
          .client()
          .publish(
              about(document)
                  .add(",\"version\":")
                  .add(document.version())
                  .add(",\"diagnostics\":")
                  .add(now.diagnostics)
                  .add("}"));
    }
    if (before == null) {
      session.compiled().share();
      session.tokens().ahead(document);
    }
    return different;
  }

  private static JsonText about(OpenDocument document) {
    return new JsonText().add("{\"uri\":").string(document.uri());
  }

  private Told look(OpenDocument document) {
    String found =
        DiagnosticWriter.write(session, session.compiled().of(document), document).toString();
    Told before = told.get(document.path());
    String id =
        before != null && before.diagnostics.equals(found)
            ? before.id
            : document.version() + "-" + ++number;
    Told now = new Told(found, id);
    told.put(document.path(), now);
    return now;
  }

  private JsonText pulled(OpenDocument document, DocumentDiagnosticParams params) {
    Told now = look(document);
    if (Objects.equals(params.getPreviousResultId(), now.id)) {
      return new JsonText().add("{\"kind\":\"unchanged\",\"resultId\":").string(now.id).add("}");
    }
    return new JsonText()
        .add("{\"kind\":\"full\",\"resultId\":")
        .string(now.id)
        .add(",\"items\":")
        .add(now.diagnostics)
        .add("}");
  }
}
