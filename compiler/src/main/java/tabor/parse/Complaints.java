package tabor.parse;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.antlr.v4.runtime.Token;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Near;
import tabor.grammar.TaborLexer;
import tabor.grammar.TaborParser;
import tabor.kit.Kits;
import tabor.source.Span;

/** Why a line could not be read, in a teacher's words. */
final class Complaints {
  private final String line;
  private final @Nullable Kind kind;
  private final List<Token> tokens;

  /**
   * @param kind the section it stands in; null for a heading
   * @param tokens all of the line, the end included
   */
  Complaints(String line, @Nullable Kind kind, List<Token> tokens) {
    this.line = line;
    this.kind = kind;
    this.tokens = tokens;
  }

  Problem of(FirstError error) {
    Problem problem = openText();
    if (problem == null) {
      problem = start();
    }
    if (problem == null) {
      problem = beats(error.offending());
    }
    if (problem == null) {
      problem = misspelt(error.offending());
    }
    return problem == null ? misplaced(error) : problem;
  }

  private @Nullable Problem openText() {
    for (Token token : tokens) {
      if (token.getType() == TaborLexer.LANE_START) {
        return null;
      }
      if (token.getType() == TaborLexer.OPEN_QUOTED) {
        Span span = Spans.of(token);
        int end = BrokenLine.span(line).end();
        return Problem.syntax(
                new Span(span.start(), span.start() + 1),
                "this text has no closing quotes",
                "Write \" after its last word; a text over several lines stands between \"\"\" and"
                    + " \"\"\"")
            .change("Close the text", new Span(end, end), "\"");
      }
      if (token.getType() == TaborLexer.OPEN_TRIPLE) {
        return Problem.syntax(
            Spans.of(token),
            "this text is not closed before its section ends",
            "Write \"\"\" after its last line");
      }
    }
    return null;
  }

  /** A line whose first word opens no statement. */
  private @Nullable Problem start() {
    Token first = tokens.get(0);
    int type = first.getType();
    if (tokens.size() > 1
        && tokens.get(1).getType() == TaborLexer.LANE_START
        && Lists.KEYWORDS.contains(first.getText())
        && !isLimbs(type)) {
      return kind == null
          ? null
          : Problem.syntax(
              Spans.of(first),
              "`" + first.getText() + "` is a word of the language and names no part",
              "A part is named by a limb, hands, feet, line or a surface such as snare");
    }
    if (kind == null || (Shapes.of(first.getText()) != null && type != TaborLexer.MISSPELT)) {
      return null;
    }
    String written = first.getText();
    Span span = Spans.of(first);
    if (type == TaborLexer.MISSPELT) {
      String small = written.toLowerCase(Locale.ROOT);
      if (!small.equals(written) && small.matches("[a-z][a-z0-9]*(-[a-z0-9]+)*(\\.[a-z0-9-]+)?")) {
        return Problem.syntax(
                span,
                "`" + written + "` has a capital letter",
                "Words and names are written in lower case: " + small)
            .change("Write " + small, span, small);
      }
    }
    if (type == TaborLexer.NAME && !isPart()) {
      if (Kits.FIVE_PIECE.surface(written) != null && tokens.size() > 1) {
        Token second = tokens.get(1);
        return Problem.syntax(
            second.getType() == Token.EOF ? span : Spans.of(second),
            "after `" + written + "` comes a colon, `play` or `follows`",
            Shapes.of("lane"));
      }
      List<String> near = Near.names(written, kind.verbs());
      Problem problem =
          Problem.syntax(
              span,
              "no line in " + kind.words() + " starts with `" + written + "`",
              near.isEmpty() ? lines() : "Is " + Expected.or(near) + " meant?");
      for (String name : near) {
        problem = problem.change("Write " + name, span, name);
      }
      return problem;
    }
    if (type == TaborLexer.NAME || type == TaborLexer.ZONED || isLimbs(type)) {
      return null;
    }
    return Problem.syntax(span, "no line starts with " + shown(first), lines());
  }

