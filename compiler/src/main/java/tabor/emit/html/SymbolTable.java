package tabor.emit.html;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import tabor.emit.engrave.Drawing;

/**
 * The shapes that occur several times in a page's drawings, each written once: a page holds some
 * thousands of note heads and a handful of different ones.
 */
final class SymbolTable {
  private final Map<String, Integer> uses = new LinkedHashMap<>();
  private final Map<String, String> names = new HashMap<>();

  private final SignPaths signs = new SignPaths();

  /** The shapes of a drawing, not counted yet; safe for several threads. */
  Outlines outlines(Drawing drawing) {
    return Outlines.of(drawing, signs);
  }

  /** Counts the shapes of a drawing. All drawings are counted before the first is written. */
  void count(Outlines drawing) {
    for (Outlines.Inked ink : drawing.inks()) {
      if (!ink.path().isSimple()) {
        uses.merge(ink.path().data(), 1, Integer::sum);
      }
    }
  }

  /** The id of a shape that has one; empty for one that occurs once. */
  String name(String path) {
    return names.getOrDefault(path, "");
  }

  /** The hidden element that holds the shapes; names them. Empty if there are none. */
  String markup() {
    StringBuilder out = new StringBuilder();
    uses.forEach(
        (path, times) -> {
          if (times > 1) {
            String name = "G" + Integer.toString(names.size(), 36);
            names.put(path, name);
            out.append("<path id=\"").append(name).append("\" d=\"").append(path).append("\"/>\n");
          }
        });
    return out.isEmpty()
        ? ""
        : "<svg class=\"symbols\" width=\"0\" height=\"0\" aria-hidden=\"true\"><defs>\n"
            + out
            + "</defs></svg>\n";
  }
}
