package tabor.parse;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.antlr.v4.runtime.Token;
import org.junit.jupiter.api.Test;
import tabor.grammar.TaborLexer;
import tabor.parse.ExpectedWords.Item;
import tabor.parse.ExpectedWords.Place;
import tabor.testing.Files;

class ExpectedWordsTest {
  private static String items(String text) {
    return ExpectedWords.at(text).items().stream()
        .map(i -> (i.word() == null ? i.kind() : "`" + i.word() + "`") + " " + i.rules())
        .collect(Collectors.joining("\n"));
  }

  @Test
  void itemsSayWhichPartOfWhichStatement() {
    assertThat(items("right plays "))
        .isEqualTo(
            """
            surface [plays, surface]
            `spread` [played, patternItem, playedPattern]
            name [played, patternItem, playedPattern, patternName, name]\
            """);
    assertThat(items("step a from ")).isEqualTo("name [stepHeading, sectionName, name]");
    assertThat(items("move kick from 3 ")).isEqualTo("`to` [move]");
    assertThat(items("play a 4 "))
        .isEqualTo(
            """
            `time` [playSections, playClause]
            `times` [playSections, playClause]
            `bar` [playSections, playClause]
            `bars` [playSections, playClause]\
            """);
    assertThat(items("add kick at 1 ")).doesNotContain("BAR_LINE");
    assertThat(items("each add kick at 1 ")).contains("BAR_LINE");
    assertThat(items("each add kick at 2 ")).contains("`of`");
    assertThat(items("add kick at 2 ")).doesNotContain("`of`");
    assertThat(ExpectedWords.at("accent ").items().get(0).row("accent").keyword())
        .isEqualTo("accent");
  }

  @Test
  void theWordAtTheEndIsStillBeingWritten() {
    ExpectedWords words = ExpectedWords.at("  add ki");
    assertThat(words.start()).isEqualTo(6);
    assertThat(words.typed()).isEqualTo("ki");
    assertThat(words.words()).containsExactly("add");
    assertThat(words.items()).isEqualTo(ExpectedWords.at("add ").items());
    assertThat(ExpectedWords.at("add").typed()).isEqualTo("add");
    assertThat(ExpectedWords.at("title \"x\"").typed()).isEmpty();
    assertThat(ExpectedWords.at("accent hihat at 2").items())
        .extracting(Item::kind)
        .containsExactly("count", Item.WORD);
  }

  @Test
  void beatsAreReadCharacterByCharacter() {
    ExpectedWords words = ExpectedWords.at("kick : x . ");
    assertThat(words.place()).isEqualTo(Place.BEATS);
    assertThat(words.typed()).isEmpty();
    assertThat(words.items()).extracting(Item::kind).contains("STROKE", "BAR_LINE", Item.END);
    assertThat(words.items()).extracting(Item::word).contains("{", "-").doesNotContain("}", "^");
    assertThat(ExpectedWords.at("kick : {x").items()).extracting(Item::word).contains("}", "^");
    assertThat(ExpectedWords.at("kick : " + "{".repeat(5000)).items()).isEmpty();
  }

  @Test
  void nothingFollowsInTextsCommentsAndNonsense() {
    assertThat(ExpectedWords.at("title \"My ").place()).isEqualTo(Place.TEXT);
    assertThat(ExpectedWords.at("text \"\"\"\n some\n").place()).isEqualTo(Place.TEXT);
    assertThat(ExpectedWords.at("kick : x # ").place()).isEqualTo(Place.COMMENT);
    assertThat(ExpectedWords.at("title \"# \" ").place()).isEqualTo(Place.STATEMENT);
    for (String line : List.of("title \"My ", "kick : x # ", "add add ", "tempo x y ")) {
      assertThat(ExpectedWords.at(line).items()).as(line).isEmpty();
    }
  }

  @Provide
  Arbitrary<String> valid() {
    return Files.valid();
  }

  /** Whatever a valid line goes on with is among what was expected there. */
  @Property(tries = 30)
  void whatFollowsIsExpected(@ForAll("valid") String text) {
    for (String line : text.split("\n", -1)) {
      List<Token> tokens = LineTokens.of(line);
      for (Token token : tokens) {
        int at = token.getStartIndex();
        if (token.getType() == Token.EOF || line.startsWith("#")) {
          continue;
        }
        ExpectedWords words = ExpectedWords.at(line.substring(0, at) + " ");
        if (words.place() == Place.STATEMENT && token.getType() != TaborLexer.LANE_START) {
          assertThat(words.items()).as(line.substring(0, at)).isNotEmpty();
          boolean found =
              words.items().stream()
                  .anyMatch(
                      item ->
                          item.word() != null
                              ? item.word().equals(token.getText())
                              : !item.kind().equals(Item.END));
          assertThat(found).as(line + " at " + at).isTrue();
        }
      }
    }
  }
}
