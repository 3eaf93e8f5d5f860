package tabor.parse;

import java.util.ArrayDeque;
import java.util.Deque;
import org.jspecify.annotations.Nullable;
import tabor.source.Span;

/** What is wrong with the beats of a lane or the places of a pattern, word by word. */
final class BeatComplaints {
  private static final String SUFFIXES = "/~=!^";
  private static final String SMALL = "'\u2018\u2019";

  private final String line;
  private final boolean pattern;
  private final Deque<Integer> open = new ArrayDeque<>();

  /**
   * @param pattern true for the places of a pattern, which know no beats
   */
  BeatComplaints(String line, boolean pattern) {
    this.line = line;
    this.pattern = pattern;
  }

  /** The first problem between two offsets; null if none is found. */
  @Nullable Problem first(int from, int to) {
    int at = Lines.skipBlanks(line, from, to);
    if (at >= to) {
      Span end = new Span(Math.max(0, from - 1), Math.max(from, 1));
      return pattern
          ? Problem.syntax(
              BrokenLine.span(line),
              "this pattern has no strokes",
              "Write them after the colon: RlrrLrll")
          : Problem.syntax(
              BrokenLine.span(line).in(line).isEmpty() ? end : BrokenLine.span(line),
              "this part is empty",
              "Write one word for each beat: rl rl rl rl; . is a silent beat");
    }
    boolean sinceBar = false;
    boolean anyWord = false;
    int lastBar = -1;
    Span repeat = null;
    int words = 0;
    while (at < to) {
      char c = line.charAt(at);
      if (c == '|') {
        if (lastBar >= 0 && !sinceBar && !pattern) {
          return Problem.syntax(
              new Span(lastBar, at + 1),
              "there is nothing between these two bar lines",
              "Write the beats of the bar, or % for the bar before again");
        }
        lastBar = at;
        sinceBar = false;
        repeat = null;
        words = 0;
        at = Lines.skipBlanks(line, at + 1, to);
        continue;
      }
      int end = at;
      while (end < to && !Spans.isBlank(line.charAt(end)) && line.charAt(end) != '|') {
        end++;
      }
      if (line.startsWith("%", at) && end == at + 1 && !pattern) {
        repeat = new Span(at, end);
      } else {
        Problem problem = word(at, end);
        if (problem != null) {
          return problem;
        }
      }
      words++;
      if (repeat != null && words > 1) {
        return Problem.syntax(
            repeat, "% stands alone in its bar", "Write % between two bar lines, or beats only");
      }
      sinceBar = true;
      anyWord = true;
      at = Lines.skipBlanks(line, end, to);
    }
    if (!anyWord) {
      return Problem.syntax(
          new Span(lastBar, lastBar + 1),
          "a bar line stands alone here",
          "Write the beats before or after it");
    }
    return null;
  }

  private @Nullable Problem word(int from, int to) {
    open.clear();
    boolean afterStroke = false;
    int at = from;
    while (at < to) {
      char c = line.charAt(at);
      boolean inGhost = open.stream().anyMatch(o -> line.charAt(o) == '(');
      if (SMALL.indexOf(c) >= 0) {
        int end = at;
        while (end < to && SMALL.indexOf(line.charAt(end)) >= 0) {
          end++;
        }
        Problem problem = small(at, end, to, inGhost);
        if (problem != null) {
          return problem;
        }
        at = end;
        continue;
      }
      if (SUFFIXES.indexOf(c) >= 0) {
        Problem problem = suffix(at, to, afterStroke, inGhost);
        if (problem != null) {
          return problem;
        }
        at += line.startsWith("//", at) ? 2 : 1;
        continue;
      }
      if (c == ':') {
        return over(at, from, to);
      }
      Problem problem = sign(at, c, inGhost);
      if (problem != null) {
        return problem;
      }
      afterStroke = isLetter(c) || c == ')';
      at++;
    }
    return unclosed(to);
  }

  private @Nullable Problem unclosed(int end) {
    if (open.isEmpty()) {
      return null;
    }
    int at = open.peekLast();
    boolean group = line.charAt(at) == '{';
    StringBuilder closing = new StringBuilder();
    for (int o : open) {
      closing.append(line.charAt(o) == '{' ? '}' : ')');
    }
    return Problem.syntax(
            new Span(at, at + 1),
            "this " + line.charAt(at) + " is not closed",
            group
                ? "Write } after the last stroke of the group; a group does not cross a space"
                : "Write ) after the last ghost stroke; parentheses do not cross a space")
        .change("Close it at the end of the word", new Span(end, end), closing.toString());
  }

