package tabor.ide;

import java.util.List;
import tabor.source.Span;

/**
 * A change that fixes something, as a person chooses it.
 *
 * @param title what it does, in a few words
 * @param edits the replacements, in order
 * @param lossless true if it only spells a word otherwise or sets quotes and signs: nothing that
 *     was written is gone, no stroke is moved. Only such fixes are made without being looked at
 */
public record QuickFix(String title, List<TextEdit> edits, boolean lossless) {
  /** Puts the edits in order. */
  public QuickFix {
    edits = TextEdit.inOrder(edits);
  }

  static QuickFix of(String title, Span span, String text) {
    return new QuickFix(title, List.of(new TextEdit(span, text)), false);
  }

  /**
   * Where a span of the old text lies in the new one; what is replaced lies with its replacement.
   */
  Span image(Span old) {
    return new Span(image(old.start(), false), image(old.end(), true));
  }

  private int image(int offset, boolean end) {
    int shift = 0;
    for (TextEdit edit : edits) {
      Span span = edit.span();
      if (span.start() > offset || (span.start() == offset && span.length() > 0 && end)) {
        break;
      }
      if (span.end() > offset || (span.start() == offset && span.length() == 0)) {
        return span.start() + shift + (end ? edit.text().length() : 0);
      }
      shift += edit.text().length() - span.length();
    }
    return offset + shift;
  }
}
