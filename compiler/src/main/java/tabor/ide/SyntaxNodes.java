package tabor.ide;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tabor.source.Span;

/**
 * Walks the tree by the components of its records, so that a new kind of line is coloured, found,
 * renamed and explained without a word here.
 */
final class SyntaxNodes {
  private SyntaxNodes() {}

  /** The components of each kind of record that hold nodes, looked up once. */
  private static final ClassValue<List<Method>> COMPONENTS =
      new ClassValue<>() {
        @Override
        protected List<Method> computeValue(Class<?> type) {
          List<Method> found = new ArrayList<>();
          if (type.isRecord()) {
            for (RecordComponent component : type.getRecordComponents()) {
              Class<?> held = component.getType();
              boolean node = List.class.isAssignableFrom(held) || isNode(held);
              if (node && held != Span.class) {
                Method accessor = component.getAccessor();
                accessor.setAccessible(true); // else each call looks at who calls
                found.add(accessor);
              }
            }
          }
          return found;
        }
      };

  private static boolean isNode(Class<?> type) {
    return (type.isRecord() || type.isInterface()) && type.getPackageName().equals("tabor.syntax");
  }

  /** The nodes directly in a node, in the order of its components. */
  static List<Object> in(Object node) {
    List<Object> found = new ArrayList<>();
    for (Method component : COMPONENTS.get(node.getClass())) {
      Object value;
      try {
        value = component.invoke(node);
      } catch (IllegalAccessException | InvocationTargetException e) {
        throw new IllegalStateException("a node of the tree cannot be read", e);
      }
      if (value instanceof List<?> items) {
        found.addAll(items);
      } else if (value != null) {
        found.add(value);
      }
    }
    return found;
  }

  /** The outermost nodes of a kind in a node. */
  static <T> List<T> all(Object node, Class<T> kind) {
    List<T> found = new ArrayList<>();
    for (Object inside : in(node)) {
      if (kind.isInstance(inside)) {
        found.add(kind.cast(inside));
      } else {
        found.addAll(all(inside, kind));
      }
    }
    return found;
  }

  /** The first node of a kind in a node. */
  static <T> Optional<T> first(Object node, Class<T> kind) {
    return all(node, kind).stream().findFirst();
  }
}
