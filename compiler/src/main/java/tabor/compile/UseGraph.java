package tabor.compile;

import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tabor.resolve.Header;

/** A file and all that it uses, each read once, with their kits. */
final class UseGraph {
  /** A file of the graph. */
  static final class Source {
    final SourceDocument document;
    final boolean tooLong;
    final List<Link> links = new ArrayList<>();
    private @Nullable FileKits kits;

    private Source(SourceDocument document, boolean tooLong) {
      this.document = document;
      this.tooLong = tooLong;
    }

    FileKits kits() {
      return Objects.requireNonNull(kits);
    }
  }

  /**
   * A {@code use} line.
   *
   * @param use what it names
   * @param target the file; null if it could not be had
   * @param trouble why not; null for a circle
   */
  record Link(Header.Named use, @Nullable Source target, Loader.@Nullable Trouble trouble) {}

  private final Loader loader;
  private final Function<Path, SourceDocument> documents;
  private final Map<Path, Source> sources = new HashMap<>();
  private final Set<Path> inWork = new HashSet<>();
  private final List<Source> order = new ArrayList<>();

  private UseGraph(Loader loader, Function<Path, SourceDocument> documents) {
    this.loader = loader;
    this.documents = documents;
  }

  /** Where the walk stands in a file. */
  private static final class Step {
    final Source source;
    int next;

    Step(Source source) {
      this.source = source;
    }
  }

  /** All files that a file uses, and itself, those in use before those that use them. */
  static List<Source> of(
      Path path, String text, Loader loader, Function<Path, SourceDocument> documents) {
    UseGraph graph = new UseGraph(loader, documents);
    Deque<Step> steps = new ArrayDeque<>();
    steps.push(new Step(graph.read(path, text)));
    while (!steps.isEmpty()) {
      Step step = steps.peek();
      List<Header.Named> uses = step.source.document.header().uses();
      if (step.next < uses.size()) {
        Source fresh = graph.link(step.source, uses.get(step.next++));
        if (fresh != null) {
          steps.push(new Step(fresh));
        }
      } else {
        graph.finish(step.source);
        steps.pop();
      }
    }
    return graph.order;
  }

  private Source read(Path path, String text) {
    SourceDocument document = documents.apply(path);
    boolean tooLong = text.length() > Compiler.MOST_CHARACTERS;
    document.update(tooLong ? "" : text);
    Source source = new Source(document, tooLong);
    sources.put(path, source);
    inWork.add(path);
    return source;
  }

  /** Follows a line; gives the file that it names if that was not read before. */
  private @Nullable Source link(Source from, Header.Named use) {
    Loader.Found found = loader.load(from.document.path, use.name());
    Source known = sources.get(found.path());
    String text = found.text();
    if (text == null) {
      from.links.add(new Link(use, null, found.trouble()));
      return null;
    }
    if (known != null) {
      from.links.add(new Link(use, inWork.contains(found.path()) ? null : known, null));
      return null;
    }
    Source source = read(found.path(), text);
    from.links.add(new Link(use, source, null));
    return source;
  }

  private void finish(Source source) {
    List<FileKits> used = new ArrayList<>();
    for (Link link : source.links) {
      if (link.target() != null) {
        used.add(link.target().kits());
      }
    }
    source.kits = new FileKits(source.document.nodes(), used);
    inWork.remove(source.document.path);
    order.add(source);
  }
}
