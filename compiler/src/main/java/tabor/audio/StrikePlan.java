package tabor.audio;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import tabor.perform.Performance;
import tabor.perform.Sound;
import tabor.timbre.Timbres;

/**
 * The strokes of a performance in seconds: what is played once, and what is then repeated.
 *
 * @param first what is played once, in order
 * @param again one round of what is repeated after it, in order, at its first time; empty for
 *     nothing
 * @param start where the first round begins, in seconds; without rounds the end of the performance
 * @param length of a round in seconds; 0 without rounds
 */
record StrikePlan(List<Strike> first, List<Strike> again, double start, double length) {
  StrikePlan {
    first = List.copyOf(first);
    again = List.copyOf(again);
  }

  /** A performance once. */
  static StrikePlan once(Performance performance, Predicate<Sound> heard) {
    List<Strike> all = new ArrayList<>();
    performance.sounds().forEach(sound -> all.add(strike(performance, sound, heard)));
    return new StrikePlan(all, List.of(), seconds(performance.lengthMicros()), 0);
  }

  /** A performance whose last segment is then repeated. */
  static StrikePlan lastAgain(Performance performance, Predicate<Sound> heard) {
    int last = performance.segments().size() - 1;
    List<Strike> first = new ArrayList<>();
    List<Strike> again = new ArrayList<>();
    for (Sound sound : performance.sounds()) {
      (sound.segment() == last ? again : first).add(strike(performance, sound, heard));
    }
    double start = seconds(performance.micros(performance.segments().get(last).start()));
    double end = seconds(performance.lengthMicros());
    return new StrikePlan(first, again, start, end - start);
  }

  /** A performance that is repeated as a whole. */
  static StrikePlan allAgain(Performance performance, Predicate<Sound> heard) {
    StrikePlan once = once(performance, heard);
    return new StrikePlan(List.of(), once.first(), 0, once.start());
  }

  private static Strike strike(Performance performance, Sound sound, Predicate<Sound> heard) {
    double damp = sound.isChoked() ? seconds(performance.micros(sound.end()) - sound.micros()) : 0;
    return new Strike(
        seconds(sound.micros()), Timbres.name(sound), sound.velocity(), heard.test(sound), damp);
  }

  private static double seconds(long micros) {
    return micros / 1e6;
  }
}
