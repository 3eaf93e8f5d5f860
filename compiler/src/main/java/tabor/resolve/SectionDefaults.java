package tabor.resolve;

import java.util.Map;
import org.jspecify.annotations.Nullable;
import tabor.groove.CountingWords;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.Levels;
import tabor.groove.SectionWords;
import tabor.kit.Kit;
import tabor.kit.Kits;
import tabor.kit.Limits;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Meters;
import tabor.source.Spot;
import tabor.words.Language;

/**
 * What the sections of a file start from: what its header says, else what the file that uses it
 * hands down, else the usual.
 *
 * @param meters the meters; null if those written do not add up
 * @param meterIn what stands between signature and numbers of a meter with {@code in}; else null
 * @param tempo the tempo
 * @param feel where off-beats sound
 * @param levels velocities
 * @param shows what is printed
 * @param kit the kit
 * @param limits limits of players by name; the empty name is everybody
 * @param wording what is counted and printed with
 */
public record SectionDefaults(
    @Nullable Meters meters,
    @Nullable Spot meterIn,
    TempoMark tempo,
    Feel feel,
    Levels levels,
    Shows shows,
    Kit kit,
    Map<String, Limits> limits,
    SectionWords wording) {
  /** What a file starts from that no other uses. */
  public static final SectionDefaults USUAL =
      new SectionDefaults(
          Meters.of(Meter.COMMON),
          null,
          TempoMark.USUAL,
          Feel.STRAIGHT,
          Levels.DEFAULT,
          Shows.ALL,
          Kits.FIVE_PIECE,
          Map.of(),
          SectionWords.USUAL);

  /** Copies the map. */
  public SectionDefaults {
    limits = Map.copyOf(limits);
  }

  /**
   * What a header makes of what its file is handed.
   *
   * @param named the kit that the header names; null if it names none that there is
   */
  public SectionDefaults after(Header header, @Nullable Kit named) {
    return new SectionDefaults(
        header.saysTime() ? header.meters() : USUAL.meters(),
        header.meterIn(),
        header.tempo() == null ? tempo : header.tempo(),
        header.feel() == null ? feel : header.feel(),
        header.levels() == null ? levels : header.levels(),
        header.shows() == null ? shows : header.shows(),
        named != null ? named : header.kit() == null ? kit : Kits.FIVE_PIECE,
        header.limits(),
        wording(header.extras()));
  }

  private SectionWords wording(Lesson.Extras said) {
    boolean none = said.words().equals(CountingWords.OURS);
    CountingWords words = none ? wording.printed() : said.words();
    Language language = said.language();
    return new SectionWords(words, words, language == null ? wording.language() : language);
  }

  /** What is handed down to a file in use: values that mean the same in any meter. */
  public SectionDefaults handedDown() {
    return new SectionDefaults(
        USUAL.meters(),
        null,
        tempo.beat() == null && tempo.equals(TempoMark.USUAL)
            ? tempo
            : TempoMark.of(tempo.in(firstMeter())),
        feel,
        levels,
        shows,
        kit,
        Map.of(),
        wording);
  }

  private Meter firstMeter() {
    return meters == null ? Meter.COMMON : meters.first();
  }

  /** What the file as a whole is played with. */
  public Groove.Setting setting() {
    Meters known = meters == null ? Meters.of(Meter.COMMON) : meters;
    return new Groove.Setting(
        known,
        kit,
        tempo.in(known.first()),
        feel,
        levels,
        shows.counts(),
        shows.sticking(),
        shows.changes(),
        wording);
  }
}
