package tabor.groove;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import tabor.kit.Limb;
import tabor.lists.Lists;
import tabor.rhythm.NoteValue;
import tabor.rhythm.Time;
import tabor.words.Words;

/**
 * Finds the two changes that touch every stroke of a part and are heard as one: the part turned
 * round within the section, and the two hands exchanged.
 */
record Displacement(Words words) {
  /** Sections of more strokes than this are not searched; nobody reads their words. */
  private static final int MOST_STROKES = 2000;

  private static final int MOST_TRIES = 48;

  /** One stroke that went elsewhere is told as such. */
  private static final int FEW = 2;

  private record Hit(Time position, Limb limb, String surface, Level level, Ornaments ornaments) {
    /** Without enums, whose own differ from run to run. */
    @Override
    public int hashCode() {
      return 31 * position.hashCode() + surface.hashCode();
    }
  }

  /** One phrase that explains every changed stroke; empty where there is none. */
  static Optional<String> find(Comparison found, Words words) {
    return new Displacement(words).find(found);
  }

  private Optional<String> find(Comparison found) {
    if (found.changed().isEmpty() && found.dropped().isEmpty() && found.passed().isEmpty()) {
      return Optional.empty();
    }
    if (found.before().size() > MOST_STROKES || found.now().size() > MOST_STROKES) {
      return Optional.empty();
    }
    if (isSwapped(found)) {
      return Optional.of(
          words.text("change.line", words.text("limb.hands"), words.text("change.exchanged")));
    }
    if (found.added().size() + found.dropped().size() + found.passed().size() <= FEW) {
      return Optional.empty();
    }
    // An even row turned round is itself: what plays one is named only if no part without it
    // turned.
    for (boolean whole : new boolean[] {true, false}) {
      for (Map.Entry<String, Predicate<Stroke>> part : parts(found).entrySet()) {
        Optional<String> turned =
            whole && !isChangedThroughout(found, part.getValue())
                ? Optional.empty()
                : turned(found, part.getValue());
        if (turned.isPresent()) {
          return Optional.of(words.text("change.line", part.getKey(), turned.get()));
        }
      }
    }
    return Optional.empty();
  }

  /** True if something has changed on every surface that the part strikes. */
  private static boolean isChangedThroughout(Comparison found, Predicate<Stroke> part) {
    Set<String> changed = new HashSet<>();
    found.added().forEach(stroke -> changed.add(stroke.surface().name()));
    found.dropped().forEach(stroke -> changed.add(stroke.surface().name()));
    found.passed().forEach(pair -> changed.add(pair.after().surface().name()));
    return Lists.all(
        Lists.filter(found.now(), part), stroke -> changed.contains(stroke.surface().name()));
  }

  private static boolean isSwapped(Comparison found) {
    Set<Hit> now = new HashSet<>();
    found.now().forEach(stroke -> now.add(hit(found.step(), stroke, stroke.limb())));
    Set<Hit> swapped = new HashSet<>();
    for (Stroke stroke : found.before()) {
      Limb limb = stroke.limb().isHand() ? stroke.limb().other() : stroke.limb();
      swapped.add(hit(found.step(), stroke, limb));
    }
    return now.equals(swapped);
  }

  private static Hit hit(Groove section, Stroke stroke, Limb limb) {
    return new Hit(
        section.position(stroke),
        limb,
        stroke.surface().name(),
        stroke.level(),
        stroke.ornaments());
  }

  /** The parts that may have turned, the widest first. */
  private Map<String, Predicate<Stroke>> parts(Comparison found) {
    Map<String, Predicate<Stroke>> parts = new LinkedHashMap<>();
    parts.put(words.text("limb.everything"), stroke -> true);
    parts.put(words.text("limb.hands"), stroke -> stroke.limb().isHand());
    parts.put(words.text("limb.feet"), stroke -> !stroke.limb().isHand());
    for (Limb limb : Limb.values()) {
      parts.put(words.limb(limb), stroke -> stroke.limb() == limb);
    }
    for (Stroke stroke : found.now()) {
      String name = stroke.surface().name();
      parts.putIfAbsent(words.surface(stroke.surface()), s -> s.surface().name().equals(name));
    }
    return parts;
  }

