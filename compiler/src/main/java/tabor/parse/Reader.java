package tabor.parse;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.source.Passage;
import tabor.source.Span;
import tabor.syntax.Line;
import tabor.syntax.SectionKind;
import tabor.syntax.SectionSyntax;
import tabor.syntax.Statement;
import tabor.syntax.StatementRow;

/**
 * Text to tree. A text falls into passages by its section headings; each passage is read line by
 * line, so that a broken line costs one diagnostic and its neighbours nothing. A reader remembers
 * lines that it has read, within bounds, and hands out the same tree for an equal line. One reader
 * serves one thread at a time.
 */
public final class Reader {
  private final LineParser parser = new LineParser();
  private final LineMemory memory;

  /** Most characters of a line, line ends within its texts counted; more are {@code too-long}. */
  static final int MOST_IN_A_LINE = 1 << 16;

  /** Most lines of a passage of which it is told what is wrong with them. */
  static final int MOST_BROKEN = 1000;

  /** Most sections of a file; the rest of its text is not read. */
  public static final int MOST_SECTIONS = Passages.MOST;

  /** A reader that remembers nothing yet. */
  public Reader() {
    this(new LineMemory());
  }

  private Reader(LineMemory memory) {
    this.memory = memory;
  }

  /**
   * A reader for several texts that have most of their lines in common, all held at the same time:
   * it remembers every line, however many there are.
   */
  public static Reader ofSeveralTexts() {
    return new Reader(new LineMemory(Integer.MAX_VALUE));
  }

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

  /** What the table of statements says of a line; empty if it is no statement. */
  public static Optional<StatementRow> row(String line) {
    return Optional.ofNullable(new LineParser().read(line, SectionKind.HEADER, false).row());
  }

  /** Reads the header: a passage that no heading opens. Also reads a section. Never throws. */
  public SectionSyntax read(Passage passage) {
    String text = passage.text();
    List<Line> lines = new ArrayList<>();
    List<Diagnostic> problems = new ArrayList<>();
    Line heading = null;
    SectionKind kind = SectionKind.HEADER;
    LineSplitter splitter = new LineSplitter(text);
    SyntaxProblem stop = null;
    boolean first = true;
    while (splitter.advance()) {
      int start = splitter.start();
      int end = splitter.end();
      int word = Delimiters.skipBlanks(text, start, end);
      if (word == end || text.charAt(word) == '#') {
        first = false;
        continue;
      }
      Optional<SectionKind> opened = first ? Passages.heading(text, start, end) : Optional.empty();
      if (opened.isPresent()) {
        kind = opened.get();
      }
      String said = text.substring(start, end);
      if (stop == null && !first && Passages.heading(text, start, end).isPresent()) {
        stop = tooManySections(new Span(word, end));
        problems.add(stop.at(passage, 0));
      }
      if (stop != null) {
        lines.add(new Line(passage, start, broken(said, kind, false, span(said))));
        continue;
      }
      LineParser.Result result = parse(said, kind, opened.isPresent());
      SyntaxProblem problem = result.problem();
      if (problem == null && opened.isEmpty()) {
        problem = Placement.refuse(result, kind, said);
        problem = problem == null ? null : parser.meant(problem, said, kind);
      }
      if (problem != null) {
        if (problems.size() == MOST_BROKEN) {
          stop = tooManyBroken(problem.span());
          problem = stop;
        }
        problems.add(problem.at(passage, start));
      }
      Line line = new Line(passage, start, result.statement());
      if (opened.isPresent()) {
        heading = line;
      } else if (problem == null || result.problem() != null) {
        lines.add(line);
      }
      first = false;
    }
    return new SectionSyntax(passage, heading, lines, problems);
  }

  private LineParser.Result parse(String text, SectionKind kind, boolean heading) {
    LineParser.Result known = memory.get(text);
    if (known == null) {
      known =
          text.length() > MOST_IN_A_LINE
              ? tooLong(text, kind, heading)
              : parsed(text, kind, heading);
      if (known.problem() == null) {
        memory.put(text, known);
      }
    }
    return known;
  }

  /** A line that nobody writes is told about without a look at what it says. */
  private static LineParser.Result tooLong(String text, SectionKind kind, boolean heading) {
    Span span = span(text);
    return new LineParser.Result(
        broken(text, kind, heading, span),
        null,
        new SyntaxProblem(
            Code.TOO_LONG,
            span,
            "this line has more than " + MOST_IN_A_LINE + " characters",
            "Make several lines of it; “next” goes on with the bars after it",
            List.of()));
  }

  private static SyntaxProblem tooManySections(Span heading) {
    return new SyntaxProblem(
        Code.TOO_LONG,
        heading,
        "a file has at most " + MOST_SECTIONS + " sections; from here on nothing is read",
        "Make several files of it",
        List.of());
  }

  private static SyntaxProblem tooManyBroken(Span span) {
    return new SyntaxProblem(
        Code.TOO_LONG,
        span,
        MOST_BROKEN + " lines before this one cannot be read; the rest of the section is not read",
        "Correct those first",
        List.of());
  }

  private static Span span(String text) {
    int start = Delimiters.skipBlanks(text, 0, text.length());
    return new Span(start, Math.max(start, Delimiters.endOfBlanks(text, text.length())));
  }

  private static Statement broken(String text, SectionKind kind, boolean heading, Span span) {
    return heading
        ? BrokenLine.heading(kind, null, span)
        : new Statement.Broken("", text.indexOf(':') >= 0, span);
  }

  /** A mistake of ours must not reach a person as an exception; in tests it is to be loud. */
  private LineParser.Result parsed(String text, SectionKind kind, boolean heading) {
    try {
      return parser.read(text, kind, heading);
    } catch (RuntimeException | StackOverflowError mistake) {
      if (Reader.class.desiredAssertionStatus()) {
        throw mistake;
      }
      Span span = span(text);
      return new LineParser.Result(
          broken(text, kind, heading, span),
          null,
          SyntaxProblem.of(span, "this line cannot be read", "Write it more simply"));
    }
  }
}
