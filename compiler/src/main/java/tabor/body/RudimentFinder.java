package tabor.body;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.groove.Ornament;
import tabor.groove.Roll;
import tabor.groove.Snap;
import tabor.groove.Stroke;
import tabor.kit.Surface;
import tabor.lists.Lists;
import tabor.pattern.Rudiments;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;

/**
 * Finds rudiments in what the two hands of a section do on the drums, however written: a diddle
 * counts the same as two strokes in half the time. Between drums and cymbals only what fills a
 * whole section has a name.
 */
public final class RudimentFinder {
  private final Groove groove;
  private final Snap snap;
  private final List<Hit> hits = new ArrayList<>();

  private RudimentFinder(Groove groove) {
    this.groove = groove;
    this.snap = Snap.of(groove);
  }

  /**
   * A rudiment in a section.
   *
   * @param name as it is played: {@code paradiddle}, {@code five-stroke-roll}
   * @param first the stroke it starts with
   * @param last the stroke it ends with
   * @param throughout true if the hands do nothing else in the whole section
   */
  public record Found(String name, Stroke first, Stroke last, boolean throughout) {}

  /**
   * A stroke of one hand alone; a place where both hands strike has none.
   *
   * @param small how many grace notes come before it
   * @param at from the start of the section
   * @param onBeat true on a beat of the meter
   */
  record Hit(boolean right, int small, boolean buzz, Time at, boolean onBeat, Stroke stroke) {
    /** True on a drum: what hands do on cymbals is time, not a rudiment. */
    boolean onDrum() {
      Surface.Sort sort = stroke.surface().sort();
      return sort == Surface.Sort.SNARE || sort == Surface.Sort.TOM || sort == Surface.Sort.OWN;
    }
  }

  /** The rudiments of a section in order of time; no two share a stroke. */
  public static List<Found> find(Groove groove) {
    RudimentFinder finder = new RudimentFinder(groove);
    boolean alone = finder.collect();
    if (finder.hits.isEmpty()) {
      return List.of();
    }
    RudimentMatcher matcher = new RudimentMatcher(finder.hits, groove.length());
    RudimentMatcher.@Nullable Match all = alone ? matcher.throughout() : null;
    if (all != null) {
      return List.of(
          new Found(
              all.shape().name(),
              finder.hits.get(0).stroke(),
              finder.hits.get(finder.hits.size() - 1).stroke(),
              true));
    }
    List<Found> found = new ArrayList<>();
    for (RudimentMatcher.Match match : matcher.best()) {
      found.add(
          new Found(
              match.shape().name(),
              finder.hits.get(match.from()).stroke(),
              finder.hits.get(match.from() + match.count() - 1).stroke(),
              false));
    }
    return found;
  }

  /** Collects the hands' strokes; false if both ever strike together. */
  private boolean collect() {
    boolean alone = true;
    List<Stroke> hands = Lists.filter(groove.strokes(), s -> s.limb().isHand());
    for (int i = 0; i < hands.size(); i++) {
      Stroke stroke = hands.get(i);
      boolean together =
          (i > 0 && Stroke.areTogether(stroke, hands.get(i - 1)))
              || (i + 1 < hands.size() && Stroke.areTogether(stroke, hands.get(i + 1)));
      alone &= !together;
      add(stroke, together);
    }
    return alone;
  }

  private void add(Stroke stroke, boolean together) {
    Time at = groove.position(stroke);
    boolean right = stroke.limb().isRight();
    Meter meter = groove.meter(stroke.bar());
    boolean onBeat = meter.beatStart(meter.beatAt(stroke.at())).equals(stroke.at());
    // Struck together with the other hand it cannot be part of a rudiment: no shape has 9 of them.
    int small = together ? 9 : stroke.ornaments().graceNotes();
    Optional<Roll> roll = Roll.of(groove, snap, stroke);
    if (roll.isEmpty()) {
      hits.add(new Hit(right, small, stroke.ornaments().has(Ornament.BUZZ), at, onBeat, stroke));
      return;
    }
    for (long i = 0; i < roll.get().count(); i++) {
      boolean by = roll.get().limb(i).isRight();
      Time there = at.plus(roll.get().after(i));
      hits.add(new Hit(by, i == 0 ? small : 0, false, there, onBeat && i == 0, stroke));
    }
  }

  /** The name as drummers say it; the single one needs no word for it. */
  public static String spoken(Rudiments.Rudiment rudiment) {
    String name = rudiment.name();
    return name.startsWith("single-paradiddle") ? name.substring("single-".length()) : name;
  }
}
