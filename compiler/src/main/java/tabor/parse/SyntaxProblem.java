package tabor.parse;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.lists.Lists;
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
 * @param fixes ways to put it right, each on its own
 */
record SyntaxProblem(
    Code code, Span span, String message, @Nullable String help, List<LineFix> fixes) {
  /** What a fix does, in a few words that start with a capital, and its replacements. */
  record LineFix(String title, List<Replaced> edits) {
    LineFix {
      edits = List.copyOf(edits);
    }
  }

  /** What stands at {@code span} becomes {@code text}. */
  record Replaced(Span span, String text) {}

  /** Copies the list. */
  SyntaxProblem {
    fixes = List.copyOf(fixes);
  }

  /** A line that cannot be read. */
  static SyntaxProblem of(Span span, String message, @Nullable String help) {
    return new SyntaxProblem(Code.SYNTAX, span, message, help, List.of());
  }

  /** The same with one more fix, unless it has one that does the same. */
  SyntaxProblem fix(String title, Span where, String text) {
    return fix(title, List.of(new Replaced(where, text)));
  }

  /** The same with one more fix of several replacements. */
  SyntaxProblem fix(String title, List<Replaced> edits) {
    for (LineFix other : fixes) {
      if (other.edits().equals(edits)) {
        return this;
      }
    }
    List<LineFix> more = new ArrayList<>(fixes);
    more.add(new LineFix(title, edits));
    return new SyntaxProblem(code, span, message, help, more);
  }

  /** The same with those of its fixes that leave a line which {@code reads} approves of. */
  SyntaxProblem keeping(String line, Predicate<String> reads) {
    List<LineFix> kept = Lists.filter(fixes, fix -> reads.test(applied(line, fix.edits())));
    return new SyntaxProblem(code, span, message, help, kept);
  }

  /** A line after replacements, which are in order and do not overlap. */
  static String applied(String line, List<Replaced> edits) {
    StringBuilder text = new StringBuilder(line);
    for (int i = edits.size() - 1; i >= 0; i--) {
      Span where = edits.get(i).span();
      text.replace(where.start(), where.end(), edits.get(i).text());
    }
    return text.toString();
  }

  /** The problem of the line that starts at {@code start} in {@code passage}. */
  Diagnostic at(Passage passage, int start) {
    Diagnostic diagnostic =
        Diagnostic.of(code, new Spot(passage, span.shift(start)), message).help(help);
    for (LineFix fix : fixes) {
      List<Diagnostic.Edit> edits =
          Lists.map(
              fix.edits(),
              e -> new Diagnostic.Edit(new Spot(passage, e.span().shift(start)), e.text()));
      diagnostic = diagnostic.fix(new Diagnostic.Fix(fix.title(), edits));
    }
    return diagnostic;
  }
}
