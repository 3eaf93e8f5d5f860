package tabor.notation;

import java.util.IdentityHashMap;
import java.util.List;

/** From which event to which each tuplet of a voice reaches in one bar. */
final class Extents {
  private final IdentityHashMap<Node, int[]> reach = new IdentityHashMap<>();

  Extents(List<Draft> drafts) {
    for (int i = 0; i < drafts.size(); i++) {
      for (Node tuplet : drafts.get(i).tuplets()) {
        int[] known = reach.get(tuplet);
        if (known == null) {
          reach.put(tuplet, new int[] {i, i});
        } else {
          known[1] = i;
        }
      }
    }
  }

  /** The index of a tuplet's first event. */
  int first(Node tuplet) {
    return reach(tuplet)[0];
  }

  /** The index of a tuplet's last event. */
  int last(Node tuplet) {
    return reach(tuplet)[1];
  }

  private int[] reach(Node tuplet) {
    int[] known = reach.get(tuplet);
    if (known == null) {
      throw new IllegalArgumentException("a tuplet of another bar");
    }
    return known;
  }
}
