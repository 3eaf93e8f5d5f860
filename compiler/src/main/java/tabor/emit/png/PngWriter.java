package tabor.emit.png;

import com.pngencoder.PngEncoder;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.util.List;
import tabor.emit.engrave.Contour;
import tabor.emit.engrave.Drawing;
import tabor.emit.engrave.Mark;
import tabor.emit.font.OpenFont;

/**
 * Draws a picture for messages and phones: black ink, 20 pixels a staff space, twice the size that
 * an SVG asks for. Text is drawn from the font's own outlines, so that no font of the machine
 * matters.
 */
public final class PngWriter {
  /** Pixels a staff space. */
  private static final double SCALE = 20;

  /** The longest side of a picture; a larger drawing is drawn smaller. */
  private static final int MOST = 16_000;

  /** Clear ground around the drawing, in staff spaces. */
  private static final double MARGIN = 1.5;

  /** From 1, the fastest, to 9: more makes drawings hardly smaller and takes much longer. */
  private static final int COMPRESSION = 4;

  private PngWriter() {}

  /** What lies behind the ink. */
  public enum Ground {
    WHITE,
    /** Nothing: the ground of whatever it is laid on. */
    CLEAR
  }

  /** The bytes of a PNG file. */
  public static byte[] write(Drawing drawing, Ground ground) {
    double wide = drawing.width() + 2 * MARGIN;
    double high = drawing.height() + 2 * MARGIN;
    double scale = Math.min(SCALE, MOST / Math.max(wide, high));
    int width = (int) Math.ceil(wide * scale);
    int height = (int) Math.ceil(high * scale);
    BufferedImage image =
        switch (ground) {
          case WHITE -> new BufferedImage(width, height, BufferedImage.TYPE_BYTE_GRAY);
          case CLEAR -> new BufferedImage(width, height, BufferedImage.TYPE_INT_ARGB);
        };
    Graphics2D graphics = image.createGraphics();
    graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    graphics.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    if (ground == Ground.WHITE) {
      graphics.setColor(Color.WHITE);
      graphics.fillRect(0, 0, width, height);
    }
    graphics.scale(scale, scale);
    graphics.translate(MARGIN, MARGIN);
    draw(drawing.marks(), new Brush(graphics));
    graphics.dispose();
    return new PngEncoder()
        .withBufferedImage(image)
        .withCompressionLevel(COMPRESSION)
        .withMultiThreadedCompressionEnabled(false) // cores are shared out by whoever asks
        .toBytes();
  }

  private static void draw(List<Mark> marks, Brush brush) {
    for (Mark mark : marks) {
      mark.match(brush);
    }
  }

  private record Brush(Graphics2D graphics) implements Mark.Cases<Boolean> {
    @Override
    public Boolean ink(Mark.Ink ink) {
      fill(ink.outline(), ink.strength());
      return true;
    }

    @Override
    public Boolean glyph(Mark.Glyph glyph) {
      fill(glyph.contour(), 1);
      return true;
    }

    @Override
    public Boolean line(Mark.Line line) {
      int cap =
          switch (line.cap()) {
            case BUTT -> BasicStroke.CAP_BUTT;
            case ROUND -> BasicStroke.CAP_ROUND;
          };
      graphics.setColor(Color.BLACK);
      graphics.setStroke(new BasicStroke((float) line.thickness(), cap, BasicStroke.JOIN_MITER));
      graphics.draw(new Line2D.Double(line.x1(), line.y1(), line.x2(), line.y2()));
      return true;
    }

    @Override
    public Boolean words(Mark.Words words) {
      fill(
          OpenFont.get().outline(words.text(), words.left(), words.y(), words.size(), words.face()),
          1);
      return true;
    }

    @Override
    public Boolean group(Mark.Group group) {
      draw(group.marks(), this);
      return true;
    }

    private void fill(Contour outline, double strength) {
      Path2D.Double path = new Path2D.Double(Path2D.WIND_NON_ZERO);
      outline.draw(new Tracer(path));
      graphics.setColor(new Color(0f, 0f, 0f, (float) strength));
      graphics.fill(path);
    }
  }

  private record Tracer(Path2D.Double path) implements Contour.Pen {
    @Override
    public void move(double x, double y) {
      path.moveTo(x, y);
    }

    @Override
    public void line(double x, double y) {
      path.lineTo(x, y);
    }

    @Override
    public void curve(double x1, double y1, double x2, double y2, double x, double y) {
      path.curveTo(x1, y1, x2, y2, x, y);
    }

    @Override
    public void close() {
      path.closePath();
    }
  }
}