  private @Nullable String lines() {
    if (kind == null || kind.verbs().isEmpty()) {
      return null;
    }
    return kind == Kind.GROOVE || kind == Kind.STEP
        ? "A part is written as "
            + "hands : rl rl rl rl; a change starts with a word such as add,"
            + " drop or accent"
        : "It starts with " + Expected.or(kind.verbs());
  }

  /** True if the line is a lane, a played pattern or an edit that starts with its subject. */
  private boolean isPart() {
    return has(TaborLexer.LANE_START)
        || has(TaborLexer.PLAY)
        || has(TaborLexer.PLAYS)
        || has(TaborLexer.FOLLOWS);
  }

  private static boolean isLimbs(int type) {
    return type == TaborLexer.RIGHT
        || type == TaborLexer.LEFT
        || type == TaborLexer.HANDS
        || type == TaborLexer.FEET
        || type == TaborLexer.LINE;
  }

  private boolean has(int type) {
    return tokens.stream().anyMatch(token -> token.getType() == type);
  }

  private @Nullable Problem beats(Token offending) {
    for (Token token : tokens) {
      if (token.getStartIndex() >= offending.getStartIndex() && offending.getType() != Token.EOF) {
        return null;
      }
      if (token.getType() == TaborLexer.LANE_START) {
        boolean pattern = tokens.get(0).getType() == TaborLexer.PATTERN;
        return new BeatComplaints(line, pattern)
            .first(token.getStopIndex() + 1, BrokenLine.span(line).end());
      }
    }
    return null;
  }

  private @Nullable Problem misspelt(Token token) {
    if (token.getType() != TaborLexer.MISSPELT && token.getType() != TaborLexer.STRANGE) {
      return null;
    }
    String written = token.getText();
    Span span = Spans.of(token);
    String small = written.toLowerCase(Locale.ROOT);
    if (!small.equals(written) && small.matches("[a-z0-9.&-]+")) {
      return Problem.syntax(
              span,
              "`" + written + "` has a capital letter",
              "Words, names and counts are written in lower case: " + small)
          .change("Write " + small, span, small);
    }
    if (written.matches("[0-9]+-[0-9]+") && has(TaborLexer.BARS)) {
      String to = written.replace("-", " to ");
      return Problem.syntax(
              span, "`" + written + "` is no number", "From one to another is written " + to)
          .change("Write " + to, span, to);
    }
    if (written.matches("[0-9].*") && has(TaborLexer.AT)) {
      return Problem.syntax(
          span,
          "`" + written + "` is neither a number nor a count",
          "A count is a beat with a syllable, such as 1, 2&, 3e or 4a, or a slot such as 2.5");
    }
    if (written.indexOf('_') >= 0) {
      String better = small.replace('_', '-');
      return Problem.syntax(
              span, "`" + written + "` is no name", "Parts of a name are joined by -: " + better)
          .change("Write " + better, span, better);
    }
    if (written.matches("[0-9].*")) {
      return Problem.syntax(span, "`" + written + "` cannot stand here", Shapes.of(shape()));
    }
    return Problem.syntax(
        span,
        shown(token) + " cannot stand here",
        "A name is a letter from a to z, then letters and digits with single hyphens between them");
  }

  private Problem misplaced(FirstError error) {
    Token offending = error.offending();
    String help = Shapes.of(shape());
    if (offending.getType() == Token.EOF) {
      Token last = before(offending);
      String expected = Expected.words(error.rule(), error.expected());
      return Problem.syntax(
          Spans.of(last),
          expected == null
              ? "the line ends too early"
              : "after " + shown(last) + " comes " + expected + ", but the line ends",
          help);
    }
    Token last = before(offending);
    String expected = expected(error);
    String message =
        expected == null || last == offending
            ? shown(offending) + " does not fit here"
            : "after " + shown(last) + " comes " + expected + ", not " + shown(offending);
    if (error.rule() == TaborParser.RULE_surface
        && Lists.KEYWORDS.contains(offending.getText())
        && tokens.get(0).getType() == TaborLexer.SURFACE) {
      message = "`" + offending.getText() + "` is a word of the language and names no surface";
    }
    Problem problem = Problem.syntax(Spans.of(offending), message, help);
    return near(problem, error);
  }

