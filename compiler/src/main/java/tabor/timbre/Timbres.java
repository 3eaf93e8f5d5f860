package tabor.timbre;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import tabor.groove.Ornament;
import tabor.kit.Kits;
import tabor.kit.Surface;
import tabor.perform.Sound;
import tabor.source.ResourceText;

/** The table of all timbres. */
public final class Timbres {
  /** The click's first beat of a bar. */
  public static final String CLICK_STRONG = "click.strong";

  /** Every other click. */
  public static final String CLICK = "click";

  private static final String OTHER = "other";
  private static final JsonObject TABLE = load();
  private static final JsonObject SOUNDS = TABLE.getAsJsonObject("sounds");
  private static final JsonObject SAME = TABLE.getAsJsonObject("same");

  private Timbres() {}

  /** What sounds are made of: only what mixes them asks. */
  private static final class Read {
    static final Map<String, Timbre> ALL = read();
  }

  /** The names of all timbres, in the order of the table. */
  public static Set<String> names() {
    return SOUNDS.keySet();
  }

  /** The timbre of this name; throws {@link IllegalArgumentException} if there is none. */
  public static Timbre of(String name) {
    Timbre timbre = Read.ALL.get(name);
    if (timbre == null) {
      throw new IllegalArgumentException("no timbre " + name);
    }
    return timbre;
  }

  /**
   * The name of the timbre that a sound has: a standard surface's own, else that of its General
   * MIDI key, else wood.
   */
  public static String name(Sound sound) {
    Surface surface = sound.surface();
    if (surface == null) {
      return sound.at().sign() == 0 ? CLICK_STRONG : CLICK;
    }
    Surface standard = Kits.FIVE_PIECE.surface(surface.name());
    if (standard == null || standard.key() != surface.key()) {
      return ofKey(surface.key());
    }
    boolean rim =
        sound.kind() == Sound.Kind.STROKE
            && sound.stroke() != null
            && sound.stroke().ornaments().has(Ornament.RIMSHOT);
    String name = rim && surface.name().equals("snare") ? "snare.rimshot" : surface.name();
    return SOUNDS.has(name) ? name : ofKey(surface.key());
  }

  private static String ofKey(int key) {
    String name = "key:" + key;
    return SAME.has(name) ? SAME.get(name).getAsString() : SOUNDS.has(name) ? name : OTHER;
  }

  /** The entries of these timbres as one JSON object, by their names, for the practice page. */
  public static String json(Iterable<String> names) {
    JsonObject chosen = new JsonObject();
    for (String name : names) {
      chosen.add(name, Objects.requireNonNull(SOUNDS.get(name), name));
    }
    return chosen.toString();
  }

  private static JsonObject load() {
    return JsonParser.parseString(ResourceText.of(Timbres.class, "timbres.json")).getAsJsonObject();
  }

  private static Map<String, Timbre> read() {
    Map<String, Timbre> found = new LinkedHashMap<>();
    for (Map.Entry<String, JsonElement> entry : SOUNDS.entrySet()) {
      JsonObject each = entry.getValue().getAsJsonObject();
      List<TimbreLayer> layers = new ArrayList<>();
      each.getAsJsonArray("layers").forEach(layer -> layers.add(layer(layer.getAsJsonArray())));
      found.put(
          entry.getKey(),
          new Timbre(
              entry.getKey(),
              each.get("seconds").getAsDouble(),
              each.get("peak").getAsDouble(),
              each.get("place").getAsDouble(),
              each.has("group") ? each.get("group").getAsString() : null,
              each.has("rings"),
              layers));
    }
    return found;
  }

  private static TimbreLayer layer(JsonArray row) {
    List<Double> figures = new ArrayList<>();
    for (int i = 2; i < row.size(); i++) {
      figures.add(row.get(i).getAsDouble());
    }
    return new TimbreLayer(
        row.get(0).getAsString().equals("edge"),
        TimbreLayer.Kind.valueOf(row.get(1).getAsString().toUpperCase(Locale.ROOT)),
        figures);
  }
}
