package tabor.weave;

import java.nio.charset.StandardCharsets;
import java.util.List;
import tabor.emit.engrave.Drawing;
import tabor.emit.engrave.Engraver;
import tabor.emit.engrave.Engraving;
import tabor.emit.engrave.Look;
import tabor.emit.engrave.MeasuredScore;
import tabor.emit.font.OpenFont;
import tabor.emit.pdf.PdfPicture;
import tabor.emit.png.PngWriter;
import tabor.emit.svg.SvgWriter;
import tabor.groove.Changes;
import tabor.groove.Groove;
import tabor.notation.Score;
import tabor.notation.Speller;
import tabor.rhythm.Time;

/**
 * A drawn section.
 *
 * @param name what its file is named after: the section's name
 * @param title what the section is called
 * @param alt what it shows, in words
 * @param drawing the drawing
 * @param scale how large it stands in a page, as a part of its full size
 */
public record Picture(String name, String title, String alt, Drawing drawing, double scale) {
  /** Longer than this nobody listens to the end; a file's own description says everything. */
  private static final int MOST_WORDS = 600;

  /** Pixels a staff space at full size. */
  private static final double SPACE = SvgWriter.UNIT;

  /** Points a pixel, as CSS has it: 96 pixels and 72 points to the inch. */
  private static final double POINTS = 0.75;

  /** Beats per minute where nothing is said: shown only where something is. */
  private static final Time USUAL_TEMPO = Time.of(90);

  /** A staff in a line of text is this part of one that stands alone. */
  private static final double INLINE = 0.55;

  /** Widths that a staff in a line of text may take, in staff spaces. */
  private static final List<Double> INLINE_WIDTHS = List.of(18.0, 24.0, 32.0, 42.0, 54.0, 70.0);

  /** A section as a block shows it; its title stands above it if it is one of several. */
  static Picture of(Groove groove, Wish wish, boolean several) {
    boolean tempo =
        !groove.setting().tempo().perMinute().equals(USUAL_TEMPO)
            || !groove.setting().feel().isStraight();
    Look look = new Look(wish.width() / SPACE, wish.counts(), tempo);
    Engraving engraving =
        Engraver.engrave(score(groove), several ? look.withHeading() : look, OpenFont.get());
    Drawing drawing = engraving.whole();
    String alt = inWords(groove.caption(), drawing.words());
    return new Picture(groove.name(), groove.caption(), alt, drawing, 1);
  }

  /**
   * A section small enough for a line of text.
   *
   * @param written the words it was made of, which it is called by
   */
  static Picture inline(Groove groove, String written) throws Trouble {
    Look look = new Look(INLINE_WIDTHS.get(0), false, false);
    MeasuredScore measured = MeasuredScore.of(score(groove), look, OpenFont.get());
    for (double width : INLINE_WIDTHS) {
      MeasuredScore staff = measured.in(width);
      if (staff.isNarrow()) {
        Drawing drawing = staff.engrave().whole();
        // The meter is made up and the tempo is nobody's: only the bars are said.
        String bars = drawing.words().substring(drawing.words().indexOf(". ") + 1);
        return new Picture(groove.name(), written, inWords(written, bars), drawing, INLINE);
      }
    }
    throw new Trouble(
        "this is too long for a staff in a line of text", "Write it as a block of its own.");
  }

  private static Score score(Groove groove) {
    return Speller.spell(groove, Changes.of(groove).strokes());
  }

  /** A file of its own, with ink and ground for light and dark. */
  public byte[] svg() {
    return sized(SvgWriter.file(drawing, name)).getBytes(StandardCharsets.UTF_8);
  }

  /**
   * An element for an HTML page, in the page's own colours.
   *
   * @param id unique in the page
   */
  public String element(String id) {
    return sized(SvgWriter.element(drawing, id));
  }

  /** A picture on white, twice as many pixels as it is wide. */
  public byte[] png() {
    return PngWriter.write(drawing, PngWriter.Ground.WHITE);
  }

  /** A page of its own size. */
  public byte[] pdf() {
    return PdfPicture.write(drawing, SPACE * scale * POINTS);
  }

  /** Its width in pixels as it stands in a page. */
  public double width() {
    return drawing.width() * SPACE * scale;
  }

  /** Its height in pixels as it stands in a page. */
  public double height() {
    return drawing.height() * SPACE * scale;
  }

  private String sized(String svg) {
    if (scale == 1) {
      return svg;
    }
    return svg.replaceFirst(" width=\"[0-9.]+\"", " width=\"" + pixels(width()) + '"')
        .replaceFirst(" height=\"[0-9.]+\"", " height=\"" + pixels(height()) + '"');
  }

  /** A length with at most one digit after the point, the same on every machine. */
  static String pixels(double length) {
    long tenths = Math.round(length * 10);
    return tenths % 10 == 0 ? Long.toString(tenths / 10) : tenths / 10 + "." + tenths % 10;
  }

  /**
   * Title, then bar by bar what is played; whole bars are left out at the end of a long section.
   *
   * @param words sentences, the first about the whole, then one for each bar
   */
  private static String inWords(String title, String words) {
    String all = title.strip() + ": " + words.strip();
    if (all.length() <= MOST_WORDS) {
      return clean(all);
    }
    int end = all.lastIndexOf(". ", MOST_WORDS);
    int least = all.indexOf(". ");
    String kept =
        all.substring(0, (Math.max(end, least) < 0 ? MOST_WORDS : Math.max(end, least)) + 1);
    return clean(kept + " And so on.");
  }

  private static String clean(String text) {
    return text.replaceAll("\\s+", " ").strip();
  }
}
