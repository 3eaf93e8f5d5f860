package tabor.parse;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.antlr.v4.runtime.Token;
import tabor.lists.Lists;
import tabor.source.Span;
import tabor.syntax.Numerals;
import tabor.syntax.SectionKind;
import tabor.syntax.StatementTable;

/**
 * Lines as people say them or write them on paper, each with how it is written here. What such
 * words mean is common practice, no source; a line is offered only if it can be read.
 *
 * @param line a line that cannot be read
 * @param kind the section that it stands in
 * @param reads tells whether another line could be read
 * @param span what the line says, without its indentation and its comment
 */
record PaperLines(
    String line, SectionKind kind, List<Token> tokens, Predicate<String> reads, Span span) {
  /** Words on paper that say in a chart what {@code play} says. */
  private static final List<String> AGAIN = List.of("repeat", "loop", "again");

  /**
   * Words that say what a line does, and are nearly words of the notation that do something else.
   */
  private static final Map<String, String> VERBS =
      Map.of(
          "remove",
          "drop",
          "delete",
          "drop",
          "omit",
          "drop",
          "erase",
          "drop",
          "insert",
          "add",
          "put",
          "add",
          "bpm",
          "tempo",
          "speed",
          "tempo",
          "decrescendo",
          "diminuendo");

  /** Words before a colon as drum parts are marked on paper. */
  private static final List<String> MARKS =
      List.of("RH", "LH", "RF", "LF", "SD", "BD", "HH", "RD", "CC", "FT", "T1", "T2");

  /** Words within a line that no word of ours is to be put before. */
  private static final List<String> WITHIN =
      List.of(
          "except",
          "but",
          "tom",
          "quiet",
          "quieter",
          "soft",
          "softer",
          "loud",
          "louder",
          "accents",
          "with",
          "first",
          "the",
          "one",
          "two",
          "three",
          "four",
          "sextuplet",
          "sextuplets");

  /** Nobody's section: what follows is left to the student. */
  private static final List<String> OPEN = List.of("solo", "stop", "end");

  /** Longer lines are not said by people, and patterns take their time and memory for them. */
  static final int LONGEST = 300;

  /** A number at the end that may be of times or of bars. */
  private static final Pattern AMOUNT =
      Pattern.compile(".*(?<! at| in| to| by| until| tempo| bars?| from) \\d+");

  /** Between two lines of a chart that are said as one. */
  private static final String NEXT =
      "(?<=times|time|bars|bar)(?: and then| and| then) (?=[a-z])"
          + "|(?<=times|time|bars|bar) (?=[a-z][a-z0-9-]* \\d)"
          + "(?!(?:fill|at|without|for|each|with|end|ending|over|and|then)\\b)";

  private static final Pattern CUE = Pattern.compile("^(cue \"[^\"]*\") (?:at|on) (bar \\d+)$");

  /** What no line says, and what is written instead, in sections with strokes. */
  private static final Map<Pattern, String> ADVICE =
      Map.of(
          Pattern.compile("(?:repeat|copy|same as) bar\\b|bars? \\d+ ?[:=]"),
          "To play a bar again write % in the place of the next one: kick : x . x . | %",
          Pattern.compile("(?:repeat|loop|again)\\b(?! bar)"),
          "How often a section is played is said in a chart: play verse 4 times",
          Pattern.compile("(?:double|half)(?:[ -]| the )(?:time|tempo)\\b|(?:faster|slower)\\b"),
          "How fast a section goes is said with a number: tempo 120");

  /** The same in charts. */
  private static final Map<Pattern, String> CHART_ADVICE =
      Map.of(
          Pattern.compile("(?:stop|end|fine)$"),
          "A chart ends with its last line: leave this one out",
          Pattern.compile("solo\\b"),
          "Bars for the student alone: trade verse 2 bars 4 times, or rest 4 bars",
          Pattern.compile("(?:da capo|d\\.? ?c\\.?|repeat from the top)\\b"),
          "Write the sections again in their order: play verse chorus");

  /** Strokes of one sound for another: which hand strikes them is not said. */
  private static final Pattern OTHER_SOUND =
      Pattern.compile(
          "^(?:(?:change|replace|move|put) (?:snare|hihat|ride|tom1|tom2|floor)"
              + " (?:to|with|by|on|onto)|(?:snare|hihat|ride) plays?"
              + "(?= (?:snare|hihat|ride|crash|cowbell|tom1|tom2|floor)\\b))"
              + " ([a-z]+[12]?)( (?:at|in) .*)?$");

  private static final Pattern DIRECTION =
      Pattern.compile("^shift ((?:(?!later|earlier).)+?) by (\\d+ [a-z-]+)$");

  private static final Pattern EXCEPT =
      Pattern.compile(
          "^(accent|ghost) (.+?) (?:except|but not|but) (?:at |on )?(?=\\d|every)(.*)$");

  private static final Pattern CAPTION_FIRST =
      Pattern.compile("^(?:(?:each|variation) ?)?(\"[^\"]*\") ?(?:each )?:? ?(.+)$");

  private static final Pattern EACH =
      Pattern.compile("^(?:each|every|for each|vary|variations?) ?:? ");

  /** The same problem with what is meant by the line, where it is one of these. */
  static SyntaxProblem explained(
      SyntaxProblem problem,
      String line,
      SectionKind kind,
      List<Token> tokens,
      Predicate<String> reads) {
    PaperLines lines = new PaperLines(line, kind, tokens, reads, BrokenLine.span(tokens));
    if (lines.span.length() > LONGEST) {
      return problem;
    }
    for (Map.Entry<Pattern, String> advice :
        (kind == SectionKind.CHART ? CHART_ADVICE : ADVICE).entrySet()) {
      if (advice.getKey().matcher(lines.span.in(line)).lookingAt()) {
        return SyntaxProblem.of(problem.span(), problem.message(), advice.getValue());
      }
    }
    List<String> meant = lines.meant();
    if (meant.isEmpty()) {
      return problem;
    }
    SyntaxProblem explained =
        SyntaxProblem.of(
            problem.span(),
            problem.message(),
            "Write " + String.join(", or ", Lists.map(meant, PaperLines::shown)));
    for (String one : meant) {
      String indent = line.substring(0, lines.span.start());
      // A text over several lines has its own indentation.
      String indented = one.contains("\"\"\"") ? one : one.replace("\n", "\n" + indent);
      explained = explained.fix("Write " + shown(one), lines.span, indented);
    }
    return explained;
  }

  /** A line as a message shows it: of a part, who plays it. */
  private static String shown(String meant) {
    // A title is one line, also of a text over several.
    if (meant.contains("\"\"\"")) {
      return meant.lines().findFirst().orElse("") + (meant.lines().count() > 1 ? " …" : "");
    }
    if (meant.indexOf('\n') >= 0) {
      return meant.replace("\n", ", and below it ");
    }
    int colon = meant.indexOf(" :");
    return colon < 0 || meant.indexOf('"') >= 0
        ? meant
        : meant.substring(0, colon) + " before the colon";
  }

  /** What may be meant, as far as it can be read: a number alone may be of times or of bars. */
  private List<String> meant() {
    String said = span.in(line);
    if (kind == SectionKind.SHEET) {
      Matcher caption = CAPTION_FIRST.matcher(said);
      if (caption.matches()) {
        return readable(List.of("each " + caption.group(2) + " " + caption.group(1)), said);
      }
    }
    Matcher cue = CUE.matcher(said);
    if (kind == SectionKind.CHART && cue.matches()) {
      return readable(List.of(cue.group(1) + " in " + cue.group(2)), said);
    }
    // Nobody's own words are rewritten, only what stands before them.
    int quote = said.indexOf('"') < 0 ? said.length() : said.indexOf('"');
    String before = said.substring(0, quote);
    for (List<String> heads : kind == SectionKind.CHART ? chart(before) : changes(before)) {
      List<String> lines = new ArrayList<>();
      for (String head : heads) {
        String meant = head + said.substring(quote);
        String plural = meant.endsWith(" 1") ? "" : "s";
        if (kind == SectionKind.CHART && AMOUNT.matcher(meant).matches()) {
          lines.add(meant + " time" + plural);
          lines.add(meant + " bar" + plural);
        }
        lines.add(meant);
      }
      List<String> found = readable(lines, said);
      if (!found.isEmpty()) {
        return found;
      }
    }
    return List.of();
  }

  private List<String> readable(List<String> lines, String said) {
    return Lists.filter(lines, one -> !one.equals(said) && reads.test(with(one)));
  }

  private String with(String meant) {
    return line.substring(0, span.start()) + meant + line.substring(span.end());
  }

  /** True for a word that a line on paper begins with, whatever word of ours is nearly the same. */
  static boolean isSaid(List<Token> tokens) {
    String word = tokens.get(0).getText();
    boolean handed = tokens.size() > 1 && tokens.get(1).getText().equals("handed");
    return VERBS.containsKey(word)
        || word.equals("bass")
        || handed
        || MARKS.contains(word)
        || Lists.any(tokens, token -> WITHIN.contains(token.getText()));
  }

  private String written(String said) {
    String first = tokens.get(0).getText();
    String verb = kind == SectionKind.KIT ? null : VERBS.get(first);
    return PaperWords.written(verb == null ? said : verb + said.substring(first.length()), kind);
  }

  /** Lines that may be meant, those that are equally likely together. */
  private List<List<String>> changes(String said) {
    Matcher each = EACH.matcher(said);
    if (kind == SectionKind.SHEET && each.lookingAt()) {
      List<List<String>> lines = new ArrayList<>();
      for (List<String> some : plainChanges(said.substring(each.end()))) {
        lines.add(Lists.map(some, one -> "each " + one));
      }
      return lines;
    }
    return plainChanges(said);
  }

  private List<List<String>> plainChanges(String said) {
    if (SaidRudiments.isAlone(said)) {
      return List.of(List.of(written("hands play " + said)));
    }
    String written = written(said);
    Matcher shifted = DIRECTION.matcher(written);
    if (shifted.matches()) {
      String shift = "shift " + shifted.group(1);
      String by = " by " + shifted.group(2);
      return List.of(List.of(shift + " later" + by, shift + " earlier" + by));
    }
    Matcher other = OTHER_SOUND.matcher(PaperWords.written(said, kind));
    if (other.matches()) {
      String to = " plays " + other.group(1) + Objects.requireNonNullElse(other.group(2), "");
      return List.of(List.of("left" + to, "right" + to));
    }
    Matcher except = EXCEPT.matcher(written);
    if (except.matches() && kind != SectionKind.SHEET) {
      String whom = except.group(2);
      return List.of(
          List.of(except.group(1) + " " + whom + "\nplain " + whom + " at " + except.group(3)));
    }
    // What begins a line of another section is no surface.
    return isOfASection(said.strip().replaceFirst(" .*", ""))
        ? List.of(List.of(written))
        : List.of(List.of(written), List.of("add " + written));
  }

  private static boolean isOfASection(String word) {
    for (SectionKind kind : SectionKind.values()) {
      if (isOf(kind, word)) {
        return true;
      }
    }
    return false;
  }

  private static boolean isOf(SectionKind kind, String word) {
    return Lists.any(
        StatementTable.startingWith(word),
        row -> !row.isHeading() && row.sections().contains(kind));
  }

  private List<List<String>> chart(String said) {
    String counted = amounts(written(said));
    String meant = written(counted.replaceAll("\\s*,\\s*|\\s+then\\s+", " "));
    String first = tokens.get(0).getText();
    List<List<String>> lines = new ArrayList<>();
    lines.add(List.of(meant));
    boolean ours = isOf(kind, first);
    List<String> rows = rows(counted);
    if (rows.size() > 1 && (!ours || first.equals("play"))) {
      lines.add(0, List.of(String.join("\n", rows)));
    }
    if (AGAIN.contains(first)) {
      lines.add(List.of("play" + meant.substring(first.length())));
    }
    if (!ours
        && !OPEN.contains(first)
        && meant.matches(".* \\d+ (?:times?|bars?|minutes?|seconds?)\\b.*")) {
      lines.add(List.of("play " + meant));
    }
    return lines;
  }

  /** {@code verse 4 times then chorus}: a line for each, where how often is said of the first. */
  private static List<String> rows(String said) {
    String[] parts = said.split(NEXT, 0);
    List<String> rows = new ArrayList<>();
    for (String part : parts) {
      rows.add(part.startsWith("play ") ? part : "play " + part);
    }
    return rows;
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
