package tabor.parse;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.antlr.v4.runtime.Token;
import tabor.source.Span;
import tabor.syntax.Numerals;

/** Lines of a chart as people write them on paper, each with how it is written here. */
final class ChartMistakes {
  /** Words on paper that say here what {@code play} says. */
  private static final List<String> AGAIN = List.of("repeat", "loop", "again");

  private final String line;
  private final List<Token> tokens;
  private final Predicate<String> reads;
  private final Span span;

  private ChartMistakes(String line, List<Token> tokens, Predicate<String> reads) {
    this.line = line;
    this.tokens = tokens;
    this.reads = reads;
    this.span = BrokenLine.span(tokens);
  }

  /**
   * The same problem with what is meant by the line, where it is one of these.
   *
   * @param line a line of a chart that cannot be read
   * @param reads tells whether another line could be read
   */
  static SyntaxProblem explained(
      SyntaxProblem problem, String line, List<Token> tokens, Predicate<String> reads) {
    ChartMistakes mistakes = new ChartMistakes(line, tokens, reads);
    List<String> meant = mistakes.meant();
    if (meant.isEmpty()) {
      return problem;
    }
    SyntaxProblem explained =
        SyntaxProblem.of(problem.span(), problem.message(), "Write " + String.join(", or ", meant));
    for (String one : meant) {
      explained = explained.fix("Write " + one, mistakes.span, one);
    }
    return explained;
  }

  /** What may be meant, as far as it can be read: a number alone may be of times or of bars. */
  private List<String> meant() {
    String said = span.in(line);
    if (said.indexOf('"') >= 0) {
      return List.of(); // nobody's own words are rewritten
    }
    for (String meant : meanings(said)) {
      String plural = meant.endsWith(" 1") ? "" : "s";
      List<String> lines =
          meant.matches(".* \\d+")
              ? List.of(meant + " time" + plural, meant + " bar" + plural)
              : List.of(meant);
      List<String> found =
          lines.stream().filter(one -> !one.equals(said) && reads.test(with(one))).toList();
      if (!found.isEmpty()) {
        return found;
      }
    }
    return List.of();
  }

  private String with(String meant) {
    return line.substring(0, span.start()) + meant + line.substring(span.end());
  }

  /** What may be meant, the likeliest first. */
  private List<String> meanings(String said) {
    String meant = amounts(said).replaceAll("\\s*,\\s*|\\s+then\\s+", " ");
    String first = tokens.get(0).getText();
    List<String> lines = new ArrayList<>();
    lines.add(meant.replaceFirst("^count[ -]?in\\b", "count-in"));
    if (AGAIN.contains(first)) {
      lines.add("play" + meant.substring(first.length()));
    }
    if (!Vocabulary.keywords().contains(first)
        && meant.matches(".* \\d+ (?:times?|bars?|minutes?|seconds?)\\b.*")) {
      lines.add("play " + meant);
    }
    return lines;
  }

  /** {@code x4}, {@code 4x}, {@code twice}, {@code four times}, {@code for 4 bars}. */
  private static String amounts(String said) {
    String signs =
        said.replaceAll("(?<= )(?:[x×*] ?(\\d+)|(\\d+) ?[x×])(?= |$)", "$1$2 times")
            .replaceAll("(?<= )for (?=\\d+ (?:bar|time)s?\\b)", "");
    StringBuilder words = new StringBuilder();
    for (String word : signs.split("(?<= )|(?= )", 0)) {
      Integer times = Numerals.times(word);
      Integer number = Numerals.number(word);
      words.append(
          times != null
              ? times + (times == 1 ? " time" : " times")
              : number != null ? number : word);
    }
    return words.toString();
  }
}
