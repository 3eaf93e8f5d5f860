package tabor.ide;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * How a statement is written, as one line that a person can read and that can be followed word by
 * word: {@code drop TARGET [at PLACES] [in BARS] [where HOW]}. Capitals stand for something, a bar
 * between words is a choice, brackets may be left out; neighbouring brackets come in any order and
 * {@code …} means that what is before it may come again.
 *
 * <p>Not the grammar: this says what may come next, and lets wrong lines pass. It is how completion
 * and signature help know the place while the line is not yet finished.
 */
final class Form {
  /**
   * A word of the form.
   *
   * @param word the literal, or what stands there in capitals
   * @param from where it stands in the form as shown
   * @param to where it ends there
   */
  record Label(String word, int from, int to) {
    boolean isPlaceholder() {
      return Character.isUpperCase(word.charAt(0));
    }
  }

  private static final Map<String, String> PARTS =
      Map.of(
          "LIMB", "right [foot] | left [foot] | hands | feet",
          "TARGET", "ONE [, ONE]…",
          "ONE", "right [foot] | left [foot] | hands | feet | all | SURFACE",
          "PART", "right [foot] | left [foot] | hands | feet | line | SURFACE",
          "PLACES", "PLACE…",
          "PLACE", "COUNT [to COUNT] | every SYLLABLE",
          "BARS", "bar N | bars N [to N] | bars N N… | last bar | every N bar",
          "HOW", "accented | plain | ghosted",
          "NOTE",
              "quarter | eighth | half | sixteenth | dotted-quarter | dotted-eighth | dotted-half");

  private final String shown;
  private final List<Map<Integer, Label>> steps = new ArrayList<>();
  private final List<Set<Integer>> free = new ArrayList<>();
  private final int start;
  private final int end;

  private Form(String shown) {
    this.shown = shown;
    int[] ends = new Reader(this, shown, 0, -1).sequence("");
    this.start = ends[0];
    this.end = ends[1];
  }

  /** Reads a form. */
  static Form of(String shown) {
    return new Form(shown);
  }

  /** As shown. */
  String shown() {
    return shown;
  }

  /** Where one stands before the first word. */
  Set<Integer> begin() {
    return closure(Set.of(start));
  }

  /** Where one stands after one more word; empty if the form has no place for it. */
  Set<Integer> after(Set<Integer> states, String word) {
    Set<Integer> literal = new LinkedHashSet<>();
    Set<Integer> other = new LinkedHashSet<>();
    for (int state : states) {
      for (Map.Entry<Integer, Label> step : steps.get(state).entrySet()) {
        Label label = step.getValue();
        if (!label.isPlaceholder() && label.word().equals(word)) {
          literal.add(step.getKey());
        } else if (label.isPlaceholder() && fits(label.word(), word)) {
          other.add(step.getKey());
        }
      }
    }
    return closure(literal.isEmpty() ? other : literal);
  }

  /** What may come next. */
  List<Label> next(Set<Integer> states) {
    Set<Label> found = new LinkedHashSet<>();
    for (int state : states) {
      found.addAll(steps.get(state).values());
    }
    return List.copyOf(found);
  }

  /** True if the statement may end here. */
  boolean mayEnd(Set<Integer> states) {
    return states.contains(end);
  }

  private static boolean fits(String placeholder, String word) {
    char first = word.isEmpty() ? ' ' : word.charAt(0);
    return switch (placeholder) {
      case "N", "COUNT", "PERCENT", "METER" -> Character.isDigit(first);
      case "TEXT", "FILE" -> first == '"';
      case "SYLLABLE" -> first == '&' || first == '+' || Character.isLetter(first);
      default -> Character.isLetter(first);
    };
  }

  private Set<Integer> closure(Set<Integer> states) {
    Set<Integer> all = new LinkedHashSet<>(states);
    Deque<Integer> open = new ArrayDeque<>(states);
    while (!open.isEmpty()) {
      for (int next : free.get(open.pop())) {
        if (all.add(next)) {
          open.push(next);
        }
      }
    }
    return all;
  }

  private int state() {
    steps.add(new HashMap<>());
    free.add(new LinkedHashSet<>());
    return steps.size() - 1;
  }

  /** Reads a form, or the part that a placeholder stands for. */
  private static final class Reader {
    private final Form form;
    private final String text;
    private int at;
    private final int outerFrom;
    private final int outerTo;

    Reader(Form form, String text, int from, int to) {
      this.form = form;
      this.text = text;
      this.outerFrom = from;
      this.outerTo = to;
    }

    /** Reads up to a closing bracket, or to the end. */
    int[] sequence(String stop) {
      int first = form.state();
      int last = form.state();
      int begin = first;
      int from = first;
      int loop = -1; // where neighbouring brackets go round
      int before = first;
      while (true) {
        skipSpaces();
        if (at >= text.length() || (!stop.isEmpty() && text.startsWith(stop, at))) {
          form.free.get(from).add(last);
          at += stop.isEmpty() ? 0 : stop.length();
          return new int[] {begin, last};
        }
        char c = text.charAt(at);
        if (c == '|' && (outerTo >= 0 || !stop.isEmpty())) {
          at++;
          form.free.get(from).add(last);
          from = form.state();
          form.free.get(first).add(from);
          loop = -1;
          before = from;
        } else if (c == '…') {
          at++;
          form.free.get(from).add(before);
        } else if (c == '[') {
          at++;
          if (loop < 0) {
            loop = form.state();
            form.free.get(from).add(loop);
          }
          int[] inner = sequence("]");
          form.free.get(loop).add(inner[0]);
          form.free.get(inner[1]).add(loop);
          before = loop;
          from = loop;
        } else {
          loop = -1;
          before = from;
          from = word(from);
        }
      }
    }

    private int word(int from) {
      int start = at;
      while (at < text.length() && " []…".indexOf(text.charAt(at)) < 0) {
        at++;
      }
      int to = form.state();
      for (String choice : text.substring(start, at).split("\\|", -1)) {
        int showFrom = outerTo >= 0 ? outerFrom : start;
        int showTo = outerTo >= 0 ? outerTo : at;
        String part = PARTS.get(choice);
        if (part == null) {
          int via = form.state();
          form.steps.get(from).put(via, new Label(choice, showFrom, showTo));
          form.free.get(via).add(to);
        } else {
          int[] inner = new Reader(form, part, showFrom, showTo).sequence("");
          form.free.get(from).add(inner[0]);
          form.free.get(inner[1]).add(to);
        }
      }
      return to;
    }

    private void skipSpaces() {
      while (at < text.length() && text.charAt(at) == ' ') {
        at++;
      }
    }
  }

  @Override
  public String toString() {
    return shown.toLowerCase(Locale.ROOT);
  }
}
