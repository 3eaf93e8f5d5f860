package tabor.weave;

import org.jspecify.annotations.Nullable;

/**
 * A block of notation as it stands in a document.
 *
 * @param info the words at its head, the first of them {@code tabor}
 * @param text what stands in it, without the marks of lists and quotations around it
 * @param line where it begins, from 0
 * @param column where it begins on that line, from 0
 * @param offset where its text begins in the document; -1 where marks of lists or quotations stand
 *     between its lines
 */
record FencedBlock(String info, String text, int line, int column, int offset) {
  /**
   * The document with the block's text at its lines, for reports: the document itself, or where
   * other marks stand between the lines, the lines of the block alone at their places.
   */
  Shown in(@Nullable String document) {
    if (offset >= 0 && document != null) {
      return new Shown(document, offset);
    }
    String above = "\n".repeat(line + 1);
    return new Shown(above + text, above.length());
  }

  /**
   * A text with the block in it.
   *
   * @param text the whole
   * @param offset where the block's text begins
   */
  record Shown(String text, int offset) {}
}
