package tabor.resolve;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.groove.Groove;
import tabor.groove.Level;
import tabor.groove.Loudness;
import tabor.groove.Ornament;
import tabor.groove.Ornaments;
import tabor.groove.Stroke;
import tabor.kit.Kit;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;
import tabor.source.Spot;

/** A section in the making: its strokes so far, and what each limb plays from here on. */
final class Work {
  /** Most strokes of one section; more are {@code too-long}. */
  static final int MOST_STROKES = 500_000;

  /** Most bars of one section. */
  static final int MOST_BARS = 512;

  /** Finest division of a beat, groups multiplied out; finer ones are {@code too-deep}. */
  static final int FINEST = 4096;

  final Problems problems;
  final Scope scope;
  final String name;
  final BarGrid grid;
  final Groove.Setting setting;
  final int pickupBeats;
  int bars;
  private List<Stroke> strokes;
  final Map<Limb, Surface> plays = new EnumMap<>(Limb.class);
  final List<Loudness.Mark> marks = new ArrayList<>();
  final List<Loudness.Hairpin> hairpins = new ArrayList<>();
  final List<String> prose = new ArrayList<>();
  final Set<Integer> repeats = new TreeSet<>();
  boolean partial;

  /** In a step: the section that it came from, where its open strokes have been dealt before. */
  @Nullable Groove base;

  private boolean overfull;

  Work(
      Problems problems,
      Scope scope,
      String name,
      Groove.Setting setting,
      int bars,
      int pickupBeats,
      List<Stroke> strokes) {
    this.problems = problems;
    this.scope = scope;
    this.name = name;
    this.setting = setting;
    this.grid = BarGrid.of(setting.meter());
    this.bars = bars;
    this.pickupBeats = pickupBeats;
    this.strokes = strokes;
  }

  Meter meter() {
    return setting.meter();
  }

  Kit kit() {
    return setting.kit();
  }

  /** Length of bar 0 in whole notes. */
  Time pickup() {
    return grid.start(grid.beats()).minus(grid.start(firstBeat(0)));
  }

  /** 0 with a pickup, else 1. */
  int firstBar() {
    return pickupBeats > 0 ? 0 : 1;
  }

  /** The first 0-based beat that exists in a bar: a pickup has only its last beats. */
  int firstBeat(int bar) {
    return bar == 0 ? grid.beats() - pickupBeats : 0;
  }

  /** The strokes so far, in the order of {@link Stroke#ORDER}. Not to be changed in place. */
  List<Stroke> strokes() {
    return strokes;
  }

  /** Takes other strokes, puts them in order, and makes one of strokes that are one. */
  void strokes(List<Stroke> others) {
    strokes = tidy(others);
  }

  /** Adds strokes to those so far. */
  void add(List<Stroke> more) {
    if (!more.isEmpty()) {
      List<Stroke> all = new ArrayList<>(strokes);
      all.addAll(more);
      strokes(all);
    }
  }

  /** Puts strokes in order; a limb on one surface at one place is one stroke, the louder level. */
  static List<Stroke> tidy(List<Stroke> strokes) {
    if (inOrder(strokes)) {
      return strokes;
    }
    List<Stroke> sorted = new ArrayList<>(strokes);
    sorted.sort(Stroke.ORDER);
    List<Stroke> kept = new ArrayList<>(sorted.size());
    for (Stroke next : sorted) {
      Stroke last = kept.isEmpty() ? null : kept.get(kept.size() - 1);
      if (last != null && Stroke.ORDER.compare(last, next) == 0) {
        kept.set(kept.size() - 1, merged(last, next));
      } else {
        kept.add(next);
      }
    }
    return kept;
  }

  /** True if every stroke comes after the one before, as most edits leave them. */
  private static boolean inOrder(List<Stroke> strokes) {
    for (int i = 1; i < strokes.size(); i++) {
      if (Stroke.ORDER.compare(strokes.get(i - 1), strokes.get(i)) >= 0) {
        return false;
      }
    }
    return true;
  }

  /** Two strokes that are one: the one with a limb of its own is kept, at the louder level. */
  static Stroke merged(Stroke one, Stroke two) {
    Stroke a = one.open() && !two.open() ? two : one;
    Stroke b = a == one ? two : one;
    Level louder = a.level().compareTo(b.level()) >= 0 ? a.level() : b.level();
    Ornaments both = a.ornaments();
    for (Ornament ornament : b.ornaments().list()) {
      both = both.with(ornament);
    }
    Stroke kept = a.level() == louder ? a : a.at(louder);
    return both.equals(a.ornaments()) ? kept : kept.with(both);
  }

  /** Keeps only strokes that pass. */
  void keep(Predicate<Stroke> test) {
    List<Stroke> kept = new ArrayList<>(strokes.size());
    for (Stroke stroke : strokes) {
      if (test.test(stroke)) {
        kept.add(stroke);
      }
    }
    strokes = kept;
  }

  /** True if so many strokes more would be too many; says so once at {@code spot}. */
  boolean tooMany(long more, Spot spot) {
    if (strokes.size() + more <= MOST_STROKES) {
      return false;
    }
    if (!overfull) {
      overfull = true;
      partial = true;
      problems.add(
          problems
              .make(
                  Code.TOO_LONG,
                  spot,
                  null,
                  null,
                  "this makes more than " + MOST_STROKES + " strokes in one section")
              .help("make two sections of it"));
    }
    return true;
  }

  /** What a limb plays where nothing else is said. */
  @Nullable Surface plays(Limb limb) {
    return plays.get(limb);
  }

  /** The stroke on another surface; ornaments that it cannot take fall away. */
  static Stroke on(Stroke stroke, Surface surface) {
    Ornaments kept = stroke.ornaments();
    if (!surface.canChoke()) {
      kept = kept.without(Ornament.CHOKE);
    }
    if (!surface.canRimshot()) {
      kept = kept.without(Ornament.RIMSHOT);
    }
    Stroke moved = stroke.on(surface);
    return kept.equals(stroke.ornaments()) ? moved : moved.with(kept);
  }

  /** The same stroke, made by another spot. */
  static Stroke from(Stroke stroke, Spot spot) {
    return stroke.from(spot);
  }
}
