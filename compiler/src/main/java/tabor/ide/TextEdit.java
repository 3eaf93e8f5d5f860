package tabor.ide;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import tabor.source.Span;

/**
 * A replacement in a file.
 *
 * @param span offsets in the file
 * @param text what comes there
 */
public record TextEdit(Span span, String text) {
  /** The edits in the order of the file; none may overlap another. */
  static List<TextEdit> inOrder(List<TextEdit> edits) {
    List<TextEdit> ordered = new ArrayList<>(edits);
    ordered.sort(Comparator.comparingInt(edit -> edit.span().start()));
    return List.copyOf(ordered);
  }

  /** The text with all edits made; they are in order and do not overlap. */
  public static String apply(List<TextEdit> edits, String text) {
    StringBuilder made = new StringBuilder();
    int at = 0;
    for (TextEdit edit : edits) {
      made.append(text, at, edit.span().start()).append(edit.text());
      at = edit.span().end();
    }
    return made.append(text, at, text.length()).toString();
  }

  /** True if an edit of the one list touches an edit of the other. */
  static boolean overlap(List<TextEdit> some, List<TextEdit> others) {
    for (TextEdit one : some) {
      for (TextEdit other : others) {
        if (one.span().start() <= other.span().end() && other.span().start() <= one.span().end()) {
          return true;
        }
      }
    }
    return false;
  }
}
