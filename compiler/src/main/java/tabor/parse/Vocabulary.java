package tabor.parse;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Collections;
import java.util.Deque;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import org.antlr.v4.runtime.atn.ATN;
import org.antlr.v4.runtime.atn.ATNState;
import org.antlr.v4.runtime.atn.RuleTransition;
import org.antlr.v4.runtime.atn.Transition;
import org.antlr.v4.runtime.misc.IntervalSet;
import org.jspecify.annotations.Nullable;
import tabor.grammar.TaborLexer;
import tabor.grammar.TaborParser;
import tabor.kit.Kits;
import tabor.syntax.StatementRow;
import tabor.syntax.StatementTable;

/**
 * The words of the notation by what they are used for, worked out from the grammar, so that a list
 * of them is never kept beside it. A word may have several roles: {@code plain} is a level and
 * starts a line.
 */
public final class Vocabulary {
  /** What a word is used for. */
  public enum Role {
    /** Opens a section: {@code groove}. */
    HEADING,
    /** Starts any other line: {@code tempo}, {@code accent}, {@code bars}. */
    STATEMENT,
    /** Joins the parts of a line: {@code at}, {@code from}, {@code later}. */
    JOINING,
    /** Who plays: {@code right}, {@code foot}, {@code hands}, {@code line}, {@code all}. */
    LIMB,
    /** {@code ghosted}, {@code accent} and their like. */
    LEVEL,
    /** {@code mf}. */
    DYNAMIC,
    /** {@code eighths}, {@code dotted-quarter}. */
    NOTE_VALUE,
    /** A standard surface or piece: {@code snare}, {@code ride.bell}. */
    SURFACE,
    /** What {@code show} takes. */
    SHOWN,
    /** What {@code click} takes. */
    CLICK,
    /** What {@code feel} takes. */
    FEEL,
    /** What {@code limits} takes. */
    LIMIT,
    /** A shape of note heads. */
    HEAD,
    /** A character of the beats that is no letter: {@code ^}. */
    SIGN
  }

  private static final ATN GRAMMAR = TaborParser.Network.ATN;
  private static final IntervalSet NAMES = first(TaborParser.RULE_name);

  private Vocabulary() {}

  /** All words of the language in alphabetical order, surfaces and signs left out. */
  public static SortedSet<String> keywords() {
    SortedSet<String> words = new TreeSet<>();
    for (int type = 1; type <= TaborParser.Network.VOCABULARY.getMaxTokenType(); type++) {
      String literal = literal(type);
      if (literal != null && Character.isLetter(literal.charAt(0))) {
        words.add(literal);
      }
    }
    return Collections.unmodifiableSortedSet(words);
  }

  /** The words of each role in alphabetical order. */
  public static Map<Role, SortedSet<String>> byRole() {
    return Collections.unmodifiableMap(ByRole.WORDS);
  }

  /** The words of one role in alphabetical order. */
  public static SortedSet<String> of(Role role) {
    return Collections.unmodifiableSortedSet(ByRole.WORDS.get(role));
  }

  /** True if a token of this type may name a section. */
  static boolean isName(int type) {
    return NAMES.contains(type);
  }

  /** True for names and for the words of the language. */
  static boolean isWord(int type) {
    return NAMES.contains(type) || type == TaborLexer.ZONED;
  }

  /** The token types that a rule may start with. */
  static IntervalSet first(int rule) {
    return GRAMMAR.nextTokens(GRAMMAR.ruleToStartState[rule]);
  }

  /** A token as it is written, if it is always written the same way; null otherwise. */
  static @Nullable String literal(int type) {
    String quoted = type > 0 ? TaborParser.Network.VOCABULARY.getLiteralName(type) : null;
    return quoted == null ? null : quoted.substring(1, quoted.length() - 1).replace("\\\\", "\\");
  }

