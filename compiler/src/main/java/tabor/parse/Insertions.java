package tabor.parse;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import org.antlr.v4.runtime.Token;
import tabor.grammar.TaborLexer;
import tabor.grammar.TaborParser;
import tabor.lists.Lists;
import tabor.parse.LineSimulation.Expectation;
import tabor.source.Span;

/** A word of the language that was left out: tried wherever one could stand. */
final class Insertions {
  private static final int LONGEST_LINE = 1000;

  private Insertions() {}

  /** The same problem with a fix for a word that would make the line a statement, if one does. */
  static SyntaxProblem add(
      SyntaxProblem problem,
      String line,
      List<Token> tokens,
      LineSimulation simulation,
      Predicate<String> reads) {
    if (simulation.read() == 0 || line.length() > LONGEST_LINE) {
      return problem;
    }
    Token offending = tokens.get(simulation.read());
    Token before = tokens.get(simulation.read() - 1);
    boolean ends = offending.getType() == Token.EOF;
    int end = Spans.of(before).end();
    int start = ends ? end : offending.getStartIndex();
    List<SyntaxProblem> found = new ArrayList<>();
    boolean choices = Choices.mayStand(tokens.get(0));
    boolean beats = line.substring(start).matches("[ \\t]*[rlbxkpRLBXKP.|(){}'/ -]+");
    for (String word : words(simulation, choices, Spans.of(before).in(line))) {
      if (simulation.expects(TaborLexer.LANE_START) && beats != word.equals(":")) {
        continue;
      }
      boolean comma = word.equals(",");
      int place = comma ? end : start;
      String text = comma ? word : ends ? " " + word : word + " ";
      String fixed = line.substring(0, place) + text + line.substring(place);
      if (reads.test(fixed)) {
        String where = ends ? " at the end" : " before " + Wording.shown(offending);
        String title = comma ? "Write a comma" + where : "Write `" + word + "`" + where;
        found.add(problem.fix(title, new Span(place, place), text));
      }
    }
    // Where several words would do, which one is meant is for the writer to say.
    return found.size() == 1 ? found.get(0) : problem;
  }

  /** The words that may come next, one of singular and plural. */
  private static Set<String> words(LineSimulation simulation, boolean choices, String before) {
    Set<String> words = new LinkedHashSet<>();
    for (Expectation expectation : simulation.expected()) {
      if (!choices && Choices.isOne(expectation)) {
        continue;
      }
      for (int type : expectation.types().toList()) {
        String word = type == TaborLexer.LANE_START ? ":" : Vocabulary.literal(type);
        if (word != null && !isName(simulation, type)) {
          words.add(word);
        }
      }
    }
    Set<String> plurals = new LinkedHashSet<>(words);
    for (String word : plurals) {
      if (words.contains(word + "s")) {
        words.remove(before.equals("1") ? word + "s" : word);
      }
    }
    return words;
  }

  /** True for a word that would be read as a name, or is for the writer to choose. */
  private static boolean isName(LineSimulation simulation, int type) {
    return Lists.any(
        simulation.expected(),
        e ->
            e.types().contains(type)
                && (e.starting().contains(TaborParser.RULE_name)
                    || e.starting().contains(TaborParser.RULE_plainName)
                    || e.starting().contains(TaborParser.RULE_saidWord)
                    || e.starting().contains(TaborParser.RULE_surface)
                    || e.starting().contains(TaborParser.RULE_limb)));
  }
}
