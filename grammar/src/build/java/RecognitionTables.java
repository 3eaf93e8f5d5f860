import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.TreeSet;
import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.atn.ATN;
import org.antlr.v4.runtime.atn.ATNDeserializer;
import org.antlr.v4.runtime.atn.ATNState;
import org.antlr.v4.runtime.atn.LexerATNSimulator;
import org.antlr.v4.runtime.atn.LexerAction;
import org.antlr.v4.runtime.atn.LexerModeAction;
import org.antlr.v4.runtime.atn.LexerSkipAction;
import org.antlr.v4.runtime.atn.LexerTypeAction;
import org.antlr.v4.runtime.atn.ParserATNSimulator;
import org.antlr.v4.runtime.atn.PredictionContextCache;
import org.antlr.v4.runtime.atn.Transition;
import org.antlr.v4.runtime.dfa.DFA;
import org.antlr.v4.runtime.dfa.DFAState;
import org.antlr.v4.runtime.misc.Interval;

/**
 * Writes {@code tabor.grammar.LexerTable} and {@code tabor.grammar.DecisionTable} from the networks
 * that ANTLR makes of the grammars. ANTLR's runtime works out what it needs of such tables while it
 * reads; every process that reads one page begins anew with it. Here the same simulators work all
 * of it out, once for each build. The build runs this source file as it is.
 */
final class RecognitionTables {
  /** States of one decision; where a word may be a name as well, there is no end of them. */
  private static final int MOST_STATES = 300;

  /** Characters of up to three bytes, of which a constant of a class holds 65,535. */
  private static final int PART = 16_384;

  private RecognitionTables() {}

  /** Arguments: the folder of ANTLR's files, and the folder that the sources are written into. */
  public static void main(String[] args) throws IOException {
    Path from = Path.of(args[0]);
    Path to = Files.createDirectories(Path.of(args[1], "tabor", "grammar"));
    write(to, "LexerTable", lexer(network(from.resolve("TaborLexer.interp"))));
    write(to, "DecisionTable", decisions(network(from.resolve("TaborParser.interp"))));
  }

  /** A network as ANTLR writes it for its own tools: a list of numbers behind the word atn. */
  private static ATN network(Path file) throws IOException {
    String text = Files.readString(file);
    String numbers = text.substring(text.lastIndexOf("atn:") + "atn:".length()).strip();
    return new ATNDeserializer()
        .deserialize(
            Arrays.stream(numbers.substring(1, numbers.length() - 1).split(","))
                .mapToInt(number -> Integer.parseInt(number.strip()))
                .toArray());
  }

  // ---- the lexer

  private static String lexer(ATN network) {
    int[] symbols = symbols(network);
    Automaton automaton = new Automaton(symbols.length);
    List<String> kinds = new ArrayList<>();
    DFA[] modes = new DFA[network.modeToStartState.size()];
    for (int i = 0; i < modes.length; i++) {
      modes[i] = new DFA(network.getDecisionState(i), i);
    }
    new LexerStates(network, modes).explore(automaton, symbols, kinds);
    for (int start : automaton.starts) {
      for (int next : automaton.next.get(start)) {
        if (next < 0 || automaton.accept.get(next) == 0) {
          throw new IllegalStateException("the lexer must take every character");
        }
      }
    }
    automaton.minimize();
    int[] columns = automaton.columns();
    StringBuilder ranges = new StringBuilder();
    for (int i = 0; i < symbols.length; i++) {
      if (i == 0 || columns[i] != columns[i - 1]) {
        ranges.append((char) symbols[i]).append((char) columns[i]);
      }
    }
    return "  /** The first character of each range of characters that are read alike, and their column. */\n"
        + constant("RANGES", ranges)
        + "\n  /** By kind: the type of its token, 1 if it is skipped, and the mode it switches to plus 1 or 0. */\n"
        + constant("KINDS", new StringBuilder(String.join("", kinds)))
        + automaton.code(columns, "the kind plus 1 of what ends here, or 0");
  }

  /** The first characters of the ranges within which no transition tells characters apart. */
  private static int[] symbols(ATN network) {
    TreeSet<Integer> first = new TreeSet<>(List.of(0));
    for (ATNState state : network.states) {
      for (Transition transition : state.getTransitions()) {
        if (transition.label() != null) {
          for (Interval interval : transition.label().getIntervals()) {
            first.add(interval.a);
            first.add(interval.b + 1);
          }
        }
      }
    }
    // Lines are read in UTF-16 units.
    return first.headSet((int) Character.MAX_VALUE, true).stream().mapToInt(i -> i).toArray();
  }

  private static final class LexerStates extends LexerATNSimulator {
    LexerStates(ATN network, DFA[] modes) {
      super(network, modes, new PredictionContextCache());
    }

