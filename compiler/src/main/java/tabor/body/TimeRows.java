package tabor.body;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tabor.body.Loop.Hit;
import tabor.kit.Surface;

/**
 * Finds what keeps the time in a loop of the hands: the hi-hat, the ride, bells, crashes as part of
 * them, and a drum in an even row that something else is played against. And within that the places
 * that are too quick for one hand.
 */
final class TimeRows {
  /** One hand keeps this up on one surface: strokes per second. Common practice, no source. */
  private static final double KEPT_UP = 7;

  /** One hand plays three or four in a row so fast: strokes per second. */
  private static final double SHORT_RUN = 9;

  /** Where the row leaves out just what the snare takes, two hands share it from this speed on. */
  private static final double SHARED = 5;

  private final Loop loop;
  private final List<Hit> hits;

  /** The strokes that keep the time, by number. */
  final BitSet time = new BitSet();

  /** Crashes and the like among them. */
  final BitSet crash = new BitSet();

  /** All strokes, of the time or against it, where the row is too quick for one hand. */
  final BitSet shared = new BitSet();

  TimeRows(Loop loop) {
    this.loop = loop;
    this.hits = loop.hits;
    for (Hit hit : hits) {
      if (hit.surface().keepsTime()) {
        time.set(hit.number());
      } else if (hit.surface().sort() == Surface.Sort.CYMBAL) {
        time.set(hit.number());
        crash.set(hit.number());
      }
    }
    partners();
    drums();
    quick();
  }

  /** True if this stroke keeps the time on its own: no crash, which only takes part in it. */
  boolean isSteady(Hit hit) {
    return time.get(hit.number()) && !crash.get(hit.number());
  }

  /**
   * Where two pieces keep time against each other, meeting at some places only, the one further to
   * the right is the time, and the other is played against it.
   */
  private void partners() {
    Map<String, Integer> alone = new HashMap<>();
    Map<String, String> against = new HashMap<>();
    for (int i = 0; i < hits.size(); i++) {
      Hit hit = hits.get(i);
      Hit next = i + 1 < hits.size() && hits.get(i + 1).at() == hit.at() ? hits.get(i + 1) : hit;
      String piece = hit.surface().piece();
      String other = next.surface().piece();
      if (isSteady(hit) && isSteady(next) && !piece.equals(other)) {
        boolean first = loop.places.of(hit.surface()).x() < loop.places.of(next.surface()).x();
        against.put(first ? piece : other, first ? other : piece);
        i++;
      } else if (isSteady(hit)) {
        alone.merge(piece, 1, Integer::sum);
      }
    }
    for (Hit hit : hits) {
      String other = against.get(hit.surface().piece());
      if (other != null
          && isSteady(hit)
          && alone.containsKey(hit.surface().piece())
          && alone.containsKey(other)) {
        time.clear(hit.number());
      }
    }
  }

  // A drum that keeps the time.

  private void drums() {
    Map<Integer, List<Hit>> byDrum = new HashMap<>();
    for (Hit hit : hits) {
      if (hit.surface().sort() == Surface.Sort.TOM) {
        byDrum.computeIfAbsent(hit.id(), id -> new ArrayList<>()).add(hit);
      }
    }
    List<List<Hit>> drums = new ArrayList<>(byDrum.values());
    // The time is kept on the drum furthest to the right.
    drums.sort(
        (a, b) -> {
          Surface one = a.get(0).surface();
          Surface two = b.get(0).surface();
          int order = Double.compare(loop.places.of(two).x(), loop.places.of(one).x());
          return order == 0 ? one.name().compareTo(two.name()) : order;
        });
    drums.forEach(this::drum);
  }

  private void drum(List<Hit> drum) {
    int n = drum.size();
    int from = 0;
    while (from + 1 < n) {
      long gap = drum.get(from + 1).at() - drum.get(from).at();
      int to = from + 1;
      while (to + 1 < n && same(drum.get(to + 1).at() - drum.get(to).at(), gap)) {
        to++;
      }
      boolean whole = from == 0 && to == n - 1 && same(round(drum), gap);
      if (to - from >= (whole ? 1 : 3) && isTime(drum.subList(from, to + 1), gap)) {
        drum.subList(from, to + 1).forEach(hit -> time.set(hit.number()));
      }
      from = to;
    }
  }

