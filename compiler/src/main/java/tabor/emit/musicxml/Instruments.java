package tabor.emit.musicxml;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.kit.Surface;

/** The sounds that a lesson uses, by key and then by name. */
final class Instruments {
  private record Sound(int key, String name, Surface surface) implements Comparable<Sound> {
    static Sound of(Surface surface) {
      return new Sound(surface.key(), surface.name(), surface);
    }

    @Override
    public int compareTo(Sound other) {
      int byKey = Integer.compare(key, other.key);
      return byKey != 0 ? byKey : name.compareTo(other.name);
    }
  }

  private final List<ScoreFile.Instrument> list = new ArrayList<>();
  private final Map<String, String> ids = new HashMap<>();

  Instruments(List<Groove> grooves) {
    TreeSet<Sound> sounds = new TreeSet<>();
    for (Groove groove : grooves) {
      for (Stroke stroke : groove.strokes()) {
        sounds.add(Sound.of(stroke.surface()));
      }
    }
    Set<String> names = new HashSet<>();
    for (Sound sound : sounds) {
      // Two kits of one lesson may give one name to two sounds.
      String id =
          names.add(sound.name()) ? "P1-" + sound.name() : "P1-" + sound.name() + "-" + sound.key();
      ids.put(sound.key() + " " + sound.name(), id);
      list.add(
          new ScoreFile.Instrument(
              id, sound.surface().words(), sound.surface().facts().sound(), sound.key() + 1));
    }
  }

  List<ScoreFile.Instrument> list() {
    return list;
  }

  String id(Surface surface) {
    String id = ids.get(surface.key() + " " + surface.name());
    if (id == null) {
      throw new IllegalArgumentException("not a sound of this lesson: " + surface.name());
    }
    return id;
  }
}