    void explore(Automaton automaton, int[] symbols, List<String> kinds) {
      for (int i = 0; i < decisionToDFA.length; i++) {
        mode = i;
        Map<DFAState, Integer> known = new HashMap<>();
        Queue<DFAState> open = new ArrayDeque<>();
        DFAState start = addDFAState(computeStartState(null, atn.modeToStartState.get(i)));
        automaton.starts.add(number(start, automaton, known, open, kinds));
        while (!open.isEmpty()) {
          DFAState state = open.remove();
          int[] next = automaton.next.get(known.get(state));
          for (int symbol = 0; symbol < symbols.length; symbol++) {
            DFAState target = computeTargetState(null, state, symbols[symbol]);
            next[symbol] = target == ERROR ? -1 : number(target, automaton, known, open, kinds);
          }
        }
      }
    }

    private int number(
        DFAState state,
        Automaton automaton,
        Map<DFAState, Integer> known,
        Queue<DFAState> open,
        List<String> kinds) {
      Integer number = known.get(state);
      if (number == null) {
        number = automaton.add(state.isAcceptState ? kind(state, kinds) : 0);
        known.put(state, number);
        open.add(state);
      }
      return number;
    }

    private static int kind(DFAState state, List<String> kinds) {
      int type = state.prediction;
      int skipped = 0;
      int mode = 0;
      if (state.lexerActionExecutor != null) {
        for (LexerAction action : state.lexerActionExecutor.getLexerActions()) {
          if (action instanceof LexerTypeAction typed) {
            type = typed.getType();
          } else if (action instanceof LexerModeAction switched) {
            mode = switched.getMode() + 1;
          } else if (action instanceof LexerSkipAction) {
            skipped = 1;
          } else {
            throw new IllegalStateException(
                "a lexer action without a place in the table: " + action);
          }
        }
      }
      String kind = "" + (char) type + (char) skipped + (char) mode;
      if (!kinds.contains(kind)) {
        kinds.add(kind);
      }
      return kinds.indexOf(kind) + 1;
    }
  }

  // ---- the parser's decisions

  private static String decisions(ATN network) {
    DFA[] decisions = new DFA[network.getNumberOfDecisions()];
    for (int i = 0; i < decisions.length; i++) {
      decisions[i] = new DFA(network.getDecisionState(i), i);
    }
    Automaton automaton = new Automaton(network.maxTokenType + 2);
    new ParserStates(network, decisions).explore(automaton);
    automaton.minimize();
    int[] columns = automaton.columns();
    StringBuilder types = new StringBuilder();
    for (int column : columns) {
      types.append((char) column);
    }
    return "  /** The column of each type of token, from the end of the line (-1) on. */\n"
        + constant("TYPES", types)
        + automaton.code(columns, "the alternative that is chosen here, or 0");
  }

  private static final class ParserStates extends ParserATNSimulator {
    ParserStates(ATN network, DFA[] decisions) {
      super(null, network, decisions, new PredictionContextCache());
    }

    void explore(Automaton automaton) {
      for (DFA decision : decisionToDFA) {
        Map<DFAState, Integer> known = new HashMap<>();
        Queue<DFAState> open = new ArrayDeque<>();
        DFAState start =
            new DFAState(computeStartState(decision.atnStartState, ParserRuleContext.EMPTY, false));
        decision.s0 = addDFAState(decision, start);
        automaton.starts.add(number(decision.s0, automaton, known, open));
        while (!open.isEmpty() && known.size() < MOST_STATES) {
          DFAState state = open.remove();
          int[] next = automaton.next.get(known.get(state));
          for (int symbol = 0; symbol < next.length; symbol++) {
            DFAState target = symbol == 1 ? ERROR : computeTargetState(decision, state, symbol - 1);
            next[symbol] = target == ERROR ? -1 : number(target, automaton, known, open);
          }
          // The end of the line is not followed by anything, so that whoever looks ahead comes to
          // an end.
          if (next[0] >= 0 && automaton.accept.get(next[0]) == 0) {
            next[0] = -1;
          }
        }
      }
    }

    private static int number(
        DFAState state, Automaton automaton, Map<DFAState, Integer> known, Queue<DFAState> open) {
      Integer number = known.get(state);
      if (number == null) {
        // What depends on the rules around it, and what was not gone through, is left to ANTLR: no
        // way leads on.
        boolean chosen = state.isAcceptState && !state.requiresFullContext;
        number = automaton.add(chosen ? state.prediction : 0);
        known.put(state, number);
        if (!state.isAcceptState) {
          open.add(state);
        }
      }
      return number;
    }
  }

  // ---- tables

  /** States numbered from 0, with the state that each symbol leads to (-1: none) and a label. */
  private static final class Automaton {
    final List<Integer> starts = new ArrayList<>();
    List<int[]> next = new ArrayList<>();
    List<Integer> accept = new ArrayList<>();
    private final int symbols;

    Automaton(int symbols) {
      this.symbols = symbols;
    }

