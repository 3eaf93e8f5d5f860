package tabor.perform;

import java.util.Comparator;
import java.util.List;
import tabor.rhythm.Time;

/**
 * Everything that sounds, in order of time.
 *
 * @param segments the runs it is made of, without gaps, in order; never empty
 * @param sounds ordered by start, then limb (clicks last), then key
 * @param length from the start to the last barline, in whole notes
 * @param words rehearsal marks and cues in order; of a chart only
 */
public record Performance(
    List<Segment> segments, List<Sound> sounds, Time length, List<Words> words) {
  /**
   * A rehearsal mark or a cue.
   *
   * @param start whole notes from the start of the performance
   * @param segment the index of the segment that begins there; the number of all of them at the end
   * @param mark true for a rehearsal mark
   * @param text what it says
   */
  public record Words(Time start, int segment, boolean mark, String text) {}

  static final Comparator<Sound> ORDER =
      (a, b) -> {
        int byStart = a.start().compareTo(b.start());
        int byRank = byStart != 0 ? byStart : Integer.compare(rank(a), rank(b));
        int byKey = byRank != 0 ? byRank : Integer.compare(a.key(), b.key());
        return byKey != 0 ? byKey : a.kind().compareTo(b.kind());
      };

  /** Copies the lists. */
  public Performance {
    segments = List.copyOf(segments);
    sounds = List.copyOf(sounds);
    words = List.copyOf(words);
  }

  private static int rank(Sound sound) {
    return sound.limb() == null ? 4 : sound.limb().ordinal();
  }

  /** The segment that a place lies in; after the end the last one. */
  public Segment segmentAt(Time position) {
    int low = 0;
    int high = segments.size() - 1;
    while (low < high) {
      int middle = (low + high + 1) >>> 1;
      if (position.before(segments.get(middle).start())) {
        high = middle - 1;
      } else {
        low = middle;
      }
    }
    return segments.get(low);
  }

  /**
   * Microseconds from the start of the performance to a place, rounded once. Between two changes of
   * tempo it is exact; each change is placed to the nearest picosecond.
   */
  public long micros(Time position) {
    return micros(segmentAt(position), position);
  }

  /** Microseconds from the start to the end. */
  public long lengthMicros() {
    return micros(length);
  }

  static long micros(Segment segment, Time position) {
    long picos = segment.picos() + Clock.picos(position.minus(segment.start()), segment.tempo());
    return Math.floorDiv(picos + 500_000, 1_000_000);
  }
}
