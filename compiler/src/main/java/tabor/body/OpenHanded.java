package tabor.body;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.lists.Lists;
import tabor.rhythm.Time;

/** Deals a section for a player whose left hand keeps the hi-hat, so that no arm crosses. */
public final class OpenHanded {
  private OpenHanded() {}

  /**
   * The strokes with the stick's hi-hat under the left hand and all other hand strokes dealt again,
   * those with a written hand too. Where both hands are on the hi-hat at once they stay; a section
   * without a hi-hat stays as it is.
   *
   * @param setting what the section is played with
   * @param bars number of whole bars
   * @param pickup length of bar 0
   * @param strokes in the order of {@link Stroke#ORDER}, before a left-handed player is mirrored
   * @return as many strokes, each at its index
   */
  public static List<Stroke> deal(
      Groove.Setting setting, int bars, Time pickup, List<Stroke> strokes) {
    if (!Lists.any(strokes, OpenHanded::isHiHat)) {
      return strokes;
    }
    List<Stroke> given = new ArrayList<>();
    List<Dealer.Open> open = new ArrayList<>();
    List<Integer> openAt = new ArrayList<>();
    List<Stroke> dealt = new ArrayList<>(strokes);
    for (int i = 0; i < strokes.size(); i++) {
      Stroke stroke = strokes.get(i);
      if (isHiHat(stroke) && !bothOnHiHat(strokes, i)) {
        Stroke left = stroke.by(Limb.LEFT_HAND, stroke.dealt());
        dealt.set(i, left);
        given.add(left);
      } else if (isHiHat(stroke) || !stroke.limb().isHand()) {
        given.add(stroke);
      } else {
        open.add(new Dealer.Open(stroke, true, false, null));
        openAt.add(i);
      }
    }
    List<@Nullable Limb> limbs = Dealer.deal(setting, bars, pickup, given, open);
    for (int i = 0; i < open.size(); i++) {
      Limb limb = limbs.get(i);
      Stroke stroke = open.get(i).stroke();
      if (limb != null && limb != stroke.limb()) {
        dealt.set(openAt.get(i), stroke.by(limb, true));
      }
    }
    return dealt;
  }

  private static boolean isHiHat(Stroke stroke) {
    return stroke.surface().sort() == Surface.Sort.STICK_HIHAT;
  }

  private static boolean bothOnHiHat(List<Stroke> strokes, int index) {
    return isPartner(strokes, index, index - 1) || isPartner(strokes, index, index + 1);
  }

  private static boolean isPartner(List<Stroke> strokes, int index, int other) {
    if (other < 0 || other >= strokes.size()) {
      return false;
    }
    Stroke a = strokes.get(index);
    Stroke b = strokes.get(other);
    return isHiHat(b) && Stroke.areTogether(a, b);
  }
}
