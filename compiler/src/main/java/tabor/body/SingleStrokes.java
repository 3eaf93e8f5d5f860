package tabor.body;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import tabor.body.LimbWish.Reason;
import tabor.body.Loop.Hit;
import tabor.rhythm.Time;

/**
 * Natural sticking: in a row of single strokes the hands take turns as if every place were struck,
 * on one drum or round them all. The row's places are the finest even division of each beat, that
 * of its neighbours where theirs divides it further; the first place of the beat that the row
 * begins in is the right hand's.
 */
final class SingleStrokes {
  /** Seconds between places of a row from which on there is no hurry to take turns. */
  private static final double UNHURRIED = 0.6;

  /** Finer divisions than this come from unrelated places and say nothing. */
  private static final int FINEST = 24;

  private final Loop loop;
  private final TimeRows rows;

  SingleStrokes(Loop loop, TimeRows rows) {
    this.loop = loop;
    this.rows = rows;
  }

  /** Fills in the wishes of these strokes, which are in order of time. */
  void read(List<Hit> singles, LimbWish[] wishes) {
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

  /** A row goes on over a gap of up to a beat; parts of the pair are rows of their own. */
  private boolean goesOn(Hit a, Hit b) {
    return a.ofPair() == b.ofPair() && (a.ofPair() || b.at() - a.at() <= loop.beat(a.beat()));
  }

  private void row(List<Hit> row, LimbWish[] wishes) {
    int first = row.get(0).beat();
    int beats = row.get(row.size() - 1).beat() - first + 1;
    int[] own = new int[beats];
    for (Hit hit : row) {
      int b = hit.beat() - first;
      own[b] = (int) Math.min(FINEST + 1L, Time.lcm(Math.max(1, own[b]), hit.inBeat().den()));
    }
    int[] places = new int[beats];
    for (int b = 0; b < beats; b++) {
      places[b] = finer(own, b);
    }
    boolean undivided = Arrays.stream(own).allMatch(one -> one <= 1);
    long turns = 0;
    int next = 0;
    for (int b = 0; b < beats; b++) {
      List<Hit> here = new ArrayList<>();
      while (next < row.size() && row.get(next).beat() == first + b) {
        here.add(row.get(next++));
      }
      for (Hit hit : here) {
        boolean right = (turns + hit.inBeat().times(places[b]).floor()) % 2 == 0;
        wishes[hit.number()] = wish(row, hit, right, places[b]);
      }
      // A beat that only its first place is struck of has another place all the same.
      turns += undivided ? 1 : Math.max(2, places[b]);
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

  /** The places of a beat: its own, or those of a neighbour that divides the beat further. */
  private static int finer(int[] own, int b) {
    int mine = Math.max(1, own[b]);
    if (mine > FINEST) {
      return 1;
    }
    for (int other : new int[] {b - 1, b + 1}) {
      int theirs = other < 0 || other >= own.length ? 0 : own[other];
      if (theirs > mine && theirs <= FINEST && theirs % mine == 0) {
        mine = theirs;
      }
    }
    return mine;
  }
}
