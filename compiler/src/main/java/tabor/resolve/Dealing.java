package tabor.resolve;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.body.Dealer;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.rhythm.CountNames;
import tabor.source.Span;
import tabor.source.Spot;
import tabor.syntax.At;
import tabor.syntax.Line;
import tabor.syntax.Word;

/**
 * Finds limbs for the open strokes of a section in the making. They stay open: the section deals
 * all of them together when it ends, and so does each step. What speaks of a single limb before
 * that sees the strokes as they would be dealt there, and fixes what it chose.
 */
final class Dealing {
  private static final Comparator<Stroke> BY_SURFACE =
      Comparator.<Stroke>comparingInt(Stroke::bar)
          .thenComparing((a, b) -> a.at().compareTo(b.at()))
          .thenComparing(stroke -> stroke.surface().name());

  private final Work work;

  private Dealing(Work work) {
    this.work = work;
  }

  /** Deals all open strokes so far, which stay open. */
  static void see(Work work) {
    new Dealing(work).deal(List.of());
  }

  /** Deals those that may be a limb's. */
  static void see(Work work, Limb limb) {
    for (Stroke stroke : work.strokes()) {
      if (stroke.open() && stroke.limb().isHand() == limb.isHand()) {
        see(work);
        return;
      }
    }
  }

  /** The same, if one of the targets is a single limb. */
  static void see(Work work, List<Word> targets) {
    limbs(targets).forEach(limb -> see(work, limb));
  }

  /** The strokes of a limb that an edit's clauses choose; they keep that limb from now on. */
  static @Nullable List<Stroke> chosen(Work work, Line line, Limb limb, At at, Span what) {
    see(work, limb);
    List<Stroke> chosen =
        new Selector(work, line).select(s -> s.limb() == limb && s.hasLimb(), at, what);
    return chosen == null ? null : fix(work, chosen, Set.of(limb));
  }

  /** The chosen strokes, those fixed that were chosen by their limb. */
  static List<Stroke> fix(Work work, List<Stroke> chosen, List<Word> targets) {
    return fix(work, chosen, limbs(targets));
  }

  /** True if the targets name this stroke's limb. */
  static boolean byLimb(Stroke stroke, List<Word> targets) {
    return stroke.hasLimb() && limbs(targets).contains(stroke.limb());
  }

  private static Set<Limb> limbs(List<Word> targets) {
    Set<Limb> limbs = new HashSet<>();
    for (Word word : targets) {
      Limb limb = Subject.limb(word.text());
      if (limb != null) {
        limbs.add(limb);
      }
    }
    return limbs;
  }

  private static List<Stroke> fix(Work work, List<Stroke> chosen, Collection<Limb> limbs) {
    if (limbs.isEmpty() || chosen.stream().noneMatch(Stroke::open)) {
      return chosen;
    }
    List<Stroke> all = new ArrayList<>(work.strokes().size());
    List<Stroke> fixed = new ArrayList<>(chosen.size());
    int next = 0;
    for (Stroke stroke : work.strokes()) {
      boolean meant = next < chosen.size() && chosen.get(next) == stroke;
      Stroke now = meant && limbs.contains(stroke.limb()) ? stroke.fixed() : stroke;
      all.add(now);
      if (meant) {
        fixed.add(now);
        next++;
      }
    }
    work.strokes(all);
    return fixed;
  }

  /** Deals what either hand or either foot may take, and adds it with the limb it has now. */
  static void either(Work work, List<Letters.Either> either) {
    if (!either.isEmpty()) {
      List<Letters.Either> sorted = new ArrayList<>(either);
      sorted.sort(Comparator.comparing(Letters.Either::stroke, BY_SURFACE));
      Dealing dealing = new Dealing(work);
      List<Stroke> before = work.strokes();
      for (Stroke left : dealing.deal(sorted)) {
        dealing.report(left, before);
      }
    }
  }

  /** Deals all open strokes at the end of a section, and reports those that find no limb. */
  static void finish(Work work) {
    see(work);
    List<Stroke> left = work.strokes().stream().filter(stroke -> !stroke.hasLimb()).toList();
    work.partial |= !left.isEmpty();
    Dealing dealing = new Dealing(work);
    int from = 0;
    while (from < left.size()) {
      int to = from + 1;
      while (to < left.size() && together(left.get(from), left.get(to))) {
        to++;
      }
      dealing.reportNew(left.subList(from, to));
      from = to;
    }
  }

  /** Reports what has no limb at a place, as far as the section before has not told it. */
  private void reportNew(List<Stroke> left) {
    for (boolean hands : new boolean[] {true, false}) {
      List<Stroke> there = before(left.get(0), hands);
      long told = there.stream().filter(stroke -> !stroke.hasLimb()).count();
      left.stream()
          .filter(stroke -> stroke.limb().isHand() == hands)
          .sorted(Comparator.comparing(stroke -> !isAmong(there, stroke)))
          .skip(told)
          .forEach(stroke -> report(stroke, work.strokes()));
    }
  }

  private static boolean isAmong(List<Stroke> strokes, Stroke stroke) {
    return strokes.stream().anyMatch(s -> s.surface().name().equals(stroke.surface().name()));
  }

