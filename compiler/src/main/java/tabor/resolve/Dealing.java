package tabor.resolve;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
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

  /**
   * Deals open strokes together; everything the section has so far counts as given. An open stroke
   * on a surface that is already struck at its place only makes that stroke louder, if it is.
   */
  static void deal(Work work, List<Letters.Pending> pending) {
    if (pending.isEmpty()) {
      return;
    }
    List<Letters.Pending> sorted = new ArrayList<>(pending);
    sorted.sort(Comparator.comparing(one -> one.open().stroke(), Stroke.ORDER));
    List<Letters.Pending> open = new ArrayList<>(sorted.size());
    List<Stroke> louder = new ArrayList<>();
    List<Stroke> given = work.strokes();
    int from = 0;
    for (Letters.Pending one : sorted) {
      Stroke stroke = one.open().stroke();
      while (from < given.size() && earlier(given.get(from), stroke)) {
        from++;
      }
      if (!one.byLimb() && (struck(given, from, stroke) || wanted(open, stroke))) {
        louder.add(stroke);
      } else {
        open.add(one);
      }
    }
    raise(work, louder);
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

  private static boolean earlier(Stroke a, Stroke b) {
    return a.bar() < b.bar() || (a.bar() == b.bar() && a.at().before(b.at()));
  }

  private static boolean together(Stroke a, Stroke b) {
    return a.bar() == b.bar() && a.at().equals(b.at());
  }

  /** True if a given stroke strikes the same surface at the same place. */
  private static boolean struck(List<Stroke> given, int from, Stroke stroke) {
    for (int i = from; i < given.size() && together(given.get(i), stroke); i++) {
      if (given.get(i).surface().name().equals(stroke.surface().name())) {
        return true;
      }
    }
    return false;
  }

  /** True if an open stroke before this one wants the same surface at the same place. */
  private static boolean wanted(List<Letters.Pending> open, Stroke stroke) {
    for (int i = open.size() - 1; i >= 0; i--) {
      Letters.Pending other = open.get(i);
      if (!together(other.open().stroke(), stroke)) {
        return false;
      }
      if (!other.byLimb()
          && other.open().stroke().surface().name().equals(stroke.surface().name())) {
        return true;
      }
    }
    return false;
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
