package tabor.emit.midi;

import java.util.List;

/**
 * A Standard MIDI File of format 1, before it becomes bytes.
 *
 * @param division ticks in a quarter note, 1 to 32,767
 * @param length ticks from the start to the end of every track
 * @param tracks the conductor track first
 */
public record Smf(int division, long length, List<Track> tracks) {
  /** The largest division that the format can say. */
  public static final int LARGEST_DIVISION = 32_767;

  /** Copies the list. */
  public Smf {
    tracks = List.copyOf(tracks);
    if (division < 1 || division > LARGEST_DIVISION) {
      throw new IllegalArgumentException("division " + division);
    }
  }

  /**
   * A track.
   *
   * @param name of the sequence for the conductor track, else of what plays
   * @param events in order of time
   */
  public record Track(String name, List<Event> events) {
    /** Copies the list. */
    public Track {
      events = List.copyOf(events);
    }
  }

  /** Something at a tick. */
  public sealed interface Event {
    /** Ticks from the start, 0 or more. */
    long tick();
  }

  /**
   * The tempo from here on.
   *
   * @param micros microseconds in a quarter note, 1 to 16,777,215
   */
  public record Tempo(long tick, int micros) implements Event {}

  /**
   * The time signature from here on.
   *
   * @param count the upper number
   * @param power the lower number as a power of two
   * @param clocks MIDI clocks in a beat, 24 to a quarter note
   */
  public record Meter(long tick, int count, int power, int clocks) implements Event {}

  /** A section begins. */
  public record Marker(long tick, String text) implements Event {}

  /**
   * A note on the percussion channel.
   *
   * @param length ticks from note-on to note-off, 1 or more
   * @param choked true if the hand stops the cymbal at its end
   */
  public record Note(long tick, long length, int key, int velocity, boolean choked)
      implements Event {
    /** Throws {@link IllegalArgumentException} for a number out of range. */
    public Note {
      if (tick < 0 || length < 1 || key < 0 || key > 127 || velocity < 1 || velocity > 127) {
        throw new IllegalArgumentException("note " + tick + " " + length + " " + key);
      }
    }
  }
}
