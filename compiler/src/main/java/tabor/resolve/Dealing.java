package tabor.resolve;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tabor.body.Dealer;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.lists.Lists;
import tabor.rhythm.CountNames;
import tabor.rhythm.Time;
import tabor.source.Spot;

/**
 * Finds limbs for the open strokes of a section. They stay open: a section deals all of them
 * together when it ends, and so does each step. What speaks of a single limb before that sees the
 * strokes as they would be dealt there, and fixes what it chose.
 */
final class Dealing {
  /** What it costs to deal one stroke beside looking at it. */
  private static final int COST = 50;

  private final SectionFrame frame;
  private final SectionDraft draft;
  private final List<Stroke> given = new ArrayList<>();
  private final List<Stroke> open = new ArrayList<>();

  /**
   * Sorts out what has to be dealt.
   *
   * @param alone true if nothing is dealt but open strokes: then a pair of limbs of which a step
   *     asks nothing else than the section before keeps what it has
   */
  private Dealing(SectionFrame frame, SectionDraft draft, boolean alone) {
    this.frame = frame;
    this.draft = draft;
    boolean hands = alone && Unchanged.pair(frame, draft, true);
    boolean feet = alone && Unchanged.pair(frame, draft, false);
    for (Stroke stroke : draft.strokes()) {
      boolean known = stroke.limb().isHand() ? hands : feet;
      (stroke.open() && !known ? open : given).add(stroke);
    }
    open.sort(Dealer.BY_SURFACE);
  }

  /** A draft in which every open stroke has the limb that it would have if the section ended. */
  static SectionDraft dealt(SectionFrame frame, SectionDraft draft) {
    if (draft.dealt()) {
      return draft;
    }
    Dealing dealing = new Dealing(frame, draft, true);
    if (dealing.open.isEmpty()) {
      return draft.dealt(draft.strokes(), 0);
    }
    List<@Nullable Limb> limbs = dealing.deal(List.of());
    List<Stroke> all = new ArrayList<>(dealing.given);
    for (int i = 0; i < dealing.open.size(); i++) {
      Stroke stroke = dealing.open.get(i);
      Limb limb = limbs.get(i);
      all.add(limb == null ? stroke.opened() : stroke.by(limb, true));
    }
    return draft.dealt(all, (long) dealing.open.size() * COST);
  }

  /**
   * The draft as a line sees it that speaks of these limbs: dealt if any stroke that may be theirs
   * is open, else as it is.
   */
  static SectionDraft dealt(SectionFrame frame, SectionDraft draft, List<Limb> limbs) {
    boolean hands = Lists.any(limbs, Limb::isHand);
    boolean feet = Lists.any(limbs, limb -> !limb.isHand());
    for (Stroke stroke : draft.strokes()) {
      if (stroke.open() && (stroke.limb().isHand() ? hands : feet)) {
        return dealt(frame, draft);
      }
    }
    return draft;
  }

  /**
   * The limbs of strokes of {@code hands} and {@code feet} parts that leave them open, dealt with
   * all that is there; null where none is free.
   *
   * @param either in the order of {@link Dealer#BY_SURFACE}
   */
  static List<@Nullable Limb> limbs(SectionFrame frame, SectionDraft draft, List<Stroke> either) {
    return new Dealing(frame, draft, false).deal(either);
  }

  /** Deals; gives the limbs of {@code either} if there are any, else of the open strokes. */
  private List<@Nullable Limb> deal(List<Stroke> either) {
    List<Dealer.Open> all = new ArrayList<>(open.size() + either.size());
    List<Integer> asked = new ArrayList<>();
    int next = 0;
    for (int i = 0; i <= open.size(); i++) {
      while (next < either.size()
          && (i == open.size() || Dealer.BY_SURFACE.compare(either.get(next), open.get(i)) < 0)) {
        Stroke stroke = either.get(next++);
        asked.add(all.size());
        all.add(new Dealer.Open(stroke, stroke.limb().isHand(), true, null));
      }
      if (i < open.size()) {
        Stroke stroke = open.get(i);
        Limb before = frame.base() == null ? null : stroke.before();
        if (either.isEmpty()) {
          asked.add(all.size());
        }
        all.add(new Dealer.Open(stroke, stroke.limb().isHand(), false, before));
      }
    }
    List<@Nullable Limb> limbs =
        Dealer.deal(frame.setting(), draft.bars(), frame.pickup(), given, all);
    List<@Nullable Limb> found = new ArrayList<>(asked.size());
    asked.forEach(index -> found.add(limbs.get(index)));
    return found;
  }

