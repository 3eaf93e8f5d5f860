package tabor.lsp;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.WeakHashMap;
import tabor.ide.SemanticTokenizer;
import tabor.source.Passage;
import tabor.source.Span;
import tabor.syntax.SectionSyntax;

/**
 * Semantic tokens as the protocol counts them: five numbers each, lines down from the token before,
 * characters along, length, kind and modifiers. What a passage comes to is kept while the passage
 * lives: it begins a line of its own, so an edit leaves the numbers of all others but for the lines
 * down to its first token. One serves one thread at a time.
 */
final class TokenNumbers {
  private static final int EACH = 5;

  private final Session session;
  private final Map<Passage, Part> known = new WeakHashMap<>();

  /**
   * The tokens of a passage.
   *
   * @param data the first token's lines count from the passage's first line
   * @param last the line of the last token, from the passage's first line
   */
  @SuppressWarnings("ArrayRecordComponent") // never compared
  private record Part(int[] data, int last) {}

  TokenNumbers(Session session) {
    this.session = session;
  }

  /** The tokens of a file. */
  int[] all(FileContext file) {
    return in(file, new Span(0, file.document().lines().length()));
  }

  /** The tokens of a file that lie at least partly in a stretch of it. */
  int[] in(FileContext file, Span stretch) {
    TextLines lines = file.document().lines();
    List<SectionSyntax> sections = file.compiled().syntax();
    int[] data = new int[1 << 10];
    int count = 0;
    int line = 0;
    int start = 0;
    for (SectionSyntax section : sections) {
      int end = start + section.passage().text().length();
      if (end >= stretch.start() && start <= stretch.end()) {
        int base = lines.lineOf(start);
        boolean whole = start >= stretch.start() && end <= stretch.end();
        Part part = whole ? whole(section, lines, start) : part(section, lines, start, stretch);
        int more = part.data.length;
        if (more > 0) {
          if (count + more > data.length) {
            data = Arrays.copyOf(data, Math.max(data.length * 2, count + more));
          }
          System.arraycopy(part.data, 0, data, count, more);
          data[count] += base - line;
          line = base + part.last;
          count += more;
        }
      }
      start = end;
    }
    return Arrays.copyOf(data, count);
  }

  /**
   * Works some sections out that will be asked for.
   *
   * @param start of the first of them in the text
   * @return where the section after them starts
   */
  int ahead(List<SectionSyntax> sections, TextLines lines, int start) {
    int at = start;
    for (SectionSyntax section : sections) {
      whole(section, lines, at);
      at += section.passage().text().length();
    }
    return at;
  }

  /** How many sections are known. */
  int known() {
    return known.size();
  }

  private Part whole(SectionSyntax section, TextLines lines, int start) {
    return known.computeIfAbsent(
        section.passage(), passage -> part(section, lines, start, new Span(start, lines.length())));
  }

  private Part part(SectionSyntax section, TextLines lines, int start, Span stretch) {
    PositionEncoding encoding = session.encoding();
    List<SemanticTokenizer.Token> tokens = SemanticTokenizer.of(section);
    int base = lines.lineOf(start);
    int[] data = new int[tokens.size() * EACH];
    int line = base;
    int column = 0;
    int at = 0;
    for (SemanticTokenizer.Token token : tokens) {
      Span span = token.span().shift(start);
      if (span.end() < stretch.start() || span.start() > stretch.end()) {
        continue;
      }
      int newLine = lines.lineOf(span.start());
      int newColumn = encoding.units(lines.text(), lines.lineStart(newLine), span.start());
      data[at++] = newLine - line;
      data[at++] = newLine == line ? newColumn - column : newColumn;
      data[at++] = encoding.units(lines.text(), span.start(), span.end());
      data[at++] = token.kind().ordinal();
      data[at++] = (token.given() ? 1 : 0) | (token.accent() ? 2 : 0);
      line = newLine;
      column = newColumn;
    }
    return new Part(Arrays.copyOf(data, at), line - base);
  }
}
