package tabor.emit.engrave;

/** What the layout must know of the text font. */
public interface TextMetrics {
  /** Width of a line of text at a type size, in the unit of the size. */
  double width(String text, double size, Face face);

  /** Width of a line of upright text. */
  default double width(String text, double size) {
    return width(text, size, Face.REGULAR);
  }

  /**
   * The text as the font can show it: control and direction characters gone, line breaks and tabs
   * as spaces, and for each character that the font lacks a replacement sign.
   */
  String showable(String text);
}
