package tabor.parse;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.source.Passage;
import tabor.source.Span;
import tabor.source.Spot;

/**
 * What is wrong with a line, with places counted from the line's start.
 *
 * @param code its kind
 * @param span the offending characters
 * @param message one sentence without a full stop
 * @param help a way out; null where there is nothing to say
 * @param changes replacements, each a fix of its own
 */
record Problem(Code code, Span span, String message, @Nullable String help, List<Change> changes) {
  /** One replacement and what it does. */
  record Change(String title, Span span, String text) {}

  /** Copies the list. */
  Problem {
    changes = List.copyOf(changes);
  }

  /** A line that cannot be read. */
  static Problem syntax(Span span, String message, @Nullable String help) {
    return new Problem(Code.SYNTAX, span, message, help, List.of());
  }

  /** The same with one more fix. */
  Problem change(String title, Span where, String text) {
    List<Change> more = new ArrayList<>(changes);
    more.add(new Change(title, where, text));
    return new Problem(code, span, message, help, more);
  }

  /** The problem of the line that starts at {@code start} in {@code passage}. */
  Diagnostic at(Passage passage, int start) {
    Diagnostic diagnostic =
        Diagnostic.of(code, new Spot(passage, span.shift(start)), message).help(help);
    for (Change change : changes) {
      Spot spot = new Spot(passage, change.span().shift(start));
      diagnostic = diagnostic.fix(Diagnostic.Fix.of(change.title(), spot, change.text()));
    }
    return diagnostic;
  }
}