  private @Nullable Problem small(int at, int end, int to, boolean inGhost) {
    Span span = new Span(at, end);
    if (end - at > 3) {
      return Problem.syntax(
          span,
          end - at + " small strokes are too many",
          "One is a flam, two a drag, three a ruff");
    }
    if (inGhost) {
      return Problem.syntax(
          span, "small strokes cannot stand inside parentheses", "Write them before: '(r)");
    }
    if (end == to || !(isLetter(line.charAt(end)) || line.charAt(end) == '(')) {
      return Problem.syntax(
          span, "small strokes need a stroke right after them", "Write them before its letter: 'r");
    }
    return null;
  }

  private @Nullable Problem suffix(int at, int to, boolean afterStroke, boolean inGhost) {
    char c = line.charAt(at);
    Span span = new Span(at, at + 1);
    if (inGhost) {
      return Problem.syntax(
          span, "`" + c + "` cannot stand inside parentheses", "Write it after them: (r)" + c);
    }
    if (line.startsWith("///", at)) {
      int end = at;
      while (end < to && line.charAt(end) == '/') {
        end++;
      }
      return Problem.syntax(
          new Span(at, end),
          "there are too many slashes here",
          "One slash is a diddle, two are an open roll");
    }
    if (!afterStroke) {
      return Problem.syntax(
          span, "`" + c + "` has no stroke before it", "It stands right after a letter: r" + c);
    }
    return null;
  }

  private @Nullable Problem over(int at, int from, int to) {
    Span span = new Span(at, to);
    if (pattern) {
      return Problem.syntax(
          span, "a pattern has no beats to spread over", "Leave out what follows the colon");
    }
    if (at == from) {
      return Problem.syntax(span, "`:` has no word before it", "Write it after a word: rlr:2");
    }
    Problem problem = unclosed(at);
    if (problem != null) {
      return problem;
    }
    return line.substring(at + 1, to).matches("[0-9]+")
        ? null
        : Problem.syntax(
            span,
            "after `:` comes the number of beats that the word takes",
            "Write it at the end of the word: rlr:2");
  }

  private @Nullable Problem sign(int at, char c, boolean inGhost) {
    Span span = new Span(at, at + Character.charCount(line.codePointAt(at)));
    if (c == '{' || c == '(') {
      open.push(at);
    }
    if (c == '(' && inGhost) {
      return Problem.syntax(
          span, "parentheses do not stand inside parentheses", "Leave out the inner ones");
    }
    if (c == '-' && inGhost) {
      return Problem.syntax(
          span, "`-` cannot stand inside parentheses", "Close the parentheses before it");
    }
    if (c == '}' || c == ')') {
      return close(at, c, span);
    }
    if (c == '%') {
      return Problem.syntax(
          span,
          pattern ? "a pattern has no bars to repeat" : "% stands alone in its bar",
          pattern ? "Write the strokes out" : "Write it between two bar lines: | % |");
    }
    return isLetter(c) || ".-{(".indexOf(c) >= 0 ? null : strange(span);
  }

  private @Nullable Problem close(int at, char c, Span span) {
    if (open.isEmpty()) {
      return Problem.syntax(
              span,
              "this " + c + " closes nothing",
              "Write " + (c == '}' ? '{' : '(') + " before the first stroke it belongs to")
          .change("Leave it out", span, "");
    }
    int opened = open.pop();
    char opening = line.charAt(opened);
    if ((opening == '{') != (c == '}')) {
      return Problem.syntax(
          span,
          "this " + c + " stands where " + (opening == '{' ? '}' : ')') + " belongs",
          "What is opened last is closed first");
    }
    return opened == at - 1
        ? Problem.syntax(
            new Span(opened, at + 1), "there is no stroke between these", "Write one, or a dot")
        : null;
  }

  private Problem strange(Span span) {
    String text = span.in(line);
    char c = text.charAt(0);
    if (Lines.isQuote(c)) {
      return Problem.syntax(
          span, "quotes cannot stand among beats", "A drag is two single strokes: ''r");
    }
    if (c >= '0' && c <= '9') {
      return Problem.syntax(
          span,
          "a digit is no stroke",
          "Each letter is a stroke and each word a beat; durations are not written");
    }
    return Problem.syntax(
        span,
        "`" + text + "` is no stroke",
        "A stroke is a letter from a to z; . is silence and - lets the stroke before go on");
  }

  private static boolean isLetter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
  }
}
