package tabor.compile;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tabor.parse.Reader;
import tabor.resolve.Header;
import tabor.resolve.HeaderReader;
import tabor.resolve.SectionDefaults;
import tabor.source.Passage;
import tabor.syntax.SectionSyntax;

/**
 * A file between two compilations. A new text is cut into passages; those that stand unchanged at
 * its beginning and end stay the same objects, with all that was worked out for them.
 */
final class SourceDocument {
  /** Most ways to be handed settings that are remembered. */
  private static final int MOST_EDITIONS = 8;

  final Path path;
  private final Reader reader = new Reader();
  private String text = "";
  private @Nullable SectionSyntax headerSyntax;
  private @Nullable Header header;
  private List<SectionNode> nodes = List.of();
  private final List<Edition> editions = new ArrayList<>();

  /** Counts the changes, so that each answer knows which text it is of. */
  private int revision;

  SourceDocument(Path path) {
    this.path = path;
  }

  /** The same as it is now, going its own way from here. */
  SourceDocument copy() {
    SourceDocument copy = new SourceDocument(path);
    copy.text = text;
    copy.headerSyntax = headerSyntax;
    copy.header = header;
    copy.revision = revision;
    Map<SectionNode, SectionNode> copies = new IdentityHashMap<>(nodes.size() * 2);
    List<SectionNode> own = new ArrayList<>(nodes.size());
    for (SectionNode node : nodes) {
      SectionNode other = node.copy();
      copies.put(node, other);
      own.add(other);
    }
    copy.nodes = own;
    editions.forEach(edition -> copy.editions.add(edition.copy(copy, copies)));
    return copy;
  }

  int revision() {
    return revision;
  }

  /** Its sections, in order. */
  List<SectionNode> nodes() {
    return nodes;
  }

  /**
   * What it comes to by itself or in use.
   *
   * @param handed what it is handed by the file that uses it
   * @param checked true if it is checked itself: then names that nobody uses are looked for
   */
  Edition edition(SectionDefaults handed, boolean checked) {
    for (int i = 0; i < editions.size(); i++) {
      Edition edition = editions.get(i);
      if (edition.checked() == checked && edition.handed().equals(handed)) {
        editions.add(editions.remove(i));
        return edition;
      }
    }
    if (editions.size() == MOST_EDITIONS) {
      editions.remove(0);
    }
    Edition edition = new Edition(this, handed, checked);
    editions.add(edition);
    return edition;
  }

  /** Number of characters of the text. */
  int length() {
    return text.length();
  }

  /** Takes a new text. */
  void update(String newText) {
    if (headerSyntax != null && newText.equals(text)) {
      return;
    }
    revision++;
    SectionSyntax oldHeader = headerSyntax;
    ChangedStretch stretch =
        oldHeader == null ? null : ChangedStretch.of(oldHeader.passage(), nodes, newText);
    text = newText;
    if (stretch == null) {
      List<Passage> passages = Reader.passages(newText);
      Passage first = passages.get(0);
      if (oldHeader == null || !oldHeader.passage().text().equals(first.text())) {
        SectionSyntax read = reader.read(first);
        headerSyntax = read;
        header = HeaderReader.read(read);
      }
      stretch = new ChangedStretch(0, 0, passages.subList(1, passages.size()));
    }
    replace(stretch);
  }

  /** Puts new passages in the place of old ones, and keeps those that are the same. */
  private void replace(ChangedStretch stretch) {
    List<Passage> passages = stretch.passages();
    int count = passages.size();
    int from = stretch.head();
    int to = nodes.size() - stretch.tail();
    int head = 0;
    while (head < count && head < to - from && same(nodes.get(from + head), passages.get(head))) {
      head++;
    }
    int tail = 0;
    while (tail < count - head
        && tail < to - from - head
        && same(nodes.get(to - 1 - tail), passages.get(count - 1 - tail))) {
      tail++;
    }
    List<SectionNode> next = new ArrayList<>(from + count + stretch.tail());
    next.addAll(nodes.subList(0, from + head));
    for (int i = head; i < count - tail; i++) {
      next.add(new SectionNode(reader.read(passages.get(i))));
    }
    next.addAll(nodes.subList(to - tail, nodes.size()));
    nodes = next;
  }

  private static boolean same(SectionNode node, Passage passage) {
    return node.passage.text().equals(passage.text());
  }

  SectionSyntax headerSyntax() {
    SectionSyntax syntax = headerSyntax;
    if (syntax == null) {
      throw new IllegalStateException("no text yet");
    }
    return syntax;
  }

  Header header() {
    Header read = header;
    if (read == null) {
      throw new IllegalStateException("no text yet");
    }
    return read;
  }
}
