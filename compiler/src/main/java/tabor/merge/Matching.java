package tabor.merge;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tabor.compare.Alignment;

/** Finds which section and which line of one text is which of another. */
final class Matching {
  /** A section under another name is the same from this share of common lines on, in percent. */
  private static final int LEAST_ALIKE = 60;

  private Matching() {}

  /** For each of {@code now} which of {@code base} it is; -1 for a new one. */
  static int[] pieces(List<Piece> base, List<Piece> now) {
    Map<String, Integer> keys = new HashMap<>();
    for (int i = 0; i < base.size(); i++) {
      keys.put(base.get(i).key(), i);
    }
    int[] match = new int[now.size()];
    Set<Integer> taken = new HashSet<>();
    for (int j = 0; j < match.length; j++) {
      match[j] = keys.getOrDefault(now.get(j).key(), -1);
      taken.add(match[j]);
    }
    for (int j = 0; j < match.length; j++) {
      int best = -1;
      int most = LEAST_ALIKE - 1;
      for (int i = 0; i < base.size() && match[j] < 0; i++) {
        int alike = taken.contains(i) ? 0 : alike(base.get(i), now.get(j));
        if (alike > most) {
          most = alike;
          best = i;
        }
      }
      if (best >= 0) {
        match[j] = best;
        taken.add(best);
      }
    }
    return match;
  }

  private static int alike(Piece a, Piece b) {
    if (a.heading() == null || b.heading() == null || a.heading().kind() != b.heading().kind()) {
      return 0;
    }
    List<String> left = lines(a);
    List<String> right = lines(b);
    int most = Math.max(left.size(), right.size());
    List<String> only = new ArrayList<>(left);
    right.forEach(only::remove);
    return most == 0 ? 0 : (left.size() - only.size()) * 100 / most;
  }

  private static List<String> lines(Piece piece) {
    return piece.rows().stream()
        .filter(row -> row.isStatement() && !row.isHeading())
        .map(Row::meaning)
        .toList();
  }

  /** For each new one of theirs which new one of ours it is by its key; -1 for none. */
  static int[] newPieces(List<Piece> ours, int[] oursToBase, List<Piece> theirs, int[] toBase) {
    int[] match = new int[theirs.size()];
    Arrays.fill(match, -1);
    for (int j = 0; j < match.length; j++) {
      for (int i = 0; i < ours.size() && toBase[j] < 0; i++) {
        if (oursToBase[i] < 0 && ours.get(i).key().equals(theirs.get(j).key())) {
          match[j] = i;
        }
      }
    }
    return match;
  }

  /** The same for the lines of one section. */
  static int[] rows(List<Row> base, List<Row> now) {
    int[] match = new int[now.size()];
    Arrays.fill(match, -1);
    Set<Integer> taken = new HashSet<>();
    for (Alignment.Pair pair : Alignment.of(base.size(), now.size(), cost(base, now))) {
      if (pair.isWhole()) {
        match[pair.right()] = pair.left();
        taken.add(pair.left());
      }
    }
    // What has only moved is still the same line.
    for (int j = 0; j < match.length; j++) {
      for (int i = 0; i < base.size() && match[j] < 0; i++) {
        if (!taken.contains(i) && !now.get(j).isBlank() && base.get(i).says(now.get(j))) {
          match[j] = i;
          taken.add(i);
        }
      }
    }
    return match;
  }

  private static Alignment.Cost cost(List<Row> base, List<Row> now) {
    return new Alignment.Cost() {
      @Override
      public int pair(int left, int right) {
        return Matching.pair(base.get(left), now.get(right));
      }

      @Override
      public int left(int index) {
        return alone(base.get(index));
      }

      @Override
      public int right(int index) {
        return alone(now.get(index));
      }
    };
  }

  private static int alone(Row row) {
    return row.isBlank() ? 2 : 6;
  }

  private static int pair(Row a, Row b) {
    if (!a.isStatement() || !b.isStatement()) {
      return a.isStatement() == b.isStatement() && a.meaning().equals(b.meaning())
          ? 0
          : Alignment.NEVER;
    }
    if (a.isHeading() || b.isHeading()) {
      return a.isHeading() && b.isHeading()
          ? (a.meaning().equals(b.meaning()) ? 0 : 1)
          : Alignment.NEVER;
    }
    if (a.meaning().equals(b.meaning())) {
      return a.comment().equals(b.comment()) ? 0 : 1;
    }
    StatementKey one = a.key();
    StatementKey other = b.key();
    if (one == null || other == null || !one.family().equals(other.family())) {
      return Alignment.NEVER;
    }
    return one.isAbout(other) ? (one.where().equals(other.where()) ? 7 : 8) : 10;
  }

  /**
   * For each new line of theirs which new line of ours it is: one that says the same, or one that
   * cannot stand beside it; -1 for none.
   *
   * @param oursToBase which lines of ours are not new
   * @param toBase which lines of theirs are not new
   */
  static int[] newRows(List<Row> ours, int[] oursToBase, List<Row> theirs, int[] toBase) {
    int[] match = new int[theirs.size()];
    Arrays.fill(match, -1);
    Set<Integer> taken = new HashSet<>();
    for (boolean same : new boolean[] {true, false}) {
      for (int j = 0; j < match.length; j++) {
        for (int i = 0; i < ours.size() && match[j] < 0 && toBase[j] < 0; i++) {
          Row our = ours.get(i);
          Row their = theirs.get(j);
          boolean fits =
              same
                  ? our.isStatement() == their.isStatement()
                      && our.meaning().equals(their.meaning())
                      && (!our.isBlank() || above(i, oursToBase) == above(j, toBase))
                  : our.key() != null && their.key() != null && our.key().excludes(their.key());
          if (oursToBase[i] < 0 && fits && taken.add(i)) {
            match[j] = i;
          }
        }
      }
    }
    return match;
  }

  /** The nearest line above that the base has. */
  private static int above(int index, int[] toBase) {
    for (int i = index; i >= 0; i--) {
      if (toBase[i] >= 0) {
        return toBase[i];
      }
    }
    return -1;
  }
}
