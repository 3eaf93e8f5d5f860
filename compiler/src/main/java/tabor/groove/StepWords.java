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
import tabor.kit.Surface;
import tabor.kit.SurfaceFacts.HiHat;
import tabor.lists.Lists;
import tabor.rhythm.Slot;
import tabor.words.Words;
import tabor.words.Words.Form;

/** Puts a comparison into a drummer's words. */
final class StepWords {
  private final Comparison found;
  private final Groove step;
  private final List<Stroke> now;
  private final Terms terms;
  private final Words words;
  private final Phrases phrases;

  /** How many lists of places the reader has to go through. */
  private int places;

  private StepWords(Comparison found, Terms terms) {
    this.found = found;
    this.terms = terms;
    this.words = terms.words();
    this.phrases = new Phrases(words);
    this.step = found.step();
    this.now = found.now();
    strokes();
  }

  /** What concerns the whole section, then one entry for each part, hands first. */
  static List<String> of(Comparison found, Terms terms) {
    List<String> all = new ArrayList<>(SettingWords.of(found.base(), found.step(), terms.words()));
    Optional<String> displaced = Displacement.find(found, terms.words());
    if (displaced.isPresent()) {
      all.add(displaced.get());
      return all;
    }
    NewBars bars = NewBars.find(found, terms);
    NewLine hands = NewLine.find(bars.others(), true, terms);
    NewLine feet = NewLine.find(hands.others(), false, terms);
    all.addAll(hands.words());
    all.addAll(feet.words());
    all.addAll(new StepWords(feet.others(), terms).phrases.byPart());
    all.addAll(bars.words());
    return all;
  }

