package tabor.weave;

import java.util.List;
import java.util.function.Predicate;

/**
 * How documents are woven.
 *
 * @param pictures what stands before the name of a picture in a link, such as {@code ../pictures/}
 * @param keepText true to leave every block where it is and put its pictures below it, in place of
 *     those that stand there
 * @param isPage tells whether a document, as a link names it, becomes a page too; only for HTML
 */
public record Style(String pictures, boolean keepText, Predicate<String> isPage) {
  /** Pictures in a folder beside the document. */
  public static final Style BESIDE = new Style("pictures/", false, link -> false);

  private static final List<String> ENDINGS = List.of(".md", ".markdown");

  /** True for the name of a Markdown document. */
  public static boolean isDocument(String name) {
    for (String ending : ENDINGS) {
      if (name.endsWith(ending)) {
        return true;
      }
    }
    return false;
  }

  /** The name of the page that a document becomes. */
  public static String pageName(String document) {
    for (String ending : ENDINGS) {
      if (document.endsWith(ending)) {
        return document.substring(0, document.length() - ending.length()) + ".html";
      }
    }
    return document + ".html";
  }
}
