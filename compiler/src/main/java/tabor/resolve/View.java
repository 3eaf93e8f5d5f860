package tabor.resolve;

import org.jspecify.annotations.Nullable;
import tabor.groove.CountingWords;
import tabor.groove.Player;
import tabor.groove.SectionWords;
import tabor.kit.Limits;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;
import tabor.words.Language;

/**
 * What one student's section says over a lesson, as far as the music is worked out with it.
 *
 * @param speed how fast; null for every tempo as written
 * @param limits what the student can do; null for what the lesson says
 * @param counts whether counts are printed; null for as written, as in the next two
 * @param sticking whether the sticking is printed
 * @param changes whether changes are marked
 * @param words what is printed for counts; null for as written
 * @param language of the fixed words of printed outputs; null for as written
 */
public record View(
    Player.@Nullable Speed speed,
    @Nullable Limits limits,
    @Nullable Boolean counts,
    @Nullable Boolean sticking,
    @Nullable Boolean changes,
    @Nullable CountingWords words,
    @Nullable Language language) {
  /** Everything as written. */
  public static final View NONE = new View(null, null, null, null, null, null, null);

  /** A tempo of the lesson as this student plays it. */
  public Tempo tempo(Tempo written) {
    if (speed == null) {
      return written;
    }
    Time perMinute = speed.perMinute();
    if (perMinute == null) {
      return written.at(share(written.perMinute()));
    }
    return speed.unit() == null
        ? written.at(perMinute)
        : new Tempo(speed.unit().length(), perMinute);
  }

  /** True if one tempo takes the place of all. */
  boolean setsTempo() {
    return speed != null && speed.perMinute() != null;
  }

  /** A number of beats a minute where a share of every tempo is asked for; else as it is. */
  Time share(Time perMinute) {
    Time share = speed == null ? null : speed.share();
    return share == null ? perMinute : perMinute.times(share);
  }

  Shows shows(Shows written) {
    return new Shows(
        counts == null ? written.counts() : counts,
        sticking == null ? written.sticking() : sticking,
        changes == null ? written.changes() : changes);
  }

  /** The words of a lesson, or those that this student has instead. */
  public SectionWords wording(SectionWords written) {
    return words == null && language == null
        ? written
        : new SectionWords(
            written.read(),
            words == null ? written.printed() : words,
            language == null ? written.language() : language);
  }
}
