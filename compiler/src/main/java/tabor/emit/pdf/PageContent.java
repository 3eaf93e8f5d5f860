package tabor.emit.pdf;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDStream;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.state.PDExtendedGraphicsState;
import tabor.emit.engrave.Contour;
import tabor.emit.engrave.Face;
import tabor.emit.engrave.Mark;

/**
 * The content stream of one page, with y turned upwards. Operators are written here and not through
 * PDFBox, whose text methods look for ligatures in every two letters and take most of the time of a
 * handout; we want none, since the measure of a line is the sum of its letters.
 */
final class PageContent implements Mark.Cases<Boolean>, Contour.Pen {
  private final Map<Face, PDFont> fonts;
  private final double height;
  private final PDResources resources = new PDResources();
  private final Map<Face, COSName> fontNames = new EnumMap<>(Face.class);
  private final Map<Double, COSName> tints = new HashMap<>();
  private final Map<SignForms.Shape, COSName> signs = new LinkedHashMap<>();
  private byte[] bytes = new byte[1 << 15];
  private int length;

  private PageContent(Map<Face, PDFont> fonts, double height) {
    this.fonts = fonts;
    this.height = height;
  }

  /**
   * What is drawn on a page, packed; safe for several threads with the same fonts.
   *
   * @param height of the page, in points
   */
  static PageContent of(Map<Face, PDFont> fonts, double height, List<Mark> marks) {
    PageContent content = new PageContent(fonts, height);
    content.all(marks);
    content.pack();
    return content;
  }

  /** What fills a shape, from the origin up. */
  static byte[] filled(Contour contour) {
    PageContent content = new PageContent(Map.of(), 0);
    content.fill(contour);
    return Arrays.copyOf(content.bytes, content.length);
  }

  /** Puts it on its page. */
  void on(PDDocument document, PDPage page, SignForms forms) throws IOException {
    for (Map.Entry<SignForms.Shape, COSName> sign : signs.entrySet()) {
      resources.put(sign.getValue(), forms.form(sign.getKey()));
    }
    COSStream stream = document.getDocument().createCOSStream();
    stream.setItem(COSName.FILTER, COSName.FLATE_DECODE);
    try (OutputStream out = stream.createRawOutputStream()) {
      out.write(bytes, 0, length);
    }
    page.setResources(resources);
    page.setContents(new PDStream(stream));
  }

  private void pack() {
    ByteArrayOutputStream packed = new ByteArrayOutputStream(length / 3 + 64);
    Deflater deflater = new Deflater(4);
    try (OutputStream out = new DeflaterOutputStream(packed, deflater, 1 << 15)) {
      out.write(bytes, 0, length);
    } catch (IOException e) {
      throw new UncheckedIOException(e); // writing to memory does not fail
    } finally {
      deflater.end();
    }
    bytes = packed.toByteArray();
    length = bytes.length;
  }

  private void all(List<Mark> marks) {
    for (Mark mark : marks) {
      mark.match(this);
    }
  }

  // ---- marks ----

  @Override
  public Boolean ink(Mark.Ink ink) {
    if (ink.strength() < 1) {
      operator("q");
      name(tints.computeIfAbsent(ink.strength(), this::tint));
      operator("gs");
    }
    fill(ink.outline());
    if (ink.strength() < 1) {
      operator("Q");
    }
    return true;
  }

  private void fill(Contour contour) {
    contour.draw(this);
    operator("f");
  }

  @Override
  public Boolean glyph(Mark.Glyph glyph) {
    SignForms.Shape shape = new SignForms.Shape(glyph.sign(), glyph.scale());
    COSName name =
        signs.computeIfAbsent(shape, any -> COSName.getPDFName("Sign" + (signs.size() + 1)));
    operator("q");
    ascii("1 0 0 1 ");
    point(glyph.x(), glyph.y());
    operator("cm");
    name(name);
    operator("Do");
    operator("Q");
    return true;
  }

  @Override
  public Boolean line(Mark.Line line) {
    number(line.thickness());
    operator("w");
    put(line.cap() == Mark.Cap.ROUND ? '1' : '0');
    put(' ');
    operator("J");
    move(line.x1(), line.y1());
    line(line.x2(), line.y2());
    operator("S");
    return true;
  }

  private COSName tint(double strength) {
    PDExtendedGraphicsState state = new PDExtendedGraphicsState();
    state.setNonStrokingAlphaConstant((float) strength);
    return resources.add(state);
  }

  @Override
  public Boolean words(Mark.Words words) {
    if (words.text().isBlank()) {
      return false;
    }
    PDFont font = Objects.requireNonNull(fonts.get(words.face()));
    operator("BT");
    name(fontNames.computeIfAbsent(words.face(), face -> resources.add(font)));
    number(words.size());
    operator("Tf");
    point(words.left(), words.y());
    operator("Td");
    text(font, words.text());
    operator("Tj");
    operator("ET");
    return true;
  }

  private void text(PDFont font, String text) {
    put('<');
    for (byte code : codes(font, text)) {
      put("0123456789ABCDEF".charAt((code >> 4) & 15));
      put("0123456789ABCDEF".charAt(code & 15));
    }
    put('>');
  }

  /** What stands for a text in its font, which takes note of it; pages share their fonts. */
  private static byte[] codes(PDFont font, String text) {
    synchronized (font) {
      for (int i = 0, c; i < text.length(); i += Character.charCount(c)) {
        c = text.codePointAt(i);
        font.addToSubset(c);
      }
      try {
        return font.encode(text);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }

  @Override
  public Boolean group(Mark.Group group) {
    all(group.marks());
    return true;
  }

  // ---- paths ----

  @Override
  public void move(double x, double y) {
    point(x, y);
    operator("m");
  }

  @Override
  public void line(double x, double y) {
    point(x, y);
    operator("l");
  }

  @Override
  public void curve(double x1, double y1, double x2, double y2, double x, double y) {
    point(x1, y1);
    point(x2, y2);
    point(x, y);
    operator("c");
  }

  @Override
  public void close() {
    operator("h");
  }

  // ---- bytes ----

  private void point(double x, double y) {
    number(x);
    number(height - y);
  }

  /** A number with at most three digits after the point, and a space. */
  private void number(double value) {
    long thousandths = Math.round(value * 1000);
    if (thousandths < 0) {
      put('-');
      thousandths = -thousandths;
    }
    digits(thousandths / 1000);
    int rest = (int) (thousandths % 1000);
    if (rest > 0) {
      put('.');
      put((char) ('0' + rest / 100));
      if (rest % 100 > 0) {
        put((char) ('0' + rest / 10 % 10));
        if (rest % 10 > 0) {
          put((char) ('0' + rest % 10));
        }
      }
    }
    put(' ');
  }

  private void digits(long value) {
    if (value >= 10) {
      digits(value / 10);
    }
    put((char) ('0' + value % 10));
  }

  private void name(COSName name) {
    put('/');
    ascii(name.getName());
    put(' ');
  }

  private void operator(String operator) {
    ascii(operator);
    put('\n');
  }

  private void ascii(String text) {
    for (int i = 0; i < text.length(); i++) {
      put(text.charAt(i));
    }
  }

  private void put(char c) {
    if (length == bytes.length) {
      bytes = Arrays.copyOf(bytes, length * 2);
    }
    bytes[length++] = (byte) c;
  }
}
