package tabor.lsp;

import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import tabor.compile.Compiled;
import tabor.ide.Library;
import tabor.source.Span;

/**
 * An open file as a request about it finds it: one version, which nothing changes while it is
 * looked at.
 *
 * @param document the text as it was when the request came
 * @param compiled what the compiler made of that text
 * @param library other files and other texts
 * @param wanted asks whether the answer is still waited for
 */
record FileContext(
    Session session,
    OpenDocument document,
    Compiled compiled,
    Library library,
    Scheduler.Wanted wanted) {
  /** The offset of a position. */
  int offset(Position position) {
    return session.encoding().offset(document.lines(), position);
  }

  /** The range of a span. */
  Range range(Span span) {
    return session.encoding().range(document.lines(), span);
  }

  /** The span of a range. */
  Span span(Range range) {
    return session.encoding().span(document.lines(), range);
  }

  /** Makes the protocol's values. */
  LspConverter converter() {
    return new LspConverter(session, compiled, document);
  }
}
