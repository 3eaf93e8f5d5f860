package tabor.merge;

import java.util.ArrayDeque;
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

  /** Most pairs of sections of which all are compared. */
  private static final int MOST_LOOKED_AT = 40_000;

  /** How far a section is looked for in either direction where there are more. */
  private static final int NEAREST = 20;

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
    renamed(base, now, match, taken);
    return match;
  }

  /** Sections under other names, by their lines. */
  private static void renamed(List<Piece> base, List<Piece> now, int[] match, Set<Integer> taken) {
    List<Integer> old = new ArrayList<>();
    for (int i = 0; i < base.size(); i++) {
      if (!taken.contains(i)) {
        old.add(i);
      }
    }
    List<Integer> fresh = new ArrayList<>();
    for (int j = 0; j < match.length; j++) {
      if (match[j] < 0) {
        fresh.add(j);
      }
    }
    // Where hundreds have new names each is looked for among the nearest of the others.
    boolean all = (long) old.size() * fresh.size() <= MOST_LOOKED_AT;
    Map<Integer, Map<String, Integer>> lines = new HashMap<>();
    for (int k = 0; k < fresh.size(); k++) {
      Piece piece = now.get(fresh.get(k));
      Map<String, Integer> own = lines(piece);
      int best = -1;
      int most = LEAST_ALIKE - 1;
      int from = all ? 0 : Math.max(0, k - NEAREST);
      int to = all ? old.size() : Math.min(old.size(), k + NEAREST + 1);
      for (int i : old.subList(Math.min(from, to), to)) {
        Piece other = base.get(i);
        if (!taken.contains(i) && isOfOneKind(other, piece)) {
          int alike = alike(lines.computeIfAbsent(i, index -> lines(other)), own);
          if (alike > most) {
            most = alike;
            best = i;
          }
        }
      }
      if (best >= 0) {
        match[fresh.get(k)] = best;
        taken.add(best);
      }
    }
  }

  private static boolean isOfOneKind(Piece a, Piece b) {
    return a.heading() != null && b.heading() != null && a.heading().kind() == b.heading().kind();
  }

  /** How much of their lines two sections have in common, in percent. */
  private static int alike(Map<String, Integer> a, Map<String, Integer> b) {
    int common = 0;
    for (Map.Entry<String, Integer> line : a.entrySet()) {
      common += Math.min(line.getValue(), b.getOrDefault(line.getKey(), 0));
    }
    int most = Math.max(count(a), count(b));
    return most == 0 ? 0 : common * 100 / most;
  }

  private static int count(Map<String, Integer> lines) {
    return lines.values().stream().mapToInt(Integer::intValue).sum();
  }

  private static Map<String, Integer> lines(Piece piece) {
    return MergedText.counts(piece.rows(), row -> row.isStatement() && !row.isHeading());
  }

  /** For each new one of theirs which new one of ours it is by its key; -1 for none. */
  static int[] newPieces(List<Piece> ours, int[] oursToBase, List<Piece> theirs, int[] toBase) {
    int[] match = new int[theirs.size()];
    Arrays.fill(match, -1);
    Map<String, Integer> keys = new HashMap<>();
    for (int i = 0; i < ours.size(); i++) {
      if (oursToBase[i] < 0) {
        keys.put(ours.get(i).key(), i);
      }
    }
    for (int j = 0; j < match.length; j++) {
      if (toBase[j] < 0) {
        match[j] = keys.getOrDefault(theirs.get(j).key(), -1);
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
    preferFirst(base, match, taken);
    // What has only moved is still the same line.
    Waiting<List<Object>> left = new Waiting<>();
    for (int i = 0; i < base.size(); i++) {
      if (!taken.contains(i)) {
        left.add(said(base.get(i)), i);
      }
    }
    for (int j = 0; j < match.length; j++) {
      if (match[j] < 0 && !now.get(j).isBlank()) {
        match[j] = left.next(said(now.get(j)));
      }
    }
    return match;
  }

  /**
   * Of equal lines one under the other nobody can tell which was taken out. It counts as the last,
   * on both sides, so that two people who take one out do not take out two.
   */
  private static void preferFirst(List<Row> base, int[] match, Set<Integer> taken) {
    for (int j = 0; j < match.length; j++) {
      int line = match[j];
      while (line > 0
          && !taken.contains(line - 1)
          && base.get(line - 1).raw().equals(base.get(line).raw())) {
        taken.remove(line);
        line--;
        taken.add(line);
      }
      match[j] = line;
    }
  }

  /** The same for two lines of which each {@link Row#says} what the other does. */
  private static List<Object> said(Row row) {
    return List.of(row.isStatement(), row.meaning(), row.comment());
  }

  /** Lines that have no partner yet, by what they say, in order. */
  private static final class Waiting<K> {
    private final Map<K, ArrayDeque<Integer>> lines = new HashMap<>();

    void add(K said, int line) {
      lines.computeIfAbsent(said, none -> new ArrayDeque<>()).add(line);
    }

    /** Takes the first that says this; -1 for none. */
    int next(K said) {
      ArrayDeque<Integer> found = lines.get(said);
      return found == null || found.isEmpty() ? -1 : found.remove();
    }
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

      @Override
      public int leftNumber(int index) {
        return base.get(index).meaning().hashCode();
      }

      @Override
      public int rightNumber(int index) {
        return now.get(index).meaning().hashCode();
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
    int[] oursAbove = above(oursToBase);
    int[] above = above(toBase);
    Waiting<List<Object>> same = new Waiting<>();
    for (int i = 0; i < oursToBase.length; i++) {
      if (oursToBase[i] < 0) {
        same.add(placed(ours.get(i), oursAbove[i]), i);
      }
    }
    Set<Integer> taken = new HashSet<>();
    for (int j = 0; j < match.length; j++) {
      if (toBase[j] < 0) {
        match[j] = same.next(placed(theirs.get(j), above[j]));
        taken.add(match[j]);
      }
    }
    Waiting<StatementKey> about = new Waiting<>();
    for (int i = 0; i < oursToBase.length; i++) {
      StatementKey key = ours.get(i).key();
      if (oursToBase[i] < 0 && key != null && !key.several() && !taken.contains(i)) {
        about.add(key, i);
      }
    }
    for (int j = 0; j < match.length; j++) {
      StatementKey key = theirs.get(j).key();
      if (toBase[j] < 0 && match[j] < 0 && key != null) {
        match[j] = about.next(new StatementKey(key.family(), key.whom(), key.where(), false));
      }
    }
    return match;
  }

  /** What a line says; a blank one says where it stands. */
  private static List<Object> placed(Row row, int above) {
    return List.of(row.isStatement(), row.meaning(), row.isBlank() ? above : -1);
  }

  /** For each line the nearest one above it, or itself, that the base has; -1 for none. */
  private static int[] above(int[] toBase) {
    int[] above = new int[toBase.length];
    for (int i = 0; i < above.length; i++) {
      above[i] = toBase[i] >= 0 ? toBase[i] : i == 0 ? -1 : above[i - 1];
    }
    return above;
  }
}
