package tabor.resolve;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.body.Dealer;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Level;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.rhythm.CountNames;
import tabor.source.Spot;

/** Finds limbs for open strokes and adds them to the section. */
final class Dealing {
  private Dealing() {}

  private record Where(int bar, tabor.rhythm.Time at, String surface) {}

  /**
   * Deals open strokes together; everything the section has so far counts as given. An open stroke
   * on a surface that is already struck at its place only makes that stroke louder, if it is.
   */
  static void deal(Work work, List<Letters.Pending> pending) {
    if (pending.isEmpty()) {
      return;
    }
    List<Letters.Pending> open = new ArrayList<>();
    Set<Where> struck = new HashSet<>();
    for (Stroke stroke : work.strokes()) {
      struck.add(new Where(stroke.bar(), stroke.at(), stroke.surface().name()));
    }
    List<Stroke> louder = new ArrayList<>();
    for (Letters.Pending one : pending) {
      Stroke stroke = one.open().stroke();
      if (one.byLimb()
          || struck.add(new Where(stroke.bar(), stroke.at(), stroke.surface().name()))) {
        open.add(one);
      } else {
        louder.add(stroke);
      }
    }
    raise(work, louder);
    open.sort(Comparator.comparing(one -> one.open().stroke(), Stroke.ORDER));
    List<@Nullable Limb> limbs =
        Dealer.deal(
            work.setting,
            work.bars,
            work.pickup(),
            work.strokes(),
            open.stream().map(Letters.Pending::open).toList());
    List<Stroke> dealt = new ArrayList<>();
    List<Letters.Pending> left = new ArrayList<>();
    for (int i = 0; i < open.size(); i++) {
      Limb limb = limbs.get(i);
      if (limb == null) {
        left.add(open.get(i));
      } else {
        Stroke done = by(work, open.get(i), limb);
        if (done != null) {
          dealt.add(done);
        }
      }
    }
    List<Stroke> before = work.strokes();
    work.add(dealt);
    for (Letters.Pending one : left) {
      work.partial = true;
      work.problems.add(noneFree(work, one, before));
    }
  }

  private static @Nullable Stroke by(Work work, Letters.Pending pending, Limb limb) {
    Stroke stroke = pending.open().stroke().by(limb, true);
    if (!pending.byLimb()) {
      return stroke;
    }
    Surface surface = work.plays(limb);
    Stroke placed = surface == null ? stroke : Work.on(stroke, surface);
    return pending.hit() == null
        ? placed
        : new Letters(work, new Subject(Subject.Kind.LIMB, limb, null, false))
            .adorned(pending.hit(), placed, null);
  }

  private static void raise(Work work, List<Stroke> louder) {
    if (louder.isEmpty()) {
      return;
    }
    List<Stroke> all = new ArrayList<>(work.strokes());
    for (Stroke loud : louder) {
      if (loud.level() == Level.GHOST) {
        continue;
      }
      for (int i = 0; i < all.size(); i++) {
        Stroke one = all.get(i);
        if (one.bar() == loud.bar()
            && one.at().equals(loud.at())
            && one.surface().name().equals(loud.surface().name())
            && one.level().compareTo(loud.level()) < 0) {
          all.set(i, one.at(loud.level()));
          break;
        }
      }
    }
    work.strokes(all);
  }

  private static Diagnostic noneFree(Work work, Letters.Pending pending, List<Stroke> given) {
    Stroke stroke = pending.open().stroke();
    boolean hands = pending.open().hands();
    List<Stroke> busy = new ArrayList<>();
    for (Stroke other : given) {
      if (other.bar() == stroke.bar()
          && other.at().equals(stroke.at())
          && other.limb().isHand() == hands) {
        busy.add(other);
      }
    }
    Spot spot = stroke.spot();
    for (Stroke other : busy) {
      if (other.spot().passage() == spot.passage()
          && other.spot().span().start() > spot.span().start()) {
        spot = other.spot();
      }
    }
    String count = CountNames.of(stroke.slot(), work.meter()).toString();
    Diagnostic made =
        work.problems
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
    if (!stroke.spot().equals(spot)) {
      made = made.label(stroke.spot(), "this stroke finds no limb");
    }
    return made;
  }
}
