package tabor.parse;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.antlr.v4.runtime.Token;
import org.jspecify.annotations.Nullable;
import tabor.grammar.TaborLexer;
import tabor.lists.Lists;
import tabor.source.Span;

/**
 * What is wrong with the beats of a lane or the places of a pattern: told from the first sign that
 * the grammar cannot read, the one before it and what is open there.
 */
final class BeatErrorExplainer {
  /** A bar, and behind it {@code x2}, {@code (2x)} and the like. */
  private static final Pattern OFTEN =
      Pattern.compile(
          "([^:]*:.*[^\\s|])\\s+(?:\\|\\s*)?"
              + "(?=([(]?(?:[x×*]\\s?([1-9]\\d?)|([1-9]\\d?)\\s?[x×])[)]?)\\s*$).*");

  /** A surface with counts behind the colon. */
  private static final Pattern COUNTS =
      Pattern.compile(
          "(?!hands|feet|line|right|left)([a-z]+[12]?(?:\\.[a-z]+)?)\\s*:\\s*"
              + "([1-9][&ea]?(?:(?:,| and | & | )+[1-9][&ea]?)*)");

  private final String line;
  private final List<Token> tokens;
  private final int at;
  private final Token sign;
  private final Token before;
  private final boolean pattern;
  private final int wordStart;
  private final Deque<Token> open = new ArrayDeque<>();

  /**
   * @param tokens all of the line, the end included
   * @param at index of the first one that cannot be read; the line's colon stands before it
   */
  BeatErrorExplainer(String line, List<Token> tokens, int at) {
    this.line = line;
    this.tokens = tokens;
    this.at = at;
    this.sign = tokens.get(at);
    this.before = tokens.get(at - 1);
    this.pattern = tokens.get(0).getType() == TaborLexer.PATTERN;
    int start = at;
    while (!isBetween(tokens.get(start - 1))) {
      start--;
    }
    this.wordStart = start;
    for (Token token : tokens.subList(start, at)) {
      switch (token.getType()) {
        case TaborLexer.GROUP_OPEN, TaborLexer.GHOST_OPEN -> open.push(token);
        case TaborLexer.GROUP_CLOSE, TaborLexer.GHOST_CLOSE -> open.pop();
        default -> {}
      }
    }
  }

  /** True for what stands between words. */
  private static boolean isBetween(Token token) {
    return switch (token.getType()) {
      case TaborLexer.GAP, TaborLexer.BAR_LINE, TaborLexer.LANE_START, Token.EOF -> true;
      default -> false;
    };
  }

  SyntaxProblem explain() {
    SyntaxProblem paper = pattern ? null : PaperSigns.explain(line, tokens, at);
    if (paper != null) {
      return paper;
    }
    if (before.getType() == TaborLexer.SMALL) {
      return graceNotes();
    }
    SyntaxProblem problem = isBetween(sign) ? betweenWords() : repeat();
    return problem == null ? withinWord() : problem;
  }

  private SyntaxProblem betweenWords() {
    if (!open.isEmpty()) {
      return unclosed();
    }
    if (before.getType() == TaborLexer.BAR_LINE && sign.getType() == TaborLexer.BAR_LINE) {
      return SyntaxProblem.of(
          Spans.of(before).to(Spans.of(sign)),
          "there is nothing between these two bar lines",
          "Write the beats of the bar, or % for the bar before again");
    }
    if (before.getType() == TaborLexer.BAR_LINE) {
      return SyntaxProblem.of(
          Spans.of(before), "a bar line stands alone here", "Write the beats before or after it");
    }
    Span whole = BrokenLine.span(tokens);
    return pattern
        ? SyntaxProblem.of(
            whole, "this pattern has no strokes", "Write them after the colon: RlrrLrll")
        : SyntaxProblem.of(
            whole,
            "this part is empty",
            "Write one word for each beat: rl rl rl rl; . is a silent beat");
  }

  private SyntaxProblem unclosed() {
    Token first = open.peekLast();
    boolean group = first.getType() == TaborLexer.GROUP_OPEN;
    StringBuilder closing = new StringBuilder();
    open.forEach(o -> closing.append(o.getType() == TaborLexer.GROUP_OPEN ? '}' : ')'));
    int end = Spans.of(before).end();
    SyntaxProblem made =
        SyntaxProblem.of(
            Spans.of(first),
            "this " + first.getText() + " is not closed",
            group
                ? "Write } after the last stroke of the group; a group does not cross a space"
                : "Write ) after the last ghost stroke; parentheses do not cross a space");
    Token accent = accentInGhost();
    if (accent == null) {
      return made.fix("Close it at the end of the word", new Span(end, end), closing.toString());
    }
    int start = Spans.of(accent).start();
    return made.fix("Close it before the accent", new Span(start, start), closing.toString());
  }

