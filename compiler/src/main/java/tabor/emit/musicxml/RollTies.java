package tabor.emit.musicxml;

import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import tabor.groove.Groove;
import tabor.groove.Roll;
import tabor.groove.Snap;
import tabor.groove.Stroke;
import tabor.notation.Bar;
import tabor.notation.Event;
import tabor.notation.Note;
import tabor.notation.Score;
import tabor.notation.Voice;
import tabor.rhythm.Time;

/**
 * Where a measured roll goes on in a note without slashes: that note is one of its strokes, and a
 * tie would silence it.
 */
final class RollTies {
  private record Place(Stroke stroke, Time position) {}

  private final Groove groove;
  private final Snap snap;
  private final Set<Place> struck = new HashSet<>();

  RollTies(Score score) {
    groove = score.groove();
    snap = Snap.of(groove);
    for (Bar bar : score.bars()) {
      for (Voice voice : Voice.values()) {
        for (Event event : bar.events(voice)) {
          event.chord().ifPresent(chord -> add(bar.number(), chord));
        }
      }
    }
  }

  private void add(int bar, Event.Chord chord) {
    for (Note note : chord.notes()) {
      if (isStruckAgain(bar, chord, note)) {
        struck.add(new Place(note.strokes().get(0), groove.position(bar, chord.start())));
      }
    }
  }

  /** True for a note of a roll that goes on and is one stroke of it. */
  boolean isStruckAgain(int bar, Event.Chord chord, Note note) {
    if (!note.tieIn() || note.slashes() > 0) {
      return false;
    }
    Stroke stroke = note.strokes().get(0);
    Optional<Roll> roll = Roll.of(groove, snap, stroke);
    if (roll.isEmpty() || !roll.get().step().equals(chord.length())) {
      return false;
    }
    Time after = groove.position(bar, chord.start()).minus(groove.position(stroke));
    return after.over(chord.length()).isWhole();
  }

  /** True if a note that goes on in the next one is tied to it. */
  boolean isTiedOn(int bar, Event.Chord chord, Note note) {
    return note.tieOut()
        && !struck.contains(new Place(note.strokes().get(0), groove.position(bar, chord.end())));
  }
}