  /** Worked out when somebody asks; reading a file does not. */
  private static final class ByRole {
    /** The rules whose words have one role; what is in no such rule joins the parts of a line. */
    private static final Map<Integer, Set<Role>> ROLES =
        Map.ofEntries(
            Map.entry(TaborParser.RULE_limb, EnumSet.of(Role.LIMB)),
            Map.entry(TaborParser.RULE_player, EnumSet.of(Role.LIMB)),
            Map.entry(TaborParser.RULE_subject, EnumSet.of(Role.LIMB)),
            Map.entry(TaborParser.RULE_target, EnumSet.of(Role.LIMB)),
            Map.entry(TaborParser.RULE_level, EnumSet.of(Role.LEVEL)),
            Map.entry(TaborParser.RULE_addedLevel, EnumSet.of(Role.LEVEL)),
            Map.entry(TaborParser.RULE_velocity, EnumSet.of(Role.LEVEL)),
            Map.entry(TaborParser.RULE_loudness, EnumSet.of(Role.DYNAMIC)),
            Map.entry(TaborParser.RULE_noteValue, EnumSet.of(Role.NOTE_VALUE)),
            Map.entry(TaborParser.RULE_beatUnit, EnumSet.of(Role.NOTE_VALUE)),
            Map.entry(TaborParser.RULE_swung, EnumSet.of(Role.NOTE_VALUE, Role.FEEL)),
            Map.entry(TaborParser.RULE_feel, EnumSet.of(Role.FEEL)),
            Map.entry(TaborParser.RULE_show, EnumSet.of(Role.SHOWN)),
            Map.entry(TaborParser.RULE_shown, EnumSet.of(Role.SHOWN)),
            Map.entry(TaborParser.RULE_click, EnumSet.of(Role.CLICK)),
            Map.entry(TaborParser.RULE_limitKind, EnumSet.of(Role.LIMIT)),
            Map.entry(TaborParser.RULE_head, EnumSet.of(Role.HEAD)),
            Map.entry(TaborParser.RULE_verb, EnumSet.of(Role.STATEMENT)),
            Map.entry(TaborParser.RULE_name, EnumSet.noneOf(Role.class)),
            Map.entry(TaborParser.RULE_plainName, EnumSet.noneOf(Role.class)),
            Map.entry(TaborParser.RULE_surface, EnumSet.noneOf(Role.class)),
            Map.entry(TaborParser.RULE_saidWord, EnumSet.noneOf(Role.class)),
            Map.entry(TaborParser.RULE_letter, EnumSet.noneOf(Role.class)));

    static final Map<Role, SortedSet<String>> WORDS = words();

    private static Map<Role, SortedSet<String>> words() {
      Map<Role, SortedSet<String>> words = new EnumMap<>(Role.class);
      for (Role role : Role.values()) {
        words.put(role, new TreeSet<>());
      }
      Map<Integer, Role> starts = new HashMap<>();
      for (StatementRow row : StatementTable.rows()) {
        if (row.isSign()) {
          row.usage()
              .chars()
              .filter(c -> !Character.isLetterOrDigit(c))
              .forEach(c -> words.get(Role.SIGN).add(Character.toString(c)));
        } else {
          starts.put(
              Arrays.asList(TaborParser.ruleNames).indexOf(row.label()),
              row.isHeading() ? Role.HEADING : Role.STATEMENT);
        }
      }
      words.get(Role.SIGN).add("|");
      words.get(Role.SURFACE).addAll(Kits.FIVE_PIECE.surfaceNames());
      for (ATNState state : GRAMMAR.states) {
        Set<Role> roles = ROLES.getOrDefault(state.ruleIndex, EnumSet.of(Role.JOINING));
        for (Transition transition : state.getTransitions()) {
          if (transition.label() != null) {
            Role start = starts.get(state.ruleIndex);
            boolean starting = start != null && isStart(state);
            for (Role role : starting ? EnumSet.of(start) : roles) {
              transition.label().toList().forEach(type -> addWord(words.get(role), type));
            }
          }
        }
      }
      return words;
    }

    private static void addWord(Set<String> words, int type) {
      String literal = literal(type);
      if (literal != null && Character.isLetter(literal.charAt(0))) {
        words.add(literal);
      }
    }

    /** True if a rule can come to a state before it has read anything. */
    private static boolean isStart(ATNState wanted) {
      Set<ATNState> seen = new HashSet<>();
      Deque<ATNState> todo = new ArrayDeque<>();
      todo.add(GRAMMAR.ruleToStartState[wanted.ruleIndex]);
      while (!todo.isEmpty()) {
        ATNState state = todo.remove();
        if (state == wanted) {
          return true;
        }
        for (Transition transition : state.getTransitions()) {
          boolean inside = transition.isEpsilon() && !(transition instanceof RuleTransition);
          if (inside && seen.add(transition.target)) {
            todo.add(transition.target);
          }
        }
      }
      return false;
    }
  }
}
