package tabor.emit.html;

import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tabor.kit.Limb;

/**
 * Writes a page as one HTML file. Its Content-Security-Policy allows exactly the one script and the
 * one style sheet that stand in it, by their hashes, and nothing else: no network, no frame, no
 * form.
 */
public final class PageWriter implements Page.Cases<@Nullable Void> {
  private static final String PLAY_ICON =
      "<svg class=\"icon\" viewBox=\"0 0 16 16\" aria-hidden=\"true\">"
          + "<path class=\"go\" d=\"M3 1.5 14 8 3 14.5Z\"/>"
          + "<path class=\"halt\" d=\"M2.5 2.5h11v11h-11Z\"/></svg>";

  private final StringBuilder out = new StringBuilder(1 << 17);

  private PageWriter() {}

  /** The text of the file, lines ending in a line feed, to be stored as UTF-8. */
  public static String write(Page page) {
    PageWriter writer = new PageWriter();
    writer.page(page);
    return writer.out.toString();
  }

  private void page(Page page) {
    head(page.title());
    out.append("<body>\n<div class=\"sheet\">\n<header class=\"head\">\n");
    element("h1", "", page.title());
    String by = page.by();
    if (by != null && !by.isBlank()) {
      element("p", "by", by);
    }
    facts(page.facts());
    out.append("<p class=\"given\">Name <span></span> Date <span></span></p>\n</header>\n");
    if (!page.key().wide().isEmpty()) {
      out.append("<figure class=\"key\">\n");
      drawings(page.key().wide(), page.key().narrow());
    }
    out.append("<main>\n");
    page.blocks().forEach(block -> block.match(this));
    out.append("</main>\n<footer>\n");
    if (!page.caution().isBlank()) {
      element("p", "caution", page.caution());
    }
    out.append(Furniture.KEYS).append("</footer>\n</div>\n");
    if (!page.blocks().isEmpty()) {
      out.append(Furniture.desk(PLAY_ICON, List.of(Limb.values())));
    }
    out.append("<script type=\"application/json\" id=\"tabor-data\">")
        .append(PageJson.of(page.data()))
        .append("</script>\n<script>")
        .append(Furniture.SCRIPT)
        .append("</script>\n</body>\n</html>\n");
  }

  private void head(String title) {
    out.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
        .append("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; ")
        .append("script-src '")
        .append(Furniture.hash(Furniture.SCRIPT))
        .append("'; style-src '")
        .append(Furniture.hash(Furniture.STYLE))
        .append("'; base-uri 'none'; form-action 'none'\">\n")
        .append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
        .append("<meta name=\"color-scheme\" content=\"light dark\">\n")
        .append("<meta name=\"referrer\" content=\"no-referrer\">\n")
        .append("<meta name=\"generator\" content=\"Tabor\">\n<title>")
        .append(Markup.text(title))
        .append("</title>\n<style>")
        .append(Furniture.STYLE)
        .append("</style>\n</head>\n");
  }

  @Override
  public @Nullable Void lesson(Page.Lesson block) {
    open(block.part(), block.name(), "lesson");
    out.append("<p class=\"number\" aria-hidden=\"true\">").append(block.number()).append("</p>\n");
    heading(block.part(), block.title());
    if (!block.changed().isEmpty()) {
      out.append("<ul class=\"news\" aria-label=\"What changed\">\n");
      block.changed().forEach(words -> element("li", "", words));
      out.append("</ul>\n");
    }
    facts(block.facts());
    block.prose().forEach(this::prose);
    figure(block.figure());
    out.append("</article>\n");
    return null;
  }

  @Override
  public @Nullable Void chart(Page.Practice block) {
    open(block.part(), block.name(), "practice");
    heading(block.part(), block.title());
    block.prose().forEach(this::prose);
    for (Page.Figure figure : block.others()) {
      element("p", "also", figure.title());
      figure(figure);
    }
    out.append("<div class=\"stage\" aria-hidden=\"true\"></div>\n<ol class=\"rows\">\n");
    block.rows().forEach(this::row);
    out.append("</ol>\n</article>\n");
    return null;
  }

  private void open(int part, String name, String kind) {
    out.append("<article class=\"")
        .append(kind)
        .append("\" id=\"section-")
        .append(Markup.text(name))
        .append("\" data-part=\"")
        .append(part)
        .append("\" aria-labelledby=\"title-")
        .append(part)
        .append("\">\n");
  }

  private void heading(int part, String title) {
    out.append("<h2 id=\"title-")
        .append(part)
        .append("\" dir=\"auto\" lang=\"\">")
        .append(Markup.text(title))
        .append("</h2>\n<button type=\"button\" class=\"play\" id=\"play-")
        .append(part)
        .append("\" aria-labelledby=\"play-")
        .append(part)
        .append(" title-")
        .append(part)
        .append("\">")
        .append(PLAY_ICON)
        .append("<span class=\"word\">Play</span></button>\n");
  }

  private void row(Page.Row row) {
    out.append("<li>");
    element("span", "row", row.words());
    if (!row.rungs().isEmpty()) {
      out.append("<ol class=\"ladder\">\n");
      for (Page.Rung rung : row.rungs()) {
        out.append("<li><button type=\"button\" class=\"rung\" data-first=\"")
            .append(rung.first())
            .append("\" data-last=\"")
            .append(rung.last())
            .append("\"><i class=\"box\"></i>")
            .append(Markup.text(rung.words()))
            .append("<span class=\"done\"></span></button></li>\n");
      }
      out.append("</ol>");
    }
    out.append("</li>\n");
  }

  private void figure(Page.Figure figure) {
    out.append("<figure class=\"score\" data-figure=\"").append(figure.number()).append("\">\n");
    Pictures.Picture narrow = figure.score().narrow();
    drawings(figure.score().wide().svg(), narrow == null ? "" : narrow.svg());
  }

  /** One drawing for every screen, or two of which each screen shows one; ends the figure. */
  private void drawings(String wide, String narrow) {
    out.append(narrow.isEmpty() ? "<div>" : "<div class=\"wide\">").append(wide);
    if (!narrow.isEmpty()) {
      out.append("</div>\n<div class=\"narrow\">").append(narrow);
    }
    out.append("</div>\n</figure>\n");
  }

  private void facts(List<String> facts) {
    if (!facts.isEmpty()) {
      String words = facts.stream().map(Markup::text).collect(Collectors.joining(" · "));
      out.append("<p class=\"facts\">").append(words).append("</p>\n");
    }
  }

  /** Blank lines part paragraphs; other line ends are kept by the style sheet. */
  private void prose(String text) {
    for (String paragraph : Markup.clean(text).strip().split("\n[ \t]*\n\\s*", -1)) {
      element("p", "prose", paragraph);
    }
  }

  /** Foreign text in an element of its own: its direction and language are its own business. */
  private void element(String tag, String kind, String text) {
    out.append('<').append(tag);
    if (!kind.isEmpty()) {
      out.append(" class=\"").append(kind).append('"');
    }
    out.append(" dir=\"auto\" lang=\"\">").append(Markup.text(text));
    out.append("</").append(tag).append(">\n");
  }
}
