package tabor.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.Field;
import java.lang.reflect.Type;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.eclipse.lsp4j.jsonrpc.json.JsonRpcMethod;
import org.eclipse.lsp4j.jsonrpc.services.ServiceEndpoints;
import org.eclipse.lsp4j.jsonrpc.validation.NonNull;
import org.eclipse.lsp4j.services.LanguageServer;
import org.junit.jupiter.api.Test;
import tabor.lsp.transport.MethodTable;

/** Our table of methods against LSP4J's, which is read off its annotated interfaces. */
class MethodTableTest {
  /** Read as JSON, so that hundreds of classes need not be loaded before the first answer. */
  private static final Set<String> AS_JSON = Set.of("initialize", "initialized");

  /** Left out by clients, and never looked at or looked at with care. */
  private static final Set<String> DISPENSABLE =
      Set.of(
          "$/setTrace value",
          "textDocument/codeAction context",
          "textDocument/didSave textDocument",
          "textDocument/formatting options",
          "textDocument/onTypeFormatting options",
          "textDocument/onTypeFormatting ch",
          "textDocument/rangeFormatting options",
          "textDocument/references context",
          "workspace/didChangeConfiguration settings");

  private static final Map<String, JsonRpcMethod> THEIRS =
      ServiceEndpoints.getSupportedMethods(LanguageServer.class);

  private static Map<String, MethodTable.Method> ours() {
    Session session = new Session(Log.NONE, "test", () -> {});
    Server unused = new Server(session, Log.NONE, code -> {});
    Map<String, MethodTable.Method> methods = session.requests().methods().all();
    session.close(Duration.ofMinutes(1));
    return methods;
  }

  @Test
  void everyMethodIsOneOfTheProtocolWithItsParameters() {
    assertThat(ours()).hasSizeGreaterThan(35);
    ours()
        .forEach(
            (name, method) -> {
              JsonRpcMethod theirs = THEIRS.get(name);
              assertThat(theirs).as(name).isNotNull();
              assertThat(method.notification()).as(name).isEqualTo(theirs.isNotification());
              if (!AS_JSON.contains(name)) {
                Type[] types = theirs.getParameterTypes();
                assertThat(method.parameters())
                    .as(name)
                    .isEqualTo(types.length == 0 ? Void.class : types[0]);
              }
            });
  }

  /** What LSP4J says must be there is asked for, so that a handler never meets its absence. */
  @Test
  void whatMustBeThereIsRequired() {
    List<String> missing = new ArrayList<>();
    ours()
        .forEach(
            (name, method) -> {
              if (!AS_JSON.contains(name) && method.parameters() instanceof Class<?> type) {
                for (Class<?> at = type; at != null; at = at.getSuperclass()) {
                  for (Field field : at.getDeclaredFields()) {
                    boolean required =
                        method.required().stream()
                            .anyMatch(
                                path ->
                                    path.equals(field.getName())
                                        || path.startsWith(field.getName() + "."));
                    if (field.isAnnotationPresent(NonNull.class) && !required) {
                      missing.add(name + " " + field.getName());
                    }
                  }
                }
              }
            });
    assertThat(missing).containsExactlyInAnyOrderElementsOf(DISPENSABLE);
  }
}