  /** How many lists of places it takes to tell these changes stroke by stroke. */
  static int places(Comparison found) {
    return new StepWords(found, Terms.PLAIN).places;
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
      List<Pair> pairs = Lists.filter(found.moved(), p -> p.after().limb() == limb);
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
    Surface target = pairs.get(0).after().surface();
    Set<String> sources = new LinkedHashSet<>();
    pairs.forEach(pair -> sources.add(pair.before().surface().name()));
    boolean hihat =
        Lists.all(
            pairs,
            pair ->
                pair.before().surface().hihat() != HiHat.NONE
                    && pair.after().surface().hihat() != HiHat.NONE);
    List<Stroke> after = after(pairs);
    if (hihat) {
      String how = words.hihat(target.hihat());
      boolean all = after.size() == count(now, s -> onPiece(s, limb));
      phrases.add(
          words.text("hihat.itself"), all ? words.text("change.now", how) : placed(how, after));
      return;
    }
    long allNow = count(now, s -> s.limb() == limb);
    long fromThere =
        count(found.before(), s -> s.limb() == limb && sources.contains(s.surface().name()));
    String said;
    if (after.size() == allNow) {
      said = words.text("change.now", words.surface(target, Form.ON));
    } else if (after.size() == fromThere) {
      List<String> from =
          pairs.stream()
              .map(p -> words.surface(p.before().surface(), Form.FROM))
              .distinct()
              .toList();
      said = words.text("change.from-to", words.and(from), words.surface(target, Form.TO));
    } else {
      said = placed(words.surface(target, Form.TO), after);
    }
    Map<String, List<Stroke>> levels = pairs(pairs);
    boolean allOne = levels.size() == 1 && levels.values().iterator().next().size() == pairs.size();
    if (allOne) {
      String level = levels.keySet().iterator().next();
      // Plain is what a stroke is expected to be.
      said = level.equals(levelWord(Level.PLAIN)) ? said : words.list(List.of(said, level));
    } else {
      levels.forEach(this::level);
    }
    phrases.add(words.limb(limb), said);
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
        words,
        (part, whole, chosen) -> phrases.add(part, whole ? word : placed(word, chosen)));
  }

  private String levelWord(Level level) {
    return words.text("level." + Words.word(level));
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
      String key = "ornament." + ornament.word();
      ornament(gained, words.text(key + ".everywhere"), words.text(key + ".some"));
      ornament(
          lost,
          words.text("change.no-more", words.text(key)),
          words.text("change.none", words.text(key)));
    }
  }

  private static Optional<Ornament> replacement(Pair pair, Ornament lost) {
    return Lists.first(pair.after().ornaments().list(), lost::excludes);
  }

  private void ornament(List<Stroke> strokes, String everywhere, String some) {
    PartSplit.split(
        strokes,
        now,
        words,
        (part, whole, chosen) -> phrases.add(part, whole ? everywhere : placed(some, chosen)));
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
                      String goes =
                          words.text(
                              limb.isRight() ? "change.to-the-right" : "change.to-the-left",
                              words.surface(some.get(0).surface(), Form.THE));
                      phrases.add(
                          words.text(limb.isHand() ? "limb.hands" : "limb.feet"),
                          whole ? goes : placed(goes, some));
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
                places++;
                String in = new PlaceWords(step, terms).bars(Set.copyOf(bars(came)));
                String moved = words.text("change.moved", from.get(), to.get());
                phrases.add(
                    words.surface(came.get(0).surface()),
                    in.isEmpty() ? moved : words.text("place.after", moved, in));
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
    return terms.counts().full(stroke.slot(), step.meter(stroke.bar()));
  }

  private static List<Integer> bars(List<Stroke> strokes) {
    return Lists.map(strokes, Stroke::bar);
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
            .computeIfAbsent(
                words.text(last.of() == 2 ? "change.doubled" : "change.tripled"),
                w -> new LinkedHashSet<>())
            .add(head);
        added.remove(stroke);
      }
    }
    heads.forEach(
        (word, strokes) ->
            PartSplit.bySurface(strokes)
                .values()
                .forEach(
                    some -> phrases.add(words.surface(some.get(0).surface()), placed(word, some))));
  }

  private static Object key(Stroke stroke, Slot slot) {
    return List.of(stroke.bar(), stroke.limb(), stroke.surface().name(), slot);
  }

  private void added(Set<Stroke> added) {
    PartSplit.bySurface(added)
        .forEach(
            (surface, strokes) ->
                phrases.add(
                    words.surface(strokes.get(0).surface()), placed(addedAs(strokes), strokes)));
  }

  private String addedAs(List<Stroke> strokes) {
    Level level = strokes.get(0).level();
    boolean one = Lists.all(strokes, stroke -> stroke.level() == level);
    return one && level != Level.PLAIN
        ? words.text("change.added-as", levelWord(level))
        : words.text("change.added");
  }

  private void dropped(Set<Stroke> dropped) {
    PartSplit.Said said =
        (part, whole, chosen) ->
            phrases.add(
                part,
                whole && isGone(part, chosen)
                    ? words.text("change.left-out")
                    : placed(words.text("change.left-out"), chosen));
    if (now.isEmpty() || !dropped.containsAll(found.before())) {
      PartSplit.split(dropped, found.before(), words, said);
    } else {
      // Something else is there now: to say that everything is left out would be odd.
      PartSplit.bySurface(dropped)
          .values()
          .forEach(some -> said.part(words.surface(some.get(0).surface()), true, some));
    }
  }

  /** True if the part has no stroke any more, none at other places either. */
  private boolean isGone(String part, List<Stroke> dropped) {
    boolean surface = part.equals(words.surface(dropped.get(0).surface()));
    return !Lists.any(
        now,
        stroke ->
            Lists.any(
                dropped,
                old ->
                    surface
                        ? old.surface().name().equals(stroke.surface().name())
                        : old.limb() == stroke.limb()));
  }

  private static List<Stroke> after(List<Pair> pairs) {
    return Lists.map(pairs, Pair::after);
  }

  private static long count(List<Stroke> strokes, Predicate<Stroke> which) {
    return Lists.count(strokes, which);
  }

  private String where(Collection<Stroke> strokes) {
    places++;
    return new PlaceWords(step, terms)
        .of(strokes)
        .orElseGet(() -> words.text("place.many", strokes.size()));
  }

  /** What happened, with where it did. */
  private String placed(String what, Collection<Stroke> strokes) {
    return words.text("place.after", what, where(strokes));
  }
}
