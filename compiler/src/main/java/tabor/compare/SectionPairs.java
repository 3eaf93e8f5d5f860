package tabor.compare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tabor.groove.Groove;
import tabor.groove.Stroke;

/**
 * Finds which section was which: by name, and where a name is new by the strokes, so that a section
 * is followed when it is renamed.
 */
final class SectionPairs {
  /** A section with less than this share of strokes in common, in percent, is another one. */
  private static final int LEAST_ALIKE = 70;

  private final List<Entry> before;
  private final List<Entry> after;
  private final int[] match;

  private SectionPairs(List<Entry> before, List<Entry> after) {
    this.before = before;
    this.after = after;
    this.match = new int[after.size()];
    java.util.Arrays.fill(match, -1);
  }

  /** For each section of the new file the index of the one that it was; -1 for a new one. */
  static int[] of(List<Entry> before, List<Entry> after) {
    SectionPairs pairs = new SectionPairs(before, after);
    pairs.byName();
    pairs.byStrokes();
    return pairs.match;
  }

  private void byName() {
    Map<String, Integer> names = new HashMap<>();
    for (int i = 0; i < before.size(); i++) {
      names.putIfAbsent(key(before.get(i)), i);
    }
    Set<Integer> taken = new HashSet<>();
    for (int j = 0; j < after.size(); j++) {
      Integer old = names.get(key(after.get(j)));
      if (old != null && taken.add(old)) {
        match[j] = old;
      }
    }
  }

  /** What sounds is called by one set of names, whatever it is; everything else by its own. */
  private static String key(Entry entry) {
    return switch (entry.kind()) {
      case PATTERN, KIT, HEADER -> entry.kind().word() + " " + entry.label();
      default -> entry.label();
    };
  }

  private record Likeness(int before, int after, int percent) {}

  private void byStrokes() {
    Set<Integer> taken = new HashSet<>();
    for (int old : match) {
      taken.add(old);
    }
    List<Likeness> found = new ArrayList<>();
    for (int j = 0; j < after.size(); j++) {
      for (int i = 0; i < before.size() && match[j] < 0; i++) {
        int percent = taken.contains(i) ? 0 : alike(before.get(i), after.get(j));
        if (percent >= LEAST_ALIKE) {
          found.add(new Likeness(i, j, percent));
        }
      }
    }
    found.sort(
        Comparator.comparingInt((Likeness one) -> -one.percent())
            .thenComparingInt(one -> Math.abs(one.before() - one.after())));
    for (Likeness one : found) {
      if (match[one.after()] < 0 && taken.add(one.before())) {
        match[one.after()] = one.before();
      }
    }
  }

  /** How much two sections have in common, in percent. */
  private static int alike(Entry old, Entry now) {
    Groove a = old.groove();
    Groove b = now.groove();
    if (a == null || b == null) {
      return old.kind() == now.kind() ? alikeLines(old, now) : 0;
    }
    List<Stroke> left = a.written();
    Map<List<Object>, Stroke> places = new HashMap<>();
    b.written().forEach(stroke -> places.put(place(stroke), stroke));
    int same = 0;
    for (Stroke stroke : left) {
      Stroke there = places.get(place(stroke));
      same += there != null && StrokeChange.alike(stroke, there) ? 1 : 0;
    }
    int most = Math.max(left.size(), b.written().size());
    return most == 0 ? (a.bars() == b.bars() ? 100 : 0) : same * 100 / most;
  }

  private static List<Object> place(Stroke stroke) {
    return List.of(stroke.bar(), stroke.at(), stroke.limb(), stroke.surface().name());
  }

  private static int alikeLines(Entry old, Entry now) {
    List<String> left = Lines.of(old.syntax(), line -> true, Map.of());
    List<String> right = Lines.of(now.syntax(), line -> true, Map.of());
    List<String> common = new ArrayList<>(left);
    right.forEach(common::remove);
    int most = Math.max(left.size(), right.size());
    return most == 0 ? 0 : (left.size() - common.size()) * 100 / most;
  }
}
