package tabor.body;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tabor.body.Loop.Hit;
import tabor.body.Loop.Instant;
import tabor.kit.Surface;

/**
 * Remembers how loops were dealt lately: lessons repeat themselves, and a loop of the same content
 * is dealt the same. Safe for several threads; of bounded size.
 */
final class DealMemory {
  private DealMemory() {}

  private static final int MOST_LOOPS = 512;
  private static final int MOST_INSTANTS = 600;

  private static final Map<Key, byte[]> KNOWN =
      new LinkedHashMap<>(64, 0.75f, true) {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Key, byte[]> eldest) {
          return size() > MOST_LOOPS;
        }
      };

  /** All that a dealing hangs on. */
  static final class Key {
    private final Places places;
    private final List<Surface> surfaces;
    private final long[] content;
    private final int hash;

    private Key(Loop loop, long[] content) {
      this.places = loop.places;
      this.surfaces = List.copyOf(loop.surfaces);
      this.content = content;
      this.hash = Arrays.hashCode(content) * 31 + surfaces.hashCode();
    }

    @Override
    public boolean equals(@Nullable Object other) {
      return other instanceof Key key
          && key.hash == hash
          && key.places == places
          && key.surfaces.equals(surfaces)
          && Arrays.equals(key.content, content);
    }

    @Override
    public int hashCode() {
      return hash;
    }
  }

  /** The key of a loop; null for one that is too long to be remembered. */
  static @Nullable Key key(Loop loop) {
    if (loop.instants.size() > MOST_INSTANTS) {
      return null;
    }
    int hits = 0;
    for (Instant instant : loop.instants) {
      hits += 2 + instant.open.size();
    }
    long[] content = new long[2 + loop.habit.size() + loop.instants.size() + hits * 3];
    int at = 0;
    content[at++] = loop.hands ? 1 : 0;
    content[at++] = loop.length;
    for (int habit : loop.habit) {
      content[at++] = habit;
    }
    for (Instant instant : loop.instants) {
      content[at++] = instant.at * 8 + instant.open.size();
      at = put(content, at, instant.right);
      at = put(content, at, instant.left);
      for (Hit hit : instant.open) {
        at = put(content, at, hit);
      }
    }
    return new Key(loop, content);
  }

  private static int put(long[] content, int at, @Nullable Hit hit) {
    if (hit == null) {
      content[at] = -1;
    } else {
      content[at] =
          hit.id() * 16L
              + (hit.engages() ? 8 : 0)
              + (hit.openRoll() ? 4 : 0)
              + (hit.alternating() ? 2 : 0)
              + (hit.open() >= 0 ? 1 : 0);
      content[at + 1] = hit.end();
      content[at + 2] = hit.strong();
    }
    return at + 3;
  }

  /** How a loop was dealt: for each open stroke in order 1 right, 2 left, 0 nobody; or null. */
  static byte @Nullable [] recall(Key key) {
    synchronized (KNOWN) {
      return KNOWN.get(key);
    }
  }

  /** Remembers a dealing. */
  static void keep(Key key, byte[] dealt) {
    synchronized (KNOWN) {
      KNOWN.put(key, dealt);
    }
  }
}
