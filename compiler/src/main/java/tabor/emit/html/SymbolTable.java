package tabor.emit.html;

import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import tabor.emit.engrave.Contour;
import tabor.emit.engrave.Drawing;
import tabor.emit.engrave.Mark;
import tabor.emit.engrave.Sign;

/**
 * The shapes that occur several times in a page's drawings, each written once: a page holds some
 * thousands of note heads and a handful of different ones.
 */
final class SymbolTable {
  private final Map<String, Integer> uses = new LinkedHashMap<>();
  private final Map<String, String> names = new HashMap<>();

  /** What signs look like, by their size: a page has thousands of a few. */
  private final Map<Sign, Map<Double, LocalPath>> signs = new IdentityHashMap<>();

  /** Counts the shapes of a drawing. All drawings are counted before the first is written. */
  void count(Drawing drawing) {
    Shapes.each(
        drawing.marks(),
        new Shapes.Taker() {
          @Override
          public void shape(Contour outline, double strength, boolean changed) {
            use(LocalPath.of(outline));
          }

          @Override
          public void glyph(Mark.Glyph glyph, boolean changed) {
            use(path(glyph));
          }

          @Override
          public void words(Mark.Words words, boolean changed) {
            // Text is never shared.
          }
        });
  }

  private void use(LocalPath path) {
    if (!path.isSimple()) {
      uses.merge(path.data(), 1, Integer::sum);
    }
  }

  /** The outline of a sign. */
  LocalPath path(Mark.Glyph glyph) {
    LocalPath known =
        signs
            .computeIfAbsent(glyph.sign(), sign -> new HashMap<>())
            .computeIfAbsent(glyph.scale(), scale -> LocalPath.of(glyph.sign().at(0, 0, scale)));
    // The first point of the sign in its place, by the same steps as its whole contour goes there.
    Contour outline = glyph.sign().outline();
    double x = glyph.x() + glyph.scale() * outline.startX();
    double y = glyph.y() + -glyph.scale() * outline.startY();
    return known.at(x * LocalPath.UNIT, y * LocalPath.UNIT);
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
