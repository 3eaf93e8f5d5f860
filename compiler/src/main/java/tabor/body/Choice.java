package tabor.body;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.body.Loop.Hit;
import tabor.body.Loop.Instant;

/**
 * One way to deal the open strokes of an instant.
 *
 * @param right what the right limb strikes, given or dealt
 * @param left what the left limb strikes
 * @param undealt how many open strokes find no limb
 */
record Choice(@Nullable Hit right, @Nullable Hit left, int undealt) {

  /** True if both limbs are needed: each strikes, or helps the other. */
  boolean takesBoth() {
    return (right != null && (left != null || right.engages())) || (left != null && left.engages());
  }

  /** All ways to deal an instant: as many open strokes as limbs are free; the right limb first. */
  static List<Choice> of(Instant instant) {
    List<Hit> open = instant.open;
    int free = (instant.right == null ? 1 : 0) + (instant.left == null ? 1 : 0);
    if (open.isEmpty() || free == 0) {
      return List.of(new Choice(instant.right, instant.left, open.size()));
    }
    List<Choice> choices = new ArrayList<>(2);
    if (free == 1) {
      for (Hit hit : open) {
        choices.add(
            instant.right == null
                ? new Choice(hit, instant.left, open.size() - 1)
                : new Choice(instant.right, hit, open.size() - 1));
      }
    } else if (open.size() == 1) {
      choices.add(new Choice(open.get(0), null, 0));
      choices.add(new Choice(null, open.get(0), 0));
    } else {
      for (Hit right : open) {
        for (Hit left : open) {
          if (right.open() != left.open()) {
            choices.add(new Choice(right, left, open.size() - 2));
          }
        }
      }
    }
    return choices;
  }
}
