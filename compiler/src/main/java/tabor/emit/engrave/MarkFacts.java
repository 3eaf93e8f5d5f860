package tabor.emit.engrave;

import java.util.AbstractMap;
import java.util.AbstractSet;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The facts of a group of marks, in order and for good. A drawing has some for each note head, and
 * is moved as a whole several times: they come along without being copied.
 */
final class MarkFacts extends AbstractMap<String, String> {
  private final List<Entry<String, String>> entries;

  private MarkFacts(List<Entry<String, String>> entries) {
    this.entries = entries;
  }

  /** The same facts. */
  static Map<String, String> of(Map<String, String> facts) {
    if (facts.isEmpty() || facts instanceof MarkFacts) {
      return facts.isEmpty() ? Map.of() : facts;
    }
    List<Entry<String, String>> entries = new ArrayList<>(facts.size());
    for (Entry<String, String> fact : facts.entrySet()) {
      entries.add(Map.entry(fact.getKey(), fact.getValue()));
    }
    return new MarkFacts(Collections.unmodifiableList(entries));
  }

  @Override
  public Set<Entry<String, String>> entrySet() {
    return new AbstractSet<>() {
      @Override
      public Iterator<Entry<String, String>> iterator() {
        return entries.iterator();
      }

      @Override
      public int size() {
        return entries.size();
      }
    };
  }
}
