package tabor.compile;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.lists.Lists;
import tabor.parse.Reader;
import tabor.source.Passage;

/**
 * The part of a file that an edit touched, cut into passages again. What stands before and behind
 * it is compared but not read: in a long file that is nearly all of it.
 *
 * @param head how many sections at the beginning are as they were
 * @param tail how many at the end
 * @param passages the sections between them now
 */
record ChangedStretch(int head, int tail, List<Passage> passages) {
  private static final String TRIPLE = "\"\"\"";

  /**
   * Looks for the part that changed; null where the whole text has to be cut anew, since the header
   * changed or a text in triple quotes may reach over section headings.
   */
  static @Nullable ChangedStretch of(Passage header, List<SectionNode> nodes, String text) {
    if (!text.startsWith(header.text())) {
      return null;
    }
    int count = nodes.size();
    int from = header.text().length();
    int head = 0;
    while (head < count && text.startsWith(nodes.get(head).passage.text(), from)) {
      from += nodes.get(head++).passage.text().length();
    }
    int to = text.length();
    int tail = 0;
    while (tail < count - head) {
      String last = nodes.get(count - 1 - tail).passage.text();
      int start = to - last.length();
      if (start < from || !text.startsWith(last, start)) {
        break;
      }
      to = start;
      tail++;
    }
    // An edit at a border may join or part what stands on its two sides.
    if (head > 0) {
      from -= nodes.get(--head).passage.text().length();
    } else {
      from = 0;
    }
    if (tail > 0) {
      to += nodes.get(count - tail--).passage.text().length();
    }
    String stretch = text.substring(from, to);
    if (stretch.contains(TRIPLE) || hadTriple(nodes.subList(head, count - tail))) {
      return null;
    }
    List<Passage> passages = Reader.passages(stretch);
    if (Math.max(count, head + tail + passages.size() - 1) >= Reader.MOST_SECTIONS) {
      return null;
    }
    String before = from == 0 ? header.text() : "";
    return passages.get(0).text().equals(before)
        ? new ChangedStretch(head, tail, passages.subList(1, passages.size()))
        : null;
  }

  private static boolean hadTriple(List<SectionNode> nodes) {
    return Lists.any(nodes, node -> node.passage.text().contains(TRIPLE));
  }
}