  /** The first capital after a parenthesis that is open: no ghost stroke has an accent. */
  private @Nullable Token accentInGhost() {
    boolean inside = false;
    for (Token token : tokens.subList(wordStart, at)) {
      inside |= open.contains(token) && token.getType() == TaborLexer.GHOST_OPEN;
      if (inside
          && token.getType() == TaborLexer.STROKE
          && Character.isUpperCase(token.getText().charAt(0))) {
        return token;
      }
    }
    return null;
  }

  private SyntaxProblem graceNotes() {
    int start = at - 1;
    while (tokens.get(start - 1).getType() == TaborLexer.SMALL) {
      start--;
    }
    int end = at;
    while (tokens.get(end).getType() == TaborLexer.SMALL) {
      end++;
    }
    Span span = Spans.between(tokens.get(start), tokens.get(end - 1));
    if (span.length() > 3) {
      return SyntaxProblem.of(
          span,
          span.length() + " grace notes are too many",
          "One is a flam, two a drag, three a ruff");
    }
    return SyntaxProblem.of(
        span, "grace notes need a stroke right after them", "Write them before its letter: 'r");
  }

  /** A repeated bar that is not alone. */
  private @Nullable SyntaxProblem repeat() {
    if (sign.getType() == TaborLexer.REPEAT) {
      if (pattern) {
        return SyntaxProblem.of(
            Spans.of(sign), "a pattern has no bars to repeat", "Write the strokes out");
      }
      return SyntaxProblem.of(
          Spans.of(sign), "% stands alone in its bar", "Write it between two bar lines: | % |");
    }
    int last = before.getType() == TaborLexer.GAP ? at - 2 : at - 1;
    if (tokens.get(last).getType() == TaborLexer.REPEAT) {
      return SyntaxProblem.of(
          Spans.of(tokens.get(last)),
          "% stands alone in its bar",
          "Write % between two bar lines, or beats only");
    }
    return null;
  }

  private SyntaxProblem withinWord() {
    if (sign.getType() == TaborLexer.SPAN
        || before.getType() == TaborLexer.SPAN
        || sign.getText().equals(":")) {
      return overBeats();
    }
    boolean ghosts = Lists.any(open, o -> o.getType() == TaborLexer.GHOST_OPEN);
    Span span = Spans.of(sign);
    String written = "`" + sign.getText() + "`";
    return switch (sign.getType()) {
      case TaborLexer.GROUP_CLOSE, TaborLexer.GHOST_CLOSE -> closed();
      case TaborLexer.GHOST_OPEN ->
          SyntaxProblem.of(
              span, "parentheses do not stand inside parentheses", "Leave out the inner ones");
      case TaborLexer.SMALL ->
          SyntaxProblem.of(
              span, "grace notes cannot stand inside parentheses", "Write them before: '(r)");
      case TaborLexer.HOLD ->
          SyntaxProblem.of(
              span, "`-` cannot stand inside parentheses", "Close the parentheses before it");
      case TaborLexer.ONE_SLASH,
          TaborLexer.TWO_SLASHES,
          TaborLexer.TILDE,
          TaborLexer.OPEN_SIGN,
          TaborLexer.CHOKE_SIGN,
          TaborLexer.RIM_SIGN ->
          ghosts
              ? SyntaxProblem.of(
                  span,
                  written + " cannot stand inside parentheses",
                  "Write it after them: (r)" + sign.getText())
              : SyntaxProblem.of(
                  span,
                  written + " has no stroke before it",
                  "It stands right after a letter: r" + sign.getText());
      default -> strange();
    };
  }

  private SyntaxProblem overBeats() {
    int last = at;
    while (!isBetween(tokens.get(last + 1))) {
      last++;
    }
    int first = before.getType() == TaborLexer.SPAN ? at - 1 : at;
    Span span = Spans.between(tokens.get(first), tokens.get(last));
    if (pattern) {
      return SyntaxProblem.of(
          span, "a pattern has no beats to spread over", "Leave out what follows the colon");
    }
    if (first == wordStart) {
      return SyntaxProblem.of(span, "`:` has no word before it", "Write it after a word: rlr:2");
    }
    if (!open.isEmpty()) {
      return unclosed();
    }
    return SyntaxProblem.of(
        span,
        "after `:` comes the number of beats that the word takes",
        "Write it at the end of the word: rlr:2");
  }

