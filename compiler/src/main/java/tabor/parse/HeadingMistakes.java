package tabor.parse;

import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.antlr.v4.runtime.Token;
import org.jspecify.annotations.Nullable;
import tabor.grammar.TaborLexer;
import tabor.grammar.TaborParser;
import tabor.source.Span;
import tabor.syntax.SectionKind;

/** Names of sections that are no names, and what is written in their place. */
final class HeadingMistakes {
  /** What people write between a kit's name and the kit that it is like. */
  private static final List<String> LIKE = List.of("=", "(", "of", "based", "is");

  private static final Pattern OTHER_KIT =
      Pattern.compile(
          "kit ([a-z][a-z0-9-]*) ?(?:from|of|as|is|like|based on|=|:|\\() ?(?:a |an |the )?"
              + "([a-z][a-z0-9-]*) ?\\)?");

  private static final Pattern OTHER_SECTION =
      Pattern.compile(
          "((?:step|sheet) [a-z][a-z0-9-]*(?: \"[^\"]*\")?) ?(?:of|on|after|based on|from ?[:=]) ?"
              + "([a-z][a-z0-9-]*)");

  private HeadingMistakes() {}

  /** What is wrong with the name of a heading that cannot be read; null if it is something else. */
  static @Nullable SyntaxProblem explain(
      String line, SectionKind kind, List<Token> tokens, LineSimulation simulation) {
    int at = simulation.read();
    Token offending = tokens.get(at);
    if (at == 0) {
      return null;
    }
    SyntaxProblem other = other(line, kind, tokens, offending);
    if (other != null) {
      return other;
    }
    if (at == 1 && offending.getType() == TaborLexer.QUOTED && kind != SectionKind.STEP) {
      return nameless(kind, offending);
    }
    if (at == 1 && offending.getType() == TaborLexer.LANE_START && kind != SectionKind.PATTERN) {
      Span gap = Spans.gap(tokens.get(0), tokens.get(2));
      return SyntaxProblem.of(
              Spans.of(offending),
              "after `" + kind.word() + "` comes a name, not the colon",
              "Leave the colon out")
          .fix("Take the colon out", gap, " ");
    }
    if (kind == SectionKind.STEP && at == 2 && tokens.get(1).getType() == TaborLexer.FROM) {
      return SyntaxProblem.of(
          Spans.of(tokens.get(1)),
          "this step has neither a name nor a title",
          "Write one before from: step feet from " + offending.getText());
    }
    int end = endOfName(kind, tokens);
    if (at == 2 && offending.getText().startsWith(":") && kind != SectionKind.PATTERN) {
      return SyntaxProblem.of(
              Spans.of(offending),
              "there is no colon after the name of " + kind.words(),
              "Leave the colon out")
          .fix("Take the colon out", Spans.gap(tokens.get(1), tokens.get(3)), " ");
    }
    SyntaxProblem colon = colonForgotten(kind, line, tokens);
    if (colon != null) {
      return colon;
    }
    if (at > end || end == 1) {
      return null;
    }
    SyntaxProblem title = unquotedTitle(kind, line, tokens, end);
    return title != null ? title : spelling(line, tokens, end, offending, simulation);
  }

  /** What a section or a kit starts from, said in another word than here. */
  private static @Nullable SyntaxProblem other(
      String line, SectionKind kind, List<Token> tokens, Token offending) {
    Span whole = BrokenLine.span(tokens);
    boolean kits = kind == SectionKind.KIT;
    Matcher said = (kits ? OTHER_KIT : OTHER_SECTION).matcher(whole.in(line));
    if (whole.length() > PaperLines.LONGEST || !said.matches()) {
      return null;
    }
    String written =
        kits
            ? "kit " + said.group(1) + " like " + said.group(2)
            : said.group(1) + " from " + said.group(2);
    return SyntaxProblem.of(
            kits ? Spans.of(tokens.get(2)) : Spans.of(offending),
            kits
                ? "a kit that is like another one is written with `like`"
                : "the section that this one starts from comes after `from`",
            "Write " + written)
        .fix("Write " + written, whole, written);
  }

  /** {@code pattern double RLRR}: what stands behind the name are strokes. */
  private static @Nullable SyntaxProblem colonForgotten(
      SectionKind kind, String line, List<Token> tokens) {
    if (!isRow(kind, tokens)) {
      return null;
    }
    Span strokes = new Span(tokens.get(2).getStartIndex(), BrokenLine.span(tokens).end());
    String name = tokens.get(1).getText();
    Span gap = Spans.gap(tokens.get(1), tokens.get(2));
    return SyntaxProblem.of(
            strokes,
            "after the name of a pattern comes a colon",
            "Write pattern " + name + " : " + strokes.in(line))
        .fix("Write a colon", gap, " : ");
  }

