package tabor.parse;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.antlr.v4.runtime.Token;
import org.jspecify.annotations.Nullable;
import tabor.grammar.TaborLexer;
import tabor.source.Span;

/**
 * Signs of music on paper among the beats of a part, each with what is written here. What they mean
 * is common practice, no source.
 */
final class PaperSigns {
  /** Where a section is repeated from, or to. */
  private static final Pattern REPEAT = Pattern.compile("(?<![^\\s|]):\\|+|\\|+:(?![^\\s|])");

  /** The bar before once more, alone in its bar. */
  private static final Pattern SAME_BAR =
      Pattern.compile("(?<=\\|) *([.:]?/{1,2}[.:]?) *(?=\\||$)");

  private static final Pattern DOUBLE_BAR = Pattern.compile("\\|\\|+|\\|\\]");

  private static final Pattern ACCENT = Pattern.compile(">([a-z])|([a-z])>");

  private static final Pattern COMMA = Pattern.compile("(?<=[^\\s,;|])[,;](?=\\s|$)");

  private final String line;
  private final int from;
  private final int end;
  private final int at;

  private PaperSigns(String line, List<Token> tokens, int at) {
    this.line = line;
    int start = 0;
    while (tokens.get(start).getType() != TaborLexer.LANE_START) {
      start++;
    }
    this.from = Spans.of(tokens.get(start)).end();
    this.end = BrokenLine.span(tokens).end();
    this.at = tokens.get(at).getStartIndex();
  }

  /**
   * What is wrong if one of these signs stands where the beats cannot be read; else null.
   *
   * @param at index of the first token that cannot be read, behind the colon
   */
  static @Nullable SyntaxProblem explain(String line, List<Token> tokens, int at) {
    PaperSigns signs = new PaperSigns(line, tokens, at);
    return signs.end - signs.from > PaperLines.LONGEST ? null : signs.explain();
  }

  private @Nullable SyntaxProblem explain() {
    Matcher repeat = here(REPEAT);
    if (repeat != null) {
      return SyntaxProblem.of(
              span(repeat),
              "a section is not repeated by signs among its beats",
              "Leave the sign out; how often a section is played is said in a chart: play verse 4"
                  + " times")
          .fix("Leave it out", all(REPEAT, "|"));
    }
    Matcher same = here(SAME_BAR);
    if (same != null) {
      return SyntaxProblem.of(
              new Span(same.start(1), same.end(1)),
              "the bar before is repeated by %, not by this sign",
              "Write % between two bar lines: | % |")
          .fix("Write %", all(SAME_BAR, " % "));
    }
    Matcher bar = here(DOUBLE_BAR);
    if (bar != null) {
      return SyntaxProblem.of(
              span(bar),
              "one bar line is enough here",
              "Write |; a bar that is the same again is | % |")
          .fix("Write |", all(DOUBLE_BAR, "|"));
    }
    Matcher accent = here(ACCENT);
    if (accent != null) {
      String capital = accent.group(1) == null ? accent.group(2) : accent.group(1);
      return SyntaxProblem.of(
              span(accent),
              "an accent is a capital letter",
              "Write " + capital.toUpperCase(Locale.ROOT))
          .fix("Write capitals", all(ACCENT, null));
    }
    Matcher comma = here(COMMA);
    return comma == null
        ? null
        : SyntaxProblem.of(span(comma), "beats are separated by spaces alone", "Leave it out")
            .fix("Leave them out", all(COMMA, ""));
  }

  /** Where the sign that cannot be read belongs to what is looked for; else null. */
  private @Nullable Matcher here(Pattern pattern) {
    Matcher matcher = pattern.matcher(line).region(from, end).useTransparentBounds(true);
    while (matcher.find()) {
      if (matcher.start() <= at && at <= matcher.end()) {
        return matcher;
      }
    }
    return null;
  }

  private static Span span(Matcher matcher) {
    return new Span(matcher.start(), matcher.end());
  }

  /** All of these in the line replaced; {@code null} for the letter in them as a capital. */
  private List<SyntaxProblem.Replaced> all(Pattern pattern, @Nullable String text) {
    List<SyntaxProblem.Replaced> edits = new ArrayList<>();
    Matcher matcher = pattern.matcher(line).region(from, end).useTransparentBounds(true);
    while (matcher.find()) {
      String found = matcher.group().replace(">", "").toUpperCase(Locale.ROOT);
      edits.add(new SyntaxProblem.Replaced(span(matcher), text == null ? found : text));
    }
    return edits;
  }
}
