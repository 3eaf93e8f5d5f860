package tabor.find;

import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;

/**
 * How far the patterns of two sections are from each other, in strokes: one stroke more, one less
 * or one moved counts one. The shorter section repeats itself. The kick's pattern is when the bass
 * drum is struck; that of the hands is which hand strikes when, on whatever, a left-handed player
 * read as a right-handed one. How loud and with which ornaments is left out.
 *
 * @param kick strokes of difference; null where the patterns cannot be compared: another meter, one
 *     of them has no stroke, or they have none in common
 * @param hands the same of the hands
 */
public record Likeness(@Nullable Integer kick, @Nullable Integer hands) {
  /** Nothing in common. */
  public static final Likeness NONE = new Likeness(null, null);

  /** Nearest first, by the nearer of the two patterns, then by the other. */
  public static final Comparator<Likeness> NEAREST =
      Comparator.comparingInt(Likeness::nearer).thenComparingInt(Likeness::farther);

  /** Some limb's stroke at a place of the loop. */
  private record Hit(Time at, boolean right) {}

  /** How far apart two sections are; the same the other way round. */
  public static Likeness of(Groove one, Groove other) {
    if (!sameMeters(one, other)) {
      return NONE;
    }
    Predicate<Stroke> kick = stroke -> stroke.surface().sort() == Surface.Sort.KICK;
    Predicate<Stroke> hands = stroke -> stroke.limb().isHand();
    return new Likeness(distance(one, other, kick, false), distance(one, other, hands, true));
  }

  /** True if one of the patterns differs by so many strokes or fewer. */
  public boolean isWithin(int strokes) {
    return nearer() <= strokes;
  }

  private int nearer() {
    return Math.min(count(kick), count(hands));
  }

  private int farther() {
    return Math.max(count(kick), count(hands));
  }

  private static int count(@Nullable Integer strokes) {
    return strokes == null ? Integer.MAX_VALUE : strokes;
  }

  private static boolean sameMeters(Groove one, Groove other) {
    List<Meter> mine = one.meters().cycle();
    List<Meter> yours = other.meters().cycle();
    boolean same = mine.size() == yours.size();
    for (int i = 0; same && i < mine.size(); i++) {
      same = mine.get(i).hasSameBeats(yours.get(i));
    }
    return same;
  }

  private static @Nullable Integer distance(
      Groove one, Groove other, Predicate<Stroke> part, boolean handed) {
    Time length = Time.max(loop(one), loop(other));
    Set<Hit> mine = hits(one, part, handed, length);
    Set<Hit> yours = hits(other, part, handed, length);
    Set<Hit> common = new HashSet<>(mine);
    common.retainAll(yours);
    return common.isEmpty() ? null : Math.max(mine.size(), yours.size()) - common.size();
  }

  /** How long a section is without its pickup, in whole notes. */
  private static Time loop(Groove groove) {
    return groove.meters().length(groove.bars());
  }

  /** The strokes up to a length; those of a pickup stand before zero, once. */
  private static Set<Hit> hits(Groove groove, Predicate<Stroke> part, boolean handed, Time length) {
    boolean mirrored = groove.setting().kit().leftHanded();
    Time loop = loop(groove);
    Set<Hit> hits = new HashSet<>();
    for (Stroke stroke : groove.strokes()) {
      if (part.test(stroke)) {
        Limb limb = mirrored ? stroke.limb().other() : stroke.limb();
        boolean right = !handed || limb.isRight();
        Time at = groove.position(stroke).minus(groove.pickup());
        hits.add(new Hit(at, right));
        for (Time next = at.plus(loop); at.sign() >= 0 && next.before(length); ) {
          hits.add(new Hit(next, right));
          next = next.plus(loop);
        }
      }
    }
    return hits;
  }
}
