package tabor.weave;

import org.commonmark.node.CustomBlock;
import org.commonmark.node.CustomNode;

/** Notation in a CommonMark tree, as the HTML that shows it. */
final class TaborNode {
  private TaborNode() {}

  /** In the place of a fenced block. */
  static final class OfBlock extends CustomBlock {
    private final String html;

    OfBlock(String html) {
      this.html = html;
    }

    String html() {
      return html;
    }
  }

  /** In the place of inline code. */
  static final class OfLine extends CustomNode {
    private final String html;

    OfLine(String html) {
      this.html = html;
    }

    String html() {
      return html;
    }
  }
}
