package tabor.lsp;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;
import org.eclipse.lsp4j.DidChangeConfigurationParams;
import org.jspecify.annotations.Nullable;
import tabor.ide.InlayHints;

/**
 * What a person has set: which notes stand in the lines, none of them at first. Told with {@code
 * initialize}, with a change of settings, or asked for.
 *
 * <p>{@code {"inlayHints": {"hands": true, "bars": true, "counts": true}, "playerLens": true,
 * "showDocument": false}}
 */
final class Settings {
  /** The client's settings are under this name. */
  static final String SECTION = "tabor";

  private final Session session;
  private volatile Set<InlayHints.Kind> hints = Set.of();
  private volatile boolean showsDocuments = true;
  private volatile boolean showsPlayers = true;

  Settings(Session session) {
    this.session = session;
  }

  void declare(Requests requests) {
    requests.told(
        "workspace/didChangeConfiguration", DidChangeConfigurationParams.class, this::changed);
  }

  /** The kinds of note that are wanted in the lines. */
  Set<InlayHints.Kind> hints() {
    return hints;
  }

  /** False for a client that opens what a command answers with by itself. */
  boolean showsDocuments() {
    return showsDocuments;
  }

  /** True if a lens above each player shows the lesson as that player gets it. */
  boolean showsPlayers() {
    return showsPlayers;
  }

  /** Takes in what came with {@code initialize}. */
  void initially(@Nullable JsonElement options) {
    if (options instanceof JsonObject object) {
      if (object.get("showDocument") instanceof JsonPrimitive word && word.isBoolean()) {
        showsDocuments = word.getAsBoolean();
      }
      // Nothing is shown yet that would have to be asked for again.
      showsPlayers = players(object);
      take(object);
    }
  }

  private void changed(DidChangeConfigurationParams params) {
    if (params.getSettings() instanceof JsonObject object
        && object.get(SECTION) instanceof JsonObject ours) {
      take(ours);
    } else {
      ask();
    }
  }

  /** Asks the client, if it can be asked. */
  void ask() {
    if (session.capabilities().has("workspace", "configuration")) {
      session
          .client()
          .configuration(
              SECTION,
              answer -> {
                Object first =
                    answer instanceof JsonArray list && !list.isEmpty() ? list.get(0) : answer;
                if (first instanceof JsonObject object) {
                  take(object);
                }
              });
    }
  }

  private static boolean players(JsonObject settings) {
    return !(settings.get("playerLens") instanceof JsonPrimitive word && word.isBoolean())
        || word.getAsBoolean();
  }

  private void take(JsonObject settings) {
    Set<InlayHints.Kind> now = EnumSet.noneOf(InlayHints.Kind.class);
    JsonElement kinds = settings.get("inlayHints");
    for (InlayHints.Kind kind : InlayHints.Kind.values()) {
      String word = kind.name().toLowerCase(Locale.ROOT);
      boolean on =
          kinds instanceof JsonObject each
              ? each.get(word) instanceof JsonPrimitive value && value.getAsBoolean()
              : kinds instanceof JsonPrimitive all && all.getAsBoolean();
      if (on) {
        now.add(kind);
      }
    }
    boolean players = players(settings);
    if (players != showsPlayers) {
      showsPlayers = players;
      if (session.capabilities().has("workspace", "codeLens", "refreshSupport")) {
        session.client().refresh("codeLens");
      }
    }
    if (!now.equals(hints)) {
      hints = now;
      if (session.capabilities().has("workspace", "inlayHint", "refreshSupport")) {
        session.client().refresh("inlayHint");
      }
    }
  }
}
