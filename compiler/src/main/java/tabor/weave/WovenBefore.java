package tabor.weave;

import org.commonmark.node.Image;
import org.commonmark.node.Link;
import org.commonmark.node.Node;
import org.commonmark.node.Paragraph;
import org.jspecify.annotations.Nullable;

/** Knows the paragraphs that weaving in place put below a block earlier. */
final class WovenBefore {
  private WovenBefore() {}

  /** True for a paragraph that begins with a picture, or a link to a practice page, of ours. */
  static boolean isOurs(@Nullable Node node) {
    if (!(node instanceof Paragraph)) {
      return false;
    }
    Node first = node.getFirstChild();
    String to =
        first instanceof Image image
            ? image.getDestination()
            : first instanceof Link link ? link.getDestination() : "";
    return !to.contains(":") && Names.isOurs(to.substring(to.lastIndexOf('/') + 1));
  }

  /** Takes away those that follow a block: what takes their place is made anew. */
  static void remove(Node block) {
    for (Node next = block.getNext(); next != null && isOurs(next); next = block.getNext()) {
      next.unlink();
    }
  }
}
