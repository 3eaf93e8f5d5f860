package tabor.emit.html;

import java.util.List;
import java.util.stream.Collectors;
import tabor.words.Words;

/**
 * What the pages about many lessons have in common: one file each, no script, and a policy that
 * allows the one style sheet in it and nothing else.
 */
final class LibraryMarkup {
  /** The look of the practice page, and what these pages have besides. */
  private static final String STYLE = Furniture.STYLE + Furniture.resource("library.css");

  private final StringBuilder out = new StringBuilder(1 << 16);

  /**
   * Starts a page with its heading.
   *
   * @param words that the page is written in
   */
  LibraryMarkup(String title, List<String> facts, Words words) {
    out.append(Furniture.head(title, words, "", STYLE))
        .append("<body>\n<div class=\"sheet\">\n<header class=\"head\">\n<h1>")
        .append(foreign(title))
        .append("</h1>\n");
    facts(facts);
    out.append("</header>\n<main>\n");
  }

  /** Markup as it is. */
  LibraryMarkup raw(String markup) {
    out.append(markup);
    return this;
  }

  /** Facts in one line; nothing for none. */
  LibraryMarkup facts(List<String> facts) {
    if (!facts.isEmpty()) {
      out.append("<p class=\"facts\">")
          .append(facts.stream().map(LibraryMarkup::foreign).collect(Collectors.joining(" · ")))
          .append("</p>\n");
    }
    return this;
  }

  /** A list of texts; nothing for none. */
  LibraryMarkup list(String kind, String label, List<String> texts) {
    if (!texts.isEmpty()) {
      out.append("<ul class=\"").append(kind).append("\" aria-label=\"").append(label);
      out.append("\">\n");
      texts.forEach(text -> out.append("<li>").append(foreign(text)).append("</li>\n"));
      out.append("</ul>\n");
    }
    return this;
  }

  /** Opens the article of a numbered thing. */
  LibraryMarkup open(String kind, int number, String title) {
    out.append("<article class=\"").append(kind).append("\" id=\"N").append(number);
    out.append("\" aria-labelledby=\"T").append(number).append("\">\n");
    out.append("<p class=\"number\" aria-hidden=\"true\">").append(number).append("</p>\n");
    out.append("<h2 id=\"T").append(number).append("\"><span class=\"unseen\">").append(number);
    out.append(". </span>").append(foreign(title)).append("</h2>\n");
    return this;
  }

  /** The whole page. */
  String close() {
    return out.append("</main>\n</div>\n</body>\n</html>\n").toString();
  }

  /** Text whose language and direction are not ours to say. */
  static String foreign(String text) {
    return "<bdi lang=\"\">" + Markup.text(text) + "</bdi>";
  }
}
