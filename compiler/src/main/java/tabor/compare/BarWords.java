package tabor.compare;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.groove.Level;
import tabor.groove.Ornament;
import tabor.groove.Stroke;
import tabor.rhythm.CountNames;

/** Says bar by bar what is struck otherwise; bars with the same change are named together. */
record BarWords(SectionChange change, List<StrokeChange> strokes) {
  /** More changes than this in a bar where nothing is as it was are not told one by one. */
  private static final int MOST = 6;

  /**
   * {@code bar 1: kick added on 2&}; one entry for the bars that share their changes.
   *
   * @param strokes those of the section's changes that are to be told
   */
  static List<String> of(SectionChange change, List<StrokeChange> strokes) {
    return new BarWords(change, strokes).words();
  }

  private List<String> words() {
    Map<String, Set<Integer>> bars = new LinkedHashMap<>();
    inBars()
        .forEach(
            (bar, changes) ->
                phrases(bar, changes)
                    .forEach(
                        phrase -> bars.computeIfAbsent(phrase, p -> new TreeSet<>()).add(bar)));
    Map<Set<Integer>, List<String>> phrases = new LinkedHashMap<>();
    bars.forEach((phrase, in) -> phrases.computeIfAbsent(in, b -> new ArrayList<>()).add(phrase));
    List<String> words = new ArrayList<>();
    newBars(words);
    phrases.forEach((in, said) -> words.add(barNames(in) + ": " + String.join("; ", said)));
    return words;
  }

  /** The changes by the bar of the new section; what only whole bars brought is left out. */
  private Map<Integer, List<StrokeChange>> inBars() {
    Map<Integer, Integer> now = new LinkedHashMap<>();
    Set<Integer> whole = new LinkedHashSet<>();
    for (SectionChange.Bars bar : change.bars()) {
      now.put(bar.before(), bar.after());
      if (bar.before() == 0) {
        whole.add(bar.after());
      }
    }
    Map<Integer, List<StrokeChange>> found = new TreeMap<>();
    for (StrokeChange stroke : strokes) {
      Stroke after = stroke.after();
      Stroke before = stroke.before();
      int bar;
      if (after != null) {
        bar = whole.contains(after.bar()) ? -1 : after.bar();
      } else if (before != null) {
        bar = before.bar() == 0 ? 0 : now.getOrDefault(before.bar(), before.bar());
        bar = bar == 0 && before.bar() > 0 ? -1 : bar;
      } else {
        bar = -1;
      }
      if (bar >= 0) {
        found.computeIfAbsent(bar, b -> new ArrayList<>()).add(stroke);
      }
    }
    return found;
  }

  private void newBars(List<String> words) {
    Set<Integer> added = new TreeSet<>();
    Set<Integer> gone = new TreeSet<>();
    for (SectionChange.Bars bar : change.bars()) {
      if (bar.before() == 0) {
        added.add(bar.after());
      } else if (bar.after() == 0) {
        gone.add(bar.before());
      }
    }
    if (!added.isEmpty()) {
      words.add(barNames(added) + (added.size() == 1 ? " is new" : " are new"));
    }
    if (!gone.isEmpty()) {
      words.add("the old " + barNames(gone) + (gone.size() == 1 ? " is" : " are") + " left out");
    }
  }

  private static String barNames(Set<Integer> bars) {
    List<Integer> all = List.copyOf(bars);
    if (all.size() == 1) {
      return all.get(0) == 0 ? "pickup" : "bar " + all.get(0);
    }
    int first = all.get(0);
    int last = all.get(all.size() - 1);
    if (all.size() > 2 && last - first == all.size() - 1) {
      return "bars " + first + " to " + last;
    }
    return "bars " + list(all.stream().map(String::valueOf).toList());
  }

  private static String list(List<String> items) {
    int last = items.size() - 1;
    return last == 0
        ? items.get(0)
        : String.join(", ", items.subList(0, last)) + " and " + items.get(last);
  }

  private List<String> phrases(int bar, List<StrokeChange> changes) {
    if (changes.size() > MOST && isAllOther(bar, changes)) {
      return List.of("written anew");
    }
    Map<List<String>, Set<String>> counts = new LinkedHashMap<>();
    for (StrokeChange stroke : changes) {
      for (List<String> said : said(stroke)) {
        counts.computeIfAbsent(said, s -> new LinkedHashSet<>()).add(count(stroke));
      }
    }
    List<String> phrases = new ArrayList<>();
    counts.forEach(
        (said, at) ->
            phrases.add(
                said.size() == 1
                    ? said.get(0)
                    : said.get(0) + " on " + list(List.copyOf(at)) + said.get(1)));
    return phrases;
  }

