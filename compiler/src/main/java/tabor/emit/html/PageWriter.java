package tabor.emit.html;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.emit.engrave.Box;
import tabor.emit.engrave.Drawing;
import tabor.emit.engrave.Mark;
import tabor.emit.engrave.Sign;
import tabor.kit.Limb;
import tabor.lists.Lists;
import tabor.words.Words;

/**
 * Writes a page as one HTML file. Its Content-Security-Policy allows exactly the one script and the
 * one style sheet that stand in it, by their hashes, and nothing else: no network, no frame, no
 * form.
 *
 * <p>The page is in English; every text of the lesson's stands in an element of its own, whose
 * language and direction are not ours to say. Sections carry their own names as ids, so that a link
 * can point at them; all other ids begin with a capital letter, which no section's name does.
 */
public final class PageWriter {
  private static final String PLAY_ICON =
      "<svg class=\"icon\" viewBox=\"0 0 16 16\" aria-hidden=\"true\">"
          + "<path class=\"go\" d=\"M3 1.5 14 8 3 14.5Z\"/>"
          + "<path class=\"halt\" d=\"M2.5 2.5h11v11h-11Z\"/></svg>";

  /** A hold sign before its words. */
  private static final String HOLD = hold();

  private final StringBuilder out = new StringBuilder(1 << 17);

  private final Words words;

  /** The drawings, and beside them what the script plays. */
  private final DrawingsMarkup drawings;

  private PageWriter(Page page) {
    this.words = Words.of(page.language());
    this.drawings = DrawingsMarkup.of(drawings(page), () -> PageJson.of(page.data(), words));
  }

  /** The text of the file, lines ending in a line feed, to be stored as UTF-8. */
  public static String write(Page page) {
    PageWriter writer = new PageWriter(page);
    writer.page(page);
    return writer.out.toString();
  }

  /**
   * The sections of a page, to stand in a page that somebody else writes. Their names get {@code
   * play-} before them, and where two are called alike a number behind, so that no id is there
   * twice.
   */
  public static PagePlayerParts players(Page page) {
    Page named = page.namedForPlayers();
    return new PageWriter(named).pieces(named);
  }

  private PagePlayerParts pieces(Page page) {
    List<String> articles = new ArrayList<>();
    for (Page.Block block : page.blocks()) {
      out.setLength(0);
      block(block);
      articles.add(out.toString());
    }
    out.setLength(0);
    out.append(Furniture.desk(words, PLAY_ICON, List.of(Limb.values())));
    script();
    return new PagePlayerParts(Furniture.STYLE, drawings.shapes(), articles, out.toString());
  }

  private void page(Page page) {
    String script = "script-src '" + Furniture.hash(Furniture.SCRIPT) + "'; ";
    out.append(Furniture.head(page.title(), words, script, Furniture.STYLE));
    out.append("<body>\n").append(drawings.shapes());
    out.append("<div class=\"sheet\">\n<header class=\"head\">\n");
    element("h1", "", page.title());
    String by = page.by();
    if (by != null && !by.isBlank()) {
      element("p", "by", by);
    }
    facts(page.facts());
    List<String> head = page.head();
    out.append("<p class=\"given\">")
        .append(Markup.text(words.text("page.name")))
        .append(" <span>")
        .append(head.isEmpty() ? "" : LibraryMarkup.foreign(head.get(0)))
        .append("</span> ")
        .append(Markup.text(words.text("page.date")))
        .append(" <span></span></p>\n</header>\n");
    for (int i = 0; i < head.size(); i++) {
      if (i == 0) {
        element("p", "reader", head.get(0));
      } else {
        prose(head.get(i));
      }
    }
    if (!page.caution().isBlank()) {
      element("p", "caution", page.caution());
    }
    key(page.key());
    out.append("<main>\n");
    page.blocks().forEach(this::block);
    out.append("</main>\n<footer>\n").append(Furniture.keys(words)).append("</footer>\n</div>\n");
    if (!page.blocks().isEmpty()) {
      out.append(Furniture.desk(words, PLAY_ICON, List.of(Limb.values())));
    }
    script();
    out.append("</body>\n</html>\n");
  }

  private void script() {
    out.append("<script type=\"application/json\" id=\"Data\">")
        .append(drawings.beside())
        .append("</script>\n<script>")
        .append(Furniture.SCRIPT)
        .append("</script>\n");
  }

  private static List<Drawing> drawings(Page page) {
    List<Drawing> all = new ArrayList<>();
    add(all, page.key().wide());
    add(all, page.key().narrow());
    for (Page.Figure figure : page.data().figures()) {
      all.addAll(figure.score().drawings());
    }
    return all;
  }

  private static void add(List<Drawing> all, @Nullable Drawing drawing) {
    if (drawing != null) {
      all.add(drawing);
    }
  }

  private void block(Page.Block block) {
    if (block instanceof Page.Lesson lesson) {
      lesson(lesson);
    } else {
      chart((Page.Practice) block);
    }
  }

  private void lesson(Page.Lesson block) {
    // What is one line even where it is narrow is printed two to a row.
    Pictures.Score score = block.figure().score();
    Pictures.Picture narrow = score.narrow() == null ? score.wide() : score.narrow();
    open(block.part(), block.name(), narrow.systems().size() == 1 ? "lesson cell" : "lesson");
    boolean within = block.number().indexOf('.') > 0;
    out.append(within ? "<p class=\"number within\"" : "<p class=\"number\"");
    out.append(" aria-hidden=\"true\">").append(block.number()).append("</p>\n");
    heading(block.part(), block.number() + (within ? " " : ". "), block.title());
    if (!block.changed().isEmpty()) {
      out.append("<ul class=\"news\" aria-label=\"")
          .append(Markup.text(words.text("web.changed")))
          .append("\">\n");
      block
          .changed()
          .forEach(said -> out.append("<li>").append(Markup.text(said)).append("</li>\n"));
      out.append("</ul>\n");
    }
    facts(block.facts());
    block.prose().forEach(this::prose);
    figure(block.figure());
    out.append("</article>\n");
  }

