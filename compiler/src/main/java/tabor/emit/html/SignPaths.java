package tabor.emit.html;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import tabor.emit.engrave.Contour;
import tabor.emit.engrave.Mark;

/**
 * What signs look like at the sizes that a page has them in: it has thousands of a few. Safe for
 * several threads.
 */
final class SignPaths {
  /** By the names of the signs, then by their sizes. */
  private final Map<String, Map<Double, LocalPath>> known = new ConcurrentHashMap<>();

  /** The outline of a sign in its place. */
  LocalPath path(Mark.Glyph glyph) {
    Map<Double, LocalPath> sizes = known.get(glyph.sign().name());
    if (sizes == null) {
      sizes = known.computeIfAbsent(glyph.sign().name(), none -> new ConcurrentHashMap<>());
    }
    LocalPath path = sizes.get(glyph.scale());
    if (path == null) {
      path = LocalPath.of(glyph.sign().at(0, 0, glyph.scale()));
      sizes.put(glyph.scale(), path);
    }
    // The first point of the sign in its place, by the same steps as its whole contour goes there.
    Contour outline = glyph.sign().outline();
    double x = glyph.x() + glyph.scale() * outline.startX();
    double y = glyph.y() + -glyph.scale() * outline.startY();
    return path.at(x * LocalPath.UNIT, y * LocalPath.UNIT);
  }
}
