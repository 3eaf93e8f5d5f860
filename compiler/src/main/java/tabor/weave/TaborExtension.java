package tabor.weave;

import java.nio.file.Path;
import org.commonmark.node.Node;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.html.HtmlRenderer;

/**
 * Notation in documents of a program's own: an extension of commonmark-java for its parser and its
 * HTML renderer. Fenced blocks {@code tabor} and inline code {@code tabor: …} become SVG elements
 * in the page's colours; what cannot be shown becomes a box that says why. A player needs a page of
 * its own, so {@code as=player} is shown as a picture.
 *
 * <pre>{@code
 * List<Extension> extensions = List.of(TaborExtension.create());
 * Node document = Parser.builder().extensions(extensions).build().parse(markdown);
 * String html = HtmlRenderer.builder().extensions(extensions).build().render(document);
 * }</pre>
 *
 * <p>Lines are named in boxes where the parser includes source spans.
 */
public final class TaborExtension
    implements Parser.ParserExtension, HtmlRenderer.HtmlRendererExtension {
  private final Path document;
  private final Lessons lessons;

  private TaborExtension(Path document, Lessons lessons) {
    this.document = document;
    this.lessons = lessons;
  }

  /** For documents whose notation stands in them. */
  public static TaborExtension create() {
    return create(Path.of("document.md"), Lessons.NONE);
  }

  /**
   * For documents that show lessons of other files.
   *
   * @param document what the document is called in problems, and what names are relative to
   * @param lessons finds those files
   */
  public static TaborExtension create(Path document, Lessons lessons) {
    return new TaborExtension(document, lessons);
  }

  @Override
  public void extend(Parser.Builder parser) {
    parser.postProcessor(this::process);
  }

  private Node process(Node tree) {
    new HtmlNotation(document, null, lessons, false).replace(tree, "");
    return tree;
  }

  @Override
  public void extend(HtmlRenderer.Builder renderer) {
    renderer.nodeRendererFactory(TaborNodeRenderer::new);
  }
}
