package tabor.emit.font;

import java.awt.geom.AffineTransform;
import java.awt.geom.GeneralPath;
import java.awt.geom.PathIterator;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentMap;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.jspecify.annotations.Nullable;
import tabor.emit.engrave.Contour;
import tabor.emit.engrave.Face;
import tabor.emit.engrave.TextMetrics;

/**
 * The text face: Liberation Sans in three cuts. Its widths are those of the common sans-serif
 * faces, so that a page that substitutes one of them keeps its measure.
 */
public final class OpenFont implements TextMetrics {
  /** Stands in for characters that the font lacks. */
  private static final int REPLACEMENT = 0xFFFD;

  private final Map<Face, Cut> cuts = new EnumMap<>(Face.class);

  private OpenFont() {
    for (Face face : Face.values()) {
      cuts.put(face, new Cut(face));
    }
  }

  private static final class Holder {
    static final OpenFont FONT = new OpenFont();
  }

  /** The face; each cut is read when it is first asked for. */
  public static OpenFont get() {
    return Holder.FONT;
  }

  @Override
  public double width(String text, double size, Face face) {
    return cut(face).width(text) * size;
  }

  private Cut cut(Face face) {
    return Objects.requireNonNull(cuts.get(face));
  }

  @Override
  public String showable(String text) {
    StringBuilder shown = new StringBuilder(text.length());
    for (int i = 0, c; i < text.length(); i += Character.charCount(c)) {
      c = text.codePointAt(i);
      if (c == '\t' || c == '\n' || c == '\r') {
        shown.append(' ');
      } else if (!isSilent(c)) {
        shown.appendCodePoint(has(c) ? c : replacement());
      }
    }
    return shown.toString();
  }

  private int replacement() {
    return has(REPLACEMENT) ? REPLACEMENT : '?';
  }

  /** The three cuts hold the same characters. */
  private boolean has(int codePoint) {
    return cut(Face.REGULAR).has(codePoint);
  }

  /** Control, format and direction characters: they would act on the page instead of showing. */
  private static boolean isSilent(int c) {
    int type = Character.getType(c);
    return type == Character.CONTROL
        || type == Character.FORMAT
        || type == Character.SURROGATE
        || type == Character.LINE_SEPARATOR
        || type == Character.PARAGRAPH_SEPARATOR
        || type == Character.UNASSIGNED
        || type == Character.PRIVATE_USE;
  }

  /** The outlines of a line of text from a point on its base line, y downwards. */
  public Contour outline(String text, double x, double y, double size, Face face) {
    return cut(face).outline(text, x, y, size);
  }

  /** One font file, read when it is first needed. */
  private static final class Cut {
    private final Face face;
    private final ConcurrentMap<Integer, Integer> widths = new ConcurrentHashMap<>();
    private volatile @Nullable Loaded loaded;

    Cut(Face face) {
      this.face = face;
    }

    private record Loaded(TrueTypeFont font, CmapLookup glyphs, double unit) {}

    private Loaded loaded() {
      Loaded known = loaded;
      return known == null ? load() : known;
    }

    private synchronized Loaded load() {
      Loaded known = loaded;
      if (known == null) {
        try {
          TrueTypeFont font = SpareFonts.read(face);
          known = new Loaded(font, font.getUnicodeCmapLookup(), font.getUnitsPerEm());
        } catch (IOException e) {
          throw new UncheckedIOException(e);
        }
        loaded = known;
      }
      return known;
    }

    boolean has(int codePoint) {
      return loaded().glyphs().getGlyphId(codePoint) > 0;
    }

    /** Width at size 1. */
    double width(String text) {
      long sum = 0;
      for (int i = 0; i < text.length(); ) {
        int c = text.codePointAt(i);
        sum += widths.computeIfAbsent(c, this::units);
        i += Character.charCount(c);
      }
      return sum / loaded().unit();
    }

    private int units(int codePoint) {
      try {
        return loaded().font().getAdvanceWidth(loaded().glyphs().getGlyphId(codePoint));
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    Contour outline(String text, double x, double y, double size) {
      Contour.Builder builder = new Contour.Builder();
      double scale = size / loaded().unit();
      double at = x;
      for (int i = 0; i < text.length(); ) {
        int c = text.codePointAt(i);
        trace(builder, shape(c), new AffineTransform(scale, 0, 0, -scale, at, y));
        at += widths.computeIfAbsent(c, this::units) * scale;
        i += Character.charCount(c);
      }
      return builder.build();
    }

    private GeneralPath shape(int codePoint) {
      try {
        var glyph = loaded().font().getGlyph().getGlyph(loaded().glyphs().getGlyphId(codePoint));
        return glyph == null ? new GeneralPath() : glyph.getPath();
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }

  private static void trace(Contour.Builder builder, GeneralPath path, AffineTransform transform) {
    double[] c = new double[6];
    double atX = 0;
    double atY = 0;
    for (PathIterator it = path.getPathIterator(transform); !it.isDone(); it.next()) {
      int kind = it.currentSegment(c);
      switch (kind) {
        case PathIterator.SEG_MOVETO -> builder.move(c[0], c[1]);
        case PathIterator.SEG_LINETO -> builder.line(c[0], c[1]);
        case PathIterator.SEG_QUADTO -> {
          builder.curve(
              atX + (c[0] - atX) * 2 / 3,
              atY + (c[1] - atY) * 2 / 3,
              c[2] + (c[0] - c[2]) * 2 / 3,
              c[3] + (c[1] - c[3]) * 2 / 3,
              c[2],
              c[3]);
          c[0] = c[2];
          c[1] = c[3];
        }
        case PathIterator.SEG_CUBICTO -> {
          builder.curve(c[0], c[1], c[2], c[3], c[4], c[5]);
          c[0] = c[4];
          c[1] = c[5];
        }
        default -> builder.close();
      }
      atX = c[0];
      atY = c[1];
    }
  }
}