  /** What could have stood there; after an edit's targets that is more than the parser says. */
  private @Nullable String expected(FirstError error) {
    boolean onlyEnd = error.expected() != null && error.expected().size() == 1;
    if (!onlyEnd || !error.expected().contains(Token.EOF) || !mayHavePlaces()) {
      return Expected.words(error.rule(), error.expected());
    }
    for (Token token : tokens) {
      int type = token.getType();
      if (type == TaborLexer.AT || type == TaborLexer.IN || type == TaborLexer.WHERE) {
        return null;
      }
    }
    return "`at`, `in`, `where` or the end of the line";
  }

  private boolean mayHavePlaces() {
    String shape = Shapes.of(shape());
    return shape != null && (shape.contains(" at ") || shape.contains("LIMB"));
  }

  private Problem near(Problem problem, FirstError error) {
    Token offending = error.offending();
    String written = offending.getText();
    if (problem.message().contains("`at`, `in`") && isTarget(offending)) {
      return Problem.syntax(
          problem.span(),
          problem.message(),
          "Several parts are joined by commas: " + before(offending).getText() + ", " + written);
    }
    if (offending.getType() != TaborLexer.NAME || written.length() < 4) {
      return problem;
    }
    List<String> words = new ArrayList<>();
    List<Integer> types = error.expected() == null ? List.of() : error.expected().toList();
    for (int type : types) {
      String literal = type > 0 ? TaborLexer.VOCABULARY.getLiteralName(type) : null;
      if (literal != null) {
        words.add(literal.substring(1, literal.length() - 1));
      }
    }
    if (words.isEmpty()) {
      words.addAll(Lists.JOINING);
    }
    List<String> near = Near.names(written, words);
    Problem better = problem;
    if (!near.isEmpty()) {
      better =
          Problem.syntax(problem.span(), problem.message(), "Is " + Expected.or(near) + " meant?");
      for (String name : near) {
        better = better.change("Write " + name, problem.span(), name);
      }
    }
    return better;
  }

  private static boolean isTarget(Token token) {
    return Kits.FIVE_PIECE.surface(token.getText()) != null
        || (isLimbs(token.getType()) && token.getType() != TaborLexer.LINE);
  }

  private Token before(Token token) {
    Token last = tokens.get(0);
    for (Token other : tokens) {
      if (other.getStartIndex() >= token.getStartIndex() || other.getType() == Token.EOF) {
        break;
      }
      last = other;
    }
    return last;
  }

  /** The word by which {@link Shapes} knows the statement. */
  private String shape() {
    String first = tokens.get(0).getText();
    int type = tokens.get(0).getType();
    if (isLimbs(type) || type == TaborLexer.NAME || type == TaborLexer.ZONED) {
      if (has(TaborLexer.FOLLOWS)) {
        return "follows";
      }
      if (has(TaborLexer.PLAY) || has(TaborLexer.PLAYS)) {
        boolean limb = type == TaborLexer.RIGHT || type == TaborLexer.LEFT;
        return limb && !BrokenLine.other(line).lane() ? "plays" : "played";
      }
      return "lane";
    }
    return first;
  }

  private static String shown(Token token) {
    if (token.getType() == TaborLexer.LANE_START) {
      return "the colon";
    }
    if (token.getType() == TaborLexer.QUOTED || token.getType() == TaborLexer.TRIPLE_QUOTED) {
      return "a text";
    }
    if (token.getType() == Token.EOF) {
      return "the end of the line";
    }
    String text = token.getText().strip();
    int most = text.offsetByCodePoints(0, Math.min(30, text.codePointCount(0, text.length())));
    return "`" + text.substring(0, most) + (most < text.length() ? "…" : "") + "`";
  }
}