  /**
   * Says for which strokes there is no limb. What was so already in the section that this one came
   * from is told there; what one line says of many bars is told once.
   */
  static void report(SectionFrame frame, Problems problems, SectionDraft dealt) {
    record Place(int bar, Time at, boolean hands) {}
    record Told(Spot spot, List<Spot> others) {}
    Map<Place, List<Stroke>> places = new LinkedHashMap<>();
    for (Stroke stroke : dealt.strokes()) {
      if (!stroke.hasLimb()) {
        problems.incomplete();
        places
            .computeIfAbsent(
                new Place(stroke.bar(), stroke.at(), stroke.limb().isHand()),
                place -> new ArrayList<>())
            .add(stroke);
      }
    }
    Map<Told, List<Stroke>> groups = new LinkedHashMap<>();
    SectionView base = frame.base() == null ? null : SectionView.of(frame.base());
    for (List<Stroke> left : places.values()) {
      for (Stroke stroke : untold(base, left)) {
        List<Spot> others = Lists.map(busy(dealt, stroke), Stroke::spot);
        groups
            .computeIfAbsent(new Told(stroke.spot(), others), told -> new ArrayList<>())
            .add(stroke);
      }
    }
    groups
        .values()
        .forEach(
            strokes ->
                problems.add(noneFree(frame, problems, strokes, busy(dealt, strokes.get(0)))));
  }

  /** What has no limb at a place, as far as the section before has not told it. */
  private static List<Stroke> untold(@Nullable SectionView base, List<Stroke> left) {
    if (base == null) {
      return left;
    }
    Stroke first = left.get(0);
    int bar = first.bar() == 0 ? 0 : (first.bar() - 1) % base.bars() + 1;
    List<Stroke> before =
        base.inBar(bar).stream()
            .filter(s -> s.at().equals(first.at()))
            .filter(s -> s.limb().isHand() == first.limb().isHand())
            .toList();
    long told = Lists.count(before, stroke -> !stroke.hasLimb());
    return left.stream()
        .sorted(Comparator.comparing(stroke -> !isAmong(before, stroke)))
        .skip(told)
        .toList();
  }

  private static boolean isAmong(List<Stroke> strokes, Stroke stroke) {
    return Lists.any(strokes, s -> s.surface().name().equals(stroke.surface().name()));
  }

  /** The strokes that keep the limbs busy which a stroke would need. */
  static List<Stroke> busy(SectionDraft draft, Stroke stroke) {
    List<Stroke> busy = new ArrayList<>();
    for (Stroke other : draft.view().inBar(stroke.bar())) {
      if (other.at().equals(stroke.at())
          && other.hasLimb()
          && other.limb().isHand() == stroke.limb().isHand()) {
        busy.add(other);
      }
    }
    return busy;
  }

  /**
   * A diagnostic on strokes of one line that find no limb; at the later of the lines in question.
   *
   * @param strokes the same stroke in one bar or several
   * @param busy what keeps the limbs busy in the first of them
   */
  static Diagnostic noneFree(
      SectionFrame frame, Problems problems, List<Stroke> strokes, List<Stroke> busy) {
    Stroke stroke = strokes.get(0);
    boolean hands = stroke.limb().isHand();
    Spot spot = frame.owns(stroke.spot()) ? stroke.spot() : frame.heading().spot();
    for (Stroke other : busy) {
      if (frame.owns(other.spot()) && other.spot().span().start() > spot.span().start()) {
        spot = other.spot();
      }
    }
    String count = CountNames.of(stroke.slot(), frame.meters().of(stroke.bar())).toString();
    int more = strokes.size() - 1;
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
                    + " needs one more"
                    + (more == 0
                        ? ""
                        : "; the same in " + more + (more == 1 ? " more bar" : " more bars")))
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
