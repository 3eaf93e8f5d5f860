package tabor.emit.engrave;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;

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

  private static final Map<String, Sign> ALL = load("signs.txt");

  /** Copies the map. */
  public Sign {
    anchors = Map.copyOf(anchors);
  }

  /** The sign of this name; throws {@link IllegalArgumentException} if none was drawn. */
  public static Sign of(String name) {
    Sign sign = ALL.get(name);
    if (sign == null) {
      throw new IllegalArgumentException("no sign " + name);
    }
    return sign;
  }

  /** The names of all signs, in the order of the resource. */
  public static Set<String> names() {
    return ALL.keySet();
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

  private static Map<String, Sign> load(String resource) {
    Map<String, Sign> signs = new LinkedHashMap<>();
    try (InputStream in = Sign.class.getResourceAsStream(resource);
        BufferedReader reader =
            new BufferedReader(
                new InputStreamReader(
                    java.util.Objects.requireNonNull(in, resource), StandardCharsets.UTF_8))) {
      String line;
      while ((line = reader.readLine()) != null) {
        if (!line.isBlank() && !line.startsWith("#")) {
          String path = reader.readLine();
          Sign sign = read(line.split(" ", -1), path == null ? "" : path);
          signs.put(sign.name(), sign);
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return java.util.Collections.unmodifiableMap(signs);
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
