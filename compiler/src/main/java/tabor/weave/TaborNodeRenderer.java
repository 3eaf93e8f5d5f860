package tabor.weave;

import java.util.Set;
import org.commonmark.node.Node;
import org.commonmark.renderer.NodeRenderer;
import org.commonmark.renderer.html.HtmlNodeRendererContext;
import org.commonmark.renderer.html.HtmlWriter;

/** Writes {@link TaborNode}s. */
final class TaborNodeRenderer implements NodeRenderer {
  private final HtmlWriter writer;

  TaborNodeRenderer(HtmlNodeRendererContext context) {
    this.writer = context.getWriter();
  }

  @Override
  public Set<Class<? extends Node>> getNodeTypes() {
    return Set.of(TaborNode.OfBlock.class, TaborNode.OfLine.class);
  }

  @Override
  public void render(Node node) {
    if (node instanceof TaborNode.OfBlock block) {
      writer.line();
      writer.raw(block.html());
      writer.line();
    } else if (node instanceof TaborNode.OfLine line) {
      writer.raw(line.html());
    }
  }
}
