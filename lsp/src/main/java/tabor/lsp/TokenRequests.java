package tabor.lsp;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.eclipse.lsp4j.SemanticTokensDeltaParams;
import org.eclipse.lsp4j.SemanticTokensParams;
import org.eclipse.lsp4j.SemanticTokensRangeParams;
import tabor.compile.Compiled;
import tabor.lsp.Scheduler.Lane;
import tabor.lsp.transport.JsonText;
import tabor.syntax.SectionSyntax;

/** Semantic tokens: of a file, of a range, or only what changed since the client last asked. */
final class TokenRequests {
  /** Sections that are worked out ahead before others get their turn: a few milliseconds. */
  private static final int AT_ONCE = 100;

  private final Session session;
  private final TokenNumbers numbers;
  private final Map<Path, Sent> sent = new ConcurrentHashMap<>();
  private int number;

  private record Sent(String id, int[] data) {}

  TokenRequests(Session session) {
    this.session = session;
    numbers = new TokenNumbers(session);
  }

  void declare(Requests requests) {
    requests.inFile(
        Lane.READING,
        "textDocument/semanticTokens/full",
        SemanticTokensParams.class,
        p -> p.getTextDocument().getUri(),
        (file, params) -> full(file));
    requests.inFile(
        Lane.READING,
        "textDocument/semanticTokens/full/delta",
        SemanticTokensDeltaParams.class,
        p -> p.getTextDocument().getUri(),
        this::delta,
        "previousResultId");
    requests.inFile(
        Lane.READING,
        "textDocument/semanticTokens/range",
        SemanticTokensRangeParams.class,
        p -> p.getTextDocument().getUri(),
        this::range,
        "range.start",
        "range.end");
  }

  /**
   * Works out what an editor is about to ask of a file that it has opened, some sections at a time:
   * whatever was asked meanwhile goes first, and the next edit ends it.
   */
  void ahead(OpenDocument document) {
    if (session.capabilities().has("textDocument", "semanticTokens")) {
      session.compiled().known(document).ifPresent(compiled -> ahead(document, compiled, 0, 0));
    }
  }

  private void ahead(OpenDocument document, Compiled compiled, int section, int start) {
    session
        .scheduler()
        .ahead(
            Lane.READING,
            () -> {
              if (session.documents().at(document.path()).orElse(null) != document) {
                return;
              }
              List<SectionSyntax> all = compiled.syntax();
              int end = Math.min(all.size(), section + AT_ONCE);
              int next = numbers.ahead(all.subList(section, end), document.lines(), start);
              if (end < all.size()) {
                ahead(document, compiled, end, next);
              }
            });
  }

  /** How many sections are known. */
  int known() {
    return numbers.known();
  }

  /** Lets go of a closed file. */
  void forget(Path path) {
    sent.remove(path);
  }

  private JsonText full(FileContext file) {
    int[] data = numbers.all(file);
    return tokens(keep(file.document(), data), data);
  }

  private JsonText range(FileContext file, SemanticTokensRangeParams params) {
    return tokens("", numbers.in(file, file.span(params.getRange())));
  }

  private static JsonText tokens(String id, int[] data) {
    JsonText json = new JsonText().add("{");
    if (!id.isEmpty()) {
      json.add("\"resultId\":").string(id).add(",");
    }
    return list(json.add("\"data\":"), data, 0, data.length).add("}");
  }

  private JsonText delta(FileContext file, SemanticTokensDeltaParams params) {
    Sent before = sent.get(file.document().path());
    if (before == null || !before.id.equals(params.getPreviousResultId())) {
      return full(file);
    }
    int[] now = numbers.all(file);
    String id = keep(file.document(), now);
    int same = 0;
    int shorter = Math.min(now.length, before.data.length);
    while (same < shorter && now[same] == before.data[same]) {
      same++;
    }
    int tail = 0;
    while (tail < shorter - same
        && now[now.length - 1 - tail] == before.data[before.data.length - 1 - tail]) {
      tail++;
    }
    JsonText json = new JsonText().add("{\"resultId\":").string(id).add(",\"edits\":[");
    if (same < now.length || same < before.data.length) {
      json.add("{\"start\":").add(same);
      json.add(",\"deleteCount\":").add(before.data.length - tail - same);
      list(json.add(",\"data\":"), now, same, now.length - tail).add("}");
    }
    return json.add("]}");
  }

  private String keep(OpenDocument document, int[] data) {
    String id = Integer.toString(++number);
    sent.put(document.path(), new Sent(id, data));
    return id;
  }

  private static JsonText list(JsonText json, int[] data, int from, int to) {
    json.add("[");
    for (int i = from; i < to; i++) {
      json.comma().add(data[i]);
    }
    return json.add("]");
  }
}
