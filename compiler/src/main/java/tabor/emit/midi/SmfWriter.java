package tabor.emit.midi;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.ServiceLoader;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiMessage;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;
import javax.sound.midi.spi.MidiFileWriter;

/** Turns a file's tree into a sequence of {@code javax.sound.midi}, and that into bytes. */
public final class SmfWriter {
  /** Channel 10 as the messages count it. */
  private static final int PERCUSSION = 9;

  /** The largest distance between two events that the format can say. */
  private static final long LARGEST_DELTA = 0x0FFF_FFFF;

  /** Bytes before the first track of a file. */
  private static final int HEADER = 14;

  private static final int TEXT = 0x01;
  private static final int NAME = 0x03;
  private static final int MARKER = 0x06;
  private static final int END = 0x2F;
  private static final int TEMPO = 0x51;
  private static final int METER = 0x58;

  /** Java looks for one anew at each call of its own; this one writes one file at a time. */
  private static final MidiFileWriter WRITER = writer();

  private SmfWriter() {}

  private static MidiFileWriter writer() {
    for (MidiFileWriter writer : ServiceLoader.load(ModuleLayer.boot(), MidiFileWriter.class)) {
      if (writer.isFileTypeSupported(0)) {
        return writer;
      }
    }
    throw new IllegalStateException("this Java writes no MIDI files");
  }

  private record Timed(long tick, MidiMessage message) {}

  /**
   * The bytes of the file, the same for the same tree. Tracks are written one at a time: all of a
   * day-long chart at once takes several times the memory.
   */
  public static byte[] bytes(Smf smf) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      DataOutputStream header = new DataOutputStream(out);
      header.writeBytes("MThd");
      header.writeInt(6);
      header.writeShort(1);
      header.writeShort(smf.tracks().size());
      header.writeShort(smf.division());
      for (Smf.Track track : smf.tracks()) {
        ByteArrayOutputStream alone = new ByteArrayOutputStream();
        Sequence sequence = sequence(new Smf(smf.division(), smf.length(), List.of(track)));
        synchronized (WRITER) {
          WRITER.write(sequence, 0, alone);
        }
        out.write(alone.toByteArray(), HEADER, alone.size() - HEADER);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toByteArray();
  }

  /** The same as a sequence that can be played. */
  public static Sequence sequence(Smf smf) {
    try {
      Sequence sequence = new Sequence(Sequence.PPQ, smf.division());
      for (Smf.Track track : smf.tracks()) {
        write(sequence.createTrack(), track, smf.length());
      }
      return sequence;
    } catch (InvalidMidiDataException e) {
      throw new IllegalStateException(e);
    }
  }

  private static void write(Track out, Smf.Track track, long length) {
    List<Timed> offs = new ArrayList<>();
    List<Timed> all = new ArrayList<>();
    for (Smf.Event event : track.events()) {
      all.add(new Timed(event.tick(), message(event)));
      if (event instanceof Smf.Note note) {
        off(offs, note, length);
      }
    }
    // Note-offs first at one tick; the sort is stable.
    offs.addAll(all);
    offs.sort((a, b) -> Long.compare(a.tick(), b.tick()));
    out.add(new MidiEvent(meta(NAME, utf8(track.name())), 0));
    long last = 0;
    for (Timed timed : offs) {
      last = fill(out, last, timed.tick());
      out.add(new MidiEvent(timed.message(), timed.tick()));
    }
    fill(out, last, length);
    out.add(new MidiEvent(meta(END, new byte[0]), length));
  }

  /**
   * The end of a note. General MIDI lets cymbals ring whatever the note-off says; electronic kits
   * tell a grabbed cymbal by full key pressure (common practice, no source), so a choke says both.
   */
  private static void off(List<Timed> to, Smf.Note note, long length) {
    long end = note.tick() + note.length();
    if (note.choked()) {
      to.add(new Timed(end, key(ShortMessage.POLY_PRESSURE, note.key(), 127)));
    }
    to.add(new Timed(end, key(ShortMessage.NOTE_OFF, note.key(), 0)));
    if (note.choked()) {
      long after = Math.min(end + 1, length);
      to.add(new Timed(after, key(ShortMessage.POLY_PRESSURE, note.key(), 0)));
    }
  }

  /** Empty texts where two events stand too far apart for one delta time. */
  private static long fill(Track out, long from, long to) {
    long at = from;
    while (to - at > LARGEST_DELTA) {
      at += LARGEST_DELTA;
      out.add(new MidiEvent(meta(TEXT, new byte[0]), at));
    }
    return to;
  }

  private static MidiMessage message(Smf.Event event) {
    if (event instanceof Smf.Tempo tempo) {
      int micros = tempo.micros();
      return meta(TEMPO, new byte[] {(byte) (micros >> 16), (byte) (micros >> 8), (byte) micros});
    }
    if (event instanceof Smf.Meter meter) {
      return meta(
          METER, new byte[] {(byte) meter.count(), (byte) meter.power(), (byte) meter.clocks(), 8});
    }
    if (event instanceof Smf.Marker marker) {
      return meta(MARKER, utf8(marker.text()));
    }
    Smf.Note note = (Smf.Note) event;
    return key(ShortMessage.NOTE_ON, note.key(), note.velocity());
  }

  private static MidiMessage key(int command, int key, int velocity) {
    try {
      return new ShortMessage(command, PERCUSSION, key, velocity);
    } catch (InvalidMidiDataException e) {
      throw new IllegalStateException(e);
    }
  }

  private static MidiMessage meta(int type, byte[] data) {
    try {
      return new MetaMessage(type, data, data.length);
    } catch (InvalidMidiDataException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Programs show these texts as they are, so what would steer a terminal is left out. */
  private static byte[] utf8(String text) {
    StringBuilder plain = new StringBuilder(text.length());
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (!Character.isISOControl(c)) {
        plain.append(c);
      }
    }
    return plain.toString().getBytes(StandardCharsets.UTF_8);
  }
}
