package tabor.fuzz;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiMessage;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;
import tabor.emit.midi.MidiLesson;
import tabor.emit.musicxml.MusicXml;
import tabor.emit.musicxml.Playback;
import tabor.emit.strokes.StrokeList;
import tabor.fuzz.FuzzChecks.Broken;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.Stroke;
import tabor.perform.Performer;
import tabor.perform.Sound;
import tabor.rhythm.Feel;

/** List, MIDI and MusicXML of one section agree on every onset, each read by other code. */
final class Agreement {
  private static final int TEMPO = 0x51;

  /** After the track of the conductor and the four limbs. */
  private static final int CLICK = 5;

  private Agreement() {}

  static void check(Lesson lesson, Groove groove) {
    Lesson alone =
        new Lesson(lesson.file(), lesson.title(), lesson.by(), groove.setting(), List.of(groove));
    try {
      midi(alone, groove);
      musicxml(alone, groove);
    } catch (RuntimeException e) {
      throw e;
    } catch (Exception e) {
      throw new Broken("cannot be read back: " + e);
    }
  }

  /** By the clock: the milliseconds of the list against ticks, division and tempo of the file. */
  private static void midi(Lesson lesson, Groove groove) throws Exception {
    byte[] bytes = MidiLesson.of(lesson).bytes(groove, false);
    Sequence read = MidiSystem.getSequence(new ByteArrayInputStream(bytes));
    double tick = micros(read) / 1000.0 / read.getResolution();
    Map<Integer, NavigableSet<Long>> notes = notes(read);
    String[] rows = StrokeList.tsv(List.of(groove)).split("\n", -1);
    List<Stroke> strokes = groove.strokes();
    Set<String> places = new HashSet<>();
    for (int i = 0; i < strokes.size(); i++) {
      double millis = Double.parseDouble(rows[i + 1].split("\t", -1)[9]);
      int key = strokes.get(i).surface().key();
      NavigableSet<Long> ticks = notes.getOrDefault(key, new TreeSet<>());
      Long near = nearest(ticks, Math.round(millis / tick));
      // Half a tick, and what rounding the tempo to microseconds comes to by then.
      double most = tick / 2 + 0.002 + millis / micros(read);
      if (near == null || Math.abs(near * tick - millis) > most) {
        throw new Broken("no note in the MIDI file of " + groove.name() + ": " + rows[i + 1]);
      }
      places.add(key + " " + near);
    }
    if (strokes.stream().allMatch(stroke -> stroke.ornaments().isEmpty())) {
      long all = notes.values().stream().mapToLong(Set::size).sum();
      FuzzChecks.same("notes of the MIDI file of " + groove.name(), (long) places.size(), all);
    }
  }

  private static Long nearest(NavigableSet<Long> ticks, long to) {
    Long below = ticks.floor(to);
    Long above = ticks.ceiling(to);
    return below == null || (above != null && above - to < to - below) ? above : below;
  }

  private static int micros(Sequence read) {
    Track conductor = read.getTracks()[0];
    for (int i = 0; i < conductor.size(); i++) {
      MidiMessage message = conductor.get(i).getMessage();
      if (message instanceof MetaMessage meta && meta.getType() == TEMPO) {
        byte[] data = meta.getData();
        return (data[0] & 0xFF) << 16 | (data[1] & 0xFF) << 8 | (data[2] & 0xFF);
      }
    }
    throw new Broken("a MIDI file without a tempo");
  }

  private static Map<Integer, NavigableSet<Long>> notes(Sequence read) {
    Map<Integer, NavigableSet<Long>> found = new TreeMap<>();
    for (int t = 1; t < CLICK; t++) {
      Track track = read.getTracks()[t];
      for (int i = 0; i < track.size(); i++) {
        MidiEvent event = track.get(i);
        if (event.getMessage() instanceof ShortMessage note
            && note.getCommand() == ShortMessage.NOTE_ON
            && note.getData2() > 0) {
          found.computeIfAbsent(note.getData1(), k -> new TreeSet<>()).add(event.getTick());
        }
      }
    }
    return found;
  }

  /** What a player of the MusicXML plays against what is performed and against the list. */
  private static void musicxml(Lesson lesson, Groove groove) throws Exception {
    byte[] bytes = MusicXml.bytes(lesson, section -> true);
    Playback played = Playback.of(bytes);
    String text = new String(bytes, StandardCharsets.UTF_8);
    if (text.contains("other-technical")) {
      return; // a roll that slashes cannot say
    }
    Set<String> found = new TreeSet<>(played.strokes());
    Feel feel = groove.setting().feel();
    boolean straight = text.contains("(played straight by this file)");
    if (straight || feel.isStraight()) {
      // Then the file's places are those of the list, where swung eighths met a triplet too.
      for (Stroke stroke : groove.strokes()) {
        String place = groove.position(stroke) + " P1-" + stroke.surface().name();
        if (!found.contains(place)) {
          throw new Broken("not in the MusicXML of " + groove.name() + ": " + place);
        }
      }
    }
    if (!straight) {
      Set<String> wanted = new TreeSet<>();
      for (Sound sound : Performer.once(groove, groove.setting().tempo(), feel).sounds()) {
        // A roll that a shift has moved over the end goes on in the next round, which a page cannot
        // write.
        boolean inside = sound.start().before(groove.length());
        if (inside && sound.kind().isMeasured() && sound.surface() != null) {
          wanted.add(sound.start() + " P1-" + sound.surface().name());
        }
      }
      difference("MusicXML of " + groove.name(), wanted, found);
    }
  }

  private static void difference(String what, Set<String> wanted, Set<String> found) {
    if (!wanted.equals(found)) {
      Set<String> missing = new TreeSet<>(wanted);
      missing.removeAll(found);
      Set<String> more = new TreeSet<>(found);
      more.removeAll(wanted);
      throw new Broken(what + ": missing are " + missing + ", not expected are " + more);
    }
  }
}
