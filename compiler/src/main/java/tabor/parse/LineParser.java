package tabor.parse;

import java.util.List;
import org.antlr.v4.runtime.atn.PredictionMode;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.grammar.TaborLexer;
import tabor.grammar.TaborParser;
import tabor.source.Span;
import tabor.syntax.Statement;

/**
 * Reads one line with the generated lexer and parser, whose objects it keeps from line to line. Not
 * safe for several threads.
 */
final class LineParser {
  /** Groups deeper than this are not parsed at all, so that the parser's stack is safe. */
  static final int DEEPEST = 8;

  /**
   * A line as read.
   *
   * @param statement null if there is a problem
   * @param problem null if there is none
   */
  record Result(@Nullable Statement statement, @Nullable Problem problem) {}

  private final TaborLexer lexer = new TaborLexer(new LineStream(""));
  private final LineTokens tokens = new LineTokens(lexer);
  private final NoRecovery quick = new NoRecovery();
  private final CappedRecovery thorough = new CappedRecovery();
  private final TaborParser parser = new TaborParser(tokens);
  private final FirstError errors = new FirstError();
  private final Leaves leaves = new Leaves();
  private final BeatBuilder beats = new BeatBuilder(leaves);
  private final SettingBuilder settings = new SettingBuilder(leaves);
  private final HeadingBuilder headings = new HeadingBuilder(leaves, beats);
  private final KitBuilder kits = new KitBuilder(leaves);
  private final ChartBuilder charts = new ChartBuilder(leaves, settings);
  private final PartBuilder parts = new PartBuilder(leaves, beats);
  private final EditBuilder edits = new EditBuilder(leaves);

  LineParser() {
    lexer.removeErrorListeners();
    parser.removeErrorListeners();
    parser.addErrorListener(errors);
  }

  /** Reads a line that says something; never throws. */
  Result read(String line, @Nullable Kind kind) {
    Span deep = Nesting.deeperThan(DEEPEST, line);
    if (deep != null) {
      return new Result(
          null,
          new Problem(
              Code.TOO_DEEP,
              deep,
              "groups are nested more than " + DEEPEST + " deep here",
              "Take the innermost groups apart, or spread the word over more beats",
              List.of()));
    }
    String said = line.substring(0, Lines.endOfBlanks(line, line.length()));
    lexer.setInputStream(new LineStream(said));
    lexer.mode(TaborLexer.DEFAULT_MODE);
    tokens.fill();
    TaborParser.SingleContext tree = quickly();
    if (tree == null) {
      tree = thoroughly();
      if (errors.found()) {
        return new Result(null, new Complaints(said, kind, tokens.all()).of(errors));
      }
    }
    leaves.clear();
    Statement statement = statement(tree.content);
    if (leaves.problem() != null) {
      return new Result(null, leaves.problem());
    }
    return new Result(statement, null);
  }

  /** Parses a line that is likely to be well written; null if it is not, or seems so. */
  private TaborParser.@Nullable SingleContext quickly() {
    tokens.seek(0);
    parser.setTokenStream(tokens);
    parser.setErrorHandler(quick);
    parser.getInterpreter().setPredictionMode(PredictionMode.SLL);
    try {
      return parser.single();
    } catch (CappedRecovery.Enough enough) {
      return null;
    }
  }

  /** Parses a line again, for the first thing that is wrong with it. */
  private TaborParser.SingleContext thoroughly() {
    errors.clear();
    tokens.seek(0);
    parser.setTokenStream(tokens);
    parser.setErrorHandler(thorough);
    // The quick way of choosing between statements may fail where this one does not.
    parser.getInterpreter().setPredictionMode(PredictionMode.LL);
    try {
      return parser.single();
    } catch (CappedRecovery.Enough enough) {
      if (!errors.found()) {
        throw new IllegalStateException("a line was given up without an error");
      }
      return new TaborParser.SingleContext(null, -1);
    }
  }

  private @Nullable Statement statement(TaborParser.StatementContext context) {
    if (context.lanePart != null) {
      return context.lanePart.accept(parts);
    }
    if (context.editPart != null) {
      return context.editPart.accept(edits);
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
    TaborParser.ProseContext prose = context.prosePart;
    return new Statement.Prose(Leaves.prose(prose.words), Spans.of(prose));
  }
}
