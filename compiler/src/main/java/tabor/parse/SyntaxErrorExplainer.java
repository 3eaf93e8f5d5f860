package tabor.parse;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import org.antlr.v4.runtime.Token;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Near;
import tabor.grammar.TaborLexer;
import tabor.grammar.TaborParser;
import tabor.lists.Lists;
import tabor.parse.LineSimulation.Expectation;
import tabor.source.Span;
import tabor.syntax.SectionKind;
import tabor.syntax.StatementRow;
import tabor.syntax.StatementTable;

/**
 * Why a line could not be read, in a teacher's words: from the first token that no reading of the
 * grammar takes, what could have stood there, and the table of statements. Fixes are candidates:
 * the reader offers those that leave a line without a problem.
 */
final class SyntaxErrorExplainer {
  /** More ways to write a statement than a person reads in a message. */
  private static final int MOST_USAGES = 4;

  private final String line;
  private final SectionKind kind;
  private final boolean heading;
  private final List<Token> tokens;
  private final LineSimulation simulation;
  private final int at;
  private final Token offending;

  /** What could stand in the place of the offending token, in statements that may stand here. */
  private final List<Expectation> possible;

  /**
   * @param kind the section that the line stands in, or opens
   * @param tokens all of the line, the end included; the line is no statement
   */
  SyntaxErrorExplainer(String line, SectionKind kind, boolean heading, List<Token> tokens) {
    this.line = line;
    this.kind = kind;
    this.heading = heading;
    this.tokens = tokens;
    this.simulation = LineSimulation.over(tokens);
    this.at = simulation.read();
    if (at >= tokens.size()) {
      throw new IllegalStateException("nothing is wrong with: " + line);
    }
    this.offending = tokens.get(at);
    List<Expectation> here = Lists.filter(simulation.expected(), this::belongs);
    this.possible = here.isEmpty() ? simulation.expected() : here;
  }

  private boolean belongs(Expectation expectation) {
    if (Choices.isOne(expectation) && !Choices.mayStand(tokens.get(0))) {
      return false;
    }
    StatementRow row = row(expectation);
    return row == null
        || (heading ? kind.word().equals(row.keyword()) : row.sections().contains(kind));
  }

  /**
   * The first thing that is wrong.
   *
   * @param reads tells whether another line would be read without a problem in the same place
   */
  SyntaxProblem explain(Predicate<String> reads) {
    SyntaxProblem problem = openText();
    if (problem == null) {
      problem = InvisibleCharacters.explain(line, tokens, at);
    }
    // In a chart nothing has beats: a colon was put behind a word.
    if (problem == null && laneStart() < at && (kind != SectionKind.CHART || heading)) {
      return new BeatErrorExplainer(line, tokens, at).explain();
    }
    CommonMistakes mistakes =
        new CommonMistakes(line, kind, heading, tokens, simulation, at, offending);
    if (problem == null && !heading && PaperLines.isSaid(tokens)) {
      problem = meantOnPaper(reads);
    }
    if (problem == null) {
      problem = mistakes.explain(reads);
    }
    if (problem == null && !heading) {
      SyntaxProblem joined = mistakes.joinedTargets();
      SyntaxProblem meant = joined == null ? null : meantOnPaper(reads);
      problem = meant == null ? joined : meant;
    }
    if (problem != null) {
      return problem;
    }
    problem = plain(reads);
    boolean sure = !problem.keeping(line, reads).fixes().isEmpty();
    return heading || sure ? problem : PaperLines.explained(problem, line, kind, tokens, reads);
  }

  /** What is meant by a line as people say it; null if it is none that is known. */
  private @Nullable SyntaxProblem meantOnPaper(Predicate<String> reads) {
    SyntaxProblem plain = plain(reads);
    SyntaxProblem meant = PaperLines.explained(plain, line, kind, tokens, reads);
    return meant == plain ? null : meant;
  }

  private SyntaxProblem plain(Predicate<String> reads) {
    SyntaxProblem start =
        heading ? null : new LineStart(line, kind, tokens, at, this::usage).explain();
    SyntaxProblem problem = start == null ? misspelt() : start;
    return problem == null ? misplaced(reads) : problem;
  }

