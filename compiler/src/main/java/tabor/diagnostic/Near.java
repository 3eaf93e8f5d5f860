package tabor.diagnostic;

import java.util.Collection;
import java.util.List;
import java.util.Optional;

/** Finds the name that somebody probably meant. */
public final class Near {
  /** More names of about the right length are not looked at: nobody has so many. */
  private static final int MOST_COMPARED = 200;

  private Near() {}

  /**
   * The candidate that takes the fewest slips to write as {@code name}: letters left out, put in,
   * changed or exchanged with their neighbour. Among equals the first. Empty if every candidate is
   * more than a third of the name away, and at least one slip is always allowed from three letters.
   */
  public static Optional<String> find(String name, Collection<String> candidates) {
    if (name.length() > 60) {
      return Optional.empty();
    }
    int allowed = name.length() < 3 ? 0 : Math.max(1, name.length() / 3);
    String best = null;
    int compared = 0;
    for (String candidate : candidates) {
      if (candidate.equals(name) || Math.abs(candidate.length() - name.length()) > allowed) {
        continue;
      }
      if (++compared > MOST_COMPARED) {
        break;
      }
      int slips = slips(name, candidate, allowed);
      if (slips <= allowed) {
        best = candidate;
        allowed = slips - 1;
        if (allowed < 0) {
          break;
        }
      }
    }
    return Optional.ofNullable(best);
  }

  /** All candidates that {@link #find} would allow, fewest slips first, at most three. */
  public static List<String> names(String name, Collection<String> candidates) {
    int allowed = name.length() < 3 || name.length() > 60 ? 0 : Math.max(1, name.length() / 3);
    return candidates.stream()
        .filter(c -> !c.equals(name) && Math.abs(c.length() - name.length()) <= allowed)
        .filter(c -> slips(name, c, allowed) <= allowed)
        .sorted((a, b) -> Integer.compare(slips(name, a, allowed), slips(name, b, allowed)))
        .limit(3)
        .toList();
  }

  /** Number of slips between two words, or {@code limit + 1} where it is more than the limit. */
  static int slips(String a, String b, int limit) {
    int[] twoBack = new int[b.length() + 1];
    int[] back = new int[b.length() + 1];
    int[] row = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      back[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      row[0] = i;
      int least = i;
      for (int j = 1; j <= b.length(); j++) {
        int same = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        int cost = Math.min(back[j - 1] + same, Math.min(back[j], row[j - 1]) + 1);
        if (i > 1
            && j > 1
            && a.charAt(i - 1) == b.charAt(j - 2)
            && a.charAt(i - 2) == b.charAt(j - 1)) {
          cost = Math.min(cost, twoBack[j - 2] + 1);
        }
        row[j] = cost;
        least = Math.min(least, cost);
      }
      if (least > limit) {
        return limit + 1;
      }
      int[] spare = twoBack;
      twoBack = back;
      back = row;
      row = spare;
    }
    return Math.min(back[b.length()], limit + 1);
  }
}