  private Optional<String> turned(Comparison found, Predicate<Stroke> part) {
    Groove step = found.step();
    if (!onlyThisPart(found, part)) {
      return Optional.empty();
    }
    List<Hit> was = hits(step, found.before(), part);
    List<Hit> is = hits(step, found.now(), part);
    if (was.size() != is.size() || was.size() < 2) {
      return Optional.empty();
    }
    Time length = step.meters().length(step.bars());
    Set<Hit> now = new HashSet<>(is);
    Hit first = was.get(0);
    List<Time> tries = new ArrayList<>();
    for (Hit hit : is) {
      if (sameButPlace(first, hit)) {
        tries.add(hit.position().minus(first.position()).mod(length));
      }
    }
    tries.sort((a, b) -> near(a, length).compareTo(near(b, length)));
    for (Time by : tries.subList(0, Math.min(MOST_TRIES, tries.size()))) {
      if (by.sign() > 0 && Lists.all(was, hit -> now.contains(turn(hit, by, length)))) {
        return words(step, by, length);
      }
    }
    return Optional.empty();
  }

  /** True if nothing outside the part has changed, so that one phrase says it all. */
  private static boolean onlyThisPart(Comparison found, Predicate<Stroke> part) {
    return Lists.all(found.changed(), part)
        && Lists.all(found.dropped(), part)
        && Lists.all(found.passed(), pair -> part.test(pair.after()))
        && Lists.all(Lists.filter(found.now(), part), s -> s.bar() > 0);
  }

  private static List<Hit> hits(Groove section, List<Stroke> strokes, Predicate<Stroke> part) {
    return Lists.map(
        Lists.filter(strokes, part),
        stroke ->
            new Hit(
                section.position(stroke).minus(section.pickup()),
                stroke.limb(),
                stroke.surface().name(),
                stroke.level(),
                stroke.ornaments()));
  }

  private static boolean sameButPlace(Hit a, Hit b) {
    return a.limb() == b.limb()
        && a.surface().equals(b.surface())
        && a.level() == b.level()
        && a.ornaments().equals(b.ornaments());
  }

  private static Hit turn(Hit hit, Time by, Time length) {
    return turnTo(hit, hit.position().plus(by).mod(length));
  }

  private static Hit turnTo(Hit hit, Time position) {
    return new Hit(position, hit.limb(), hit.surface(), hit.level(), hit.ornaments());
  }

  private static Time near(Time by, Time length) {
    return Time.min(by, length.minus(by));
  }

  private Optional<String> words(Groove step, Time later, Time length) {
    boolean back = length.minus(later).before(later);
    Time by = back ? length.minus(later) : later;
    return amount(step, by)
        .map(amount -> words.text(back ? "change.earlier" : "change.later", amount));
  }

  private static boolean hasEqualBeats(Groove step) {
    Time beat = step.meter().beat(0);
    return Lists.all(step.meters().cycle(), m -> m.isEven() && m.beat(0).equals(beat));
  }

  private Optional<String> amount(Groove step, Time by) {
    Time bars = by.over(step.meter().bar());
    if (step.meters().hasEqualBars() && bars.isWhole()) {
      return Optional.of(words.text("by.bars", bars.num()));
    }
    if (hasEqualBeats(step) && by.over(step.meter().beat(0)).isWhole()) {
      return Optional.of(words.text("by.beats", by.over(step.meter().beat(0)).num()));
    }
    for (NoteValue value : NoteValue.values()) {
      Time times = by.over(value.length());
      if (times.isWhole() && times.num() <= 15) {
        return Optional.of(words.text("by." + value.word(), times.num()));
      }
    }
    return Optional.empty();
  }
}
