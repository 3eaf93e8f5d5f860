package tabor.resolve;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.body.Dealer;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Stroke;
import tabor.groove.Stroke.Choice;
import tabor.kit.Limb;
import tabor.rhythm.CountNames;
import tabor.source.Spot;

/** Finds limbs for the open strokes of a section. */
final class Dealing {
  private Dealing() {}

  /** A draft in which every open stroke has the limb that it would have if the section ended. */
  static SectionDraft dealt(SectionFrame frame, SectionDraft draft) {
    List<Stroke> strokes = draft.strokes();
    List<Stroke> given = new ArrayList<>(strokes.size());
    List<Dealer.Open> open = new ArrayList<>();
    for (Stroke stroke : strokes) {
      if (stroke.isOpen()) {
        open.add(new Dealer.Open(stroke, !stroke.surface().isFoot(), false));
      } else {
        given.add(stroke);
      }
    }
    if (open.isEmpty()) {
      return draft;
    }
    List<@Nullable Limb> limbs = deal(frame, draft, given, open);
    List<Stroke> all = given;
    for (int i = 0; i < open.size(); i++) {
      Stroke stroke = open.get(i).stroke();
      Limb limb = limbs.get(i);
      all.add(limb == null ? stroke.by(stroke.limb(), Choice.NONE_FREE) : stroke.by(limb, Choice.OPEN));
    }
    return draft.with(all);
  }

  private static List<@Nullable Limb> deal(
      SectionFrame frame, SectionDraft draft, List<Stroke> given, List<Dealer.Open> open) {
    return Dealer.deal(frame.setting(), draft.bars(), frame.pickup(), given, open);
  }

  /**
   * The limbs of strokes of {@code hands} and {@code feet} parts that leave them open, dealt with
   * all that is there; null where none is free.
   */
  static List<@Nullable Limb> limbs(SectionFrame frame, SectionDraft draft, List<Stroke> either) {
    List<Stroke> given = new ArrayList<>();
    List<Dealer.Open> open = new ArrayList<>();
    int next = 0;
    List<Integer> at = new ArrayList<>();
    for (Stroke stroke : draft.strokes()) {
      while (next < either.size() && Stroke.ORDER.compare(either.get(next), stroke) <= 0) {
        at.add(open.size());
        open.add(new Dealer.Open(either.get(next), either.get(next).limb().isHand(), true));
        next++;
      }
      if (stroke.isOpen()) {
        open.add(new Dealer.Open(stroke, !stroke.surface().isFoot(), false));
      } else {
        given.add(stroke);
      }
    }
    for (; next < either.size(); next++) {
      at.add(open.size());
      open.add(new Dealer.Open(either.get(next), either.get(next).limb().isHand(), true));
    }
    List<@Nullable Limb> limbs = deal(frame, draft, given, open);
    List<@Nullable Limb> own = new ArrayList<>();
    at.forEach(index -> own.add(limbs.get(index)));
    return own;
  }

  /**
   * Says for which strokes there is no limb. What was so already in the section that this one came
   * from is told there.
   */
  static void report(SectionFrame frame, Problems problems, SectionDraft dealt) {
    for (Stroke stroke : dealt.strokes()) {
      if (stroke.choice() == Choice.NONE_FREE) {
        problems.incomplete();
        List<Stroke> busy = busy(dealt, stroke);
        boolean own = frame.owns(stroke.spot());
        for (Stroke other : busy) {
          own |= frame.owns(other.spot());
        }
        if (own || !wasSo(frame, stroke)) {
          problems.add(noneFree(frame, problems, stroke, busy));
        }
      }
    }
  }

  private static boolean wasSo(SectionFrame frame, Stroke stroke) {
    return frame.base() != null
        && frame.base().written().stream()
            .anyMatch(
                other ->
                    other.choice() == Choice.NONE_FREE
                        && StrokeOrder.together(other, stroke)
                        && other.surface().name().equals(stroke.surface().name()));
  }

  private static List<Stroke> busy(SectionDraft draft, Stroke stroke) {
    List<Stroke> busy = new ArrayList<>();
    for (Stroke other : draft.view().inBar(stroke.bar())) {
      if (other.at().equals(stroke.at())
          && other.choice() != Choice.NONE_FREE
          && other.limb().isHand() != stroke.surface().isFoot()) {
        busy.add(other);
      }
    }
    return busy;
  }

  /** A diagnostic on a stroke that finds no limb; at the later of the lines in question. */
  static Diagnostic noneFree(
      SectionFrame frame, Problems problems, Stroke stroke, List<Stroke> busy) {
    boolean hands = !stroke.surface().isFoot();
    Spot spot = frame.owns(stroke.spot()) ? stroke.spot() : frame.heading().spot();
    for (Stroke other : busy) {
      if (frame.owns(other.spot())
          && (!frame.owns(stroke.spot())
              || other.spot().span().start() > spot.span().start())) {
        spot = other.spot();
      }
    }
    String count = CountNames.of(stroke.slot(), frame.meters().of(stroke.bar())).toString();
    Diagnostic made =
        problems
            .make(
                hands ? Code.THREE_HANDS : Code.THREE_FEET,
                spot,
                stroke.bar(),
                count,
                "at "
                    + count
                    + (hands ? " both hands" : " both feet")
                    + " are busy, and the "
                    + stroke.surface().words()
                    + " needs one more")
            .help(
                "leave one of the strokes at this place out, or move it"
                    + (hands ? "" : "; a drummer has two feet"));
    for (Stroke other : busy) {
      if (!other.spot().equals(spot)) {
        made =
            made.label(
                other.spot(),
                "the " + other.limb().words() + " plays the " + other.surface().words() + " here");
      }
    }
    return stroke.spot().equals(spot)
        ? made
        : made.label(stroke.spot(), "this stroke finds no limb");
  }
}
