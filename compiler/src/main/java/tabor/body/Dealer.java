package tabor.body;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.kit.Surface;
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
   * Deals all open strokes together, as a loop over the section.
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
    Map<List<Object>, Map<Limb, Surface>> busy = new HashMap<>();
    for (Stroke stroke : given) {
      busy.computeIfAbsent(List.of(stroke.bar(), stroke.at()), k -> new HashMap<>())
          .put(stroke.limb(), stroke.surface());
    }
    List<@Nullable Limb> dealt = new ArrayList<>();
    int turn = 0;
    for (Open one : open) {
      Stroke stroke = one.stroke();
      Limb right = one.hands() ? Limb.RIGHT_HAND : Limb.RIGHT_FOOT;
      Limb first = right;
      if (one.alternating()) {
        first = turn++ % 2 == 0 ? right : right.other();
      } else if (stroke.surface().name().startsWith("hihat.") && stroke.surface().isFoot()) {
        first = Limb.LEFT_FOOT;
      }
      Map<Limb, Surface> here =
          busy.computeIfAbsent(List.of(stroke.bar(), stroke.at()), k -> new HashMap<>());
      Limb chosen =
          !here.containsKey(first)
              ? first
              : !here.containsKey(first.other()) ? first.other() : null;
      if (chosen != null) {
        here.put(chosen, stroke.surface());
      }
      dealt.add(chosen);
    }
    return dealt;
  }
}
