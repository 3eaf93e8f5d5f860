package tabor.emit.html;

import java.util.List;
import tabor.groove.Groove;

/**
 * Where the page gets its drawings from. Each is one {@code <svg>} element, well formed, without
 * script, style attributes or outside references, and with ids that no other drawing of the lesson
 * has.
 */
public interface Pictures {
  /**
   * The notation of a section. For the moving mark, a group with {@code data-top} and {@code
   * data-bottom} holds each system, and within it elements with {@code data-at} (whole notes from the
   * start of the section, as a decimal) and {@code data-x} say where its places stand; {@code
   * data-end} marks the end of a system. A drawing without them is shown without a mark.
   */
  String score(Groove groove);

  /** The key of the note heads that these sections use; empty for none. */
  String key(List<Groove> grooves);
}