  private void chart(Page.Practice block) {
    open(block.part(), block.name(), "practice");
    heading(block.part(), "", block.title());
    block.prose().forEach(this::prose);
    for (Page.Figure figure : block.others()) {
      element("p", "also", figure.title());
      figure(figure);
    }
    out.append("<div class=\"stage\" aria-hidden=\"true\"></div>\n<ol class=\"rows\">\n");
    block.rows().forEach(row -> row(block.part(), row));
    out.append("</ol>\n</article>\n");
  }

  private void open(int part, String name, String kind) {
    out.append("<article class=\"")
        .append(kind)
        .append("\" id=\"")
        .append(Markup.text(name))
        .append("\" data-part=\"")
        .append(part)
        .append("\" aria-labelledby=\"Title")
        .append(part)
        .append("\">\n");
  }

  private void heading(int part, String number, String title) {
    out.append("<h2 id=\"Title").append(part).append("\">");
    if (!number.isEmpty()) {
      out.append("<span class=\"unseen\">").append(number).append("</span>");
    }
    out.append(LibraryMarkup.foreign(title))
        .append("</h2>\n<button type=\"button\" class=\"play\" id=\"Play")
        .append(part)
        .append("\" aria-labelledby=\"Play")
        .append(part)
        .append(" Title")
        .append(part)
        .append("\">")
        .append(PLAY_ICON)
        .append("<span class=\"word\">")
        .append(Markup.text(words.text("desk.play")))
        .append("</span></button>\n");
  }

  private void row(int part, Page.Row row) {
    out.append("<li><span class=\"row\">");
    if (!row.mark().isEmpty()) {
      out.append("<b class=\"mark\">").append(LibraryMarkup.foreign(row.mark())).append("</b> ");
    }
    out.append(row.holds() ? HOLD : "");
    out.append(String.join(" · ", Lists.map(row.titles(), LibraryMarkup::foreign)));
    out.append(row.titles().isEmpty() ? "" : ", ").append(Markup.text(row.words()));
    if (!row.cue().isEmpty()) {
      out.append(" <i class=\"said\">").append(LibraryMarkup.foreign(row.cue())).append("</i>");
    }
    out.append("</span>\n");
    if (!row.rungs().isEmpty()) {
      out.append("<ol class=\"ladder\">\n");
      for (Page.Rung rung : row.rungs()) {
        out.append("<li><button type=\"button\" class=\"rung\" data-of=\"")
            .append(part)
            .append("\" data-first=\"")
            .append(rung.first())
            .append("\" data-last=\"")
            .append(rung.last())
            .append("\" data-count=\"")
            .append(rung.count())
            .append("\"><i class=\"box\"></i>")
            .append(Markup.text(rung.words()))
            .append("<span class=\"done\"></span></button></li>\n");
      }
      out.append("</ol>");
    }
    out.append("</li>\n");
  }

  private static String hold() {
    Sign sign = Sign.of("fermataAbove");
    Box box = sign.box();
    Mark glyph = new Mark.Glyph(sign, -box.left(), -box.top(), 1);
    Drawing drawing = new Drawing(box.width(), box.height(), "", "", List.of(glyph));
    SymbolTable none = new SymbolTable();
    return DrawingMarkup.of(none.outlines(drawing), none).strip() + " ";
  }

  private void figure(Page.Figure figure) {
    out.append("<figure class=\"score\" data-figure=\"").append(figure.number()).append("\">\n");
    Pictures.Picture narrow = figure.score().narrow();
    out.append(
            drawings.pair(
                figure.score().wide().drawings(), narrow == null ? List.of() : narrow.drawings()))
        .append("<ol class=\"unseen\" aria-label=\"")
        .append(Markup.text(words.text("web.in-words")))
        .append("\">\n");
    figure.bars().forEach(bar -> out.append("<li>").append(Markup.text(bar)).append("</li>\n"));
    out.append("</ol>\n</figure>\n");
  }

  /** The key, which a small window folds away; its words stand beside it for a screen reader. */
  private void key(Pictures.Key key) {
    Drawing wide = key.wide();
    Drawing narrow = key.narrow();
    if (wide == null) {
      return;
    }
    out.append("<details class=\"key\" id=\"Key\" open>\n<summary>")
        .append(Markup.text(words.text("web.the-notes")))
        .append("</summary>\n");
    out.append(drawings.pair(List.of(wide), narrow == null ? List.of() : List.of(narrow)))
        .append("<p class=\"unseen\">")
        .append(Markup.text(wide.words()));
    out.append("</p>\n</details>\n");
  }

  private void facts(List<String> facts) {
    if (!facts.isEmpty()) {
      String said = String.join(" · ", Lists.map(facts, Markup::text));
      out.append("<p class=\"facts\">").append(said).append("</p>\n");
    }
  }

  /** Blank lines part paragraphs; other line ends are kept by the style sheet. */
  private void prose(String text) {
    String clean = Markup.clean(text).strip();
    boolean line = clean.indexOf('\n') < 0;
    for (String one : line ? new String[] {clean} : clean.split("\n[ \t]*\n\\s*", -1)) {
      element("p", "prose", one);
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
