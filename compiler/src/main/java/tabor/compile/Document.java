package tabor.compile;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.parse.Reader;
import tabor.resolve.Header;
import tabor.resolve.HeaderReader;
import tabor.resolve.Options;
import tabor.source.Passage;
import tabor.syntax.SectionSyntax;

/**
 * A file between two compilations. A new text is cut into passages; those that stand unchanged at
 * its beginning and end stay the same objects, with all that was worked out for them.
 */
final class Document {
  final Path path;
  private final Reader reader = new Reader();
  private String text = "";
  private @Nullable SectionSyntax headerSyntax;
  private @Nullable Header header;
  List<Node> nodes = List.of();
  @Nullable Options options;

  /** Counts the changes, so that each answer knows which text it is of. */
  int revision;

  /** What the file comes to where it is checked itself. */
  final Answer checked = new Answer();

  /** What it comes to where another file uses it: names that nobody uses are not looked for. */
  final Answer inUse = new Answer();

  /** A result and what it rests on. */
  static final class Answer {
    @Nullable Result result;
    int revision = -1;
    List<Object> used = List.of();
  }

  Document(Path path) {
    this.path = path;
  }

  String text() {
    return text;
  }

  /** Takes a new text; true if it differs from the one before. */
  boolean update(String newText) {
    if (headerSyntax != null && newText.equals(text)) {
      return false;
    }
    SectionSyntax oldHeader = headerSyntax;
    Stretch stretch = oldHeader == null ? null : Stretch.of(oldHeader.passage(), nodes, newText);
    text = newText;
    if (stretch == null) {
      List<Passage> passages = Reader.passages(newText);
      Passage first = passages.get(0);
      if (oldHeader == null || !oldHeader.passage().text().equals(first.text())) {
        SectionSyntax read = reader.read(first);
        headerSyntax = read;
        header = HeaderReader.read(read);
      }
      stretch = new Stretch(0, 0, passages.subList(1, passages.size()));
    }
    replace(stretch);
    return true;
  }

  /** Puts new passages in the place of old ones, and keeps those that are the same. */
  private void replace(Stretch stretch) {
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
    List<Node> next = new ArrayList<>(from + count + stretch.tail());
    next.addAll(nodes.subList(0, from + head));
    for (int i = head; i < count - tail; i++) {
      next.add(new Node(reader.read(passages.get(i))));
    }
    next.addAll(nodes.subList(to - tail, nodes.size()));
    nodes = next;
  }

  private static boolean same(Node node, Passage passage) {
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
