package tabor.parse;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicReferenceArray;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.atn.ATN;
import org.antlr.v4.runtime.atn.ATNState;
import org.antlr.v4.runtime.atn.RuleStopState;
import org.antlr.v4.runtime.atn.RuleTransition;
import org.antlr.v4.runtime.atn.Transition;
import org.antlr.v4.runtime.misc.IntervalSet;
import org.jspecify.annotations.Nullable;
import tabor.grammar.TaborParser;
import tabor.lists.Lists;

/**
 * Follows every way in which the grammar can read a line, token by token and all at once. The
 * generated parser chooses one way and looks ahead for it, so where it fails is not always where
 * the line stops making sense; this is, and it knows all that could have stood there. Used where a
 * line is broken or unfinished, never for good lines. Groups nested without bound would make it
 * grow without bound: {@link Nesting} comes first.
 */
final class LineSimulation {
  private static final ATN GRAMMAR = TaborParser.Network.ATN;
  private static final int LAST_TYPE = GRAMMAR.maxTokenType;

  /**
   * A rule that is being read.
   *
   * @param rule its index in {@link TaborParser#ruleNames}
   * @param follow where the rule around it goes on; null for the line itself
   * @param parent the rule around it; null for the line itself
   */
  private record Frame(int rule, @Nullable ATNState follow, @Nullable Frame parent) {}

  /** A place in the grammar, and how one came there. */
  private record Position(ATNState state, Frame frame) {
    /** Makes numbers of states equally long. */
    private static final int PADDING = 1_000_000;

    /** Tells positions apart by their states and those that they return to. */
    String key() {
      StringBuilder key = new StringBuilder().append(PADDING + state.stateNumber);
      for (Frame at = frame; at != null && at.follow() != null; at = at.parent()) {
        key.append(PADDING + at.follow().stateNumber);
      }
      return key.toString();
    }
  }

  /** A position after some steps without a token: {@code entered} rules were opened on the way. */
  private record Open(Position position, int entered) {}

  /**
   * Tokens that may come next.
   *
   * @param types their types
   * @param rules the rules that would read them, as indices into {@link TaborParser#ruleNames}, the
   *     outermost first
   * @param entered how many of them, counted from the innermost, start with that token
   */
  record Expectation(IntervalSet types, List<Integer> rules, int entered) {
    /** The rule that reads the token itself. */
    int rule() {
      return rules.get(rules.size() - 1);
    }

    /** True if the token would be read within this rule, at any depth. */
    boolean in(int rule) {
      return rules.contains(rule);
    }

    /** The rules that start with the token, the outermost first. */
    List<Integer> starting() {
      return rules.subList(rules.size() - entered, rules.size());
    }
  }

  /** All that is possible after some tokens; equal possibilities are one object. */
  private static final class State {
    private static final Map<Set<Position>, State> KNOWN = new ConcurrentHashMap<>();
    static final State START = start();

    final List<Expectation> expected = new ArrayList<>();
    private final Set<Position> waiting = new LinkedHashSet<>();
    private final AtomicReferenceArray<State> next = new AtomicReferenceArray<>(LAST_TYPE + 2);

    private State(Set<Position> positions) {
      Set<Position> seen = new HashSet<>();
      Deque<Open> todo = new ArrayDeque<>();
      // In an order of their own, so that what is expected is listed alike however one came here.
      positions.stream()
          .sorted((a, b) -> a.key().compareTo(b.key()))
          .forEach(position -> todo.add(new Open(position, 0)));
      while (!todo.isEmpty()) {
        Open open = todo.remove();
        if (seen.add(open.position())) {
          open(open, todo);
        }
      }
    }

    private static State start() {
      Frame line = new Frame(TaborParser.RULE_single, null, null);
      ATNState first = GRAMMAR.ruleToStartState[TaborParser.RULE_single];
      return new State(Set.of(new Position(first, line)));
    }

    /** Goes one step on, without a token. */
    private void open(Open open, Deque<Open> todo) {
      Frame frame = open.position().frame();
      ATNState state = open.position().state();
      if (state instanceof RuleStopState) {
        if (frame.parent() != null && frame.follow() != null) {
          Position after = new Position(frame.follow(), frame.parent());
          // No rule is empty, so what ends here was entered before the token before.
          todo.add(new Open(after, 0));
        }
        return;
      }
      for (Transition transition : state.getTransitions()) {
        if (transition instanceof RuleTransition call) {
          Frame called = new Frame(call.ruleIndex, call.followState, frame);
          todo.add(new Open(new Position(call.target, called), open.entered() + 1));
        } else if (transition.isEpsilon()) {
          todo.add(new Open(new Position(transition.target, frame), open.entered()));
        } else {
          expected.add(new Expectation(transition.label(), rules(frame), open.entered()));
          waiting.add(open.position());
        }
      }
    }

    private static List<Integer> rules(Frame innermost) {
      List<Integer> rules = new ArrayList<>();
      for (Frame frame = innermost; frame != null; frame = frame.parent()) {
        rules.add(0, frame.rule());
      }
      return List.copyOf(rules);
    }

    /** After one more token; null if it cannot come next. */
    @Nullable State after(int type) {
      int slot = type + 1;
      State known = next.get(slot);
      if (known == null) {
        Set<Position> positions = new LinkedHashSet<>();
        for (Position position : waiting) {
          for (Transition transition : position.state().getTransitions()) {
            if (transition.label() != null && transition.label().contains(type)) {
              positions.add(new Position(transition.target, position.frame()));
            }
          }
        }
        if (positions.isEmpty()) {
          return null;
        }
        known = KNOWN.computeIfAbsent(positions, State::new);
        next.set(slot, known);
      }
      return known;
    }
  }

  private State state = State.START;
  private int read;

  /** Reads tokens up to the first that cannot stand where it does. */
  static LineSimulation over(List<Token> tokens) {
    LineSimulation simulation = new LineSimulation();
    for (Token token : tokens) {
      State after = simulation.state.after(token.getType());
      if (after == null) {
        break;
      }
      simulation.state = after;
      simulation.read++;
    }
    return simulation;
  }

  /** How many tokens were read: the index of the first that does not fit. */
  int read() {
    return read;
  }

  /** What may come next. */
  List<Expectation> expected() {
    return state.expected;
  }

  /** True if a token of this type may come next. */
  boolean expects(int type) {
    return Lists.any(state.expected, e -> e.types().contains(type));
  }

  /** True if a token may come next that this rule would read. */
  boolean expectsIn(int rule) {
    return Lists.any(state.expected, e -> e.in(rule));
  }

  /** True if whatever comes next is read by this rule. */
  boolean expectsOnlyStartOf(int rule) {
    return Lists.all(state.expected, e -> e.starting().contains(rule));
  }
}