  /**
   * Deals.
   *
   * @return those of {@code either} that find no limb
   */
  private List<Stroke> deal(List<Letters.Either> either) {
    boolean any = !either.isEmpty();
    for (Stroke stroke : work.strokes()) {
      any |= stroke.open();
    }
    if (!any) {
      return List.of();
    }
    absorb();
    List<Stroke> given = new ArrayList<>();
    List<Stroke> strokes = new ArrayList<>();
    boolean hands = either.isEmpty() && Unchanged.pair(work, true);
    boolean feet = either.isEmpty() && Unchanged.pair(work, false);
    for (Stroke stroke : work.strokes()) {
      boolean known = stroke.limb().isHand() ? hands : feet;
      (stroke.open() && !known ? strokes : given).add(stroke);
    }
    if (strokes.isEmpty() && either.isEmpty()) {
      return List.of();
    }
    bySurface(strokes);
    List<Dealer.Open> open = new ArrayList<>();
    List<Letters.@Nullable Either> from = new ArrayList<>();
    int next = 0;
    for (int i = 0; i <= strokes.size(); i++) {
      while (next < either.size()
          && (i == strokes.size()
              || BY_SURFACE.compare(either.get(next).stroke(), strokes.get(i)) < 0)) {
        Stroke stroke = either.get(next).stroke();
        open.add(new Dealer.Open(stroke, stroke.limb().isHand(), true, null));
        from.add(either.get(next++));
      }
      if (i < strokes.size()) {
        Stroke stroke = strokes.get(i);
        Limb before = work.base != null && stroke.dealt() ? stroke.limb() : null;
        open.add(new Dealer.Open(stroke, stroke.limb().isHand(), false, before));
        from.add(null);
      }
    }
    List<@Nullable Limb> limbs = Dealer.deal(work.setting, work.bars, work.pickup(), given, open);
    List<Stroke> left = new ArrayList<>();
    for (int i = 0; i < open.size(); i++) {
      Stroke stroke = open.get(i).stroke();
      Limb limb = limbs.get(i);
      Letters.Either letter = from.get(i);
      if (letter == null) {
        given.add(limb == null ? stroke.opened() : stroke.by(limb, true));
      } else if (limb == null) {
        left.add(stroke);
      } else {
        Stroke done = placed(letter, limb);
        if (done != null) {
          given.add(done);
        }
      }
    }
    work.strokes(given);
    return left;
  }

  /** Orders strokes that are in order of time by surface at each place. */
  private static void bySurface(List<Stroke> strokes) {
    for (int i = 1; i < strokes.size(); i++) {
      Stroke stroke = strokes.get(i);
      int to = i;
      while (to > 0
          && together(strokes.get(to - 1), stroke)
          && strokes.get(to - 1).surface().name().compareTo(stroke.surface().name()) > 0) {
        strokes.set(to, strokes.get(to - 1));
        to--;
      }
      strokes.set(to, stroke);
    }
  }

  private @Nullable Stroke placed(Letters.Either either, Limb limb) {
    Stroke stroke = either.stroke().by(limb, true);
    Surface surface = work.plays(limb);
    Stroke placed = surface == null ? stroke : Work.on(stroke, surface);
    return new Letters(work, new Subject(Subject.Kind.LIMB, limb, null, false))
        .adorned(either.hit(), placed, null);
  }

  /** An open stroke on a surface that is struck at its place anyway is that stroke. */
  private void absorb() {
    List<Stroke> all = work.strokes();
    List<Stroke> kept = new ArrayList<>(all.size());
    int start = 0;
    for (Stroke stroke : all) {
      while (start < kept.size() && !together(kept.get(start), stroke)) {
        start++;
      }
      int same = -1;
      for (int i = start; i < kept.size() && same < 0; i++) {
        Stroke other = kept.get(i);
        boolean one = other.surface().name().equals(stroke.surface().name());
        same = one && (other.open() || stroke.open()) ? i : -1;
      }
      if (same < 0) {
        kept.add(stroke);
      } else {
        kept.set(same, Work.merged(kept.get(same), stroke));
      }
    }
    if (kept.size() < all.size()) {
      work.strokes(kept);
    }
  }

  private static boolean together(Stroke a, Stroke b) {
    return a.bar() == b.bar() && a.at().equals(b.at());
  }

  /** What the section that this one came from has at a place, for one pair of limbs. */
  private List<Stroke> before(Stroke place, boolean hands) {
    Groove base = work.base;
    if (base == null) {
      return List.of();
    }
    int bar = place.bar() == 0 ? 0 : (place.bar() - 1) % base.bars() + 1;
    return base.written().stream()
        .filter(s -> s.bar() == bar && s.at().equals(place.at()) && s.limb().isHand() == hands)
        .toList();
  }

  private void report(Stroke stroke, List<Stroke> all) {
    work.partial = true;
    boolean hands = stroke.limb().isHand();
    List<Stroke> busy = new ArrayList<>();
    for (Stroke other : all) {
      if (together(other, stroke) && other.limb().isHand() == hands && other.hasLimb()) {
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
    work.problems.add(made);
  }
}
