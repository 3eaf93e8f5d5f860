package tabor.lsp;

import com.google.gson.JsonArray;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.eclipse.lsp4j.CodeLens;
import org.eclipse.lsp4j.CodeLensParams;
import org.eclipse.lsp4j.Command;
import org.eclipse.lsp4j.InlayHintParams;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import tabor.groove.Changes;
import tabor.groove.Groove;
import tabor.groove.Player;
import tabor.ide.CodeLenses;
import tabor.ide.InlayHints;
import tabor.lsp.Scheduler.Lane;
import tabor.lsp.transport.JsonText;
import tabor.source.Span;

/** What a client shows in the lines and above the sections: hints and lenses. */
final class AnnotationRequests {
  private final Session session;

  /** What a lens's data calls a file by: thousands of lenses need not repeat a URI. */
  private final Map<String, Integer> numbers = new ConcurrentHashMap<>();

  AnnotationRequests(Session session) {
    this.session = session;
  }

  void declare(Requests requests) {
    requests.inFile(
        Lane.READING,
        "textDocument/inlayHint",
        InlayHintParams.class,
        p -> p.getTextDocument().getUri(),
        this::hints,
        "range.start",
        "range.end");
    requests.inFile(
        Lane.READING,
        "textDocument/codeLens",
        CodeLensParams.class,
        p -> p.getTextDocument().getUri(),
        (file, params) -> lenses(file));
    requests.futures("codeLens/resolve", CodeLens.class, this::resolve, "data", "range");
  }

  private JsonText hints(FileContext file, InlayHintParams params) {
    Set<InlayHints.Kind> kinds = session.settings().hints();
    JsonText json = new JsonText().add("[");
    if (!kinds.isEmpty()) {
      Span range = file.span(params.getRange());
      for (InlayHints.Hint hint : InlayHints.in(file.compiled(), range, kinds)) {
        Position at = session.encoding().position(file.document().lines(), hint.offset());
        PositionEncoding.write(json.comma().add("{\"position\":"), at);
        json.add(",\"label\":").string(hint.text());
        json.add(",\"paddingLeft\":true}");
      }
    }
    return json.add("]");
  }

  /**
   * One row above each section, above the first one more for the whole file, and one above each
   * player if they are wanted. What they say is asked for as they come into sight.
   */
  private JsonText lenses(FileContext file) {
    int number = numbers.computeIfAbsent(file.document().uri(), uri -> numbers.size());
    JsonText json = new JsonText().add("[");
    boolean first = true;
    Span whole = new Span(0, file.document().text().length());
    for (CodeLenses.Lens lens : CodeLenses.in(file.compiled(), whole)) {
      int line = file.document().lines().lineOf(lens.heading().start());
      for (String what : offered(lens)) {
        lens(json, line, number, what, lens.section());
      }
      if (first) {
        lens(json, line, number, "build", "");
        first = false;
      }
    }
    if (session.settings().showsPlayers()) {
      for (CodeLenses.PlayerLens lens : CodeLenses.players(file.compiled())) {
        int line = file.document().lines().lineOf(lens.heading().start());
        lens(json, line, number, "showPlayer", lens.player());
      }
    }
    return json.add("]");
  }

  private static List<String> offered(CodeLenses.Lens lens) {
    List<String> found = new ArrayList<>(List.of("play", "showGrid"));
    if (lens.pictured()) {
      found.add("showSvg");
    }
    if (lens.step()) {
      found.add("changes");
    }
    return found;
  }

  private static void lens(JsonText json, int line, int file, String what, String section) {
    json.comma().add("{\"range\":{\"start\":{\"line\":").add(line);
    json.add(",\"character\":0},\"end\":{\"line\":").add(line).add(",\"character\":0}},\"data\":[");
    json.add(file).add(",\"").add(what).add("\",").string(section).add("]}");
  }

  private java.util.concurrent.CompletableFuture<?> resolve(CodeLens lens) {
    if (!(lens.getData() instanceof JsonArray data) || data.size() != 3) {
      throw Requests.invalid("codeLens/resolve: not our lens");
    }
    int number = data.get(0).getAsInt();
    String uri =
        numbers.entrySet().stream()
            .filter(entry -> entry.getValue() == number)
            .map(Map.Entry::getKey)
            .findFirst()
            .orElse("");
    String what = data.get(1).getAsString();
    String section = data.get(2).getAsString();
    return session
        .requests()
        .inFile(
            Lane.READING,
            session.requests().document(uri),
            file -> {
              Range range = lens.getRange();
              List<Object> arguments =
                  section.isEmpty() ? List.of(uri) : List.<Object>of(uri, section);
              String title = title(file, what, section);
              return new CodeLens(range, new Command(title, "tabor." + what, arguments), null);
            });
  }

  private static String caption(FileContext file, String player) {
    return file.compiled().lesson().extras().players().stream()
        .filter(one -> one.name().equals(player))
        .map(Player::caption)
        .findFirst()
        .orElse(player);
  }

  private static String title(FileContext file, String what, String section) {
    return switch (what) {
      case "play" -> "play";
      case "showGrid" -> "grid";
      case "showSvg" -> "notation";
      case "build" -> "build this file";
      case "showPlayer" -> "as " + caption(file, section) + " gets it";
      default -> {
        int strokes =
            file.compiled().lesson().sections().stream()
                .filter(one -> one.name().equals(section) && one instanceof Groove)
                .mapToInt(step -> Changes.of((Groove) step).count())
                .findFirst()
                .orElse(0);
        yield strokes == 1 ? "1 stroke changed" : strokes + " strokes changed";
      }
    };
  }
}