  /** True for a pattern with strokes right behind its name. */
  private static boolean isRow(SectionKind kind, List<Token> tokens) {
    if (kind != SectionKind.PATTERN || tokens.size() < 4) {
      return false;
    }
    for (Token token : tokens.subList(2, tokens.size() - 1)) {
      if (!token.getText().matches("[RrLlBbXx(){}.'/ -]+")) {
        return false;
      }
    }
    return true;
  }

  /** A name, then words that begin with a capital: a title that lost its quotes. */
  private static @Nullable SyntaxProblem unquotedTitle(
      SectionKind kind, String line, List<Token> tokens, int end) {
    boolean titled = kind != SectionKind.PATTERN && kind != SectionKind.KIT;
    if (!titled || end < 3) {
      return null;
    }
    Span span = Spans.between(tokens.get(2), tokens.get(end - 1));
    String title = span.in(line);
    String name = tokens.get(1).getText();
    if (!name.equals(name(name)) || !Character.isUpperCase(title.charAt(0))) {
      return null;
    }
    String quoted = '"' + title + '"';
    return SyntaxProblem.of(span, "a title stands in quotes", "Write " + name + " " + quoted)
        .fix("Write " + quoted, span, quoted);
  }

  private static SyntaxProblem nameless(SectionKind kind, Token title) {
    String text = title.getText();
    String name = name(text.substring(1, text.length() - 1));
    int start = title.getStartIndex();
    SyntaxProblem problem =
        SyntaxProblem.of(
            Spans.of(title),
            "after `" + kind.word() + "` comes a name, not a text",
            "The title stands after the name: "
                + kind.word()
                + " "
                + (name.isEmpty() ? "pads" : name)
                + " "
                + text);
    return name.isEmpty()
        ? problem
        : problem.fix("Name it " + name, new Span(start, start), name + " ");
  }

  /** Index of the first token after what is meant as the name. */
  static int endOfName(SectionKind kind, List<Token> tokens) {
    if (isRow(kind, tokens)) {
      return 2;
    }
    int end = 1;
    while (!endsName(kind, tokens.get(end))) {
      end++;
    }
    return end;
  }

  private static boolean endsName(SectionKind kind, Token token) {
    return switch (token.getType()) {
      case Token.EOF,
          TaborLexer.QUOTED,
          TaborLexer.TRIPLE_QUOTED,
          TaborLexer.OPEN_QUOTED,
          TaborLexer.OPEN_TRIPLE,
          TaborLexer.LANE_START ->
          true;
      case TaborLexer.FROM ->
          kind == SectionKind.STEP || kind == SectionKind.SHEET || kind == SectionKind.KIT;
      case TaborLexer.LIKE, TaborLexer.AS -> kind == SectionKind.KIT;
      default -> kind == SectionKind.KIT && LIKE.contains(token.getText());
    };
  }

  private static @Nullable SyntaxProblem spelling(
      String line, List<Token> tokens, int end, Token offending, LineSimulation simulation) {
    Span span = Spans.between(tokens.get(1), tokens.get(end - 1));
    String written = span.in(line);
    String name = name(written);
    boolean oneWord = end == 2;
    if (oneWord && !simulation.expectsIn(TaborParser.RULE_newName)) {
      return null;
    }
    String rule =
        "A name is a letter from a to z, then letters and digits with single hyphens between them";
    String message = "`" + written + "` is no name";
    if (oneWord && written.toLowerCase(Locale.ROOT).equals(name)) {
      message = "`" + written + "` has a capital letter";
      rule = "Words, names and counts are written in lower case: " + name;
    } else if (!oneWord) {
      message = "a name is one word, but here stand several";
      rule = name.isEmpty() ? rule : "Join them by hyphens: " + name;
    } else if (!name.isEmpty()) {
      rule = rule + ": " + name;
    }
    SyntaxProblem problem = SyntaxProblem.of(oneWord ? Spans.of(offending) : span, message, rule);
    return name.isEmpty() ? problem : problem.fix("Write " + name, span, name);
  }

  /** The nearest name to some words, such as {@code rock-beat} or {@code fill-a}; may be empty. */
  static String name(String words) {
    String apart = words.replaceAll("(?<=[a-z])(?=[A-Z])", "-").toLowerCase(Locale.ROOT);
    if (!apart.isEmpty() && Character.isDigit(apart.charAt(0))) {
      return "";
    }
    String plain =
        java.text.Normalizer.normalize(apart, java.text.Normalizer.Form.NFD)
            .replaceAll("\\p{M}", "")
            .replaceAll("['’]", "");
    return plain.replaceAll("[^a-z0-9]+", "-").replaceAll("^-|-$", "");
  }
}
