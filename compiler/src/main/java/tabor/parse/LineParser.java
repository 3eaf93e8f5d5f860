package tabor.parse;

import java.util.List;
import java.util.function.Predicate;
import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.Token;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.grammar.TaborParser;
import tabor.syntax.SectionKind;
import tabor.syntax.Statement;
import tabor.syntax.StatementRow;
import tabor.syntax.StatementTable;

/**
 * Reads one line with the generated tables and parser, whose objects it keeps from line to line.
 * Not safe for several threads.
 */
final class LineParser {
  /** Groups deeper than this are not parsed at all, so that the parser's stack is safe. */
  static final int DEEPEST = 8;

  /**
   * A line as read.
   *
   * @param statement what it says; a broken line or heading if there is a problem
   * @param row its row in the table of statements; null if there is a problem
   * @param problem null if there is none
   */
  record Result(Statement statement, @Nullable StatementRow row, @Nullable SyntaxProblem problem) {}

  private final LineTokens tokens = new LineTokens();
  private final NoRecovery strategy = new NoRecovery();
  private final TaborParser parser = new TaborParser(tokens);
  private final FirstProblem problems = new FirstProblem();
  private final NumberBuilder numbers = new NumberBuilder(problems);
  private final BeatBuilder beats = new BeatBuilder(problems);
  private final SettingBuilder settings = new SettingBuilder(problems, numbers);
  private final HeadingBuilder headings = new HeadingBuilder(problems, beats);
  private final KitLineBuilder kits = new KitLineBuilder(problems, numbers);
  private final ChartBuilder charts = new ChartBuilder(problems, numbers, settings);
  private final PartBuilder parts = new PartBuilder(problems, numbers, beats);
  private final EditBuilder edits = new EditBuilder(problems, numbers);
  private final SheetBuilder sheets = new SheetBuilder(problems, numbers, parts, edits);
  private final PlayerBuilder players = new PlayerBuilder(problems, numbers);

  /** Of the line read last; null if it is no statement. */
  private @Nullable StatementRow row;

  LineParser() {
    parser.removeErrorListeners();
    parser.setErrorHandler(strategy);
    parser.setInterpreter(new Prediction(parser));
  }

  /**
   * Reads a line that says something; never throws.
   *
   * @param kind the section it stands in, or opens
   * @param heading true for the first line of a section
   */
  Result read(String line, SectionKind kind, boolean heading) {
    Statement statement = statementOf(line);
    if (statement != null && problems.problem() == null) {
      return new Result(statement, row, null);
    }
    Statement broken =
        heading ? BrokenLine.heading(line, kind, tokens.all()) : BrokenLine.other(tokens.all());
    return new Result(broken, null, explained(line, kind, heading, List.copyOf(tokens.all())));
  }

  /** What is wrong with the line just read, with the fixes that help. */
  private SyntaxProblem explained(String line, SectionKind kind, boolean heading, List<Token> all) {
    SyntaxProblem problem = problems.problem();
    // From here on the parser reads other lines, and their problems take the place of this one's.
    Predicate<String> reads = other -> allRead(other, kind, heading);
    if (problem == null) {
      problem = new SyntaxErrorExplainer(line, kind, heading, all).explain(reads);
    }
    return problem.fixes().isEmpty() ? problem : problem.keeping(line, reads);
  }

  /** A problem of a line that can be read, with what else may be meant by it where it stands. */
  SyntaxProblem meant(SyntaxProblem problem, String line, SectionKind kind) {
    lex(line);
    return PaperLines.explained(
        problem,
        line,
        kind,
        List.copyOf(tokens.all()),
        other -> other.lines().allMatch(one -> reads(one, kind, false)));
  }

  /** A fix may be two lines, a comment, or a text that runs over several. */
  private boolean allRead(String other, SectionKind kind, boolean heading) {
    return other.contains("\"\"\"")
        ? reads(other, kind, heading)
        : other.lines().allMatch(one -> isComment(one) || reads(one, kind, heading));
  }

  private static boolean isComment(String line) {
    return line.isBlank() || line.stripLeading().startsWith("#");
  }

  private boolean reads(String line, SectionKind kind, boolean heading) {
    Statement statement = statementOf(line);
    return statement != null
        && problems.problem() == null
        && row != null
        && (heading
            ? row.keyword() != null && row.keyword().equals(kind.word())
            : Placement.refuse(new Result(statement, row, null), kind, line) == null);
  }

  /** What a line says, its row and its problem kept; null if it is no statement. */
  private @Nullable Statement statementOf(String line) {
    problems.clear();
    row = null;
    lex(line);
    Token deep = Nesting.deeperThan(DEEPEST, tokens.all());
    if (deep != null) {
      problems.report(tooDeep(deep));
      return null;
    }
    TaborParser.SingleContext tree = parse();
    if (tree == null) {
      return null;
    }
    row = row(tree.content);
    return statement(tree.content);
  }

  /** True if the line is a statement of the notation, wherever it may stand. */
  boolean isStatement(String line) {
    lex(line);
    return Nesting.deeperThan(DEEPEST, tokens.all()) == null && parse() != null;
  }

  private void lex(String line) {
    tokens.read(line, Delimiters.endOfBlanks(line, line.length()));
  }

  private static SyntaxProblem tooDeep(Token brace) {
    return new SyntaxProblem(
        Code.TOO_DEEP,
        Spans.of(brace),
        "groups are nested more than " + DEEPEST + " deep here",
        "Take the innermost groups apart, or spread the word over more beats",
        List.of());
  }

  /** The tree of the line; null if it is no statement. */
  private TaborParser.@Nullable SingleContext parse() {
    tokens.seek(0);
    parser.setTokenStream(tokens);
    try {
      return parser.single();
    } catch (NoRecovery.Broken broken) {
      return null;
    }
  }

  private static StatementRow row(TaborParser.StatementContext context) {
    ParserRuleContext part = (ParserRuleContext) context.getChild(0);
    // A text has no kind of its own between it and the statement.
    ParserRuleContext line =
        part.getChild(0) instanceof ParserRuleContext inner && context.prosePart == null
            ? inner
            : part;
    return StatementTable.row(
        TaborParser.ruleNames[line.getRuleIndex()], context.getStart().getText());
  }

  private Statement statement(TaborParser.StatementContext context) {
    if (context.lanePart != null || context.editPart != null) {
      Statement statement =
          context.lanePart != null
              ? context.lanePart.accept(parts)
              : context.editPart.accept(edits);
      sheets.refuse(context, statement);
      return statement;
    }
    if (context.headingPart != null) {
      return context.headingPart.accept(headings);
    }
    if (context.settingPart != null) {
      return context.settingPart.accept(settings);
    }
    if (context.chartPart != null) {
      return context.chartPart.accept(charts);
    }
    if (context.kitPart != null) {
      return context.kitPart.accept(kits);
    }
    if (context.sheetPart != null) {
      return sheets.line(context.sheetPart);
    }
    if (context.playerPart != null) {
      return context.playerPart.accept(players);
    }
    TaborParser.ProseContext prose = context.prosePart;
    return new Statement.Prose(TextBuilder.prose(prose.words), Spans.of(prose));
  }
}
