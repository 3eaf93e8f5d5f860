package tabor.emit.svg;

import java.util.List;
import java.util.Map;
import tabor.emit.engrave.Contour;
import tabor.emit.engrave.Drawing;
import tabor.emit.engrave.Mark;

/**
 * Writes a drawing as SVG 1.1: filled paths and text, no script, no outside reference, no inline
 * style on any element, so that it may stand in a page with a strict content policy. All ink is
 * {@code currentColor}. Text stays text, so that it can be searched and read aloud; each run
 * carries its measured {@code textLength}, so that another sans-serif face cannot push it into its
 * neighbours.
 */
public final class SvgWriter {
  /** User units a staff space: browsers set type below one unit badly, so a space is ten. */
  public static final int UNIT = 10;

  private final StringBuilder out = new StringBuilder(1 << 14);

  private SvgWriter() {}

  /**
   * A file of its own: with an XML declaration, and with ink and ground for a dark screen, both
   * said, so that neither is left to chance.
   *
   * @param name a name for its parts, such as the section's
   */
  public static String file(Drawing drawing, String name) {
    SvgWriter writer = new SvgWriter();
    writer.out.append("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
    writer.document(drawing, name, true);
    return writer.out.toString();
  }

  /**
   * An element for an HTML page: takes the page's colour and has no style sheet.
   *
   * @param name a name for its parts, unique in the page
   */
  public static String element(Drawing drawing, String name) {
    SvgWriter writer = new SvgWriter();
    writer.document(drawing, name, false);
    return writer.out.toString();
  }

  private void document(Drawing drawing, String name, boolean file) {
    String id = name.replaceAll("[^A-Za-z0-9-]", "-");
    String width = number(drawing.width() * UNIT);
    String height = number(drawing.height() * UNIT);
    out.append("<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"notation\"");
    attribute("viewBox", "0 0 " + width + " " + height);
    attribute("width", width);
    attribute("height", height);
    attribute("role", "img");
    attribute("aria-labelledby", id + "-title");
    attribute("aria-describedby", id + "-words");
    attribute("fill", "currentColor");
    attribute("font-family", "'Liberation Sans', Arimo, Arial, Helvetica, sans-serif");
    out.append(">\n<title");
    attribute("id", id + "-title");
    out.append('>').append(XmlText.text(drawing.title())).append("</title>\n<desc");
    attribute("id", id + "-words");
    out.append('>').append(XmlText.text(drawing.words())).append("</desc>\n");
    if (file) {
      out.append("<style>@media (prefers-color-scheme: dark) ")
          .append("{ svg { color: #f0f0f0; background: #181818 } }</style>\n");
    }
    marks(drawing.marks());
    out.append("</svg>\n");
  }

  private void marks(List<Mark> marks) {
    Cases cases = new Cases();
    for (Mark mark : marks) {
      mark.match(cases);
    }
  }

  private void attribute(String name, double value) {
    out.append(' ').append(name).append("=\"");
    number(out, value);
    out.append('"');
  }

  private void attribute(String name, String value) {
    out.append(' ').append(name).append("=\"").append(XmlText.text(value)).append('"');
  }

  /** A number with at most two digits after the point. */
  static String number(double value) {
    StringBuilder text = new StringBuilder();
    number(text, value);
    return text.toString();
  }

  static void number(StringBuilder text, double value) {
    int hundredths = Math.toIntExact(Math.round(value * 100));
    if (hundredths < 0) {
      text.append('-');
      hundredths = -hundredths;
    }
    text.append(hundredths / 100);
    int rest = hundredths % 100;
    if (rest != 0) {
      text.append('.').append(rest / 10);
      if (rest % 10 != 0) {
        text.append(rest % 10);
      }
    }
  }

  private final class Cases implements Mark.Cases<Boolean> {
    @Override
    public Boolean ink(Mark.Ink ink) {
      path(ink.outline());
      if (ink.strength() < 1) {
        attribute("fill-opacity", ink.strength());
      }
      out.append("/>\n");
      return true;
    }

    private void path(Contour contour) {
      out.append("<path d=\"");
      contour.draw(new PathData(out));
      out.append('"');
    }

    @Override
    public Boolean glyph(Mark.Glyph glyph) {
      path(glyph.contour());
      out.append("/>\n");
      return true;
    }

    @Override
    public Boolean line(Mark.Line line) {
      out.append("<path d=\"");
      PathData data = new PathData(out);
      data.move(line.x1(), line.y1());
      data.line(line.x2(), line.y2());
      out.append("\" fill=\"none\" stroke=\"currentColor\"");
      attribute("stroke-width", line.thickness() * UNIT);
      if (line.cap() == Mark.Cap.ROUND) {
        attribute("stroke-linecap", "round");
      }
      out.append("/>\n");
      return true;
    }

    @Override
    public Boolean words(Mark.Words words) {
      out.append("<text");
      attribute("x", words.x() * UNIT);
      attribute("y", words.y() * UNIT);
      attribute("font-size", words.size() * UNIT);
      switch (words.align()) {
        case LEFT -> {}
        case MIDDLE -> attribute("text-anchor", "middle");
        case RIGHT -> attribute("text-anchor", "end");
      }
      switch (words.face()) {
        case REGULAR -> {}
        case BOLD -> attribute("font-weight", "bold");
        case ITALIC -> attribute("font-style", "italic");
      }
      if (words.width() > 0) {
        attribute("textLength", words.width() * UNIT);
        attribute("lengthAdjust", "spacingAndGlyphs");
      }
      out.append('>').append(XmlText.text(words.text())).append("</text>\n");
      return true;
    }

    @Override
    public Boolean group(Mark.Group group) {
      out.append("<g");
      attribute("class", String.join(" ", group.classes()));
      for (Map.Entry<String, String> fact : group.data().entrySet()) {
        attribute("data-" + fact.getKey(), fact.getValue());
      }
      out.append(">\n");
      marks(group.marks());
      out.append("</g>\n");
      return true;
    }
  }

  /** Path data of an outline, absolute, in user units. */
  record PathData(StringBuilder out) implements Contour.Pen {
    @Override
    public void move(double x, double y) {
      out.append('M');
      point(x, y);
    }

    @Override
    public void line(double x, double y) {
      out.append('L');
      point(x, y);
    }

    @Override
    public void curve(double x1, double y1, double x2, double y2, double x, double y) {
      out.append('C');
      point(x1, y1);
      out.append(' ');
      point(x2, y2);
      out.append(' ');
      point(x, y);
    }

    @Override
    public void close() {
      out.append('Z');
    }

    private void point(double x, double y) {
      number(out, x * UNIT);
      out.append(' ');
      number(out, y * UNIT);
    }
  }
}
