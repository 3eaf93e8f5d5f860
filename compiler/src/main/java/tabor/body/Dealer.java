package tabor.body;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.groove.Snap;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.lists.Lists;
import tabor.rhythm.Time;

/** Deals open strokes to limbs. */
public final class Dealer {
  /** The order in which open strokes are taken: of time, then of surface. */
  public static final Comparator<Stroke> BY_SURFACE =
      (a, b) -> {
        // Written out, since the comparators that Java puts together are in no class archive.
        int order = Stroke.byPlace(a, b);
        return order == 0 ? a.surface().name().compareTo(b.surface().name()) : order;
      };

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
    if (!Snap.isSwungEighths(setting.feel())) {
      return asWritten(setting, bars, pickup, given, open);
    }
    List<Stroke> all = new ArrayList<>(given);
    open.forEach(one -> all.add(one.stroke()));
    List<Stroke> shown = Snap.each(setting, all);
    return isMoved(all, shown)
        ? asShown(setting, bars, pickup, shown, open)
        : asWritten(setting, bars, pickup, given, open);
  }

  private static boolean isMoved(List<Stroke> written, List<Stroke> shown) {
    for (int i = 0; i < written.size(); i++) {
      Stroke one = written.get(i);
      if (one.bar() != shown.get(i).bar() || !one.at().equals(shown.get(i).at())) {
        return true;
      }
    }
    return false;
  }

  /**
   * Deals where words of two snap to a triplet: strokes meet there that stand apart as written.
   *
   * @param shown all strokes where they are struck, those that are given first
   */
  private static List<@Nullable Limb> asShown(
      Groove.Setting setting, int bars, Time pickup, List<Stroke> shown, List<Open> open) {
    int count = shown.size() - open.size();
    List<Stroke> given = new ArrayList<>(shown.subList(0, count));
    given.sort(BY_SURFACE);
    List<Stroke> struck = shown.subList(count, shown.size());
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < open.size(); i++) {
      order.add(i);
    }
    order.sort((a, b) -> BY_SURFACE.compare(struck.get(a), struck.get(b)));
    List<Open> asked = new ArrayList<>();
    int[] askedAs = new int[open.size()];
    for (int index : order) {
      Open one = open.get(index);
      Stroke stroke = struck.get(index);
      Open last = asked.isEmpty() ? null : asked.get(asked.size() - 1);
      // Two that meet on one surface become one stroke, so they need one limb.
      boolean meets =
          last != null
              && last.hands() == one.hands()
              && BY_SURFACE.compare(last.stroke(), stroke) == 0;
      if (!meets) {
        asked.add(new Open(stroke, one.hands(), one.ofPair(), one.before()));
      }
      askedAs[index] = asked.size() - 1;
    }
    List<@Nullable Limb> limbs = asWritten(setting, bars, pickup, given, asked);
    List<@Nullable Limb> dealt = new ArrayList<>(open.size());
    for (int index : askedAs) {
      dealt.add(limbs.get(index));
    }
    return dealt;
  }

  private static List<@Nullable Limb> asWritten(
      Groove.Setting setting, int bars, Time pickup, List<Stroke> given, List<Open> open) {
    List<@Nullable Limb> dealt = new ArrayList<>(Collections.nCopies(open.size(), null));
    for (boolean hands : new boolean[] {true, false}) {
      if (Lists.any(open, one -> one.hands() == hands)) {
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
