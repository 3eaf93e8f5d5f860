package tabor.lsp;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.eclipse.lsp4j.SemanticTokens;
import org.eclipse.lsp4j.SemanticTokensDelta;
import org.eclipse.lsp4j.SemanticTokensDeltaParams;
import org.eclipse.lsp4j.SemanticTokensEdit;
import org.eclipse.lsp4j.SemanticTokensParams;
import org.eclipse.lsp4j.SemanticTokensRangeParams;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import tabor.ide.Tokens;
import tabor.source.Span;

/** Semantic tokens: of a file, of a range, or only what changed since the client last asked. */
final class Colours {
  private final Session session;
  private final Tokens tokens = new Tokens();
  private final Map<Path, Sent> sent = new HashMap<>();
  private int number;

  private record Sent(String id, int[] data) {}

  Colours(Session session) {
    this.session = session;
  }

  void declare(Routes routes) {
    routes.about(
        "textDocument/semanticTokens/full",
        SemanticTokensParams.class,
        p -> p.getTextDocument().getUri(),
        (document, params, wanted) -> full(document));
    routes.about(
        "textDocument/semanticTokens/full/delta",
        SemanticTokensDeltaParams.class,
        p -> p.getTextDocument().getUri(),
        this::delta);
    routes.about(
        "textDocument/semanticTokens/range",
        SemanticTokensRangeParams.class,
        p -> p.getTextDocument().getUri(),
        this::range);
  }

  /** Lets go of a closed file. */
  void forget(Path path) {
    sent.remove(path);
  }

  private SemanticTokens full(Document document) {
    int[] data = data(document, new Span(0, document.lines().length()));
    return new SemanticTokens(keep(document, data), list(data, 0, data.length));
  }

  private SemanticTokens range(
      Document document, SemanticTokensRangeParams params, Worker.Wanted wanted) {
    int[] data = data(document, session.encoding().span(document.lines(), params.getRange()));
    return new SemanticTokens(list(data, 0, data.length));
  }

  private Either<SemanticTokens, SemanticTokensDelta> delta(
      Document document, SemanticTokensDeltaParams params, Worker.Wanted wanted) {
    Sent before = sent.get(document.path());
    if (before == null || !before.id.equals(params.getPreviousResultId())) {
      return Either.forLeft(full(document));
    }
    int[] now = data(document, new Span(0, document.lines().length()));
    String id = keep(document, now);
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
    List<SemanticTokensEdit> edits = new ArrayList<>();
    if (same < now.length || same < before.data.length) {
      edits.add(
          new SemanticTokensEdit(
              same, before.data.length - tail - same, list(now, same, now.length - tail)));
    }
    return Either.forRight(new SemanticTokensDelta(edits, id));
  }

  private String keep(Document document, int[] data) {
    String id = Integer.toString(++number);
    sent.put(document.path(), new Sent(id, data));
    return id;
  }

  private static List<Integer> list(int[] data, int from, int to) {
    List<Integer> found = new ArrayList<>(to - from);
    for (int i = from; i < to; i++) {
      found.add(data[i]);
    }
    return found;
  }

  /** Five numbers a token: lines down, characters along, length, kind, modifiers. */
  private int[] data(Document document, Span range) {
    List<Tokens.Token> found = tokens.in(session.analyses().of(document), range);
    int[] data = new int[found.size() * 5];
    TextLines lines = document.lines();
    int line = 0;
    int column = 0;
    int at = 0;
    for (Tokens.Token token : found) {
      int start = token.span().start();
      int newLine = lines.lineOf(start);
      int newColumn = session.encoding().units(lines.text(), lines.lineStart(newLine), start);
      data[at++] = newLine - line;
      data[at++] = newLine == line ? newColumn - column : newColumn;
      data[at++] = session.encoding().units(lines.text(), start, token.span().end());
      data[at++] = token.kind().ordinal();
      data[at++] = (token.given() ? 1 : 0) | (token.accent() ? 2 : 0);
      line = newLine;
      column = newColumn;
    }
    return data;
  }
}
