package tabor.groove;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import tabor.groove.Comparison.Pair;
import tabor.kit.Limb;
import tabor.kit.SurfaceFacts.HiHat;
import tabor.rhythm.CountNames;
import tabor.rhythm.Slot;

/** Puts a comparison into a drummer's words. */
final class StepWords {
  private final Comparison found;
  private final Groove step;
  private final List<Stroke> now;
  private final Phrases phrases = new Phrases();

  /** How many lists of places the reader has to go through. */
  private int places;

  private StepWords(Comparison found) {
    this.found = found;
    this.step = found.step();
    this.now = found.now();
    strokes();
  }

  /** What concerns the whole section, then one entry for each part, hands first. */
  static List<String> of(Comparison found) {
    List<String> all = new ArrayList<>(SettingWords.of(found.base(), found.step()));
    Optional<String> displaced = Displacement.find(found);
    if (displaced.isPresent()) {
      all.add(displaced.get());
      return all;
    }
    NewBars bars = NewBars.find(found);
    NewLine hands = NewLine.find(bars.others(), true);
    NewLine feet = NewLine.find(hands.others(), false);
    all.addAll(hands.words());
    all.addAll(feet.words());
    all.addAll(new StepWords(feet.others()).phrases.byPart());
    all.addAll(bars.words());
    return all;
  }

  /** How many lists of places it takes to tell these changes stroke by stroke. */
  static int places(Comparison found) {
    return new StepWords(found).places;
  }

  private void strokes() {
    movedToSurface();
    altered();
    passed();
    Set<Stroke> added = new LinkedHashSet<>(found.added());
    Set<Stroke> dropped = new LinkedHashSet<>(found.dropped());
    movedInTime(added, dropped);
    doubled(added);
    added(added);
    dropped(dropped);
  }

  // Where a limb plays now.

  private void movedToSurface() {
    for (Limb limb : Limb.values()) {
      List<Pair> pairs = found.moved().stream().filter(p -> p.after().limb() == limb).toList();
      Map<String, List<Pair>> byTarget = new LinkedHashMap<>();
      for (Pair pair : pairs) {
        byTarget
            .computeIfAbsent(pair.after().surface().name(), name -> new ArrayList<>())
            .add(pair);
      }
      byTarget.values().forEach(group -> movedTo(limb, group));
    }
  }

  private void movedTo(Limb limb, List<Pair> pairs) {
    String target = pairs.get(0).after().surface().words();
    Set<String> sources = new LinkedHashSet<>();
    pairs.forEach(pair -> sources.add(pair.before().surface().name()));
    boolean hihat =
        pairs.stream()
            .allMatch(
                pair ->
                    pair.before().surface().hihat() != HiHat.NONE
                        && pair.after().surface().hihat() != HiHat.NONE);
    List<Stroke> after = after(pairs);
    if (hihat) {
      String how = pairs.get(0).after().surface().hihat().words();
      boolean all = after.size() == count(now, s -> onPiece(s, limb));
      phrases.add("hi-hat", all ? "now " + how : how + " " + where(after));
      return;
    }
    long allNow = count(now, s -> s.limb() == limb);
    long fromThere =
        count(found.before(), s -> s.limb() == limb && sources.contains(s.surface().name()));
    String words;
    if (after.size() == allNow) {
      words = "now on the " + target;
    } else if (after.size() == fromThere) {
      List<String> from = pairs.stream().map(p -> p.before().surface().words()).distinct().toList();
      words = "from the " + PlaceWords.list(from) + " to the " + target;
    } else {
      words = "to the " + target + " " + where(after);
    }
    Map<String, List<Stroke>> levels = pairs(pairs);
    boolean allOne = levels.size() == 1 && levels.values().iterator().next().size() == pairs.size();
    if (allOne) {
      String level = levels.keySet().iterator().next();
      // Plain is what a stroke is expected to be.
      words += level.equals(levelWord(Level.PLAIN)) ? "" : ", " + level;
    } else {
      levels.forEach(this::level);
    }
    phrases.add(limb.words(), words);
  }

  private static boolean onPiece(Stroke stroke, Limb limb) {
    return stroke.limb() == limb && stroke.surface().isHiHat();
  }