  /** Index of the colon; the number of tokens if there is none. */
  private int laneStart() {
    for (int i = 0; i < tokens.size(); i++) {
      if (tokens.get(i).getType() == TaborLexer.LANE_START) {
        return i;
      }
    }
    return tokens.size();
  }

  private @Nullable SyntaxProblem openText() {
    for (Token token : tokens) {
      if (token.getType() == TaborLexer.LANE_START) {
        return null;
      }
      if (token.getType() == TaborLexer.OPEN_QUOTED) {
        Span span = Spans.of(token);
        int end = BrokenLine.span(tokens).end();
        String rest = line.substring(span.start(), end);
        int from = heading ? rest.lastIndexOf(" from ") : -1;
        int close =
            from < 0 ? end : span.start() + rest.substring(0, from).stripTrailing().length();
        SyntaxProblem made =
            SyntaxProblem.of(
                new Span(span.start(), span.start() + 1),
                "this text has no closing quotes",
                "Write \" after its last word; a text over several lines stands between \"\"\" and"
                    + " \"\"\"");
        if (from >= 0) {
          made = made.fix("Close the text before “from”", new Span(close, close), "\"");
        }
        // What looks like a part was a line of its own once.
        return rest.contains(" : ") ? made : made.fix("Close the text", new Span(end, end), "\"");
      }
      if (token.getType() == TaborLexer.OPEN_TRIPLE) {
        return SyntaxProblem.of(
            Spans.of(token),
            "this text is not closed before its section ends",
            "Write \"\"\" after its last line");
      }
    }
    return null;
  }

  static String meant(List<String> near) {
    return "Is " + Wording.or(near) + " meant?";
  }

  static SyntaxProblem replaced(SyntaxProblem problem, Token token, List<String> words) {
    SyntaxProblem better = problem;
    for (String word : words) {
      better = better.fix("Write " + word, Spans.of(token), word);
    }
    return better;
  }

  static boolean isCapital(String written) {
    String small = written.toLowerCase(Locale.ROOT);
    return !small.equals(written) && small.matches("[a-z0-9.&+/-]+");
  }

  /** A word that is no word of the notation, whatever stands around it. */
  private @Nullable SyntaxProblem misspelt() {
    int type = offending.getType();
    if (type != TaborLexer.MISSPELT && type != TaborLexer.SAID && type != TaborLexer.STRANGE) {
      return null;
    }
    String written = offending.getText();
    Span span = Spans.of(offending);
    if (isCapital(written)) {
      String small = written.toLowerCase(Locale.ROOT);
      return SyntaxProblem.of(
              span,
              "`" + written + "` has a capital letter",
              "Words, names and counts are written in lower case: " + small)
          .fix("Write " + small, span, small);
    }
    boolean bars = simulation.expectsIn(TaborParser.RULE_barList);
    boolean counts = at > 0 && tokens.get(at - 1).getType() == TaborLexer.AT;
    if (written.matches("[0-9]+[-–][0-9]+") && (bars || counts)) {
      String to = written.replaceAll("[-–]", " to ");
      return SyntaxProblem.of(
              span,
              "`" + written + "` is no " + (bars ? "number" : "count"),
              "From one to another is written " + to)
          .fix("Write " + to, span, to);
    }
    if (written.matches("[0-9]+-[0-9]+") && simulation.expects(TaborLexer.RATIO)) {
      String meter = written.replace('-', '/');
      return SyntaxProblem.of(
              span, "`" + written + "` is no meter", "It is written with a slash: " + meter)
          .fix("Write " + meter, span, meter);
    }
    if (written.matches("[0-9].*") && simulation.expectsIn(TaborParser.RULE_count)) {
      SyntaxProblem problem =
          SyntaxProblem.of(
              span,
              "`" + written + "` is neither a number nor a count",
              "A count is a beat with a syllable, such as 1, 2&, 3e or 4a, or a slot such as 2.5");
      String count = written.replaceAll("and|und|n", "&");
      return count.equals(written) ? problem : problem.fix("Write " + count, span, count);
    }
    if (written.indexOf('_') >= 0) {
      String better = written.toLowerCase(Locale.ROOT).replace('_', '-');
      return SyntaxProblem.of(
              span, "`" + written + "` is no name", "Parts of a name are joined by -: " + better)
          .fix("Write " + better, span, better);
    }
    return null;
  }

