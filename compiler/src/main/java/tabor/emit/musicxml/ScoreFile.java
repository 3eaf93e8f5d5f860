package tabor.emit.musicxml;

import java.math.BigInteger;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A MusicXML document with one percussion part, as a tree of what is in it. The names are those of
 * the format; every duration counts in the divisions of its measure.
 *
 * @param title the work's title
 * @param by who made it; null if nobody is named
 * @param instruments the sounds used, each with its own id
 * @param measures in order
 */
public record ScoreFile(
    String title, @Nullable String by, List<Instrument> instruments, List<Measure> measures) {
  /** Copies the lists. */
  public ScoreFile {
    instruments = List.copyOf(instruments);
    measures = List.copyOf(measures);
  }

  /**
   * A sound of the kit.
   *
   * @param id unique in the document
   * @param name as a sentence says it
   * @param sound the standard sound id; null where the list has none
   * @param unpitched MIDI key plus one, 1 to 128
   */
  public record Instrument(String id, String name, @Nullable String sound, int unpitched) {}

  /**
   * A measure. In the file it is numbered through; what is shown is the bar's number.
   *
   * @param number the bar's number in its section
   * @param implicit true for a pickup and for the bar before it, whose number is not shown
   * @param elements in the order written
   */
  public record Measure(int number, boolean implicit, List<Element> elements) {
    /** Copies the list. */
    public Measure {
      elements = List.copyOf(elements);
    }
  }

  /** What stands in a measure. */
  public sealed interface Element {}

  /** A new system starts here. */
  public record NewSystem() implements Element {}

  /**
   * Divisions, time and clef, each only where it changes.
   *
   * @param divisions of a quarter note; null where they stay
   * @param time upper and lower number; null where it stays
   * @param clef true if the clef is written
   * @param barRepeat true where one-bar repeat signs start, false where they stop, null elsewhere
   */
  public record Attributes(
      @Nullable BigInteger divisions,
      @Nullable TimeSignature time,
      boolean clef,
      @Nullable Boolean barRepeat)
      implements Element {}

  /**
   * A time signature.
   *
   * @param beats the upper number, or a sum such as {@code 2+2+3}
   */
  public record TimeSignature(String beats, int beatType) {}

  /**
   * A direction.
   *
   * @param kind what is written
   * @param above true above the staff, false below
   * @param offset how far after the next note's start it stands
   */
  public record Direction(DirectionKind kind, boolean above, BigInteger offset)
      implements Element {}

  /**
   * A tempo that is heard and not printed.
   *
   * @param quarters quarter notes per minute
   * @param offset how far after the next note's start it begins
   */
  public record SoundTempo(String quarters, BigInteger offset) implements Element {}

  /** Kinds of direction. */
  public sealed interface DirectionKind {}

  /** A boxed title. */
  public record Rehearsal(String text) implements DirectionKind {}

  /**
   * A text.
   *
   * @param italic true for what a step changed
   * @param swing what players do with off-beats from here on; null if nothing changes
   */
  public record Words(String text, boolean italic, @Nullable Swing swing)
      implements DirectionKind {}

  /**
   * Swung off-beats in smallest whole numbers; 1 and 1 is straight.
   *
   * @param type the note value that is swung
   */
  public record Swing(long first, long second, String type) {}

  /**
   * A tempo mark.
   *
   * @param quarters quarter notes per minute, whatever is counted
   */
  public record Metronome(String beatUnit, boolean dot, String perMinute, String quarters)
      implements DirectionKind {}

  /** A dynamic mark. */
  public record Dynamics(String mark) implements DirectionKind {}

  /**
   * One end of a hairpin.
   *
   * @param type {@code crescendo}, {@code diminuendo} or {@code stop}
   */
  public record Wedge(String type, int number) implements DirectionKind {}

  /** Back to the start of the measure for the second voice. */
  public record Backup(BigInteger duration) implements Element {}

  /**
   * A barline.
   *
   * @param left true at the measure's start
   * @param style null for the usual one
   * @param repeatTimes 0 for no repeat; at the left any other number, at the right how often the
   *     repeated measures are played in all
   */
  public record Barline(boolean left, @Nullable String style, long repeatTimes)
      implements Element {}

  /**
   * A note, a grace note or a rest.
   *
   * @param grace null for what takes time
   * @param chord true if it sounds with the note before it
   * @param body what is struck; null for a rest
   * @param rest how a rest is drawn; null for a note
   * @param duration null for a grace note
   * @param shape its value; null for a rest that fills the measure
   * @param stem null where there is none
   * @param beams by level, 1 first
   * @param notations what is attached to it
   * @param lyrics count and sticking
   */
  public record Note(
      @Nullable Grace grace,
      boolean chord,
      @Nullable Body body,
      @Nullable RestBody rest,
      @Nullable BigInteger duration,
      int voice,
      @Nullable Shape shape,
      @Nullable String stem,
      List<String> beams,
      Notations notations,
      List<Lyric> lyrics)
      implements Element {
    /** The same under a hold sign. */
    Note hold() {
      return new Note(
          grace, chord, body, rest, duration, voice, shape, stem, beams, notations.hold(), lyrics);
    }

    /** Copies the lists. */
    public Note {
      beams = List.copyOf(beams);
      lyrics = List.copyOf(lyrics);
    }
  }

  /** A grace note before the beat. */
  public record Grace() {}

  /**
   * What is struck.
   *
   * @param dynamics percent of velocity 90
   */
  public record Body(
      char step,
      int octave,
      String instrument,
      String head,
      boolean parentheses,
      String dynamics) {}

  /**
   * A rest.
   *
   * @param measure true if it fills the measure
   * @param middle true if it is drawn on the middle line, for both voices
   * @param shown false if it is not drawn
   */
  public record RestBody(boolean measure, boolean middle, boolean shown) {}

  /**
   * A note value.
   *
   * @param ratio the tuplets around it taken together; null outside tuplets
   */
  public record Shape(String type, int dots, @Nullable Ratio ratio) {}

  /** So many notes in the time of so many of a type. */
  public record Ratio(BigInteger actual, BigInteger normal, String normalType) {}

  /**
   * What is attached to a note.
   *
   * @param tremolo slashes of a measured roll, 0 for none
   * @param technical signs of the hi-hat, of a choke and of a rimshot
   * @param held true for a hold sign
   */
  public record Notations(
      boolean tieStop,
      boolean tieStart,
      List<TupletMark> tuplets,
      int tremolo,
      boolean buzz,
      boolean accent,
      List<Technical> technical,
      boolean held) {
    static final Notations NONE =
        new Notations(false, false, List.of(), 0, false, false, List.of(), false);

    /** Copies the lists. */
    public Notations {
      tuplets = List.copyOf(tuplets);
      technical = List.copyOf(technical);
    }

    /** The same under a hold sign. */
    Notations hold() {
      return new Notations(tieStop, tieStart, tuplets, tremolo, buzz, accent, technical, true);
    }

    boolean isEmpty() {
      return !(tieStop || tieStart || buzz || accent || held)
          && tremolo == 0
          && tuplets.isEmpty()
          && technical.isEmpty();
    }
  }

  /**
   * One end of a tuplet.
   *
   * @param number 1 for the outermost
   */
  public record TupletMark(
      boolean start, int number, boolean bracket, long actual, long normal, String type) {}

  /**
   * A playing sign.
   *
   * @param element {@code open}, {@code stopped}, {@code half-muted} or {@code other-technical}
   * @param glyph its SMuFL name
   * @param text for {@code other-technical}, else empty
   */
  public record Technical(String element, String glyph, String text) {}

  /**
   * A word aligned with a note.
   *
   * @param number its line
   */
  public record Lyric(int number, String name, boolean above, String text) {}
}
