package tabor.emit.midi;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import tabor.kit.Limb;
import tabor.perform.Performance;
import tabor.perform.Sound;
import tabor.rhythm.Time;

/**
 * Deals a performance out over the tracks.
 *
 * <p>Two sounds on one key at one tick are one note, the louder one, in the track of the first
 * limb; a written stroke goes before a grace note or a bounce. A note ends a tick before the next
 * one on its key, whichever track that is in: players that read track by track then never meet a
 * note-on before the note-off that belongs before it. Where the next note comes at the very next
 * tick there is no room for that, and it stands in a track that is not read earlier. No note is
 * moved in time.
 */
final class Arrangement {
  /** Each limb in the order of lists, then the click. */
  private static final int CLICK = Limb.values().length;

  private record Dealt(
      int track, long tick, long end, int key, int velocity, boolean choked, boolean measured) {

    /** By tick, then what is measured before what is not, then by track and key. */
    static int compare(Dealt a, Dealt b) {
      int byTick = Long.compare(a.tick, b.tick);
      int byKind = Boolean.compare(b.measured, a.measured);
      int byTrack = byKind != 0 ? byKind : Integer.compare(a.track, b.track);
      return byTick != 0 ? byTick : byTrack != 0 ? byTrack : Integer.compare(a.key, b.key);
    }

    Dealt with(Dealt other) {
      int loud = Math.max(velocity, other.velocity);
      boolean both = choked && other.choked;
      return new Dealt(track, tick, Math.max(end, other.end), key, loud, both, measured);
    }

    Dealt until(long other) {
      return new Dealt(track, tick, other, key, velocity, choked && other == end, measured);
    }

    Dealt notBefore(int other) {
      return new Dealt(Math.max(track, other), tick, end, key, velocity, choked, measured);
    }

    Smf.Note note() {
      return new Smf.Note(tick, end - tick, key, velocity, choked);
    }
  }

  private final Ticks ticks;
  private final Performance performance;
  private final long length;

  private Arrangement(Performance performance, Ticks ticks) {
    this.performance = performance;
    this.ticks = ticks;
    this.length = ticks.at(performance.length());
  }

  /** The file of a performance, of those sounds only that {@code heard} lets through. */
  static Smf of(Performance performance, String title, Ticks ticks, Predicate<Sound> heard) {
    return new Arrangement(performance, ticks).arranged(title, heard);
  }

  private Smf arranged(String title, Predicate<Sound> heard) {
    List<List<Smf.Event>> parts = new ArrayList<>();
    for (int i = 0; i <= CLICK; i++) {
      parts.add(new ArrayList<>());
    }
    for (Dealt note : ended(merged(heard))) {
      parts.get(note.track()).add(note.note());
    }
    List<Smf.Track> tracks = new ArrayList<>();
    tracks.add(new Smf.Track(title, Conductor.events(performance, ticks)));
    for (Limb limb : Limb.values()) {
      tracks.add(new Smf.Track(limb.words(), parts.get(limb.ordinal())));
    }
    tracks.add(new Smf.Track("click", parts.get(CLICK)));
    return new Smf(ticks.division(), length, tracks);
  }

  /** In order of tick, then track; one note for each key and tick. */
  private List<Dealt> merged(Predicate<Sound> heard) {
    List<Dealt> all = new ArrayList<>();
    for (Sound sound : performance.sounds()) {
      if (!heard.test(sound)) {
        continue;
      }
      long tick = ticks.at(sound.start());
      Limb limb = sound.limb();
      all.add(
          new Dealt(
              limb == null ? CLICK : limb.ordinal(),
              tick,
              ticks.at(Time.min(sound.end(), performance.length())),
              sound.key(),
              sound.velocity(),
              sound.isChoked(),
              sound.kind().isMeasured()));
    }
    all.sort(Dealt::compare);
    List<Dealt> kept = new ArrayList<>();
    Map<Integer, Integer> lastOfKey = new HashMap<>();
    for (Dealt note : all) {
      Integer index = lastOfKey.get(note.key());
      Dealt last = index == null ? null : kept.get(index);
      if (index != null && last != null && last.tick() == note.tick()) {
        kept.set(index, last.with(note));
        continue;
      }
      lastOfKey.put(note.key(), kept.size());
      boolean follows = last != null && last.tick() + 1 == note.tick();
      kept.add(follows ? note.notBefore(last.track()) : note);
    }
    return kept;
  }

  /** Ends each note where the next on its key lets it; changes the list that it is given. */
  private List<Dealt> ended(List<Dealt> notes) {
    Map<Integer, Long> nextOfKey = new HashMap<>();
    for (int i = notes.size() - 1; i >= 0; i--) {
      Dealt note = notes.get(i);
      @Nullable Long next = nextOfKey.put(note.key(), note.tick());
      long latest = next == null ? length : next - 1;
      long end = Math.max(note.tick() + 1, Math.min(note.end(), latest));
      if (end != note.end()) {
        notes.set(i, note.until(end));
      }
    }
    return notes;
  }
}