  private SyntaxProblem closed() {
    Span span = Spans.of(sign);
    boolean group = sign.getType() == TaborLexer.GROUP_CLOSE;
    Token opening = open.peek();
    if (opening == null) {
      return SyntaxProblem.of(
              span,
              "this " + sign.getText() + " closes nothing",
              "Write " + (group ? '{' : '(') + " before the first stroke it belongs to")
          .fix("Leave it out", span, "");
    }
    if (opening == before) {
      return SyntaxProblem.of(
          Spans.between(before, sign), "there is no stroke between these", "Write one, or a dot");
    }
    char wanted = opening.getType() == TaborLexer.GROUP_OPEN ? '}' : ')';
    return SyntaxProblem.of(
            span,
            "this " + sign.getText() + " stands where " + wanted + " belongs",
            "What is opened last is closed first")
        .fix("Write " + wanted, span, String.valueOf(wanted));
  }

  /** {@code rl rl rl rl x2}: one bar, and how often it is played. */
  private @Nullable SyntaxProblem howOften() {
    Span whole = BrokenLine.span(tokens);
    String text = whole.in(line);
    Matcher often = OFTEN.matcher(text);
    if (!often.matches()) {
      return null;
    }
    String number = often.group(3) == null ? often.group(4) : often.group(3);
    int times = Integer.parseInt(number);
    Span span = new Span(whole.start() + often.end(1), whole.end());
    String again = " | %".repeat(Math.max(0, times - 1));
    Span said = new Span(often.start(2), often.end(2)).shift(whole.start());
    SyntaxProblem problem =
        SyntaxProblem.of(
            said,
            "how often a bar is played is not written among its beats",
            "Write % for each bar that is the same again: rl rl rl rl | %");
    return often.group(1).indexOf('|') >= 0 || times < 2 || times > 16
        ? problem
        : problem.fix(
            times == 2 ? "Write | %" : "Write | % " + (times - 1) + " times", span, again);
  }

  /** {@code kick : 1 and 3}. */
  private @Nullable SyntaxProblem counts() {
    Span whole = BrokenLine.span(tokens);
    Matcher counts = COUNTS.matcher(whole.in(line));
    if (!counts.matches()) {
      return null;
    }
    String add =
        "add " + counts.group(1) + " at " + counts.group(2).replaceAll("(?:,|and|&(?= )| )+", " ");
    return SyntaxProblem.of(
            BrokenLine.character(tokens, at),
            "after the colon come strokes, not counts",
            "Write " + add)
        .fix("Write " + add, whole, add);
  }

  private SyntaxProblem strange() {
    Span span = BrokenLine.character(tokens, at);
    switch (sign.getType()) {
      case TaborLexer.QUOTED,
          TaborLexer.TRIPLE_QUOTED,
          TaborLexer.OPEN_QUOTED,
          TaborLexer.OPEN_TRIPLE -> {
        return SyntaxProblem.of(
            new Span(span.start(), span.start() + 1),
            "quotes cannot stand among beats",
            "A drag is two single strokes: ''r");
      }
      default -> {}
    }
    String text = BrokenLine.text(tokens, at);
    boolean said = !pattern && BrokenLine.span(tokens).length() <= PaperLines.LONGEST;
    SyntaxProblem often = said ? howOften() : null;
    if (often != null) {
      return often;
    }
    SyntaxProblem counts = said ? counts() : null;
    if (counts != null) {
      return counts;
    }
    if (Character.isDigit(text.charAt(0))) {
      return SyntaxProblem.of(
          span,
          "a digit is no stroke",
          "Each letter is a stroke and each word a beat; durations are not written");
    }
    SyntaxProblem problem =
        SyntaxProblem.of(
            span,
            "`" + text + "` is no stroke",
            "A stroke is a letter from a to z; . is silence and - lets the stroke before go on");
    String plain = plain(text);
    return plain == null ? problem : problem.fix("Write " + plain, span, plain);
  }

  /** The sign that a look-alike from a word processor stands for. */
  private static @Nullable String plain(String text) {
    return switch (text) {
      case "\u2010", "\u2011", "\u2012", "\u2013", "\u2014", "\u2212" -> "-";
      case "\u00B7", "\u2022", "\u2024" -> ".";
      case "\u2026" -> "...";
      case "\u00A6", "\uFF5C", "\u2502" -> "|";
      case "\u00B4", "\u2032", "`" -> "'";
      default -> null;
    };
  }
}
