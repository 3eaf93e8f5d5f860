package tabor.parse;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import org.antlr.v4.runtime.Token;
import tabor.source.Span;
import tabor.syntax.Numerals;
import tabor.syntax.SectionKind;

/**
 * Lines as people say them or write them on paper, each with how it is written here. What such
 * words mean is common practice, no source; a line is offered only if it can be read.
 */
final class PaperLines {
  /** Words on paper that say in a chart what {@code play} says. */
  private static final List<String> AGAIN = List.of("repeat", "loop", "again");

  /**
   * Words that say what a line does, and are nearly words of the notation that do something else.
   */
  private static final Map<String, String> VERBS =
      Map.of(
          "remove", "drop", "delete", "drop", "omit", "drop", "erase", "drop", "insert", "add",
          "put", "add", "bpm", "tempo", "speed", "tempo");

  /** What stands for what, in this order. */
  private static final Map<Pattern, String> SAID = new LinkedHashMap<>();

  static {
    said("^(title|by|goal|text|use|tempo|time|feel|on) ?[=:] ?", "$1 ");
    said("^tempo ((?:dotted-)?(?:half|quarter|eighth|sixteenth)) (?=\\d)", "tempo $1 = ");
    said("^feel (?:swing|shuffle)$", "feel swing eighths as triplets");
    said("^feel swing (?=\\d)", "feel swing eighths ");
    said("^on ([a-z]+) ([a-z]+)$", "on $1-$2");
    said("^letter (\\S) (?=[a-z])", "letter $1 = ");
    said("^(left|open) handed$", "$1-handed");
    said("^swap (?:right|left)(?: hand)?(?: and|,| with) (?:right|left)(?: hand)?$", "swap hands");
    said("^fill ([a-z0-9-]+) (?=bars? |last )", "fill $1 in ");
    said("(?<=\\d) ?bpm$", "");
    said("\\b(?:16th notes|16ths?|sixteenth[ -]notes)\\b", "sixteenths");
    said("\\b(?:8th notes|8ths?|eighth[ -]notes)\\b", "eighths");
    said("\\b(?:quarter[ -]notes|4ths)\\b", "quarters");
    said("\\btriplet[ -]notes\\b", "triplets");
    said("\\b(ride|crash|splash|china) cymbal\\b", "$1");
    said("\\bsnare drum\\b", "snare");
    said("\\b(?:bass|kick) drum\\b", "kick");
    said("\\bfloor tom\\b", "floor");
    said("\\b(?:hi hat|high hat|high-hat|hi-hat)\\b", "hihat");
    said("\\bhihat (?:pedal|foot)\\b", "hihat.foot");
    said("\\bride bell\\b", "ride.bell");
    said("^(?:open hihat|hihat open)(?= ?:)", "hihat.open");
    said("^hihat open at\\b", "open hihat at");
    said("^move (right|left)(?: (hand|foot))? to\\b", "$1 $2 to");
    said(
        "^(right|left|hands)( (?:hand|foot))? +(?:moves? |goes )?(?:to|on)(?: the)? ",
        "$1$2 plays ");
    said("^hands plays ", "hands play ");
    said("(?<= \\d[^ ]{0,3}) and (?=\\d)", " ");
    said("(?<= )on (?=\\d|every)", "at ");
    said("(?<= )every beat\\b", "every quarter");
    said("(?<! at| in) every (?=[^ ]+$)", " at every ");
    said("^(accent|ghost|plain|drop)(?: at)?(?: beats?)? (?=\\d)", "$1 all at ");
    said(
        "^(flam|drag|ruff|buzz|diddle|double|triple|rimshot)(?: at)?(?: beats?)? (?=\\d)",
        "$1 hands at ");
  }

  private static void said(String words, String written) {
    SAID.put(Pattern.compile(words), written);
  }

  private final String line;
  private final SectionKind kind;
  private final List<Token> tokens;
  private final Predicate<String> reads;
  private final Span span;

  private PaperLines(String line, SectionKind kind, List<Token> tokens, Predicate<String> reads) {
    this.line = line;
    this.kind = kind;
    this.tokens = tokens;
    this.reads = reads;
    this.span = BrokenLine.span(tokens);
  }

  /**
   * The same problem with what is meant by the line, where it is one of these.
   *
   * @param line a line that cannot be read
   * @param kind the section that it stands in
   * @param reads tells whether another line could be read
   */
  static SyntaxProblem explained(
      SyntaxProblem problem,
      String line,
      SectionKind kind,
      List<Token> tokens,
      Predicate<String> reads) {
    PaperLines lines = new PaperLines(line, kind, tokens, reads);
    if (kind != SectionKind.CHART && AGAIN.contains(tokens.get(0).getText())) {
      return SyntaxProblem.of(
          problem.span(),
          problem.message(),
          "How often a section is played is said in a chart: play verse 4 times");
    }
    List<String> meant = lines.meant();
    if (meant.isEmpty()) {
      return problem;
    }
    SyntaxProblem explained =
        SyntaxProblem.of(
            problem.span(),
            problem.message(),
            "Write " + String.join(", or ", meant.stream().map(PaperLines::shown).toList()));
    for (String one : meant) {
      explained = explained.fix("Write " + shown(one), lines.span, one);
    }
    return explained;
  }

  /** A line as a message shows it: of a part, who plays it. */
  private static String shown(String meant) {
    int colon = meant.indexOf(" :");
    return colon < 0 || meant.indexOf('"') >= 0
        ? meant
        : meant.substring(0, colon) + " before the colon";
  }

  /** What may be meant, as far as it can be read: a number alone may be of times or of bars. */
  private List<String> meant() {
    String said = span.in(line);
    // Nobody's own words are rewritten, only what stands before them.
    int quote = said.indexOf('"') < 0 ? said.length() : said.indexOf('"');
    String before = said.substring(0, quote);
    for (String head : kind == SectionKind.CHART ? chart(before) : changes(before)) {
      String meant = head + said.substring(quote);
      String plural = meant.endsWith(" 1") ? "" : "s";
      List<String> lines =
          kind == SectionKind.CHART && meant.matches(".* \\d+")
              ? List.of(meant + " time" + plural, meant + " bar" + plural, meant)
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

  /** True for a word that a line on paper begins with, whatever word of ours is nearly the same. */
  static boolean isSaid(List<Token> tokens) {
    String word = tokens.get(0).getText();
    boolean handed = tokens.size() > 1 && tokens.get(1).getText().equals("handed");
    return VERBS.containsKey(word) || word.equals("bass") || handed;
  }

  private String written(String said) {
    String first = tokens.get(0).getText();
    String verb = VERBS.get(first);
    String written = verb == null ? said : verb + said.substring(first.length());
    for (Map.Entry<Pattern, String> one : SAID.entrySet()) {
      written = one.getKey().matcher(written).replaceAll(one.getValue());
    }
    return written.replace("  ", " ");
  }

  private List<String> changes(String said) {
    String written = written(said);
    return List.of(written, "add " + written);
  }

  private List<String> chart(String said) {
    String meant = amounts(written(said)).replaceAll("\\s*,\\s*|\\s+then\\s+", " ");
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
