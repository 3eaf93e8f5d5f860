package tabor.emit.engrave;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import tabor.source.ResourceText;

/**
 * A musical sign of our own drawing, by its SMuFL name. Sizes in staff spaces, y upwards, origin on
 * the base line (SMuFL 1.4, "Metrics and glyph registration").
 *
 * @param name its SMuFL name
 * @param outline its shape
 * @param box the box of its shape, y downwards, with the origin at 0, 0
 * @param advance how far the next sign of a row stands to the right
 * @param anchors points where stems and the like are joined, by their SMuFL names
 */
public record Sign(
    String name, Contour outline, Box box, double advance, Map<String, Anchor> anchors) {
  /** A point of a sign, y upwards. */
  public record Anchor(double x, double y) {}

  private static final Map<String, String> LINES = load("signs.txt");

  /** Those that were asked for: a page needs a few of them. */
  private static final Map<String, Sign> READ = new ConcurrentHashMap<>();

  /** Copies the map. */
  public Sign {
    anchors = Map.copyOf(anchors);
  }

  /** The sign of this name; throws {@link IllegalArgumentException} if none was drawn. */
  public static Sign of(String name) {
    Sign sign = READ.get(name);
    if (sign == null) {
      String lines = LINES.get(name);
      if (lines == null) {
        throw new IllegalArgumentException("no sign " + name);
      }
      sign = read(lines);
      READ.put(name, sign);
    }
    return sign;
  }

  /** The names of all signs, in the order of the resource. */
  public static Set<String> names() {
    return Collections.unmodifiableSet(LINES.keySet());
  }

  /** A point of the sign; throws {@link IllegalArgumentException} if it has none of this name. */
  public Anchor anchor(String anchorName) {
    Anchor anchor = anchors.get(anchorName);
    if (anchor == null) {
      throw new IllegalArgumentException(name + " has no " + anchorName);
    }
    return anchor;
  }

  /** The shape with its origin at a point of a drawing (y downwards), at a scale. */
  public Contour at(double x, double y, double scale) {
    return outline.placed(x, y, scale, -scale);
  }

  /** The box of {@link #at}. */
  public Box boxAt(double x, double y, double scale) {
    return new Box(
        x + box.left() * scale,
        y + box.top() * scale,
        x + box.right() * scale,
        y + box.bottom() * scale);
  }

  /** By the names of all signs, in the order of the resource, the lines that say what they are. */
  private static Map<String, String> load(String resource) {
    Map<String, String> found = new LinkedHashMap<>();
    String text = ResourceText.of(Sign.class, resource);
    int at = 0;
    while (at < text.length()) {
      int end = text.indexOf('\n', at);
      if (end > at && text.charAt(at) != '#') {
        end = text.indexOf('\n', end + 1);
        found.put(text.substring(at, text.indexOf(' ', at)), text.substring(at, end));
      }
      at = end + 1;
    }
    return found;
  }

  private static Sign read(String lines) {
    int cut = lines.indexOf('\n');
    return read(lines.substring(0, cut).split(" ", -1), lines.substring(cut + 1));
  }

  private static Sign read(String[] words, String path) {
    Map<String, Anchor> anchors = new LinkedHashMap<>();
    for (int i = 2; i + 2 < words.length; i += 3) {
      anchors.put(
          words[i], new Anchor(Double.parseDouble(words[i + 1]), Double.parseDouble(words[i + 2])));
    }
    Contour outline = Contour.parse(path);
    Box up = outline.bounds();
    Box box = new Box(up.left(), -up.bottom(), up.right(), -up.top());
    return new Sign(words[0], outline, box, Double.parseDouble(words[1]), anchors);
  }
}
