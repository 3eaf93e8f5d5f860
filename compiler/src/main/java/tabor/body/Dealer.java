package tabor.body;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.rhythm.Time;

/** Deals open strokes to limbs. */
public final class Dealer {
  private Dealer() {}

  /**
   * A stroke whose limb the source leaves open.
   *
   * @param stroke the stroke; its limb is only a suggestion
   * @param hands true if the two hands may take it, false for the two feet
   * @param alternating true if it stands in a {@code hands} or {@code feet} lane, where even open
   *     strokes alternate from the right
   */
  public record Open(Stroke stroke, boolean hands, boolean alternating) {}

  /**
   * Deals all open strokes together, as a loop over the section: of all dealings one that costs
   * least by {@link Costs}. Where several cost the same, the right limb goes first.
   *
   * @param setting what the section is played with
   * @param bars number of whole bars
   * @param pickup length of bar 0
   * @param given strokes that have their limb, in the order of {@link Stroke#ORDER}; never changed
   * @param open the strokes to deal, in order of time
   * @return one limb for each open stroke, null where none of the pair is free
   */
  public static List<@Nullable Limb> deal(
      Groove.Setting setting, int bars, Time pickup, List<Stroke> given, List<Open> open) {
    List<@Nullable Limb> dealt = new ArrayList<>(Collections.nCopies(open.size(), null));
    for (boolean hands : new boolean[] {true, false}) {
      if (open.stream().anyMatch(one -> one.hands() == hands)) {
        Loop loop = Loop.of(setting, bars, pickup, given, open, hands);
        List<Option> settled = hands ? null : Pedals.settle(loop);
        if (settled != null) {
          take(settled, loop, dealt);
        } else {
          recall(loop, dealt);
        }
      }
    }
    return dealt;
  }

  /** Deals as the same loop was dealt before, or for the first time. */
  private static void recall(Loop loop, List<@Nullable Limb> dealt) {
    DealMemory.Key key = DealMemory.key(loop);
    byte[] known = key == null ? null : DealMemory.recall(key);
    if (known == null) {
      take(Deal.of(loop).options(), loop, dealt);
      if (key != null) {
        DealMemory.keep(key, sides(loop, dealt));
      }
      return;
    }
    int next = 0;
    for (Loop.Instant instant : loop.instants) {
      for (Loop.Hit hit : instant.open) {
        byte side = known[next++];
        dealt.set(hit.open(), side == 0 ? null : loop.limb(side == 1));
      }
    }
  }

  private static byte[] sides(Loop loop, List<@Nullable Limb> dealt) {
    int count = 0;
    for (Loop.Instant instant : loop.instants) {
      count += instant.open.size();
    }
    byte[] sides = new byte[count];
    int next = 0;
    for (Loop.Instant instant : loop.instants) {
      for (Loop.Hit hit : instant.open) {
        Limb limb = dealt.get(hit.open());
        sides[next++] = (byte) (limb == null ? 0 : limb.isRight() ? 1 : 2);
      }
    }
    return sides;
  }

  private static void take(List<Option> options, Loop loop, List<@Nullable Limb> dealt) {
    for (Option option : options) {
      take(option.right(), loop.limb(true), dealt);
      take(option.left(), loop.limb(false), dealt);
    }
  }

  private static void take(Loop.@Nullable Hit hit, Limb limb, List<@Nullable Limb> dealt) {
    if (hit != null && hit.open() >= 0) {
      dealt.set(hit.open(), limb);
    }
  }
}
