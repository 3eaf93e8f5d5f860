package tabor.ide;

import java.util.Optional;
import tabor.compile.Compiled;
import tabor.groove.Groove;
import tabor.source.Span;
import tabor.syntax.Heading;
import tabor.syntax.Line;
import tabor.syntax.SectionKind;

/** A section as it is at one of its lines, whatever is wrong in it or written below. */
final class SectionAbove {
  private SectionAbove() {}

  /** The section with the lines above an offset's line; empty where those have errors. */
  static Optional<Groove> before(Cursor cursor, Library library) {
    String text = cursor.compiled().text();
    int start = Math.max(cursor.start(), LineEnds.start(text, cursor.offset()));
    return cut(cursor, start, library);
  }

  /** The section with the lines down to the one that holds {@code end}, that one included. */
  static Optional<Groove> through(Cursor cursor, int end, Library library) {
    String text = cursor.compiled().text();
    return cut(cursor, LineEnds.whole(text, new Span(end, end)).end(), library);
  }

  /** What the lines of a sheet vary; each variation differs from it by a line or two. */
  private static Optional<Groove> base(Cursor cursor) {
    Compiled compiled = cursor.compiled();
    Line heading = cursor.section().heading();
    if (heading != null
        && heading.statement() instanceof Heading.Sheet sheet
        && sheet.from() != null) {
      return compiled
          .lesson()
          .section(sheet.from().text())
          .filter(Groove.class::isInstance)
          .map(Groove.class::cast);
    }
    return compiled.lesson().sections().stream()
        .filter(Groove.class::isInstance)
        .map(Groove.class::cast)
        .filter(groove -> compiled.span(groove.heading()).start() < cursor.start())
        .reduce((one, later) -> later);
  }

  /** The section without what stands below {@code from}. */
  private static Optional<Groove> cut(Cursor cursor, int from, Library library) {
    SectionKind kind = Definitions.kind(cursor.section());
    if (kind == SectionKind.SHEET) {
      return base(cursor);
    }
    if (kind != SectionKind.GROOVE && kind != SectionKind.STEP) {
      return Optional.empty();
    }
    String text = cursor.compiled().text();
    int end = cursor.start() + cursor.section().passage().text().length();
    if (from >= end || text.substring(from, end).isBlank()) {
      return cursor.groove();
    }
    Compiled shorter =
        library.trial(cursor.compiled().file(), text.substring(0, from) + text.substring(end));
    return Cursor.at(shorter, Math.min(cursor.start(), shorter.text().length())).groove();
  }
}