  private long round(List<Hit> row) {
    return loop.from(row.get(row.size() - 1).at(), row.get(0).at());
  }

  /** An even row on a drum keeps the time if one hand can, and something is played against it. */
  private boolean isTime(List<Hit> row, long gap) {
    Hit first = row.get(0);
    Hit last = row.get(row.size() - 1);
    if (gap < loop.ticks(1 / KEPT_UP)
        || gap > loop.beat(first.beat())
        || first.inBeat().sign() != 0) {
      return false;
    }
    boolean against = false;
    for (int i = first.number() - 2; i <= last.number() + 2; i++) {
      Hit other = i < 0 || i >= hits.size() ? first : hits.get(i);
      if (other.id() == first.id() || other.at() < first.at() || other.at() > last.at()) {
        continue;
      }
      if (isSteady(other)) {
        return false;
      }
      against |= !crash.get(other.number());
    }
    return against;
  }

  // Too quick for one hand.

  private void quick() {
    List<Hit> line = steady();
    int n = line.size();
    int i = 0;
    while (i + 2 < n) {
      long gap = line.get(i + 1).at() - line.get(i).at();
      if (gap > loop.ticks(1 / SHARED) || !same(line.get(i + 2).at() - line.get(i + 1).at(), gap)) {
        i++;
        continue;
      }
      int from = i;
      while (from > 0 && goesOn(line.get(from - 1), line.get(from), gap)) {
        from--;
      }
      int to = i + 2;
      while (to + 1 < n && goesOn(line.get(to), line.get(to + 1), gap)) {
        to++;
      }
      share(line.subList(from, to + 1), gap);
      i = to;
    }
  }

  private List<Hit> steady() {
    List<Hit> line = new ArrayList<>();
    for (Hit hit : hits) {
      if (isSteady(hit) && (line.isEmpty() || line.get(line.size() - 1).at() < hit.at())) {
        line.add(hit);
      }
    }
    return line;
  }

  /** The row goes on at its pace, or with one stroke of another part in the place between. */
  private boolean goesOn(Hit from, Hit to, long gap) {
    long way = to.at() - from.at();
    return same(way, gap) || (same(way, 2 * gap) && isBetween(from, to, gap));
  }

  private boolean isBetween(Hit from, Hit to, long gap) {
    for (int i = from.number() + 1; i < to.number(); i++) {
      if (same(hits.get(i).at() - from.at(), gap)) {
        return true;
      }
    }
    return false;
  }

  private void share(List<Hit> row, long gap) {
    Hit first = row.get(0);
    Hit last = row.get(row.size() - 1);
    boolean holes = false;
    for (int i = 1; i < row.size(); i++) {
      holes |= !same(row.get(i).at() - row.get(i - 1).at(), gap);
    }
    boolean under = false;
    int start = first.number();
    int end = last.number();
    while (start > 0 && hits.get(start - 1).at() >= first.at() - gap - CLOSE) {
      start--;
    }
    while (end + 1 < hits.size() && hits.get(end + 1).at() <= last.at() + gap + CLOSE) {
      end++;
    }
    for (int i = start; i <= end; i++) {
      Hit hit = hits.get(i);
      if (time.get(i)) {
        continue;
      }
      boolean together = false;
      for (int j = Math.max(start, i - 3); j <= Math.min(end, i + 3); j++) {
        together |= isSteady(hits.get(j)) && hits.get(j).at() == hit.at();
      }
      under |= together;
      holes |= !together;
    }
    double limit =
        holes && !under && row.size() > 3 ? SHARED : row.size() > 4 ? KEPT_UP : SHORT_RUN;
    if (gap < loop.ticks(1 / limit)) {
      for (int i = start; i <= end; i++) {
        boolean inside = hits.get(i).at() >= first.at() && hits.get(i).at() <= last.at();
        if (inside || !time.get(i)) {
          shared.set(i);
        }
      }
    }
  }

  /** Ticks that rounding may put between equal lengths. */
  static final long CLOSE = 3;

  /** True if two lengths are one, but for rounding. */
  static boolean same(long a, long b) {
    return Math.abs(a - b) <= CLOSE;
  }
}
