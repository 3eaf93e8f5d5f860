package tabor.ide;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import tabor.groove.Groove;
import tabor.groove.Level;
import tabor.groove.Stroke;
import tabor.kit.Surface;
import tabor.rhythm.CountNames;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;

/** A bar, or a beat of it, as rows of letters below its counts, for reading in a tooltip. */
final class BarPreview {
  private BarPreview() {}

  /** The strokes of a bar, one row a surface: {@code R} right, {@code L} left. */
  static String bar(Groove groove, int bar) {
    return of(groove, bar, Time.ZERO, groove.meter(bar).bar());
  }

  /** The strokes of some beats of a bar, from a 0-based one on. */
  static String beats(Groove groove, int bar, int beat, int beats) {
    Meter meter = groove.meter(bar);
    int end = Math.min(meter.beatCount(), beat + beats);
    return of(groove, bar, meter.beatStart(beat), meter.beatStart(end));
  }

  private static String of(Groove groove, int bar, Time from, Time to) {
    Meter meter = groove.meter(bar);
    Map<Time, String> counts = new TreeMap<>();
    for (int beat = 0; beat < meter.beatCount(); beat++) {
      Time at = meter.beatStart(beat);
      if (!at.before(from) && at.before(to)) {
        counts.put(at, Integer.toString(beat + 1));
      }
    }
    Map<String, Map<Time, String>> rows = new LinkedHashMap<>();
    for (Surface surface : groove.setting().kit().surfaces().values()) {
      rows.put(surface.name(), new TreeMap<>());
    }
    for (Stroke stroke : groove.strokes()) {
      if (stroke.bar() == bar && !stroke.at().before(from) && stroke.at().before(to)) {
        counts.putIfAbsent(stroke.at(), CountNames.of(stroke.slot(), meter).toString());
        rows.computeIfAbsent(stroke.surface().name(), name -> new TreeMap<>())
            .merge(stroke.at(), sign(stroke), (a, b) -> a + b);
      }
    }
    rows.values().removeIf(Map::isEmpty);
    return draw(counts, rows);
  }

  private static String draw(Map<Time, String> counts, Map<String, Map<Time, String>> rows) {
    List<String> lines = new ArrayList<>();
    int names = rows.keySet().stream().mapToInt(String::length).max().orElse(0);
    Map<Time, Integer> widths = new TreeMap<>();
    counts.forEach((at, count) -> widths.put(at, count.length()));
    rows.values()
        .forEach(row -> row.forEach((at, sign) -> widths.merge(at, sign.length(), Math::max)));
    lines.add(
        " ".repeat(names)
            + counts.entrySet().stream()
                .map(count -> " " + pad(count.getValue(), widths.get(count.getKey())))
                .collect(Collectors.joining()));
    rows.forEach(
        (name, row) ->
            lines.add(
                pad(name, names)
                    + counts.keySet().stream()
                        .map(at -> " " + pad(row.getOrDefault(at, "·"), widths.get(at)))
                        .collect(Collectors.joining())));
    return lines.stream().map(String::stripTrailing).collect(Collectors.joining("\n"));
  }

  private static String sign(Stroke stroke) {
    String letter = stroke.limb().letter();
    return stroke.level() == Level.ACCENT
        ? letter
        : stroke.level() == Level.GHOST
            ? "(" + letter.toLowerCase(java.util.Locale.ROOT) + ")"
            : letter.toLowerCase(java.util.Locale.ROOT);
  }

  private static String pad(String text, int width) {
    return text + " ".repeat(Math.max(0, width - text.length()));
  }
}
