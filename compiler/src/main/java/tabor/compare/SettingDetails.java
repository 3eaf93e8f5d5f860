package tabor.compare;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.groove.Levels;
import tabor.groove.Loudness;
import tabor.kit.Kit;
import tabor.kit.Limits;
import tabor.kit.Position;
import tabor.kit.Surface;
import tabor.rhythm.CountNames;
import tabor.rhythm.Meter;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/** What two sections say of themselves, strokes apart. */
final class SettingDetails {
  private SettingDetails() {}

  /** Adds what is other. */
  static void add(List<Detail> to, String what, @Nullable String before, @Nullable String after) {
    if (!Objects.equals(before, after)) {
      to.add(new Detail(what, before, after));
    }
  }

  /** Meter, kit, tempo, feel, levels and what is shown. */
  static List<Detail> of(Groove.Setting a, Groove.Setting b) {
    List<Detail> found = new ArrayList<>();
    add(found, "time", a.meters().words(), b.meters().words());
    add(found, "kit", a.kit().name(), b.kit().name());
    if (!a.tempo().equals(b.tempo())) {
      found.add(tempo(a.tempo(), b.tempo()));
    }
    add(found, "feel", a.feel().words(), b.feel().words());
    add(found, "levels", levels(a.levels()), levels(b.levels()));
    add(found, "show", shown(a), shown(b));
    return found;
  }

  private static Detail tempo(Tempo a, Tempo b) {
    boolean bare = a.beat().equals(b.beat());
    return new Detail(
        "tempo",
        bare ? a.perMinute().decimal() : a.words(),
        bare ? b.perMinute().decimal() : b.words());
  }

  private static String levels(Levels levels) {
    return "ghost " + levels.ghost() + " plain " + levels.plain() + " accent " + levels.accent();
  }

  private static String shown(Groove.Setting setting) {
    List<String> shown = new ArrayList<>();
    if (setting.showCounts()) {
      shown.add("counts");
    }
    if (setting.showSticking()) {
      shown.add("sticking");
    }
    if (setting.showChanges()) {
      shown.add("changes");
    }
    return shown.isEmpty() ? "none" : String.join(" ", shown);
  }

  /** Length, pickup and dynamics. */
  static List<Detail> ofBars(Groove a, Groove b) {
    List<Detail> found = new ArrayList<>();
    add(found, "length", bars(a.bars()), bars(b.bars()));
    add(found, "pickup", pickup(a), pickup(b));
    Map<String, String> before = dynamics(a);
    Map<String, String> after = dynamics(b);
    Set<String> places = new LinkedHashSet<>(before.keySet());
    places.addAll(after.keySet());
    for (String place : places) {
      String was = before.get(place);
      String is = after.get(place);
      String both = was != null && is != null ? " " + place : "";
      add(
          found,
          "dynamic" + both,
          was == null || !both.isEmpty() ? was : was + " " + place,
          is == null || !both.isEmpty() ? is : is + " " + place);
    }
    return found;
  }

  private static String bars(int bars) {
    return bars == 1 ? "1 bar" : bars + " bars";
  }

  private static @Nullable String pickup(Groove groove) {
    if (groove.pickup().sign() == 0) {
      return null;
    }
    Time beats = groove.pickup().over(groove.meter().beat(groove.meter().beatCount() - 1));
    return beats.equals(Time.ONE) ? "1 beat" : beats.decimal() + " beats";
  }

  /** What happens to the loudness, by its place. */
  private static Map<String, String> dynamics(Groove groove) {
    Map<String, String> found = new LinkedHashMap<>();
    for (Loudness.Mark mark : groove.marks()) {
      found.put(place(groove, mark.bar(), mark.at(), "on "), mark.loudness().word());
    }
    for (Loudness.Hairpin hairpin : groove.hairpins()) {
      found.put(
          place(groove, hairpin.fromBar(), hairpin.from(), "from ")
              + " "
              + place(groove, hairpin.toBar(), hairpin.to(), "to "),
          (hairpin.grows() ? "crescendo" : "diminuendo") + " to " + hairpin.target().word());
    }
    return found;
  }

  private static String place(Groove groove, int bar, Time at, String before) {
    Meter meter = groove.meter(bar);
    String count = at.before(meter.bar()) ? CountNames.of(at, meter).toString() : "the end";
    return before + count + (bar == 0 ? " in the pickup" : " in bar " + bar);
  }

  /** What is other about two kits of the same name. */
  static List<Detail> ofKits(Kit a, Kit b) {
    List<Detail> found = new ArrayList<>();
    String kit = "kit " + a.name();
    Set<String> names = new LinkedHashSet<>(a.surfaces().keySet());
    names.addAll(b.surfaces().keySet());
    for (String name : names) {
      add(found, kit + ":", surface(a, name), surface(b, name));
      add(found, kit + ": " + name + " stands", position(a, name), position(b, name));
    }
    add(
        found,
        kit + ":",
        a.leftHanded() ? "left-handed" : null,
        b.leftHanded() ? "left-handed" : null);
    Set<String> players = new LinkedHashSet<>(a.limits().keySet());
    players.addAll(b.limits().keySet());
    for (String player : players.stream().sorted().toList()) {
      String whose = player.isEmpty() ? "limits" : "limits of " + player;
      add(found, kit + ": " + whose, limits(a, player), limits(b, player));
    }
    return found;
  }

  private static @Nullable String surface(Kit kit, String name) {
    Surface surface = kit.surfaces().get(name);
    if (surface == null) {
      return null;
    }
    Surface struck = kit.struck(surface);
    if (struck == null) {
      return "without " + name;
    }
    return struck.name().equals(name)
        ? name + " (key " + surface.key() + ", " + surface.place() + ", " + surface.head() + ")"
        : name + " on " + struck.name();
  }

  private static @Nullable String position(Kit kit, String name) {
    Position place = kit.positions().get(name);
    return place == null
        ? null
        : place.distance()
            + " cm away at "
            + place.degrees()
            + " degrees, "
            + place.height()
            + " cm high";
  }

  private static @Nullable String limits(Kit kit, String player) {
    Limits limits = kit.limits().get(player);
    return limits == null
        ? null
        : "hands "
            + range(limits.hands())
            + " feet "
            + range(limits.feet())
            + " doubles "
            + range(limits.doubles())
            + " reach "
            + range(limits.reach());
  }

  private static String range(Limits.Range range) {
    return range.comfortable() + " to " + range.extreme();
  }
}
