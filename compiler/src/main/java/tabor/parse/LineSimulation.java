package tabor.parse;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.antlr.v4.runtime.Token;
import org.antlr.v4.runtime.atn.ATN;
import org.antlr.v4.runtime.atn.ATNState;
import org.antlr.v4.runtime.atn.RuleStopState;
import org.antlr.v4.runtime.atn.RuleTransition;
import org.antlr.v4.runtime.atn.Transition;
import org.antlr.v4.runtime.misc.IntervalSet;
import org.jspecify.annotations.Nullable;
import tabor.grammar.TaborParser;

/**
 * Follows every way in which the grammar can read a line, token by token and all at once. The
 * generated parser chooses one way and looks ahead for it, so where it fails is not always where
 * the line stops making sense; this is, and it knows all that could have stood there. Used where a
 * line is broken or unfinished, never for good lines.
 */
final class LineSimulation {
  private static final ATN GRAMMAR = TaborParser._ATN;

  /**
   * A rule that is being read.
   *
   * @param rule its index in {@link TaborParser#ruleNames}
   * @param follow where the rule around it goes on
   * @param parent the rule around it; null for the line itself
   * @param start index of its first token
   */
  record Frame(int rule, @Nullable ATNState follow, @Nullable Frame parent, int start) {
    /** The innermost frame of a rule; null if it is not being read. */
    @Nullable Frame within(int wanted) {
      Frame frame = this;
      while (frame != null && frame.rule != wanted) {
        frame = frame.parent;
      }
      return frame;
    }

    /** The names of the rules, the outermost first. */
    List<String> path() {
      List<String> names = new ArrayList<>();
      for (Frame frame = this; frame != null; frame = frame.parent) {
        names.add(0, TaborParser.ruleNames[frame.rule]);
      }
      return names;
    }
  }

  /** Token types that may come next, and the rule that would read them. */
  record Expectation(IntervalSet types, Frame frame) {}

  private record Position(ATNState state, Frame frame) {}

  private Set<Position> positions = new LinkedHashSet<>();
  private List<Expectation> expected = new ArrayList<>();
  private final List<Position> waiting = new ArrayList<>();
  private int read;

  /** Starts at the beginning of a line that stands alone. */
  LineSimulation() {
    Frame line = new Frame(TaborParser.RULE_single, null, null, 0);
    open(new Position(GRAMMAR.ruleToStartState[TaborParser.RULE_single], line));
  }

  /**
   * Reads tokens up to the first that cannot stand where it does; returns its index, or the end.
   */
  static LineSimulation over(List<Token> tokens) {
    LineSimulation simulation = new LineSimulation();
    for (Token token : tokens) {
      if (!simulation.read(token.getType())) {
        break;
      }
    }
    return simulation;
  }

  /** How many tokens were read: the index of the first that does not fit. */
  int read() {
    return read;
  }

  /** What may come next. */
  List<Expectation> expected() {
    return expected;
  }

  /** True if a token of one of these types may come next. */
  boolean expects(int type) {
    return expected.stream().anyMatch(e -> e.types().contains(type));
  }

  /** True if a token of this type may come next in this rule or in one that it calls. */
  boolean expects(int type, int rule) {
    return expected.stream()
        .anyMatch(e -> e.types().contains(type) && e.frame().within(rule) != null);
  }

  /** True if the line may still turn out to be what this rule reads. */
  boolean within(int rule) {
    return expected.stream().anyMatch(e -> e.frame().within(rule) != null);
  }

  /** Reads one more token; false, and nothing changes, if it cannot come next. */
  boolean read(int type) {
    List<Position> next = new ArrayList<>();
    for (Position position : waiting) {
      for (Transition transition : position.state().getTransitions()) {
        if (!transition.isEpsilon()
            && transition.matches(type, 1, TaborParser.VOCABULARY.getMaxTokenType())) {
          next.add(new Position(transition.target, position.frame()));
        }
      }
    }
    if (next.isEmpty()) {
      return false;
    }
    read++;
    positions = new LinkedHashSet<>();
    expected = new ArrayList<>();
    waiting.clear();
    next.forEach(this::open);
    return true;
  }

  /** Goes from a position over everything that reads no token. */
  private void open(Position start) {
    Deque<Position> todo = new ArrayDeque<>();
    todo.add(start);
    while (!todo.isEmpty()) {
      Position position = todo.remove();
      if (!positions.add(position)) {
        continue;
      }
      Frame frame = position.frame();
      if (position.state() instanceof RuleStopState) {
        if (frame.parent() != null) {
          todo.add(new Position(frame.follow(), frame.parent()));
        }
        continue;
      }
      boolean waits = false;
      for (Transition transition : position.state().getTransitions()) {
        if (transition instanceof RuleTransition call) {
          Frame called = new Frame(call.ruleIndex, call.followState, frame, read);
          todo.add(new Position(call.target, called));
        } else if (transition.isEpsilon()) {
          todo.add(new Position(transition.target, frame));
        } else {
          expected.add(new Expectation(transition.label(), frame));
          waits = true;
        }
      }
      if (waits) {
        waiting.add(position);
      }
    }
  }
}
