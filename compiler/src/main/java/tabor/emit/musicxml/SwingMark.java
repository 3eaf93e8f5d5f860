package tabor.emit.musicxml;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tabor.emit.musicxml.ScoreFile.Swing;
import tabor.groove.Groove;
import tabor.groove.Roll;
import tabor.groove.Snap;
import tabor.groove.Stroke;
import tabor.notation.Bar;
import tabor.notation.Event;
import tabor.notation.Note;
import tabor.notation.Score;
import tabor.notation.Voice;
import tabor.notation.Written;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;

/**
 * Whether the format's {@code swing} makes a reader play a section as it is played here. The
 * element makes pairs of eighths or of sixteenths unequal, on the beat and off it; it leaves alone
 * every note of another value, with dots or in a tuplet (MusicXML 4.0 schema, complex type swing).
 * Where that is not what is played, in a beat of three eighths or of a half note, or where finer
 * notes swing along, the section has no such element.
 */
final class SwingMark {
  private final Groove groove;
  private final RollTies ties;
  private final Snap snap;
  private final tabor.perform.Swing played;
  private final Written.Type type;
  private final Time share;

  private SwingMark(Score score, Feel feel, Written.Type type) {
    this.groove = score.groove();
    this.ties = new RollTies(score);
    this.snap = Snap.of(groove);
    this.played = new tabor.perform.Swing(groove.meters(), feel, groove.strokes());
    this.type = type;
    this.share = feel.share();
  }

  /** The element for a section at a feel; null where there is none that says it. */
  static @Nullable Swing of(Score score, Feel feel) {
    Groove groove = score.groove();
    Time beat = groove.meter().beat(0);
    boolean alike =
        groove.meters().cycle().stream().allMatch(m -> m.isEven() && m.beat(0).equals(beat));
    if (feel.isStraight() || !alike || !Meter.isPlain(beat)) {
      return null;
    }
    Time swung = beat.over(feel.unit() == Feel.Unit.EIGHTHS ? 2 : 4);
    boolean eighth = swung.equals(Written.Type.EIGHTH.length());
    if (!eighth && !swung.equals(Written.Type.SIXTEENTH.length())) {
      return null;
    }
    Written.Type type = eighth ? Written.Type.EIGHTH : Written.Type.SIXTEENTH;
    // What is worked out for the section's own feel holds for no other.
    boolean own = Snap.isSwungEighths(feel) == Snap.isSwungEighths(groove.setting().feel());
    if (!own || !new SwingMark(score, feel, type).isWhatIsPlayed(score)) {
      return null;
    }
    Time pair = feel.share().over(Time.ONE.minus(feel.share()));
    return new Swing(pair.num(), pair.den(), MusicXmlNames.type(type));
  }

  private boolean isWhatIsPlayed(Score score) {
    for (Bar bar : score.bars()) {
      for (Voice voice : Voice.values()) {
        for (Event event : bar.events(voice)) {
          Optional<Event.Chord> chord = event.chord();
          if (chord.isPresent() && !isWhatIsPlayed(bar.number(), chord.get())) {
            return false;
          }
        }
      }
    }
    return true;
  }

  private boolean isWhatIsPlayed(int bar, Event.Chord chord) {
    Time start = read(chord, chord.start());
    Time end = read(chord, chord.end());
    for (Note note : chord.notes()) {
      Stroke stroke = note.strokes().get(0);
      boolean struck = !note.tieIn() || ties.isStruckAgain(bar, chord, note);
      if (struck && !sounded(stroke, bar, chord.start()).equals(start)) {
        return false;
      }
      Optional<Roll> roll = Roll.of(groove, snap, stroke);
      if (note.slashes() > 0 && roll.isPresent()) {
        Time step = roll.get().step();
        for (Time in = step; in.before(chord.length()); in = in.plus(step)) {
          Time even = start.plus(end.minus(start).times(in.over(chord.length())));
          if (!sounded(stroke, bar, chord.start().plus(in)).equals(even)) {
            return false;
          }
        }
      }
    }
    return true;
  }

  /** Where a place in a stroke's word sounds here. */
  private Time sounded(Stroke stroke, int bar, Time at) {
    return played.place(snap.slot(stroke).division(), bar, at);
  }

  /** Where a reader of the element plays a place of a chord. */
  private Time read(Event.Chord chord, Time at) {
    boolean swings =
        chord.written().type() == type && chord.written().dots() == 0 && chord.tuplets().isEmpty();
    Time pair = type.length().times(2);
    return swings && at.mod(pair).equals(type.length())
        ? at.minus(type.length()).plus(pair.times(share))
        : at;
  }
}
