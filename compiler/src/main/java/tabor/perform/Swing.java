package tabor.perform;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import tabor.groove.Stroke;
import tabor.rhythm.Division;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Meters;
import tabor.rhythm.Time;

/**
 * Where written places sound. In a beat divided evenly (in 1, 2, 4, 8 …) the second half of each
 * pair is moved: swung eighths are the halves of a beat, swung sixteenths the halves of each half
 * beat, and what lies between is stretched along. Other divisions sound where they are written. If
 * some stroke of the section stands in a word that divides the beat in three, the share of that
 * beat is two thirds, so that a swung {@code &} falls together with the third place of the triplet.
 */
public final class Swing {
  private static final Time HALF = Time.of(1, 2);
  private static final Time TWO_THIRDS = Time.of(2, 3);

  private final Meters meters;
  private final Feel feel;
  private final Set<Long> inThree = new HashSet<>();

  /** Swing of one section; {@code strokes} say which beats are divided in three. */
  public Swing(Meters meters, Feel feel, List<Stroke> strokes) {
    this.meters = meters;
    this.feel = feel;
    if (feel.isStraight()) {
      return;
    }
    for (Stroke stroke : strokes) {
      Division division = stroke.slot().division();
      if (perBeat(division).num() % 3 == 0) {
        for (int i = 0; i < division.beats(); i++) {
          inThree.add(key(stroke.bar(), division.beat() + i));
        }
      }
    }
  }

  private static long key(int bar, int beat) {
    return bar * 1000L + beat;
  }

  private static Time perBeat(Division division) {
    return Time.of(division.slots(), division.beats());
  }

  /**
   * Where a place sounds that is written in a word of this division.
   *
   * @param bar the bar that {@code at} counts from
   * @param at distance from its barline, 0 or more; it may lie in a later bar
   */
  public Time place(Division division, int bar, Time at) {
    return isEven(division, meters.of(bar)) ? even(bar, at) : at;
  }

  /** Where a place of an evenly divided beat sounds. */
  public Time even(int bar, Time at) {
    if (feel.isStraight() || at.sign() < 0) {
      return at;
    }
    Meters.Place found = meters.place(bar, at);
    Meter meter = meters.of(found.bar());
    Time line = meters.between(bar, found.bar());
    Time place = found.at();
    int beat = meter.beatAt(place);
    Time start = meter.beatStart(beat);
    Time length = meter.beat(beat);
    Time share = inThree.contains(key(found.bar(), beat)) ? TWO_THIRDS : feel.share();
    long pairs = feel.unit() == Feel.Unit.EIGHTHS ? 1 : 2;
    Time in = place.minus(start).over(length).times(pairs);
    Time part = in.fraction();
    Time moved =
        part.before(HALF)
            ? part.times(2).times(share)
            : share.plus(part.minus(HALF).times(2).times(Time.ONE.minus(share)));
    return line.plus(start).plus(length.times(moved.plus(Time.of(in.floor()))).over(pairs));
  }

  /** True if a word's places are those of halves, quarters, eighths … of a beat. */
  private static boolean isEven(Division division, Meter meter) {
    if (Long.bitCount(perBeat(division).num()) != 1) {
      return false;
    }
    for (int i = 1; i < division.beats(); i++) {
      if (!meter.beat(division.beat() + i).equals(meter.beat(division.beat()))) {
        return false;
      }
    }
    return true;
  }
}
