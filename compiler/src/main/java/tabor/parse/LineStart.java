package tabor.parse;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.antlr.v4.runtime.Token;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Near;
import tabor.grammar.TaborLexer;
import tabor.kit.Kits;
import tabor.source.Span;
import tabor.syntax.SectionKind;
import tabor.syntax.StatementRow;
import tabor.syntax.StatementTable;

/**
 * Why a line cannot begin as it does.
 *
 * @param kind the section that the line stands in
 * @param tokens all of the line, the end included
 * @param at index of the first one that no reading of the grammar takes
 * @param usage how the statement is written, where it is known which one it is
 */
record LineStart(
    String line, SectionKind kind, List<Token> tokens, int at, Supplier<@Nullable String> usage) {
  /** A line whose first word opens no statement. */
  @Nullable SyntaxProblem explain() {
    Token first = tokens.get(0);
    String written = first.getText();
    boolean lane = tokens.size() > 1 && tokens.get(1).getType() == TaborLexer.LANE_START;
    if (lane && Vocabulary.of(Vocabulary.Role.NOTE_VALUE).contains(written)) {
      return SyntaxProblem.of(
          Spans.of(first),
          "`" + written + "` is a note value and names no part",
          "Note values are not written: a word is a beat, and the number of strokes in it is how"
              + " finely the beat is divided");
    }
    if (lane && at <= 1 && Vocabulary.keywords().contains(written)) {
      Token colon = tokens.get(1);
      return line.substring(Spans.of(colon).end()).stripLeading().startsWith("\"")
          ? SyntaxProblem.of(
              Spans.of(colon), "no colon stands after `" + written + "`", usage.get())
          : SyntaxProblem.of(
              Spans.of(first),
              "`" + written + "` is a word of the language and names no part",
              "A part is named by a limb, hands, feet, line or a surface such as snare");
    }
    boolean unknown =
        (first.getType() == TaborLexer.NAME || first.getType() == TaborLexer.ZONED)
            && at == 1
            && Kits.FIVE_PIECE.surface(written) == null;
    boolean capital =
        first.getType() == TaborLexer.MISSPELT && SyntaxErrorExplainer.isCapital(written);
    if (capital || (at > 0 && !unknown)) {
      return null;
    }
    if (!Vocabulary.isWord(first.getType())
        && first.getType() != TaborLexer.MISSPELT
        && first.getType() != TaborLexer.SAID) {
      SyntaxProblem foreign = foreign();
      return foreign != null
          ? foreign
          : SyntaxProblem.of(
              BrokenLine.character(tokens, 0),
              "no line starts with " + Wording.shown(first),
              lines());
    }
    List<String> near = Near.names(written, starts());
    SyntaxProblem problem =
        SyntaxProblem.of(
            Spans.of(first),
            "no line in " + kind.words() + " starts with `" + written + "`",
            near.isEmpty() ? lines() : SyntaxErrorExplainer.meant(near));
    return SyntaxErrorExplainer.replaced(problem, first, near);
  }

  /** A sign that begins a comment elsewhere, or a lesson in a document. */
  private @Nullable SyntaxProblem foreign() {
    Span all = BrokenLine.span(tokens);
    String said = all.in(line);
    if (said.startsWith("```")) {
      return SyntaxProblem.of(
              all, "this line belongs to a document that a lesson stands in", "Take it out")
          .fix("Take it out", all, "");
    }
    if (said.matches("(?:<{7}|={7}|>{7}|\\|{7})(?: .*)?")) {
      return SyntaxProblem.of(
          all,
          "two versions of this lesson were put together, and which of their lines hold is not"
              + " settled here",
          "Keep the lines of one version, or of both, and take the marks <<<<<<<, ======= and"
              + " >>>>>>> out");
    }
    for (String sign : List.of("//", "/*", "--", ";", "%")) {
      if (said.startsWith(sign)) {
        Span span = new Span(all.start(), all.start() + sign.length());
        return SyntaxProblem.of(
                span, "no line starts with `" + sign + "`", "A comment starts with #")
            .fix("Write #", span, "#");
      }
    }
    return null;
  }

  /** What a line of this section may start with. */
  private List<String> starts() {
    List<String> starts = new ArrayList<>();
    for (StatementRow row : StatementTable.inSection(kind)) {
      if (row.keyword() != null && !starts.contains(row.keyword())) {
        starts.add(row.keyword());
      }
    }
    if (kind == SectionKind.GROOVE || kind == SectionKind.STEP || kind == SectionKind.SHEET) {
      starts.addAll(List.of("right", "left", "hands", "feet", "line"));
      starts.addAll(Kits.FIVE_PIECE.surfaceNames());
    }
    return starts;
  }

  private String lines() {
    return switch (kind) {
      case GROOVE, STEP ->
          "A part is written as hands : rl rl rl rl; a change starts with a word such as add,"
              + " drop or accent";
      case SHEET ->
          "A variation is written as each add kick at 2& 3, or each kick : x . . . | . . x .";
      case PATTERN -> "Nothing stands below a pattern";
      case HEADER, KIT, PLAYER, CHART -> "It starts with " + Wording.or(starts());
    };
  }
}
