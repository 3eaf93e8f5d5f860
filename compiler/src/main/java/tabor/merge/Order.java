package tabor.merge;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * In which order the things of three texts stand in the merged one: in ours, with what they put in,
 * moved or kept at the place that it has behind the thing before it in theirs. Where both put
 * something in at one place, ours comes first.
 */
record Order(int[] oursToBase, int[] theirsToBase, Trio[] trios) {
  /**
   * Every thing of the three texts once.
   *
   * @param base how many the base has
   * @param oursToBase for each of ours which of the base it is; -1 for a new one
   * @param theirsToBase the same for theirs
   * @param theirsToOurs for each of theirs that is new which new one of ours it is; else -1
   */
  static List<Trio> of(int base, int[] oursToBase, int[] theirsToBase, int[] theirsToOurs) {
    int[] baseToOurs = inverse(base, oursToBase);
    int[] baseToTheirs = inverse(base, theirsToBase);
    int[] oursToTheirs = inverse(oursToBase.length, theirsToOurs);
    Trio[] ours = new Trio[oursToBase.length];
    for (int i = 0; i < ours.length; i++) {
      int from = oursToBase[i];
      ours[i] = new Trio(from, i, from >= 0 ? baseToTheirs[from] : oursToTheirs[i]);
    }
    Order order = new Order(oursToBase, theirsToBase, ours);
    return order.merge(baseToOurs, theirsToOurs);
  }

  private static int[] inverse(int size, int[] map) {
    int[] inverse = new int[size];
    Arrays.fill(inverse, -1);
    for (int i = 0; i < map.length; i++) {
      if (map[i] >= 0) {
        inverse[map[i]] = i;
      }
    }
    return inverse;
  }

  private List<Trio> merge(int[] baseToOurs, int[] theirsToOurs) {
    Set<Integer> movedByUs = moved(oursToBase);
    Set<Integer> movedByThem = moved(theirsToBase);
    Set<Trio> toMove = new HashSet<>();
    for (Trio trio : trios) {
      if (trio.isInAll()
          && movedByThem.contains(trio.theirs())
          && !movedByUs.contains(trio.ours())) {
        toMove.add(trio);
      }
    }
    // A chain, in which each finds its place and what is put in shifts nothing.
    Link first = new Link(null);
    Link[] links = new Link[trios.length];
    Link end = first;
    for (int i = 0; i < trios.length; i++) {
      if (!toMove.contains(trios[i])) {
        links[i] = end.insert(trios[i]);
        end = links[i];
      }
    }
    Link before = first;
    for (int j = 0; j < theirsToBase.length; j++) {
      int from = theirsToBase[j];
      int our = from >= 0 ? baseToOurs[from] : theirsToOurs[j];
      Link at = our >= 0 ? links[our] : null;
      if (at == null) {
        at = before;
        while (at.next != null && isOnlyOurs(at.next)) {
          at = at.next;
        }
        at = at.insert(our >= 0 ? trios[our] : new Trio(from, -1, j));
      }
      before = at;
    }
    List<Trio> merged = new ArrayList<>();
    for (Link link = first.next; link != null; link = link.next) {
      merged.add(Objects.requireNonNull(link.trio));
    }
    return merged;
  }

  /** One of a chain; the first holds nothing. */
  private static final class Link {
    final @Nullable Trio trio;
    @Nullable Link next;

    Link(@Nullable Trio trio) {
      this.trio = trio;
    }

    /** Puts one in behind this. */
    Link insert(Trio other) {
      Link link = new Link(other);
      link.next = next;
      next = link;
      return link;
    }
  }

  private static boolean isOnlyOurs(Link link) {
    Trio trio = link.trio;
    return trio != null && trio.base() < 0 && trio.theirs() < 0;
  }

  /** Which of a text stand in another order than in the base: as few as explain it. */
  private static Set<Integer> moved(int[] toBase) {
    List<Integer> kept = new ArrayList<>();
    for (int i = 0; i < toBase.length; i++) {
      if (toBase[i] >= 0) {
        kept.add(i);
      }
    }
    Set<Integer> moved = new HashSet<>(kept);
    rising(kept, toBase).forEach(moved::remove);
    return moved;
  }

  /** A longest run of them whose places in the base rise. */
  private static List<Integer> rising(List<Integer> kept, int[] toBase) {
    int[] last = new int[kept.size()];
    int[] before = new int[kept.size()];
    int length = 0;
    for (int k = 0; k < kept.size(); k++) {
      int value = toBase[kept.get(k)];
      int low = 0;
      int high = length;
      while (low < high) {
        int middle = (low + high) / 2;
        if (toBase[kept.get(last[middle])] < value) {
          low = middle + 1;
        } else {
          high = middle;
        }
      }
      before[k] = low == 0 ? -1 : last[low - 1];
      last[low] = k;
      length = Math.max(length, low + 1);
    }
    List<Integer> run = new ArrayList<>();
    for (int k = length == 0 ? -1 : last[length - 1]; k >= 0; k = before[k]) {
      run.add(kept.get(k));
    }
    return run;
  }
}