  /** Any other word that cannot stand where it does. */
  private SyntaxProblem misplaced(Predicate<String> reads) {
    boolean ends = offending.getType() == Token.EOF;
    String expected = Wording.expected(possible);
    Token last = tokens.get(Math.max(0, at - 1));
    String shown = ends ? "the line ends" : Wording.shown(offending);
    String message =
        at == 0 || (expected == null && !ends)
            ? shown + " does not fit here"
            : expected == null
                ? "the line ends too early"
                : "after "
                    + Wording.shown(last)
                    + " comes "
                    + expected
                    + (ends ? ", but " : ", not ")
                    + shown;
    Span span = ends ? Spans.of(last) : BrokenLine.character(tokens, at);
    if (simulation.expectsOnlyStartOf(TaborParser.RULE_surface)
        && Vocabulary.keywords().contains(offending.getText())) {
      message = "`" + offending.getText() + "` is a word of the language and names no surface";
    }
    List<String> near = near();
    if (!near.isEmpty()) {
      return replaced(SyntaxProblem.of(span, message, meant(near)), offending, near);
    }
    SyntaxProblem problem = SyntaxProblem.of(span, message, usage());
    if (simulation.expects(TaborLexer.LANE_START) && offending.getText().matches("[;=]")) {
      return problem.fix("Write a colon", span, ":");
    }
    return Insertions.add(problem, line, tokens, simulation, reads);
  }

  private List<String> near() {
    String written = offending.getText();
    if (!Vocabulary.isWord(offending.getType()) || written.length() < 3) {
      return List.of();
    }
    List<String> words = new ArrayList<>();
    for (Expectation expectation : possible) {
      for (int type : expectation.types().toList()) {
        String literal = Vocabulary.literal(type);
        boolean name =
            expectation.in(TaborParser.RULE_name)
                || expectation.in(TaborParser.RULE_plainName)
                || expectation.in(TaborParser.RULE_saidWord);
        if (literal != null && !name && !words.contains(literal)) {
          words.add(literal);
        }
      }
    }
    return Lists.filter(
        Near.names(written, words),
        near -> !words.contains(otherNumber(near)) || near.endsWith("s") == written.endsWith("s"));
  }

  /** {@code eighths} for {@code eighth} and the other way round; one of them is enough. */
  private static String otherNumber(String word) {
    return word.endsWith("s") ? word.substring(0, word.length() - 1) : word + "s";
  }

  /** How the statement is written, as far as it is known which one it is. */
  private @Nullable String usage() {
    List<StatementRow> rows = new ArrayList<>();
    for (Expectation expectation : possible) {
      StatementRow row = row(expectation);
      if (row != null && !Lists.any(rows, other -> other.usage().equals(row.usage()))) {
        rows.add(row);
      }
    }
    if (simulation.expects(TaborLexer.LANE_START)) {
      rows.removeIf(row -> !row.label().equals("lane"));
    }
    if (rows.isEmpty()) {
      rows.addAll(StatementTable.startingWith(tokens.get(0).getText()));
      rows.removeIf(row -> !heading && !row.sections().contains(kind));
    }
    return rows.size() > MOST_USAGES ? null : Wording.usage(rows);
  }

  /** The statement that an expectation is a part of; null at the end of the line. */
  private @Nullable StatementRow row(Expectation expectation) {
    for (int rule : expectation.rules()) {
      String label = TaborParser.ruleNames[rule];
      if (StatementTable.isLabel(label)) {
        return StatementTable.find(label, tokens.get(0).getText()).orElse(null);
      }
    }
    return null;
  }
}
