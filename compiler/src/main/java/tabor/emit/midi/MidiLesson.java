package tabor.emit.midi;

import java.math.BigInteger;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.Section;
import tabor.groove.Sheet;
import tabor.perform.Performance;
import tabor.perform.Performer;
import tabor.perform.Segment;
import tabor.perform.Sound;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/**
 * The MIDI files of a lesson. They share one division, so that every stroke of the lesson falls on
 * a tick: the least common multiple of all places, or a multiple of it. What is timed by the clock,
 * grace notes and the bounces of a buzz, takes the nearest tick.
 */
public final class MidiLesson {
  private final Lesson lesson;
  private final Ticks ticks;
  private final @Nullable Section tooFine;

  private MidiLesson(Lesson lesson, Ticks ticks, @Nullable Section tooFine) {
    this.lesson = lesson;
    this.ticks = ticks;
    this.tooFine = tooFine;
  }

  /** Finds the division of a lesson's files. */
  public static MidiLesson of(Lesson lesson) {
    Needs needs = new Needs();
    for (Section section : lesson.sections()) {
      if (section instanceof Groove groove) {
        needs.add(section, groove, groove.setting().tempo(), groove.setting().feel());
      } else if (section instanceof Sheet sheet) {
        for (Groove groove : sheet.grooves()) {
          needs.add(section, groove, groove.setting().tempo(), groove.setting().feel());
        }
      } else if (section instanceof Chart chart) {
        needs.add(chart);
      }
    }
    return new MidiLesson(lesson, Ticks.of(needs.division, needs.tempi), needs.tooFine);
  }

  /** Ticks of all files of the lesson. */
  public Ticks ticks() {
    return ticks;
  }

  /**
   * The file of a section: a groove or step once through, after one bar of count-in if {@code
   * countIn}; a chart as it is written.
   */
  public byte[] bytes(Section section, boolean countIn) {
    return SmfWriter.bytes(smf(section, countIn, sound -> true));
  }

  /** The same as a tree, of those sounds only that {@code heard} lets through. */
  public Smf smf(Section section, boolean countIn, Predicate<Sound> heard) {
    return smf(performance(section, countIn), section, heard);
  }

  /** The tree of a performance of this lesson's, named after a section. */
  public Smf smf(Performance performance, Section section, Predicate<Sound> heard) {
    return Arrangement.of(performance, title(section), ticks, heard);
  }

  /** What a section's file plays: of a sheet each variation twice. */
  public static Performance performance(Section section, boolean countIn) {
    if (section instanceof Sheet sheet) {
      return Performer.chart(sheet.inTurn(countIn ? 1 : 0, 2));
    }
    return section instanceof Chart chart
        ? Performer.chart(chart)
        : Performer.once((Groove) section, countIn ? 1 : 0);
  }

  private String title(Section section) {
    return lesson.title() + ": " + section.caption();
  }

  /** The warning that times had to be rounded, where they had to. */
  public Optional<Diagnostic> rounded() {
    if (tooFine == null) {
      return Optional.empty();
    }
    String message =
        "the places of this file have no common division that a MIDI file can hold, so each is"
            + " rounded to the nearest of "
            + ticks.division()
            + " ticks in a quarter note";
    return Optional.of(
        Diagnostic.of(Code.ROUNDED_TICKS, tooFine.heading(), message)
            .in(new Diagnostic.Place(tooFine.name(), null, null))
            .help(
                "no stroke is off by more than half a tick; to avoid it, write sections with very"
                    + " different divisions in files of their own"));
  }

  /** Collects the places of all sections. */
  private static final class Needs {
    private record Known(String groove, Feel feel) {}

    private final Set<Known> known = new HashSet<>();
    private final Set<Time> tempi = new HashSet<>();
    private BigInteger division = Ticks.NONE;
    private @Nullable Section tooFine;

    void add(Chart chart) {
      for (Segment segment : Performer.segments(chart)) {
        Groove groove = segment.groove();
        tempi.add(segment.tempo().quartersPerMinute());
        if (segment.kind() == Segment.Kind.SECTION && groove != null) {
          add(chart, groove, segment.tempo(), segment.feel());
        }
        if (tooFine == null) {
          division = Ticks.need(Ticks.need(division, segment.from()), segment.to());
          tooFine = Ticks.tooFine(division) ? chart : null;
        }
      }
    }

    void add(Section section, Groove groove, Tempo tempo, Feel feel) {
      tempi.add(tempo.quartersPerMinute());
      if (tooFine != null || !known.add(new Known(groove.name(), feel))) {
        return;
      }
      // The click, which swings, and the count-in.
      division = Ticks.need(division, Time.of(1, 8));
      for (Meter meter : groove.meters().cycle()) {
        division = Ticks.need(division, meter.bar());
        for (int i = 0; i < meter.beatCount(); i++) {
          division = Ticks.need(division, meter.beatStart(i));
          division = Ticks.need(division, meter.beat(i).times(feel.share()));
        }
      }
      for (Sound sound : Performer.once(groove, tempo, feel).sounds()) {
        if (sound.kind().isMeasured()) {
          division = Ticks.need(division, sound.start());
        }
        if (Ticks.tooFine(division)) {
          tooFine = section;
          return;
        }
      }
    }
  }
}
