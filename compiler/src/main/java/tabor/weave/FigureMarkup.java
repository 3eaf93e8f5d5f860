package tabor.weave;

import java.util.List;

/** Figures as HTML, in the colours of the page that they stand in. */
final class FigureMarkup {
  /** A picture wider than this gets a narrow brother for phones. */
  private static final double PHONE = 430;

  /** How wide that one is. */
  private static final int NARROW = 400;

  private final String ids;
  private final boolean phones;
  private int count;

  /**
   * For one page.
   *
   * @param ids what the ids begin with
   * @param phones true for a page whose style sheet shows one of two widths
   */
  FigureMarkup(String ids, boolean phones) {
    this.ids = ids;
    this.phones = phones;
  }

  /** A block's figure; a player is shown as its picture. */
  String of(Figure figure) {
    StringBuilder out = new StringBuilder();
    Wish.As as = figure.wish().as();
    if (as == Wish.As.SOURCE || as == Wish.As.BOTH) {
      out.append(code("tabor", figure.source())).append('\n');
    }
    if (as == Wish.As.SOURCE) {
      return out.append(caption(figure)).toString().stripTrailing();
    }
    out.append("<figure class=\"tabor\">\n");
    if (as == Wish.As.GRID) {
      out.append(code("text", figure.grid())).append('\n');
    } else {
      drawings(figure, out);
    }
    String caption = figure.wish().caption();
    if (!caption.isEmpty()) {
      out.append("<figcaption>").append(text(caption)).append("</figcaption>\n");
    }
    return out.append("</figure>").toString();
  }

  /** The caption as a paragraph of its own; empty for none. */
  static String caption(Figure figure) {
    String caption = figure.wish().caption();
    return caption.isEmpty() ? "" : "<p class=\"tabor-caption\">" + text(caption) + "</p>\n";
  }

  private void drawings(Figure figure, StringBuilder out) {
    List<Picture> wide = figure.pictures();
    boolean both = phones && wide.stream().anyMatch(picture -> picture.width() > PHONE);
    out.append(both ? "<div class=\"wide\">\n" : "");
    wide.forEach(picture -> out.append(picture.element(ids + ++count)));
    if (both) {
      out.append("</div>\n<div class=\"narrow\">\n");
      figure.at(NARROW).pictures().forEach(picture -> out.append(picture.element(ids + ++count)));
      out.append("</div>\n");
    }
  }

  /** A staff in a line of text. */
  String inline(Picture picture) {
    String svg = picture.element(ids + ++count).strip();
    return "<span class=\"tabor-line\">" + svg.replace("\n", "") + "</span>";
  }

  /** What could not be shown, and why, with the text as it was written. */
  String problem(List<Problem> problems, String written) {
    StringBuilder out = new StringBuilder("<div class=\"tabor-problem\" role=\"alert\">\n<ul>\n");
    for (Problem problem : problems) {
      if (problem.isError()) {
        out.append("<li>").append(text(problem.words()));
        String help = problem.help();
        out.append(help == null ? "" : " <em>" + text(help) + "</em>").append("</li>\n");
      }
    }
    out.append("</ul>\n");
    if (!written.isBlank()) {
      out.append(code("tabor", ShownSource.broken(written))).append('\n');
    }
    return out.append("</div>").toString();
  }

  /** The same within a line of text. */
  String inlineProblem(List<Problem> problems, String written) {
    StringBuilder out = new StringBuilder("<code>").append(text(written)).append("</code>");
    for (Problem problem : problems) {
      if (problem.isError()) {
        out.append("<strong class=\"tabor-problem\">").append(text(problem.words()));
        out.append("</strong>");
      }
    }
    return out.toString();
  }

  private static String code(String language, String content) {
    return "<pre><code class=\"language-"
        + language
        + "\">"
        + text(content.replace("\r\n", "\n").stripTrailing())
        + "\n</code></pre>";
  }

  /** Text that stays text between tags. */
  static String text(String raw) {
    return raw.replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }
}
