package tabor.lsp;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.lsp4j.Position;

/**
 * A text with the cursor marked by {@code §}.
 *
 * @param text without the marks
 * @param offsets of the marks, in order
 */
record Marked(String text, List<Integer> offsets) {
  /** Reads a marked text. */
  static Marked of(String marked) {
    StringBuilder text = new StringBuilder();
    List<Integer> offsets = new ArrayList<>();
    for (int i = 0; i < marked.length(); i++) {
      char c = marked.charAt(i);
      if (c == '§') {
        offsets.add(text.length());
      } else {
        text.append(c);
      }
    }
    return new Marked(text.toString(), offsets);
  }

  /** The position of the first mark. */
  Position cursor() {
    return Editor.position(text, offsets.get(0));
  }
}
