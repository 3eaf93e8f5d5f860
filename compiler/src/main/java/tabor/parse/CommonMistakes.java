package tabor.parse;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import org.antlr.v4.runtime.Token;
import org.jspecify.annotations.Nullable;
import tabor.grammar.TaborLexer;
import tabor.grammar.TaborParser;
import tabor.kit.Kits;
import tabor.lists.Lists;
import tabor.parse.SyntaxProblem.Replaced;
import tabor.source.Span;
import tabor.syntax.Numerals;
import tabor.syntax.SectionKind;

/**
 * What people write who have not got used to the notation, each with what they mean.
 *
 * @param at index of the first token that no reading of the grammar takes
 * @param offending that token
 */
record CommonMistakes(
    String line,
    SectionKind kind,
    boolean heading,
    List<Token> tokens,
    LineSimulation simulation,
    int at,
    Token offending) {
  /** What is read as a double quote. */
  private static final String QUOTES = "\"“”„";

  /** Words that no part is called by, though a surface could be. */
  private static final List<String> NO_TARGETS = List.of("the", "a", "an", "with", "first");

  private static final List<String> SYLLABLES = List.of("&", "e", "a");

  /** What is meant by the line, if it is one of these mistakes; else null. */
  @Nullable SyntaxProblem explain(Predicate<String> reads) {
    SyntaxProblem within = quotesWithin();
    if (within != null) {
      return within;
    }
    if (heading) {
      return HeadingMistakes.explain(line, kind, tokens, simulation);
    }
    if (at == 0) {
      return null;
    }
    SyntaxProblem problem = unquoted();
    if (problem == null) {
      problem = feelForgotten(reads);
    }
    if (problem == null) {
      problem = addForgotten(reads);
    }
    if (problem == null) {
      problem = decimalComma();
    }
    if (problem == null) {
      problem = joinedCounts();
    }
    if (problem == null) {
      problem = syllableApart();
    }
    if (problem == null) {
      problem = filledWithNothing();
    }
    if (problem == null) {
      problem = added();
    }
    if (problem == null) {
      problem = twice();
    }
    return problem == null ? everyFew() : problem;
  }

  /** {@code text "Say "one" aloud"}. */
  private @Nullable SyntaxProblem quotesWithin() {
    if (at == 0
        || tokens.get(at - 1).getType() != TaborLexer.QUOTED
        || Spans.of(tokens.get(at - 1)).end() != offending.getStartIndex()) {
      return null;
    }
    int start = tokens.get(at - 1).getStartIndex();
    int last = BrokenLine.span(tokens).end() - 1;
    List<Replaced> edits = new ArrayList<>();
    for (int i = start + 1; i < last; i++) {
      if (QUOTES.indexOf(line.charAt(i)) >= 0) {
        edits.add(new Replaced(new Span(i, i + 1), "'"));
      }
    }
    if (QUOTES.indexOf(line.charAt(last)) < 0 || edits.size() < 2) {
      return null;
    }
    String text = SyntaxProblem.applied(line, edits).substring(start, last + 1);
    return SyntaxProblem.of(
            edits.get(0).span().to(edits.get(edits.size() - 1).span()),
            "double quotes cannot stand within a text",
            "Write single ones: " + text)
        .fix("Write single quotes", edits);
  }

  /** {@code title My lesson}. */
  private @Nullable SyntaxProblem unquoted() {
    String what =
        switch (tokens.get(0).getType()) {
          case TaborLexer.TITLE -> "a title";
          case TaborLexer.BY -> "a name after `by`";
          case TaborLexer.USE -> "a file name";
          case TaborLexer.TEXT, TaborLexer.TEACHER, TaborLexer.CUE -> "a text";
          case TaborLexer.GOAL -> "a goal";
          case TaborLexer.MARK -> "a mark";
          default -> null;
        };
    if (what == null || at != 1 || offending.getType() == Token.EOF) {
      return null;
    }
    for (Token token : tokens) {
      if (token.getType() == TaborLexer.QUOTED || token.getType() == TaborLexer.TRIPLE_QUOTED) {
        return null;
      }
    }
    Span said = new Span(offending.getStartIndex(), BrokenLine.span(tokens).end());
    String plain = said.in(line).replaceAll("^[:=]\\s*", "");
    boolean sign = !plain.equals(said.in(line));
    String text = plain.replaceAll("^['’‘«»‹›]\\s*|\\s*['’‘«»‹›]$", "");
    if (text.isEmpty()) {
      return null;
    }
    String quoted = '"' + text + '"';
    SyntaxProblem problem =
        SyntaxProblem.of(
            said, what + " stands in quotes", "Write " + tokens.get(0).getText() + " " + quoted);
    Span span = sign ? new Span(Spans.of(tokens.get(0)).end(), said.end()) : said;
    return problem.fix("Put it in quotes", span, sign ? " " + quoted : quoted);
  }

  /** {@code swing 66%}, {@code straight}. */
  private @Nullable SyntaxProblem feelForgotten(Predicate<String> reads) {
    int first = tokens.get(0).getType();
    if (first != TaborLexer.SWING && first != TaborLexer.STRAIGHT) {
      return null;
    }
    Span span = BrokenLine.span(tokens);
    String said = span.in(line);
    for (String meant :
        List.of(
            "feel " + said,
            said.replaceFirst("swing", "feel swing eighths"),
            "feel swing eighths as triplets")) {
      if (reads.test(line.substring(0, span.start()) + meant + line.substring(span.end()))) {
        return SyntaxProblem.of(
                Spans.of(tokens.get(0)),
                "how off-beats are felt is said after `feel`",
                "Write " + meant)
            .fix("Write " + meant, span, meant);
      }
    }
    return null;
  }

  /** {@code crash at 1}, {@code kick 1 3}. */
  private @Nullable SyntaxProblem addForgotten(Predicate<String> reads) {
    boolean surface =
        tokens.get(0).getType() == TaborLexer.NAME || tokens.get(0).getType() == TaborLexer.ZONED;
    boolean place =
        isCount(offending)
            || offending.getType() == TaborLexer.AT
            || offending.getType() == TaborLexer.WITH
            || Vocabulary.first(TaborParser.RULE_addedLevel).contains(offending.getType());
    boolean known = Kits.FIVE_PIECE.surface(tokens.get(0).getText()) != null;
    if (!surface || !place || at != 1 || !(known || offending.getType() == TaborLexer.AT)) {
      return null;
    }
    int start = tokens.get(0).getStartIndex();
    String text = isCount(offending) ? " at" : "";
    Span after = new Span(Spans.of(tokens.get(0)).end(), Spans.of(tokens.get(0)).end());
    List<Replaced> edits = new ArrayList<>();
    edits.add(new Replaced(new Span(start, start), "add "));
    if (!text.isEmpty()) {
      edits.add(new Replaced(after, text));
    }
    String fixed = SyntaxProblem.applied(line, edits);
    if (!reads.test(fixed) || (!known && nearStart())) {
      return null;
    }
    String said = fixed.substring(start, start + BrokenLine.span(LineTokens.of(fixed)).length());
    return SyntaxProblem.of(
            Spans.of(offending),
            "after "
                + Wording.shown(tokens.get(0))
                + " comes a colon, `plays` or `follows`, not "
                + Wording.shown(offending),
            "To add strokes, write " + said)
        .fix("Write add " + tokens.get(0).getText(), edits);
  }

  /** True if the first word is nearly one that a line may start with. */
  private boolean nearStart() {
    return !tabor.diagnostic.Near.names(
            tokens.get(0).getText(), Vocabulary.of(Vocabulary.Role.STATEMENT))
        .isEmpty();
  }

  private static boolean isCount(Token token) {
    return Vocabulary.first(TaborParser.RULE_count).contains(token.getType());
  }

  private boolean isCountAt(int index) {
    return index >= 0 && index < tokens.size() && isCount(tokens.get(index));
  }

  /** {@code tempo 92,5}. */
  private @Nullable SyntaxProblem decimalComma() {
    if (offending.getType() != TaborLexer.COMMA
        || tokens.get(at - 1).getType() != TaborLexer.WHOLE
        || tokens.get(at + 1).getType() != TaborLexer.WHOLE
        || simulation.expectsIn(TaborParser.RULE_count)
        || simulation.expectsIn(TaborParser.RULE_barList)) {
      return null;
    }
    Span span = Spans.between(tokens.get(at - 1), tokens.get(at + 1));
    String number = span.in(line).replaceAll("\\s*,\\s*", ".");
    return SyntaxProblem.of(span, "a decimal number has a point, not a comma", "Write " + number)
        .fix("Write " + number, span, number);
  }

  /** {@code at 2 &}. */
  private @Nullable SyntaxProblem syllableApart() {
    if (!SYLLABLES.contains(offending.getText())
        || tokens.get(at - 1).getType() != TaborLexer.WHOLE
        || !simulation.expectsIn(TaborParser.RULE_count)) {
      return null;
    }
    Token beat = tokens.get(at - 1);
    String count = beat.getText() + offending.getText();
    Span both = Spans.between(beat, offending);
    // Before another count & may also stand for a word between them.
    boolean joint = offending.getText().equals("&") && isCountAt(at + 1);
    String next = joint ? " " + tokens.get(at + 1).getText() : "";
    String two = beat.getText() + next;
    SyntaxProblem problem =
        SyntaxProblem.of(
                both,
                "a count is one word: the beat and its syllable",
                "Write " + count + next + (joint ? ", or " + two : ""))
            .fix("Write " + count + next, Spans.gap(beat, offending), "");
    return joint ? problem.fix("Write " + two, both, beat.getText()) : problem;
  }

  /** {@code fill in bar 4}. */
  private @Nullable SyntaxProblem filledWithNothing() {
    if (tokens.get(0).getType() != TaborLexer.FILL
        || at != 2
        || tokens.get(1).getType() != TaborLexer.IN) {
      return null;
    }
    return SyntaxProblem.of(
        Spans.of(tokens.get(0)),
        "which section fills the bar is not said",
        "Write its name after fill: fill break in bar 4");
  }

  /** {@code at 1, 3}, {@code at 1 and 3}. */
  private @Nullable SyntaxProblem joinedCounts() {
    if (!isJoint(at)) {
      return null;
    }
    List<Replaced> edits = new ArrayList<>();
    StringBuilder said = new StringBuilder(tokens.get(at - 1).getText());
    boolean run = true;
    for (int i = at; i < tokens.size(); i++) {
      if (isJoint(i)) {
        Span gap = Spans.gap(tokens.get(i - 1), tokens.get(i + 1));
        edits.add(new Replaced(gap, " "));
        said.append(run ? " " + tokens.get(i + 1).getText() : "");
      }
      run &= isJoint(i) || isCount(tokens.get(i));
    }
    boolean comma = offending.getType() == TaborLexer.COMMA;
    boolean bars = simulation.expectsIn(TaborParser.RULE_barList);
    boolean meters = tokens.get(at - 1).getType() == TaborLexer.RATIO;
    return SyntaxProblem.of(
            Spans.of(offending),
            (bars ? "numbers of bars" : meters ? "meters" : "counts")
                + (comma ? " have no commas between them" : " are not joined by `and`"),
            "Write them one after another: " + said)
        .fix(comma ? "Take the commas out" : "Take `and` out", edits);
  }

  private boolean isJoint(int index) {
    int type = tokens.get(index).getType();
    return (type == TaborLexer.COMMA || type == TaborLexer.AND)
        && isCountAt(index - 1)
        && isCountAt(index + 1);
  }

  /** What {@code add} does not take, though changes do. */
  private @Nullable SyntaxProblem added() {
    if (tokens.get(0).getType() != TaborLexer.ADD || kind == SectionKind.KIT) {
      return null;
    }
    if (offending.getType() == Token.EOF && simulation.expects(TaborLexer.AT)) {
      return SyntaxProblem.of(
          BrokenLine.span(tokens),
          "where to add it is not said",
          "Write the counts after at: add kick at 1 2&");
    }
    if (offending.getType() == TaborLexer.TO && isCountAt(at - 1)) {
      Span span = Spans.of(tokens.get(at - 1)).to(Spans.of(offending));
      return SyntaxProblem.of(
          isCountAt(at + 1) ? span.to(Spans.of(tokens.get(at + 1))) : span,
          "strokes are added at single counts, not from one count to another",
          "Write each count, or every &");
    }
    if (offending.getType() == TaborLexer.WHERE) {
      return SyntaxProblem.of(
          Spans.of(offending),
          "`where` asks for strokes that are there, but `add` makes new ones",
          "Leave it out");
    }
    return null;
  }

  /** {@code at 1 at 3}. */
  private @Nullable SyntaxProblem twice() {
    int type = offending.getType();
    String help =
        switch (type) {
          case TaborLexer.AT -> "Write all counts after one at: at 1 2& 4";
          case TaborLexer.IN -> "Write all bars after one in: in bars 2 4 6";
          case TaborLexer.WHERE -> "Choose one level";
          default -> null;
        };
    boolean before = Lists.any(tokens.subList(0, at), token -> token.getType() == type);
    if (help == null || !before) {
      return null;
    }
    SyntaxProblem problem =
        SyntaxProblem.of(
            Spans.of(offending), "`" + offending.getText() + "` stands twice on this line", help);
    if (type != TaborLexer.AT || !isCountAt(at - 1)) {
      return problem;
    }
    Span gap = Spans.gap(tokens.get(at - 1), tokens.get(at + 1));
    return problem.fix("Take the second `at` out", gap, " ");
  }

  /** {@code in every 4 bars}. */
  private @Nullable SyntaxProblem everyFew() {
    if (offending.getType() != TaborLexer.WHOLE || !simulation.expects(TaborLexer.ORDINAL)) {
      return null;
    }
    Token next = tokens.get(at + 1);
    boolean bars = next.getType() == TaborLexer.BARS || next.getType() == TaborLexer.BAR;
    Span span = bars ? Spans.between(offending, next) : Spans.of(offending);
    String nth = Numerals.ordinal(offending.getText()) + " bar";
    return SyntaxProblem.of(
            span, "which bars are meant is said by their number in order", "Write every " + nth)
        .fix("Write " + nth, span, nth);
  }

  /** {@code drop kick snare}, {@code drop kick and snare}. */
  @Nullable SyntaxProblem joinedTargets() {
    if (at == 0) {
      return null;
    }
    boolean and = offending.getType() == TaborLexer.AND;
    int next = and ? at + 1 : at;
    Token before = tokens.get(at - 1);
    if (!simulation.expects(TaborLexer.COMMA)
        || !isTarget(tokens.get(next))
        || NO_TARGETS.contains(before.getText())) {
      return null;
    }
    Token after = tokens.get(next);
    return SyntaxProblem.of(
            Spans.of(offending),
            and
                ? "parts are not joined by `and`"
                : Wording.shown(before)
                    + " and "
                    + Wording.shown(after)
                    + " need a comma between them",
            "Several parts are joined by commas: " + before.getText() + ", " + after.getText())
        .fix("Write a comma", Spans.gap(before, after), ", ");
  }

  private static boolean isTarget(Token token) {
    return switch (token.getType()) {
      case TaborLexer.RIGHT, TaborLexer.LEFT, TaborLexer.HANDS, TaborLexer.FEET, TaborLexer.ALL ->
          true;
      default -> Kits.FIVE_PIECE.surface(token.getText().toLowerCase(Locale.ROOT)) != null;
    };
  }
}