  // Levels and ornaments.

  private Map<String, List<Stroke>> pairs(List<Pair> pairs) {
    Map<String, List<Stroke>> byLevel = new LinkedHashMap<>();
    for (Pair pair : pairs) {
      Level now = pair.after().level();
      if (now != pair.before().level()) {
        byLevel.computeIfAbsent(levelWord(now), w -> new ArrayList<>()).add(pair.after());
      }
    }
    return byLevel;
  }

  private void level(String word, List<Stroke> strokes) {
    PartSplit.split(
        strokes,
        now,
        (part, whole, chosen) -> phrases.add(part, whole ? word : word + " " + where(chosen)));
  }

  private static String levelWord(Level level) {
    return switch (level) {
      case GHOST -> "ghosted";
      case PLAIN -> "plain";
      case ACCENT -> "accented";
    };
  }

  private void altered() {
    pairs(found.altered()).forEach(this::level);
    List<Pair> all = new ArrayList<>(found.altered());
    all.addAll(found.moved());
    for (Ornament ornament : Ornament.values()) {
      List<Stroke> gained = new ArrayList<>();
      List<Stroke> lost = new ArrayList<>();
      for (Pair pair : all) {
        boolean was = pair.before().ornaments().has(ornament);
        boolean is = pair.after().ornaments().has(ornament);
        if (is && !was) {
          gained.add(pair.after());
        } else if (was && !is && replacement(pair, ornament).isEmpty()) {
          lost.add(pair.after());
        }
      }
      ornament(gained, ornament.everywhere(), ornament.some());
      ornament(lost, "no " + ornament.words() + " any more", "no " + ornament.words());
    }
  }

  private static Optional<Ornament> replacement(Pair pair, Ornament lost) {
    return pair.after().ornaments().list().stream().filter(lost::excludes).findFirst();
  }

  private void ornament(List<Stroke> strokes, String everywhere, String some) {
    PartSplit.split(
        strokes,
        now,
        (part, whole, chosen) ->
            phrases.add(part, whole ? everywhere : some + " " + where(chosen)));
  }

  // Other limbs, other places.

  private void passed() {
    Map<Limb, List<Stroke>> byLimb = new LinkedHashMap<>();
    after(found.passed())
        .forEach(s -> byLimb.computeIfAbsent(s.limb(), l -> new ArrayList<>()).add(s));
    byLimb.forEach(
        (limb, strokes) ->
            PartSplit.bySurface(strokes)
                .forEach(
                    (surface, some) -> {
                      boolean whole =
                          some.size() == count(now, s -> s.surface().name().equals(surface));
                      phrases.add(
                          limb.isHand() ? "hands" : "feet",
                          "the "
                              + some.get(0).surface().words()
                              + " goes to the "
                              + (limb.isRight() ? "right" : "left")
                              + (whole ? "" : " " + where(some)));
                    }));
    pairs(found.passed()).forEach(this::level);
  }

  /** One place left and another taken, in the same bars: a stroke that went elsewhere. */
  private void movedInTime(Set<Stroke> added, Set<Stroke> dropped) {
    Map<String, List<Stroke>> gone = PartSplit.bySurface(dropped);
    PartSplit.bySurface(added)
        .forEach(
            (surface, came) -> {
              List<Stroke> went = gone.getOrDefault(surface, List.of());
              Optional<String> from = single(went);
              Optional<String> to = single(came);
              if (from.isPresent() && to.isPresent() && bars(went).equals(bars(came))) {
                String in = where(came);
                String at = "on " + to.get();
                phrases.add(
                    came.get(0).surface().words(),
                    "from "
                        + from.get()
                        + " to "
                        + to.get()
                        + (in.startsWith(at) ? in.substring(at.length()) : ""));
                added.removeAll(came);
                dropped.removeAll(went);
              }
            });
  }

  /** The count at which all these strokes stand, if it is one. */
  private Optional<String> single(List<Stroke> strokes) {
    Set<String> counts = new HashSet<>();
    strokes.forEach(stroke -> counts.add(countOf(stroke)));
    return counts.size() == 1 ? Optional.of(counts.iterator().next()) : Optional.empty();
  }

