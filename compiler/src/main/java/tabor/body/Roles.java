package tabor.body;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.body.LimbWish.Reason;
import tabor.body.Loop.Hit;
import tabor.kit.Surface;

/**
 * Reads what each stroke of a loop is for, and so whose it should be: what keeps the time is the
 * right hand's, what is played against it the left's, and in a row of single strokes the hands take
 * turns. The search may decide otherwise where hands are not free.
 */
record Roles(Loop loop, LimbWish[] wishes, TimeRows rows) {
  /**
   * What a loop's strokes are for.
   *
   * @param wishes by number of the stroke
   * @param time by number of the stroke: true if it keeps the time with one hand
   */
  record Read(List<LimbWish> wishes, boolean[] time) {}

  /** Reads a loop. */
  static Read of(Loop loop) {
    Roles roles = new Roles(loop, new LimbWish[loop.hits.size()], new TimeRows(loop));
    return loop.hands ? roles.hands() : roles.feet();
  }

  private Read hands() {
    boolean[] time = new boolean[wishes.length];
    List<Hit> singles = new ArrayList<>();
    List<Hit> steady = new ArrayList<>();
    for (Hit hit : loop.hits) {
      if (rows.time.get(hit.number())
          && (steady.isEmpty() || steady.get(steady.size() - 1).at() < hit.at())) {
        steady.add(hit);
      }
    }
    Against against = new Against(loop, rows, steady);
    for (Hit hit : loop.hits) {
      int i = hit.number();
      if (hit.ofPair() || rows.shared.get(i)) {
        singles.add(hit);
      } else if (rows.crash.get(i)) {
        wishes[i] = new LimbWish(true, Weights.LEFT_CRASH, Reason.CRASH);
        time[i] = true;
      } else if (rows.time.get(i)) {
        wishes[i] = new LimbWish(true, Weights.LEFT_KEEPS_TIME, Reason.KEEPS_TIME);
        time[i] = true;
      } else if (against.isAgainst(hit)) {
        boolean right = against.timeIsLeft(hit);
        wishes[i] = new LimbWish(right, Weights.LEAVES_THE_TIME, Reason.AGAINST_TIME);
      } else if (hit.surface().handLies()) {
        wishes[i] = new LimbWish(false, Weights.RIGHT_LIES, Reason.HAND_LIES);
      } else {
        singles.add(hit);
      }
    }
    new SingleStrokes(loop, rows).read(singles, wishes);
    return new Read(Arrays.asList(wishes), time);
  }

  private Read feet() {
    List<Hit> singles = new ArrayList<>();
    for (Hit hit : loop.hits) {
      if (hit.ofPair()) {
        singles.add(hit);
      }
      boolean kick = hit.surface().sort() == Surface.Sort.KICK;
      wishes[hit.number()] = new LimbWish(kick, Weights.WRONG_PEDAL, Reason.PEDAL);
    }
    twoPedals(singles);
    new SingleStrokes(loop, rows).read(singles, wishes);
    return new Read(Arrays.asList(wishes), new boolean[wishes.length]);
  }

  /** Kicks that are too quick for one foot, and not for two, are a row of single strokes. */
  private void twoPedals(List<Hit> singles) {
    List<Hit> hits = loop.hits;
    long limit = loop.ticks(1.0 / ONE_FOOT);
    int from = 0;
    while (from < hits.size()) {
      int to = from;
      boolean kicks = isKick(hits.get(from));
      while (kicks
          && to + 1 < hits.size()
          && isKick(hits.get(to + 1))
          && hits.get(to + 1).at() - hits.get(to).at() < limit
          && hits.get(to + 1).at() - hits.get(to).at() >= limit / 2) {
        to++;
      }
      if (to - from >= 2) {
        singles.addAll(hits.subList(from, to + 1));
      }
      from = to + 1;
    }
    singles.sort((a, b) -> Integer.compare(a.number(), b.number()));
  }

  /** Strokes per second that one foot cannot go over. */
  private static final double ONE_FOOT = 9;

  private static boolean isKick(@Nullable Hit hit) {
    return hit != null && hit.surface().sort() == Surface.Sort.KICK && !hit.ofPair();
  }
}