  /** True if no stroke of the bar, neither as it was nor as it is, has stayed. */
  private boolean isAllOther(int bar, List<StrokeChange> changes) {
    Groove after = change.after() instanceof Groove groove ? groove : null;
    long now = after == null ? 0 : after.written().stream().filter(s -> s.bar() == bar).count();
    return now > 0 && changes.stream().filter(c -> c.after() != null).count() == now;
  }

  private String count(StrokeChange stroke) {
    Stroke after = stroke.after();
    Stroke before = stroke.before();
    return after != null ? countOf(change.after(), after) : countOf(change.before(), before);
  }

  private static String countOf(@Nullable Object section, @Nullable Stroke stroke) {
    if (stroke == null || !(section instanceof Groove groove)) {
      return "";
    }
    return CountNames.of(stroke.slot(), groove.meter(stroke.bar())).toString();
  }

  /** What is said before and after the counts; of a stroke that moved in time one whole phrase. */
  private List<List<String>> said(StrokeChange stroke) {
    Stroke was = stroke.before();
    Stroke is = stroke.after();
    if (was == null) {
      return is == null ? List.of() : List.of(List.of(is.surface().words() + " added", how(is)));
    }
    if (is == null) {
      return List.of(List.of(was.surface().words() + " left out", ""));
    }
    if (!was.at().equals(is.at())) {
      String from = countOf(change.before(), was);
      String to = countOf(change.after(), is);
      return List.of(List.of(is.surface().words() + " moved from " + from + " to " + to));
    }
    List<List<String>> said = new ArrayList<>();
    String what = is.surface().words();
    if (!was.surface().name().equals(is.surface().name())) {
      what = is.limb().words();
      boolean louder = was.level() != is.level();
      String now = louder ? ", now " + level(is.level()) : "";
      String from = " moved from " + was.surface().words();
      said.add(List.of(what, from + " to " + is.surface().words() + now));
    } else if (was.limb() != is.limb()) {
      said.add(
          List.of(what, " goes from the " + was.limb().words() + " to the " + is.limb().words()));
    }
    if (was.level() != is.level() && what.equals(is.surface().words())) {
      said.add(List.of(what, " " + level(is.level()) + " (was " + level(was.level()) + ")"));
    }
    if (!was.ornaments().equals(is.ornaments())) {
      said.add(List.of(what, ornaments(was, is)));
    } else if (is.ornaments().isRolled() && !was.length().equals(is.length())) {
      boolean longer = was.length().before(is.length());
      said.add(List.of(what, longer ? ": rolls longer" : ": rolls shorter"));
    }
    return said;
  }

  /** What is not usual about a new stroke. */
  private static String how(Stroke stroke) {
    List<String> how = new ArrayList<>();
    if (stroke.level() != Level.PLAIN) {
      how.add(level(stroke.level()));
    }
    stroke.ornaments().list().forEach(ornament -> how.add("with " + ornament.words()));
    if (stroke.limb().isHand()) {
      how.add(stroke.limb().words());
    }
    return how.isEmpty() ? "" : " (" + String.join(", ", how) + ")";
  }

  private static String ornaments(Stroke was, Stroke is) {
    List<Ornament> lost = new ArrayList<>(was.ornaments().list());
    lost.removeAll(is.ornaments().list());
    List<Ornament> gained = new ArrayList<>(is.ornaments().list());
    gained.removeAll(was.ornaments().list());
    if (gained.isEmpty()) {
      return ": no " + words(lost) + " any more";
    }
    return lost.isEmpty()
        ? ": " + words(gained) + " added"
        : ": " + words(lost) + " → " + words(gained);
  }

  private static String words(List<Ornament> ornaments) {
    return ornaments.stream().map(Ornament::words).collect(Collectors.joining(" and "));
  }

  private static String level(Level level) {
    return switch (level) {
      case GHOST -> "ghosted";
      case PLAIN -> "plain";
      case ACCENT -> "accented";
    };
  }
}
