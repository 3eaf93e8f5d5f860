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
   * @param ofPair true if it stands in a {@code hands} or {@code feet} part: a row of its own,
   *     however slow
   * @param before the limb that it had in the section that this one came from; null if there was
   *     none. Among dealings that are equally good the one that keeps most of these is taken
   */
  public record Open(Stroke stroke, boolean hands, boolean ofPair, @Nullable Limb before) {}

  /**
   * Deals all open strokes together, as a loop over the section: of all dealings one that costs
   * least by {@link Weights}. Where several cost the same, the one nearest to the section before,
   * then the right limb first.
   *
   * @param setting what the section is played with
   * @param bars number of whole bars
   * @param pickup length of bar 0
   * @param given strokes that have their limb, in the order of {@link Stroke#ORDER}; never changed
   * @param open the strokes to deal, in order of time and, at one place, of surface
   * @return one limb for each open stroke, null where none of the pair is free
   */
  public static List<@Nullable Limb> deal(
      Groove.Setting setting, int bars, Time pickup, List<Stroke> given, List<Open> open) {
    List<@Nullable Limb> dealt = new ArrayList<>(Collections.nCopies(open.size(), null));
    for (boolean hands : new boolean[] {true, false}) {
      if (open.stream().anyMatch(one -> one.hands() == hands)) {
        Loop loop = Loop.of(setting, bars, pickup, given, open, hands);
        for (Choice choice : BestDealing.of(loop).choices()) {
          take(choice.right(), loop.limb(true), dealt);
          take(choice.left(), loop.limb(false), dealt);
        }
      }
    }
    return dealt;
  }

  private static void take(Loop.@Nullable Hit hit, Limb limb, List<@Nullable Limb> dealt) {
    if (hit != null && hit.open() >= 0) {
      dealt.set(hit.open(), limb);
    }
  }
}
