package tabor.emit.html;

import java.util.List;

/**
 * The players of a page that somebody else writes: each section's article goes where that page
 * wants it, the rest stands once, so that one script plays them all.
 *
 * @param style the style sheet's text
 * @param symbols the shapes that the articles refer to, an element of its own
 * @param articles one for each section, in order
 * @param end desk, data and script: the last thing on the page
 */
public record PagePlayerParts(String style, String symbols, List<String> articles, String end) {
  /** Copies the list. */
  public PagePlayerParts {
    articles = List.copyOf(articles);
  }
}
