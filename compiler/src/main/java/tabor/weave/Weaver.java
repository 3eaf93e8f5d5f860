package tabor.weave;

import java.nio.file.Path;

/** Puts pictures in the place of notation in CommonMark documents. Safe for several threads. */
public final class Weaver {
  private Weaver() {}

  /**
   * Markdown for any program that reads it: notation becomes links to pictures, everything else
   * stays as it is.
   *
   * @param document what the document is called, and what names in it are relative to
   * @param text its text
   */
  public static Woven markdown(Path document, String text, Lessons lessons, Style style) {
    return MarkdownWeaver.weave(document, text, lessons, style);
  }

  /** A complete page, its pictures and players in it. */
  public static Woven html(Path document, String text, Lessons lessons, Style style) {
    return HtmlWeaver.weave(document, text, lessons, style);
  }
}