    int add(int label) {
      int[] nowhere = new int[symbols];
      Arrays.fill(nowhere, -1);
      next.add(nowhere);
      accept.add(label);
      return next.size() - 1;
    }

    /** States that nothing tells apart become one: the classes are split until they stay. */
    void minimize() {
      int[] block = accept.stream().mapToInt(i -> i).toArray();
      int blocks = -1;
      while (true) {
        Map<List<Integer>, Integer> signatures = new LinkedHashMap<>();
        int[] finer = new int[block.length];
        for (int state = 0; state < block.length; state++) {
          List<Integer> signature = new ArrayList<>(symbols + 1);
          signature.add(block[state]);
          for (int target : next.get(state)) {
            signature.add(target < 0 ? -1 : block[target]);
          }
          finer[state] = signatures.computeIfAbsent(signature, any -> signatures.size());
        }
        block = finer;
        if (signatures.size() == blocks) {
          break;
        }
        blocks = signatures.size();
      }
      List<int[]> rows = new ArrayList<>();
      List<Integer> labels = new ArrayList<>();
      for (int state = 0; state < block.length; state++) {
        if (block[state] == rows.size()) {
          int[] row = next.get(state).clone();
          for (int i = 0; i < row.length; i++) {
            row[i] = row[i] < 0 ? -1 : block[row[i]];
          }
          rows.add(row);
          labels.add(accept.get(state));
        }
      }
      next = rows;
      accept = labels;
      int[] merged = block;
      starts.replaceAll(start -> merged[start]);
    }

    /** The column of each symbol: symbols that lead to the same states share one. */
    int[] columns() {
      Map<List<Integer>, Integer> known = new LinkedHashMap<>();
      int[] columns = new int[symbols];
      for (int symbol = 0; symbol < symbols; symbol++) {
        List<Integer> column = new ArrayList<>(next.size());
        for (int[] row : next) {
          column.add(row[symbol]);
        }
        columns[symbol] = known.computeIfAbsent(column, any -> known.size());
      }
      return columns;
    }

    String code(int[] columns, String label) {
      int width = Arrays.stream(columns).max().orElseThrow() + 1;
      StringBuilder rows = new StringBuilder();
      StringBuilder labels = new StringBuilder();
      StringBuilder first = new StringBuilder();
      for (int state = 0; state < next.size(); state++) {
        char[] row = new char[width];
        for (int symbol = 0; symbol < symbols; symbol++) {
          row[columns[symbol]] = (char) (next.get(state)[symbol] + 1);
        }
        rows.append(row);
        labels.append((char) accept.get(state).intValue());
      }
      starts.forEach(start -> first.append((char) start.intValue()));
      return "\n  private static final int WIDTH = "
          + width
          + ";\n\n  /** The state that each decision or mode begins with. */\n"
          + constant("STARTS", first)
          + "\n  /** By state: "
          + label
          + ". */\n"
          + constant("LABELS", labels)
          + "\n"
          + table(rows);
    }
  }

  private static String constant(String name, StringBuilder text) {
    return "  public static final String " + name + " =\n      " + quoted(text.toString()) + ";\n";
  }

  /** A table that is longer than a constant may be, with a method that reads it. */
  private static String table(StringBuilder text) {
    StringBuilder code = new StringBuilder("  private static final String[] NEXT = {\n");
    for (int at = 0; at < text.length(); at += PART) {
      String part = text.substring(at, Math.min(at + PART, text.length()));
      code.append("    ").append(quoted(part)).append(",\n");
    }
    return code
        + "  };\n\n"
        + "  /** The state after this one plus 1, by column; 0 where nothing goes on. */\n"
        + "  public static int next(int state, int column) {\n"
        + "    int at = state * WIDTH + column;\n"
        + ("    return NEXT[at / " + PART + "].charAt(at % " + PART + ");\n")
        + "  }\n";
  }

  private static String quoted(String text) {
    StringBuilder code = new StringBuilder("\"");
    for (char c : text.toCharArray()) {
      if (c == '"' || c == '\\') {
        code.append('\\').append(c);
      } else if (c < 0x20) {
        code.append(String.format("\\%03o", (int) c));
      } else if (c > 0x7e) {
        code.append(String.format("\\u%04x", (int) c));
      } else {
        code.append(c);
      }
    }
    return code.append('"').toString();
  }

  private static void write(Path folder, String name, String constants) throws IOException {
    String code =
        "package tabor.grammar;\n\n"
            + "/** A table to read the notation by, written by the build. */\n"
            + "public final class "
            + name
            + " {\n"
            + constants
            + "\n  private "
            + name
            + "() {}\n}\n";
    Path file = folder.resolve(name + ".java");
    // A file that has not changed keeps its time, so that nothing is compiled again for it.
    if (!Files.exists(file) || !Files.readString(file).equals(code)) {
      Files.writeString(file, code);
    }
  }
}
