package tabor.parse;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Diagnostic;
import tabor.source.Passage;
import tabor.source.Span;
import tabor.syntax.Heading;
import tabor.syntax.Line;
import tabor.syntax.SectionSyntax;
import tabor.syntax.Statement;

/**
 * Text to tree. A text falls into passages by its section headings; each passage is read line by
 * line, so that a broken line costs one diagnostic and its neighbours nothing. A reader remembers
 * lines that it has read, within bounds, and hands out the same tree for an equal line. One reader
 * serves one thread at a time.
 */
public final class Reader {
  private final LineParser parser = new LineParser();
  private final LineMemory memory = new LineMemory();

  /** A reader that remembers nothing yet. */
  public Reader() {}

  /**
   * The passages of a text: the header, which may be empty, then one for each section. Their texts
   * one after another are the text.
   */
  public static List<Passage> passages(String text) {
    return Passages.of(text);
  }

  /**
   * The lines of a passage, line ends included, one after another without gaps. A text in triple
   * quotes makes one line of several.
   */
  public static List<Span> lines(Passage passage) {
    List<Span> lines = new ArrayList<>();
    LineSplitter splitter = new LineSplitter(passage.text());
    while (splitter.advance()) {
      lines.add(new Span(splitter.start(), splitter.next()));
    }
    return lines;
  }

  /** Reads the header: a passage that no heading opens. Also reads a section. Never throws. */
  public SectionSyntax read(Passage passage) {
    String text = passage.text();
    List<Line> lines = new ArrayList<>();
    List<Diagnostic> problems = new ArrayList<>();
    Line heading = null;
    Kind kind = Kind.HEADER;
    LineSplitter splitter = new LineSplitter(text);
    boolean first = true;
    while (splitter.advance()) {
      int start = splitter.start();
      int end = splitter.end();
      int word = Lines.skipBlanks(text, start, end);
      if (word == end || text.charAt(word) == '#') {
        first = false;
        continue;
      }
      if (first && Passages.heading(text, start, end)) {
        heading = heading(passage, start, text.substring(start, end), problems);
        kind = Kind.of(BrokenLine.firstWord(text.substring(word, end)));
      } else {
        Line line = line(passage, start, text.substring(start, end), kind, problems);
        if (line != null) {
          lines.add(line);
        }
      }
      first = false;
    }
    return new SectionSyntax(passage, heading, lines, problems);
  }

  private Line heading(Passage passage, int start, String text, List<Diagnostic> problems) {
    LineParser.Result result = parse(text, null);
    if (result.statement() instanceof Heading good) {
      return new Line(passage, start, good);
    }
    if (result.problem() != null) {
      problems.add(result.problem().at(passage, start));
    }
    return new Line(passage, start, BrokenLine.heading(text));
  }

  private @Nullable Line line(
      Passage passage, int start, String text, Kind kind, List<Diagnostic> problems) {
    Statement known = memory.get(text);
    if (known == null) {
      LineParser.Result result = parse(text, kind);
      if (result.statement() == null) {
        if (result.problem() != null) {
          problems.add(result.problem().at(passage, start));
        }
        return new Line(passage, start, BrokenLine.other(text));
      }
      known = result.statement();
      memory.put(text, known);
    }
    Problem misplaced = kind.refuse(known, text);
    if (misplaced != null) {
      problems.add(misplaced.at(passage, start));
      return null;
    }
    return new Line(passage, start, known);
  }

  /** A mistake of ours must not reach a person as an exception; in tests it is to be loud. */
  private LineParser.Result parse(String text, @Nullable Kind kind) {
    try {
      return parser.read(text, kind);
    } catch (RuntimeException | StackOverflowError mistake) {
      if (Reader.class.desiredAssertionStatus()) {
        throw mistake;
      }
      Span span = BrokenLine.other(text).span();
      return new LineParser.Result(
          null, Problem.syntax(span, "this line cannot be read", "Write it more simply"));
    }
  }
}
