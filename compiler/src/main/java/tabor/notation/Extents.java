package tabor.notation;

import java.util.IdentityHashMap;
import java.util.List;

/** From which event to which each tuplet of a voice reaches in one bar. */
final class Extents {
  private final IdentityHashMap<RhythmNode, int[]> reach = new IdentityHashMap<>();

  Extents(List<Draft> drafts) {
    for (int i = 0; i < drafts.size(); i++) {
      for (RhythmNode tuplet : drafts.get(i).tuplets()) {
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
  int first(RhythmNode tuplet) {
    return reach(tuplet)[0];
  }

  /** The index of a tuplet's last event. */
  int last(RhythmNode tuplet) {
    return reach(tuplet)[1];
  }

  private int[] reach(RhythmNode tuplet) {
    int[] known = reach.get(tuplet);
    if (known == null) {
      throw new IllegalArgumentException("a tuplet of another bar");
    }
    return known;
  }
}
