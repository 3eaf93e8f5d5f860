package tabor.lsp.transport;

import java.lang.reflect.Type;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * The methods that are understood, and what their parameters are. A plain table in place of LSP4J's
 * annotated interfaces, which are read by reflection, method by method, before the first message
 * can be; a test holds it against them.
 */
public final class MethodTable {
  /**
   * A method.
   *
   * @param parameters what its parameters are read as
   * @param notification true if it is not answered
   * @param required paths of what must be there, such as {@code textDocument.uri}
   */
  public record Method(Type parameters, boolean notification, List<String> required) {
    /** Copies the list. */
    public Method {
      required = List.copyOf(required);
    }
  }

  private final Map<String, Method> methods = new TreeMap<>();

  /** Adds a method. */
  public void add(String name, Method method) {
    methods.put(name, method);
  }

  /** The method of a name; empty for one that is not understood. */
  public Optional<Method> find(String name) {
    return Optional.ofNullable(methods.get(name));
  }

  /** All of them by name. */
  public Map<String, Method> all() {
    return Collections.unmodifiableMap(methods);
  }
}
