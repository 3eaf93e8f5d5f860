package tabor.body;

import java.util.List;
import java.util.function.Consumer;
import tabor.groove.Grace;
import tabor.groove.Groove;
import tabor.kit.Limb;
import tabor.kit.Limits;
import tabor.rhythm.Time;

/**
 * Lists what a section asks of each limb, the way from its end back to its beginning included. The
 * order is the order of the movements, so that results are the same every time.
 */
final class Demands {
  /** What is never too little for a way between two pieces: an eighth at 120, in seconds. */
  private static final Time ALWAYS_ENOUGH = Time.of(1, 4);

  /** Which of a limit's two figures counts. */
  enum Grade {
    COMFORTABLE,
    EXTREME;

    Time of(Limits.Range range) {
      return this == COMFORTABLE ? range.comfortable() : range.extreme();
    }
  }

  private final KitPlaces places;
  private final Time pickup;
  private final Time length;
  private final Consumer<Demand> found;
  private final Time perDouble;
  private final Time handPair;
  private final Time footPair;
  private final Time reach;
  private final boolean usualReach;

  private Demands(Groove groove, Limits limits, Grade grade, Consumer<Demand> found) {
    this.places = KitPlaces.of(groove.setting().kit());
    this.pickup = groove.pickup();
    this.length = groove.length().minus(pickup);
    this.found = found;
    this.perDouble = grade.of(limits.doubles()).inverse();
    this.handPair = Time.of(2).over(grade.of(limits.hands()));
    this.footPair = Time.of(2).over(grade.of(limits.feet()));
    this.reach = grade.of(limits.reach());
    this.usualReach = grade == Grade.EXTREME && !reach.before(Limits.DEFAULT.reach().extreme());
  }

  /** Hands every demand of the section to {@code found}, limb by limb. */
  static void each(Groove groove, Limits limits, Grade grade, Consumer<Demand> found) {
    Demands demands = new Demands(groove, limits, grade, found);
    Movements.of(groove).forEach(demands::limb);
  }

  private void limb(Limb limb, List<Movement> moves) {
    for (Movement move : moves) {
      if (move.inner().sign() > 0) {
        found.accept(new Demand(Demand.Kind.DOUBLES, limb, move, move, move.inner(), perDouble));
      }
    }
    int n = moves.size();
    int runUp = 0;
    while (runUp < n && moves.get(runUp).start().before(pickup)) {
      runUp++;
    }
    // The pickup is played once; what goes round is the section without it.
    for (int i = 0; i < runUp; i++) {
      if (i + 1 < n) {
        next(limb, moves.get(i), moves.get(i + 1), Time.ZERO);
      }
      if (i + 2 < n) {
        third(limb, moves.subList(i, i + 3), 0);
      }
    }
    round(limb, moves.subList(runUp, n));
  }

  private void round(Limb limb, List<Movement> moves) {
    int n = moves.size();
    for (int i = 0; i < n; i++) {
      next(limb, moves.get(i), moves.get((i + 1) % n), length.times((i + 1) / n));
      third(limb, moves, i);
    }
  }

  private void next(Limb limb, Movement from, Movement to, Time rounds) {
    Time gap = to.start().minus(from.last()).plus(rounds);
    if (gap.sign() <= 0) {
      return; // at one instant, or inside a roll: a clash, which is told elsewhere
    }
    // What sounds before its written place leaves less time, what sounded before leaves more.
    Time lead = Grace.SECONDS.times((long) to.lead() - from.lastLead());
    Time way = way(limb, from, to);
    if (way.compareTo(perDouble) > 0) {
      Time needs = way.plus(lead);
      found.accept(
          new Demand(
              Demand.Kind.REACH,
              limb,
              from,
              to,
              gap,
              usualReach ? Time.min(needs, ALWAYS_ENOUGH) : needs));
    } else {
      found.accept(new Demand(Demand.Kind.DOUBLES, limb, from, to, gap, perDouble.plus(lead)));
    }
  }

  /** How long a hand is on its way, in seconds; feet stay by their pedals. */
  private Time way(Limb limb, Movement from, Movement to) {
    return limb.isHand()
        ? Time.of(places.distance(from.stroke().surface(), to.stroke().surface())).over(reach)
        : Time.ZERO;
  }

  private void third(Limb limb, List<Movement> moves, int i) {
    int n = moves.size();
    Movement from = moves.get(i);
    Movement middle = moves.get((i + 1) % n);
    Movement to = moves.get((i + 2) % n);
    Time round = length.times((i + 2) / n);
    Time gap = to.start().minus(from.start()).plus(round);
    Time first = middle.start().minus(from.start()).plus(length.times((i + 1) / n));
    if (first.sign() <= 0 || !first.before(gap)) {
      return; // two of the three at one instant: a clash
    }
    Time lead = Grace.SECONDS.times((long) to.lead() - from.lead());
    Time pair = limb.isHand() ? handPair : footPair;
    found.accept(new Demand(Demand.Kind.SINGLES, limb, from, to, gap, pair.plus(lead)));
  }
}
