package tabor.compare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.groove.Section;
import tabor.groove.Sheet;
import tabor.groove.Stroke;

/**
 * Finds which section was which: by name, and where a name is new by the strokes, so that a section
 * is followed when it is renamed.
 */
final class SectionPairs {
  /** A section with less than this share of strokes in common, in percent, is another one. */
  private static final int LEAST_ALIKE = 70;

  /** Most pairs of sections of which all are compared. */
  private static final int MOST_LOOKED_AT = 40_000;

  /** How far a section is looked for in either direction where there are more. */
  private static final int NEAREST = 20;

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
    pairs.variations();
    return pairs.match;
  }

  private void byName() {
    Map<String, Integer> names = new HashMap<>();
    for (int i = 0; i < before.size(); i++) {
      if (!before.get(i).isVariation()) {
        names.putIfAbsent(key(before.get(i)), i);
      }
    }
    Set<Integer> taken = new HashSet<>();
    for (int j = 0; j < after.size(); j++) {
      Integer old = after.get(j).isVariation() ? null : names.get(key(after.get(j)));
      if (old != null && taken.add(old)) {
        match[j] = old;
      }
    }
  }

  /** What sounds is called by one set of names, whatever it is; everything else by its own. */
  private static String key(Entry entry) {
    return switch (entry.kind()) {
      case PATTERN, KIT, PLAYER, HEADER -> entry.kind().word() + " " + entry.label();
      default -> entry.label();
    };
  }

  private record Likeness(int before, int after, int percent) {}

  private void byStrokes() {
    Set<Integer> taken = new HashSet<>();
    for (int matched : match) {
      taken.add(matched);
    }
    List<Integer> old =
        IntStream.range(0, before.size()).filter(i -> !taken.contains(i)).boxed().toList();
    List<Integer> now = IntStream.range(0, after.size()).filter(j -> match[j] < 0).boxed().toList();
    // Where hundreds have new names each is looked for among the nearest of the others.
    int far =
        (long) old.size() * now.size() <= MOST_LOOKED_AT
            ? Math.max(old.size(), now.size())
            : NEAREST;
    List<Likeness> found = new ArrayList<>();
    // The places and lines of each old section that is still near, worked out once.
    Map<Integer, List<List<Object>>> places = new HashMap<>();
    Map<Integer, List<String>> lines = new HashMap<>();
    for (int j = 0; j < now.size(); j++) {
      places.remove(j - far - 1);
      lines.remove(j - far - 1);
      Entry entry = after.get(now.get(j));
      List<String> own = null;
      Map<List<Object>, Stroke> struck = struck(entry.groove());
      for (int i = Math.max(0, j - far); i < Math.min(old.size(), j + far + 1); i++) {
        Entry was = before.get(old.get(i));
        Groove a = was.groove();
        Groove b = entry.groove();
        int percent = 0;
        if (a == null || b == null || was.isVariation() || entry.isVariation()) {
          if (mayBeAlike(was, entry)) {
            own = own == null ? lines(entry) : own;
            percent = alike(lines.computeIfAbsent(i, index -> lines(was)), own);
          }
        } else if (mayBeAlike(a, b)) {
          percent = alike(a, places.computeIfAbsent(i, index -> places(a)), b, struck);
        }
        if (percent >= LEAST_ALIKE) {
          found.add(new Likeness(old.get(i), now.get(j), percent));
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

  /** False where one has so many strokes more that what they have in common cannot be enough. */
  private static boolean mayBeAlike(Groove a, Groove b) {
    long less = Math.min(a.written().size(), b.written().size());
    return less * 100 >= (long) LEAST_ALIKE * Math.max(a.written().size(), b.written().size());
  }

  /** The same for sections that are not both grooves. */
  private static boolean mayBeAlike(Entry old, Entry now) {
    return !old.isVariation() && !now.isVariation() && old.kind() == now.kind();
  }

  /** How much two sections have in common, in percent. */
  private static int alike(
      Groove a, List<List<Object>> places, Groove b, Map<List<Object>, Stroke> struck) {
    List<Stroke> left = a.written();
    int same = 0;
    for (int i = 0; i < left.size(); i++) {
      Stroke there = struck.get(places.get(i));
      same += there != null && StrokeChange.alike(left.get(i), there) ? 1 : 0;
    }
    int most = Math.max(left.size(), b.written().size());
    return most == 0 ? (a.bars() == b.bars() ? 100 : 0) : same * 100 / most;
  }

  private static Map<List<Object>, Stroke> struck(@Nullable Groove groove) {
    Map<List<Object>, Stroke> struck = new HashMap<>();
    if (groove != null) {
      groove.written().forEach(stroke -> struck.put(place(stroke), stroke));
    }
    return struck;
  }

  private static List<List<Object>> places(Groove groove) {
    return groove.written().stream().map(SectionPairs::place).toList();
  }

  private static List<Object> place(Stroke stroke) {
    return List.of(stroke.bar(), stroke.at(), stroke.limb(), stroke.surface().name());
  }

  /**
   * The variations of a sheet are found by their strokes: one put in between moves the numbers.
   * What is left on both sides is taken in order.
   */
  private void variations() {
    for (int j = 0; j < after.size(); j++) {
      Section sheet = after.get(j).section();
      if (match[j] < 0 || !(sheet instanceof Sheet) || after.get(j).isVariation()) {
        continue;
      }
      List<Integer> old = variations(before, match[j]);
      List<Integer> now = variations(after, j);
      for (int index : List.copyOf(now)) {
        Groove groove = after.get(index).groove();
        for (int from : List.copyOf(old)) {
          Groove was = before.get(from).groove();
          if (match[index] < 0 && groove != null && was != null && isSame(was, groove)) {
            match[index] = from;
            old.remove(Integer.valueOf(from));
            now.remove(Integer.valueOf(index));
          }
        }
      }
      for (int k = 0; k < Math.min(old.size(), now.size()); k++) {
        match[now.get(k)] = old.get(k);
      }
    }
  }

  private static List<Integer> variations(List<Entry> entries, int sheet) {
    List<Integer> found = new ArrayList<>();
    for (int i = sheet + 1; i < entries.size() && entries.get(i).isVariation(); i++) {
      found.add(i);
    }
    return found;
  }

  private static boolean isSame(Groove a, Groove b) {
    return a.bars() == b.bars()
        && a.written().size() == b.written().size()
        && StrokePairs.of(a, b, BarPairs.inPlace(a.bars())).isEmpty();
  }

  private static List<String> lines(Entry entry) {
    return Lines.of(entry.syntax(), line -> true, Map.of());
  }

  private static int alike(List<String> left, List<String> right) {
    Map<String, Integer> unmatched = new HashMap<>();
    left.forEach(line -> unmatched.merge(line, 1, Integer::sum));
    int common = 0;
    for (String line : right) {
      if (unmatched.merge(line, -1, Integer::sum) >= 0) {
        common++;
      }
    }
    int most = Math.max(left.size(), right.size());
    return most == 0 ? 0 : common * 100 / most;
  }
}