  private String countOf(Stroke stroke) {
    return CountNames.of(stroke.slot(), step.meter(stroke.bar())).toString();
  }

  private static List<Integer> bars(List<Stroke> strokes) {
    return strokes.stream().map(Stroke::bar).toList();
  }

  /** Strokes that were split in their own slot. */
  private void doubled(Set<Stroke> added) {
    Set<Object> old = new HashSet<>();
    found.before().forEach(s -> old.add(key(s, s.slot())));
    Map<Object, Stroke> bySlot = new LinkedHashMap<>();
    now.forEach(s -> bySlot.put(key(s, s.slot()), s));
    Map<String, Set<Stroke>> heads = new LinkedHashMap<>();
    for (Stroke stroke : List.copyOf(added)) {
      List<Slot.Part> parts = stroke.slot().parts();
      if (parts.isEmpty() || parts.get(parts.size() - 1).index() == 0) {
        continue;
      }
      Slot.Part last = parts.get(parts.size() - 1);
      List<Slot.Part> outer = parts.subList(0, parts.size() - 1);
      List<Slot.Part> first = new ArrayList<>(outer);
      first.add(new Slot.Part(0, last.of()));
      Slot.Part[] none = {};
      Slot whole =
          new Slot(stroke.slot().division(), stroke.slot().index(), List.of(outer.toArray(none)));
      Stroke head = bySlot.get(key(stroke, new Slot(whole.division(), whole.index(), first)));
      if (head != null && old.contains(key(stroke, whole)) && last.of() <= 3) {
        heads
            .computeIfAbsent(last.of() == 2 ? "doubled" : "tripled", w -> new LinkedHashSet<>())
            .add(head);
        added.remove(stroke);
      }
    }
    heads.forEach(
        (word, strokes) ->
            PartSplit.bySurface(strokes)
                .values()
                .forEach(
                    some -> phrases.add(some.get(0).surface().words(), word + " " + where(some))));
  }

  private static Object key(Stroke stroke, Slot slot) {
    return List.of(stroke.bar(), stroke.limb(), stroke.surface().name(), slot);
  }

  private void added(Set<Stroke> added) {
    PartSplit.bySurface(added)
        .forEach(
            (surface, strokes) ->
                phrases.add(
                    strokes.get(0).surface().words(),
                    "added" + levelOf(strokes) + " " + where(strokes)));
  }

  private static String levelOf(List<Stroke> strokes) {
    Level level = strokes.get(0).level();
    boolean one = strokes.stream().allMatch(stroke -> stroke.level() == level);
    return one && level != Level.PLAIN ? " " + levelWord(level) : "";
  }

  private void dropped(Set<Stroke> dropped) {
    PartSplit.Said said =
        (part, whole, chosen) ->
            phrases.add(
                part, whole && isGone(part, chosen) ? "left out" : "left out " + where(chosen));
    if (now.isEmpty() || !dropped.containsAll(found.before())) {
      PartSplit.split(dropped, found.before(), said);
    } else {
      // Something else is there now: to say that everything is left out would be odd.
      PartSplit.bySurface(dropped)
          .values()
          .forEach(some -> said.part(some.get(0).surface().words(), true, some));
    }
  }

  /** True if the part has no stroke any more, none at other places either. */
  private boolean isGone(String part, List<Stroke> dropped) {
    boolean surface = part.equals(dropped.get(0).surface().words());
    return now.stream()
        .noneMatch(
            stroke ->
                dropped.stream()
                    .anyMatch(
                        old ->
                            surface
                                ? old.surface().name().equals(stroke.surface().name())
                                : old.limb() == stroke.limb()));
  }

  private static List<Stroke> after(List<Pair> pairs) {
    return pairs.stream().map(Pair::after).toList();
  }

  private static long count(List<Stroke> strokes, Predicate<Stroke> which) {
    return strokes.stream().filter(which).count();
  }

  private String where(Collection<Stroke> strokes) {
    places++;
    return PlaceWords.of(step, strokes).orElseGet(() -> "in " + strokes.size() + " places");
  }
}
