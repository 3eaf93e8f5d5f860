package tabor.body;

import java.util.List;
import tabor.body.LimbWish.Reason;
import tabor.body.Loop.Hit;
import tabor.lists.Lists;
import tabor.rhythm.Time;

/**
 * Natural sticking: in a row of single strokes the hands take turns as if every place were struck,
 * on one drum or round them all. The row's places are the finest even division of each beat, that
 * of its neighbours where theirs divides it further; the first place of the beat that the row
 * begins in is the right hand's. A hand that is written in the row leads it from there on, until it
 * rests for a beat. Where the feet take the places between, see {@link #feetTakeTheRest}.
 */
record SingleStrokes(Loop loop, TimeRows rows) {
  /** Seconds between places of a row from which on there is no hurry to take turns. */
  private static final double UNHURRIED = 0.6;

  /** Finer divisions than this come from unrelated places and say nothing. */
  private static final int FINEST = 24;

  /**
   * Fills in the wishes of these strokes, which are in order of time. The open ones of the pair's
   * own part make rows of their own: other parts have no say in them.
   */
  void read(List<Hit> singles, LimbWish[] wishes) {
    rows(Lists.filter(singles, hit -> !hit.ofPair()), wishes);
    if (Lists.any(singles, Hit::ofPair)) {
      rows(Lists.filter(singles, hit -> !hit.isOpen() || hit.ofPair()), wishes);
    }
  }

  private void rows(List<Hit> singles, LimbWish[] wishes) {
    int from = 0;
    while (from < singles.size()) {
      int to = from;
      while (to + 1 < singles.size() && goesOn(singles.get(to), singles.get(to + 1))) {
        to++;
      }
      row(singles.subList(from, to + 1), wishes);
      from = to + 1;
    }
  }

  /** A row goes on over a gap of up to a beat, in the pair's own part over any. */
  private boolean goesOn(Hit a, Hit b) {
    return (a.ofPair() && b.ofPair()) || b.at() - a.at() <= loop.beat(a.beat());
  }

  private void row(List<Hit> row, LimbWish[] wishes) {
    int first = row.get(0).beat();
    int beats = row.get(row.size() - 1).beat() - first + 1;
    boolean ofPair = Lists.any(row, Hit::ofPair);
    int[] own = new int[beats];
    int[] toNeighbours = new int[beats];
    for (Hit hit : row) {
      int b = hit.beat() - first;
      own[b] = finer(own[b], hit);
      // In the pair's own part what is written has its own pace and lends it to nobody.
      toNeighbours[b] = hit.isOpen() || !ofPair ? finer(toNeighbours[b], hit) : toNeighbours[b];
    }
    boolean undivided = true;
    for (int parts : own) {
      undivided &= parts <= 1;
    }
    int[] places = new int[beats];
    boolean byThrees = true;
    long[] turns = new long[beats + 1];
    for (int b = 0; b < beats; b++) {
      places[b] = places(own[b], toNeighbours, b);
      byThrees &= places[b] % 3 == 0;
      // A beat that only its first place is struck of has another place all the same.
      turns[b + 1] = turns[b] + (undivided ? 1 : Math.max(2, places[b]));
    }
    long[] turn = new long[row.size()];
    for (int i = 0; i < turn.length; i++) {
      Hit hit = row.get(i);
      int b = hit.beat() - first;
      turn[i] = turns[b] + hit.inBeat().times(places[b]).floor();
    }
    if (byThrees && feetTakeTheRest(row, turn)) {
      byStroke(turn);
    }
    boolean swapped = false;
    for (int i = 0; i < turn.length; i++) {
      Hit hit = row.get(i);
      if (i > 0 && rests(row.get(i - 1), hit) && turn[i] - turn[i - 1] > 1) {
        swapped = false;
      }
      boolean right = (turn[i] % 2 == 0) != swapped;
      if (!hit.isOpen() && right != hit.given() && isOnlyOne(row, i)) {
        swapped = !swapped;
      }
      wishes[hit.number()] = wish(row, hit, right, places[hit.beat() - first]);
    }
  }

  /** After a beat without a stroke a written hand leads the row no longer. */
  private boolean rests(Hit before, Hit hit) {
    return hit.at() - before.at() >= loop.beat(before.beat()) - TimeRows.CLOSE;
  }

  private static boolean isOnlyOne(List<Hit> row, int i) {
    return (i == 0 || row.get(i - 1).at() < row.get(i).at())
        && (i + 1 == row.size() || row.get(i + 1).at() > row.get(i).at());
  }

  /**
   * In a row by threes the feet take just the places that the hands leave, and the hands an even
   * number between them, such as right, left, foot. Then nobody rests, and each figure begins with
   * the hand that began the one before.
   */
  private boolean feetTakeTheRest(List<Hit> row, long[] turn) {
    int hands = 1;
    boolean feet = false;
    for (int i = 1; i < turn.length; i++) {
      long apart = turn[i] - turn[i - 1];
      long way = row.get(i).at() - row.get(i - 1).at();
      for (long place = 1; place < apart; place++) {
        if (!loop.othersStrike(row.get(i - 1).at() + way * place / apart)) {
          return false;
        }
      }
      if (apart > 1) {
        if (hands % 2 != 0) {
          return false;
        }
        feet = true;
        hands = 0;
      }
      hands += apart > 0 ? 1 : 0;
    }
    return feet && hands % 2 == 0;
  }

  /** Counts the hands' strokes instead of places. */
  private static void byStroke(long[] turn) {
    long before = turn[0];
    turn[0] = 0;
    for (int i = 1; i < turn.length; i++) {
      long here = turn[i];
      turn[i] = turn[i - 1] + (here > before ? 1 : 0);
      before = here;
    }
  }

  private LimbWish wish(List<Hit> row, Hit hit, boolean right, int places) {
    boolean hurried =
        places > 1
            && row.get(row.size() - 1).at() > row.get(0).at()
            && loop.beat(hit.beat()) / places < loop.ticks(UNHURRIED);
    if (hit.ofPair() || hurried) {
      Reason reason = rows.shared.get(hit.number()) ? Reason.SHARED_TIME : Reason.ROW;
      return new LimbWish(right, Weights.OUT_OF_TURN, reason);
    }
    return new LimbWish(true, Weights.LEFT_ALONE, Reason.ALONE);
  }

  private static int finer(int division, Hit hit) {
    return (int) Math.min(FINEST + 1L, Time.lcm(Math.max(1, division), hit.inBeat().den()));
  }

  /** The places of a beat: its own, or those of a neighbour that divides the beat further. */
  private static int places(int own, int[] neighbours, int b) {
    int mine = Math.max(1, own);
    if (mine > FINEST) {
      return 1;
    }
    for (int other : new int[] {b - 1, b + 1}) {
      int theirs = other < 0 || other >= neighbours.length ? 0 : neighbours[other];
      if (theirs > mine && theirs <= FINEST && theirs % mine == 0) {
        mine = theirs;
      }
    }
    return mine;
  }
}
