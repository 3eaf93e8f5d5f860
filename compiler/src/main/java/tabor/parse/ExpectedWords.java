package tabor.parse;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.antlr.v4.runtime.Token;
import org.jspecify.annotations.Nullable;
import tabor.grammar.TaborLexer;
import tabor.grammar.TaborParser;
import tabor.lists.Lists;
import tabor.parse.LineSimulation.Expectation;
import tabor.syntax.StatementRow;
import tabor.syntax.StatementTable;

/**
 * What the grammar lets follow at a place of a line. It says what kind of thing may stand there and
 * in which part of which statement; which names exist, and which of them make sense, is for the
 * caller to know.
 *
 * @param start offset of the word that is being written at the end of the text; the text's length
 *     where none is
 * @param typed that word as far as it is written, perhaps empty
 * @param place what the end of the text is a part of
 * @param words the words of the line before the one that is being written
 * @param items what may stand at {@code start}, each once; empty in texts and comments, and where
 *     what stands before it fits no statement
 */
public record ExpectedWords(
    int start, String typed, Place place, List<String> words, List<Item> items) {
  /** What a place is a part of. */
  public enum Place {
    /** The words of a statement. */
    STATEMENT,
    /** The beats of a lane, or the places of a pattern: a character is a word of its own. */
    BEATS,
    /** A quoted text. */
    TEXT,
    /** A comment. */
    COMMENT
  }

  /**
   * One thing that may follow.
   *
   * @param kind what it is: {@link #WORD} for a word of the language, else the name of the grammar
   *     rule that reads it ({@code name}, {@code surface}, {@code letter}, {@code count}, {@code
   *     number}, {@code text}) or of its token ({@code WHOLE}, {@code RATIO}, {@code STROKE} …)
   * @param word how it is written, where there is only one way; null for names, numbers and texts
   * @param rules the grammar rules that it is read in, the outermost first, from the statement's
   *     own rule on: {@code [plays, surface]}, {@code [move, targets, target, limb]}, {@code
   *     [stepHeading, sectionName, name]}
   */
  public record Item(String kind, @Nullable String word, List<String> rules) {
    /** The kind of items that are a word of the language, or a sign. */
    public static final String WORD = "word";

    /** The kind of the item that says that the line may end here. */
    public static final String END = "end";

    /** Copies the list. */
    public Item {
      rules = List.copyOf(rules);
    }

    /** The rule of the statement that it would be a part of: a label of {@link StatementTable}. */
    public String statement() {
      return rules.isEmpty() ? "" : rules.get(0);
    }

    /**
     * The row of its statement.
     *
     * @param firstWord the first word of the line
     */
    public StatementRow row(@Nullable String firstWord) {
      return StatementTable.row(statement(), firstWord == null ? word : firstWord);
    }

    /** True if it is read in this rule, at any depth. */
    public boolean in(String rule) {
      return rules.contains(rule);
    }
  }

  /** Rules that read one thing, whatever tokens it may be. */
  private static final Set<Integer> THINGS =
      Set.of(
          TaborParser.RULE_name,
          TaborParser.RULE_surface,
          TaborParser.RULE_letter,
          TaborParser.RULE_count,
          TaborParser.RULE_saidWord,
          TaborParser.RULE_number,
          TaborParser.RULE_text);

  /** Copies the lists. */
  public ExpectedWords {
    words = List.copyOf(words);
    items = List.copyOf(items);
  }

  /**
   * What may follow.
   *
   * @param text the line up to the cursor, indentation included; of a text in triple quotes the
   *     lines before it too. A word that ends there counts as still being written.
   */
  public static ExpectedWords at(String text) {
    List<Token> tokens = LineTokens.of(text);
    tokens.remove(tokens.size() - 1);
    Place place = place(text, tokens);
    if (place == Place.TEXT || place == Place.COMMENT) {
      return new ExpectedWords(text.length(), "", place, texts(tokens), List.of());
    }
    int start = text.length();
    if (place == Place.STATEMENT && !tokens.isEmpty()) {
      Token last = tokens.get(tokens.size() - 1);
      if (last.getStopIndex() + 1 == text.length() && isUnfinished(last)) {
        start = last.getStartIndex();
        tokens.remove(tokens.size() - 1);
      }
    }
    return new ExpectedWords(start, text.substring(start), place, texts(tokens), items(tokens));
  }

  private static List<Item> items(List<Token> tokens) {
    if (Nesting.deeperThan(LineParser.DEEPEST, tokens) != null) {
      return List.of();
    }
    LineSimulation simulation = LineSimulation.over(tokens);
    if (simulation.read() < tokens.size()) {
      return List.of();
    }
    boolean choices = !tokens.isEmpty() && Choices.mayStand(tokens.get(0));
    List<Item> items = items(simulation, choices);
    int last = tokens.size() - 1;
    if (last > 0 && tokens.get(last).getType() == TaborLexer.GAP) {
      // A bar line takes the blanks before it along.
      for (Item item : items(LineSimulation.over(tokens.subList(0, last)), choices)) {
        if (item.kind().equals("BAR_LINE")) {
          items.add(item);
        }
      }
    }
    return items;
  }

  private static List<String> texts(List<Token> tokens) {
    return Lists.map(tokens, Token::getText);
  }

  private static Place place(String text, List<Token> tokens) {
    boolean beats = false;
    int end = 0;
    for (Token token : tokens) {
      int type = token.getType();
      if (type == TaborLexer.OPEN_QUOTED || type == TaborLexer.OPEN_TRIPLE) {
        return Place.TEXT;
      }
      beats |= type == TaborLexer.LANE_START;
      end = token.getStopIndex() + 1;
    }
    if (text.indexOf('#', end) >= 0) {
      return Place.COMMENT;
    }
    return beats ? Place.BEATS : Place.STATEMENT;
  }

  /** True for a token that a further character could still change. */
  private static boolean isUnfinished(Token token) {
    return switch (token.getType()) {
      case TaborLexer.QUOTED,
          TaborLexer.TRIPLE_QUOTED,
          TaborLexer.COMMA,
          TaborLexer.EQUALS,
          TaborLexer.STRANGE ->
          false;
      default -> true;
    };
  }

  private static List<Item> items(LineSimulation simulation, boolean choices) {
    Set<Item> items = new LinkedHashSet<>();
    for (Expectation expectation : simulation.expected()) {
      if (!choices && Choices.isOne(expectation)) {
        continue;
      }
      // Which words a name may be is no choice of words.
      if (expectation.rule() == TaborParser.RULE_plainName) {
        List<String> path = Lists.map(expectation.rules(), i -> TaborParser.ruleNames[i]);
        boolean named = path.get(path.size() - 2).equals("name");
        List<String> above = rules(named ? path.subList(0, path.size() - 1) : path);
        items.add(new Item("name", null, above));
        continue;
      }
      List<String> rules = rules(Lists.map(expectation.rules(), i -> TaborParser.ruleNames[i]));
      int rule = expectation.rule();
      if (THINGS.contains(rule)) {
        items.add(new Item(TaborParser.ruleNames[rule], null, rules));
        continue;
      }
      for (int type : expectation.types().toList()) {
        items.add(item(type, rules));
      }
    }
    return new ArrayList<>(items);
  }

  private static Item item(int type, List<String> rules) {
    if (type == Token.EOF) {
      return new Item(Item.END, null, rules);
    }
    String word = Vocabulary.literal(type);
    return word == null
        ? new Item(TaborParser.Network.VOCABULARY.getSymbolicName(type), null, rules)
        : new Item(Item.WORD, word, rules);
  }

  /** From the statement's own rule on. */
  private static List<String> rules(List<String> path) {
    // single, statement, and for all but texts the family of the statement
    int own = path.size() > 2 && path.get(2).equals("prose") ? 2 : 3;
    return path.size() <= own ? List.of() : path.subList(own, path.size());
  }
}
