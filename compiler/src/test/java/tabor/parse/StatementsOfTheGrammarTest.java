package tabor.parse;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.atn.ATNState;
import org.antlr.v4.runtime.atn.RuleTransition;
import org.antlr.v4.runtime.atn.Transition;
import org.junit.jupiter.api.Test;
import tabor.grammar.TaborLexer;
import tabor.grammar.TaborParser;
import tabor.syntax.SectionKind;
import tabor.syntax.StatementRow;
import tabor.syntax.StatementTable;

/** The table of statements says what the grammar says, no more and no less. */
class StatementsOfTheGrammarTest {
  private static Set<String> called(String rule) {
    Set<String> called = new TreeSet<>();
    int index = Arrays.asList(TaborParser.ruleNames).indexOf(rule);
    for (ATNState state : TaborParser.Network.ATN.states) {
      for (Transition transition : state.getTransitions()) {
        if (state.ruleIndex == index && transition instanceof RuleTransition call) {
          called.add(TaborParser.ruleNames[call.ruleIndex]);
        }
      }
    }
    return called;
  }

  @Test
  void everyStatementOfTheGrammarHasARowAndEveryRowAStatement() {
    Set<String> rules = new TreeSet<>();
    for (String family : called("statement")) {
      rules.addAll(family.equals("prose") ? Set.of(family) : called(family));
    }
    Set<String> labels =
        StatementTable.rows().stream()
            .filter(row -> !row.isSign())
            .map(StatementRow::label)
            .collect(Collectors.toCollection(TreeSet::new));
    assertThat(labels).isEqualTo(rules);
  }

  @Test
  void aRuleOfSeveralWordsHasARowForEach() {
    for (String rule : List.of("change", "hairpin")) {
      Set<String> rows =
          StatementTable.rows().stream()
              .filter(row -> row.label().equals(rule))
              .map(StatementRow::keyword)
              .collect(Collectors.toCollection(TreeSet::new));
      Set<String> words = new TreeSet<>();
      int index = Arrays.asList(TaborParser.ruleNames).indexOf(rule);
      Vocabulary.first(index).toList().forEach(type -> words.add(Vocabulary.literal(type)));
      assertThat(rows).isEqualTo(words);
    }
  }

  @Test
  void everyExampleIsReadAsItsRow() {
    for (StatementRow row : StatementTable.rows()) {
      LineParser parser = new LineParser();
      SectionKind kind = row.isHeading() ? SectionKind.opened(row.keyword()).get() : section(row);
      LineParser.Result result = parser.read(row.example(), kind, row.isHeading());
      assertThat(result.problem()).as(row.example()).isNull();
      assertThat(result.row()).as(row.example()).isNotNull();
      if (row.isSign()) {
        for (String sign : row.usage().split("[a-zA-Z0-9]+", -1)) {
          assertThat(row.example()).contains(sign);
        }
        assertThat(result.row().label()).isEqualTo("lane");
      } else {
        assertThat(result.row()).isEqualTo(row);
      }
      assertThat(Placement.refuse(result, kind, row.example()) == null)
          .as(row.example())
          .isEqualTo(!row.isHeading());
    }
  }

  private static SectionKind section(StatementRow row) {
    return row.sections().contains(SectionKind.GROOVE)
        ? SectionKind.GROOVE
        : row.sections().iterator().next();
  }

  /** What a usage writes in lower case is a word of the language. */
  @Test
  void theWordsOfEveryUsageAreWordsOfTheLanguage() {
    for (StatementRow row : StatementTable.rows()) {
      if (row.isSign()) {
        continue;
      }
      for (String word : row.usage().split("[^a-zA-Z\\-…%]+", -1)) {
        if (word.matches("[a-z].*")) {
          assertThat(Vocabulary.keywords()).as(row.usage()).contains(word);
        }
      }
      if (row.keyword() != null) {
        assertThat(row.usage().split(" ", 2)[0]).isEqualTo(row.keyword());
      }
    }
  }

  @Test
  void aNameMayBeAnyWordOfTheLanguage() {
    for (int type = 1; type <= TaborLexer.VOCABULARY.getMaxTokenType(); type++) {
      String literal = Vocabulary.literal(type);
      if (literal != null && literal.matches("[a-z].*")) {
        assertThat(Vocabulary.isName(type)).as(literal).isTrue();
      }
    }
    assertThat(Vocabulary.isName(TaborLexer.NAME)).isTrue();
    assertThat(Vocabulary.isName(Token.EOF)).isFalse();
    assertThat(Vocabulary.isName(TaborLexer.ZONED)).isFalse();
  }
}
