package tabor.parse;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Label;
import net.jqwik.api.Property;
import org.antlr.v4.runtime.ANTLRInputStream;
import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.RecognitionException;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.TokenStream;
import org.antlr.v4.runtime.atn.ParserATNSimulator;
import org.junit.jupiter.api.Test;
import tabor.grammar.TaborLexer;
import tabor.grammar.TaborParser;
import tabor.syntax.StatementTable;

/** The tables that the build makes say what ANTLR's own lexer and prediction say. */
class RecognitionTablesTest {
  /** Characters that something in the lexer depends on, and others. */
  private static final String SIGNS =
      "aex rlKh09.,:=|%{}()/~!^'-+&#\"\t \r\n_\u201c\u201d\u201e\u2018\u2019"
          + "\u00aa\u00ab\u00e9\u00fc\u03b1\u1fff\u2000\u2bff\u2c00\u3005\u6f22\ud7ff\ufeff\uff10\uffff\ud83e\udd41";

  private static final List<String> LINES = lines();

  private static List<String> lines() {
    Set<String> lines = new LinkedHashSet<>();
    StatementTable.rows().forEach(row -> lines.add(row.example()));
    Path examples = Path.of(System.getProperty("basedir", "."), "..", "examples");
    try (Stream<Path> files = Files.walk(examples)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".tabor")).sorted().toList()) {
        Files.readAllLines(file).forEach(line -> lines.add(line.strip()));
      }
    } catch (IOException e) {
      return fail("no examples", e);
    }
    lines.removeIf(line -> line.isEmpty() || line.startsWith("#"));
    return List.copyOf(lines);
  }

  private static void sameTokens(String line) {
    List<String> theirs = new ArrayList<>();
    // Deprecated since it counts UTF-16 units, which is what is wanted here.
    @SuppressWarnings("deprecation")
    TaborLexer lexer = new TaborLexer(new ANTLRInputStream(line));
    Token token;
    do {
      token = lexer.nextToken();
      theirs.add(said(token));
    } while (token.getType() != Token.EOF);
    assertThat(LineTokens.of(line)).extracting(RecognitionTablesTest::said).isEqualTo(theirs);
  }

  private static String said(Token token) {
    return token.getType()
        + " "
        + token.getStartIndex()
        + "-"
        + token.getStopIndex()
        + " "
        + token.getText();
  }

  @Test
  void linesOfLessonsHaveTheSameTokens() {
    assertThat(LINES).hasSizeGreaterThan(500);
    LINES.forEach(RecognitionTablesTest::sameTokens);
  }

  @Property(tries = 3_000)
  @Label("any text has the same tokens")
  void anyTextHasTheSameTokens(@ForAll long seed) {
    Random random = new Random(seed);
    StringBuilder text = new StringBuilder(LINES.get(random.nextInt(LINES.size())));
    for (int i = random.nextInt(8); i >= 0; i--) {
      int at = random.nextInt(text.length() + 1);
      switch (random.nextInt(4)) {
        case 0 -> text.insert(at, (char) random.nextInt(Character.MAX_VALUE + 1));
        case 1 -> text.insert(at, SIGNS.charAt(random.nextInt(SIGNS.length())));
        case 2 -> text.delete(at, Math.min(text.length(), at + 1 + random.nextInt(3)));
        default -> text.insert(at, LINES.get(random.nextInt(LINES.size())));
      }
    }
    sameTokens(text.toString());
  }

  private static LineTokens tokens(String line) {
    LineTokens tokens = new LineTokens();
    tokens.read(line, line.length());
    return tokens;
  }

  /** What ANTLR chooses; 0 if it knows no alternative. */
  private static int chosen(ParserATNSimulator simulator, TokenStream tokens, int decision) {
    int at = tokens.index();
    try {
      return simulator.adaptivePredict(tokens, decision, ParserRuleContext.EMPTY);
    } catch (RecognitionException e) {
      return 0;
    } finally {
      tokens.seek(at);
    }
  }

  /** Every decision, before every word of the line. */
  private static int compared(ParserATNSimulator simulator, String line) {
    LineTokens tokens = tokens(line);
    int held = 0;
    for (int at = 0; at < tokens.size(); at++) {
      tokens.seek(at);
      for (int decision = 0; decision < simulator.decisionToDFA.length; decision++) {
        int chosen = Prediction.chosen(tokens, decision);
        if (chosen > 0) {
          held++;
          assertThat(chosen)
              .as("%s, word %s, decision %s", line, at, decision)
              .isEqualTo(chosen(simulator, tokens, decision));
        }
      }
    }
    return held;
  }

  @Test
  void decisionsAreThoseOfTheNetwork() {
    ParserATNSimulator simulator =
        TaborParser.Network.prediction(new TaborParser(tokens(LINES.get(0))));
    int held = 0;
    for (String line : LINES) {
      held += compared(simulator, line);
    }
    assertThat(held).isGreaterThan(10_000);
  }

  @Property(tries = 1_000)
  @Label("decisions before words in any order are those of the network")
  void decisionsBeforeAnyWords(@ForAll long seed) {
    Random random = new Random(seed);
    List<String> words = new ArrayList<>();
    for (int i = random.nextInt(4); i >= 0; i--) {
      String[] all = LINES.get(random.nextInt(LINES.size())).split(" ", -1);
      int from = random.nextInt(all.length);
      words.addAll(List.of(all).subList(from, from + random.nextInt(all.length - from + 1)));
    }
    String line = String.join(" ", words);
    compared(TaborParser.Network.prediction(new TaborParser(tokens(line))), line);
  }

  /** Good lines are read without the network, which costs much to set up. */
  @Test
  void theTableHoldsWhatGoodLinesNeed() {
    for (String line : LINES) {
      LineTokens tokens = tokens(line);
      TaborParser parser = new TaborParser(tokens);
      parser.setErrorHandler(new NoRecovery());
      List<Integer> missing = new ArrayList<>();
      parser.setInterpreter(
          new Prediction(parser) {
            @Override
            public int adaptivePredict(TokenStream input, int decision, ParserRuleContext context) {
              if (chosen(input, decision) == 0) {
                missing.add(decision);
              }
              return super.adaptivePredict(input, decision, context);
            }
          });
      try {
        parser.single();
        // Words that may be names as well: a section `to`, a surface `sticking`.
        if (!line.matches("sections .* to .*|blank sticking")) {
          assertThat(missing).as(line).isEmpty();
        }
      } catch (NoRecovery.Broken broken) {
        // An example of a sign is no statement; so is a heading's text over several lines.
      }
    }
  }
}
