package tabor.notation;

import java.util.List;
import java.util.Optional;
import tabor.rhythm.Time;

/** A sign that takes up time in a voice. */
public sealed interface Event {
  /** Distance from the barline in whole notes; in a pickup from where its barline would be. */
  Time start();

  /** How long it takes, in whole notes: the written value times {@link #ratio()}. */
  Time length();

  /** The written note value. A rest that fills an empty bar is a whole rest whatever the meter. */
  Written written();

  /** The tuplets that it stands in, outermost first. */
  List<TupletPlace> tuplets();

  /** Where it ends. */
  default Time end() {
    return start().plus(length());
  }

  /** What all its tuplets together make of a written value: two thirds in a triplet. */
  default Time ratio() {
    Time ratio = Time.ONE;
    for (TupletPlace place : tuplets()) {
      ratio = ratio.times(place.tuplet().ratio());
    }
    return ratio;
  }

  /** The chord; empty for a rest. */
  default Optional<Chord> chord() {
    return Optional.empty();
  }

  /** True for a rest that is not drawn. */
  default boolean isHidden() {
    return false;
  }

  /**
   * Strokes of one voice at one place.
   *
   * @param beams one entry for each flag of the written value, the beam nearest the note's end of
   *     the stem last; empty if it is written with flags or needs none
   * @param notes from the lowest place of the staff to the highest; a stroke that goes on from
   *     before is among them
   * @param count how the place is counted aloud, {@code 1} or {@code &}; empty if it has no name,
   *     if the upper voice says it already, or if nothing is struck here
   * @param sticking {@code R}, {@code L}, or {@code B} for both hands; empty if nothing is struck
   *     here, and for the feet where each plays its usual pedal
   */
  record Chord(
      Time start,
      Time length,
      Written written,
      List<TupletPlace> tuplets,
      List<Beam> beams,
      Voice voice,
      List<Note> notes,
      String count,
      String sticking)
      implements Event {
    /** Copies the lists; throws {@link IllegalArgumentException} for a chord without notes. */
    public Chord {
      tuplets = List.copyOf(tuplets);
      beams = List.copyOf(beams);
      notes = List.copyOf(notes);
      if (notes.isEmpty()) {
        throw new IllegalArgumentException("a chord without notes");
      }
    }

    /** True for the hands, false for the feet. */
    public boolean stemUp() {
      return voice == Voice.HANDS;
    }

    /** The most grace notes that stand before one of its notes: 0 to 3. */
    public int graceNotes() {
      int most = 0;
      for (Note note : notes) {
        most = Math.max(most, note.graceNotes());
      }
      return most;
    }

    /** The same chord without its count. */
    Chord uncounted() {
      return new Chord(start, length, written, tuplets, beams, voice, notes, "", sticking);
    }

    @Override
    public Optional<Chord> chord() {
      return Optional.of(this);
    }
  }

  /**
   * Silence of one voice.
   *
   * @param show how it is drawn
   * @param wholeBar true if it fills an empty bar
   */
  record Rest(
      Time start,
      Time length,
      Written written,
      List<TupletPlace> tuplets,
      Show show,
      boolean wholeBar)
      implements Event {
    /** Whether and where a rest is drawn. */
    public enum Show {
      /** At the height of its own voice. */
      OWN,
      /** In the middle of the staff, for both voices. */
      SHARED,
      /** Not at all: the other voice draws it, or this voice is silent in the whole section. */
      HIDDEN
    }

    /** Copies the list. */
    public Rest {
      tuplets = List.copyOf(tuplets);
    }

    @Override
    public boolean isHidden() {
      return show == Show.HIDDEN;
    }
  }
}
