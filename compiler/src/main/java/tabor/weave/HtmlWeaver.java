package tabor.weave;

import java.nio.file.Path;
import java.util.List;
import org.commonmark.Extension;
import org.commonmark.ext.front.matter.YamlFrontMatterVisitor;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.ext.heading.anchor.HeadingAnchorExtension;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Code;
import org.commonmark.node.Heading;
import org.commonmark.node.Link;
import org.commonmark.node.Node;
import org.commonmark.node.Text;
import org.commonmark.renderer.html.HtmlRenderer;
import org.jspecify.annotations.Nullable;
import tabor.emit.html.PagePlayerParts;
import tabor.source.ResourceText;

/** Markdown to complete pages. */
final class HtmlWeaver {
  private static final List<Extension> EXTENSIONS =
      List.of(TablesExtension.create(), HeadingAnchorExtension.create());

  private static final HtmlRenderer RENDERER =
      HtmlRenderer.builder()
          .extensions(EXTENSIONS)
          .nodeRendererFactory(TaborNodeRenderer::new)
          .build();

  private static final String STYLE = ResourceText.of(HtmlWeaver.class, "weave.css");

  private HtmlWeaver() {}

  static Woven weave(Path document, String text, Lessons lessons, Style style) {
    Node tree = MarkdownText.parse(text);
    HtmlNotation notation = new HtmlNotation(document, text, lessons, true);
    notation.replace(tree, text);
    tree.accept(new Links(style));
    String title = title(tree, document);
    return new Woven(page(title, tree, notation.players()), List.of(), notation.problems());
  }

  private static String page(String title, Node tree, @Nullable PagePlayerParts players) {
    StringBuilder out = new StringBuilder(1 << 16);
    out.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
        .append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
        .append("<meta name=\"color-scheme\" content=\"light dark\">\n")
        .append("<meta name=\"generator\" content=\"Tabor\">\n<title>")
        .append(FigureMarkup.text(title))
        .append("</title>\n<style>")
        .append(players == null ? "" : players.style())
        .append(STYLE)
        .append("</style>\n</head>\n<body class=\"woven\">\n")
        .append(players == null ? "" : players.symbols());
    out.append("<main class=\"sheet\">\n");
    RENDERER.render(tree, out);
    out.append("</main>\n");
    out.append(players == null ? "" : players.end());
    return out.append("</body>\n</html>\n").toString();
  }

  /** Front matter's {@code title}, else the first heading, else the file's name. */
  private static String title(Node tree, Path document) {
    YamlFrontMatterVisitor front = new YamlFrontMatterVisitor();
    tree.accept(front);
    List<String> named = front.getData().getOrDefault("title", List.of());
    if (!named.isEmpty() && !named.get(0).isBlank()) {
      return named.get(0).strip();
    }
    StringBuilder heading = new StringBuilder();
    tree.accept(
        new AbstractVisitor() {
          @Override
          public void visit(Heading found) {
            if (heading.isEmpty()) {
              found.accept(new Words(heading));
            }
          }
        });
    Path name = document.getFileName();
    return !heading.isEmpty() ? heading.toString() : name == null ? "Page" : name.toString();
  }

  /** The words of a heading. */
  private static final class Words extends AbstractVisitor {
    private final StringBuilder out;

    Words(StringBuilder out) {
      this.out = out;
    }

    @Override
    public void visit(Heading heading) {
      visitChildren(heading);
    }

    @Override
    public void visit(Text text) {
      out.append(text.getLiteral());
    }

    @Override
    public void visit(Code code) {
      out.append(code.getLiteral());
    }
  }

  /** Links to documents that become pages lead to those pages. */
  private static final class Links extends AbstractVisitor {
    private final Style style;

    Links(Style style) {
      this.style = style;
    }

    @Override
    public void visit(Link link) {
      String to = link.getDestination();
      int end = to.indexOf('#') < 0 ? to.length() : to.indexOf('#');
      String page = to.substring(0, end);
      if (Style.isDocument(page) && style.isPage().test(page)) {
        link.setDestination(Style.pageName(page) + to.substring(end));
      }
      visitChildren(link);
    }
  }
}
