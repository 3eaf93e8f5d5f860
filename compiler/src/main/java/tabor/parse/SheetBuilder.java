package tabor.parse;

import java.util.List;
import org.antlr.v4.runtime.Token;
import org.jspecify.annotations.Nullable;
import tabor.grammar.TaborParser;
import tabor.source.Span;
import tabor.syntax.At;
import tabor.syntax.Edit;
import tabor.syntax.Num;
import tabor.syntax.SheetLine;
import tabor.syntax.Statement;

/** Lines of sheets to trees; and the choices that only they may have, refused elsewhere. */
record SheetBuilder(
    FirstProblem problems, NumberBuilder numbers, PartBuilder parts, EditBuilder edits) {
  SheetLine line(TaborParser.SheetLineContext line) {
    TaborParser.EachLineContext each = line.eachLine();
    return each != null
        ? built(line, false, each.value, each.varied(), each.caption)
        : built(line, true, line.andLine().value, line.andLine().varied(), line.andLine().caption);
  }

  private SheetLine built(
      TaborParser.SheetLineContext line,
      boolean along,
      @Nullable Token value,
      TaborParser.VariedContext varied,
      TaborParser.@Nullable TextContext caption) {
    Num bars = value == null ? null : numbers.positive(value, "the number of bars");
    if (bars != null && varied.lanePart == null) {
      problems.report(
          bars.span(),
          "only a part that is written out varies by bars",
          "It is written `each 2 bars kick : x . . . | . . x .`");
    }
    TaborParser.LaneContext lane = varied.lanePart;
    if (lane != null && lane.ostinato != null) {
      Span word = Spans.of(lane.ostinato);
      Span gap = new Span(word.start(), Spans.of(lane.who).start());
      problems.report(
          SyntaxProblem.of(
                  word,
                  "a part that varies repeats itself anyway",
                  "Leave out `ostinato`: each bar is a variation of its own")
              .fix("Leave out `ostinato`", gap, ""));
    }
    Statement built =
        lane != null
            ? lane.accept(parts)
            : varied.playedPart != null
                ? varied.playedPart.accept(parts)
                : varied.editPart.accept(edits);
    At.Places places = built instanceof Edit edit ? edit.places() : null;
    if (places != null && places.choose() != null && !places.ends().isEmpty()) {
      problems.report(
          places.span(),
          "groups of places and a choice among places do not go together",
          "Write one line for each");
    }
    Span whole = Spans.of(line);
    int end = caption == null ? built.span().end() : Spans.of(caption).end();
    return new SheetLine(
        along,
        bars,
        built,
        varied.playedPart == null ? List.of() : parts.others(varied.playedPart),
        TextBuilder.titleOrNull(caption),
        new Span(whole.start(), end));
  }

  /** Refuses in a line that stands alone what only lines of sheets may have. */
  void refuse(TaborParser.StatementContext context, Statement statement) {
    if (context.lanePart != null
        && context.lanePart.played() != null
        && context.lanePart.played().items.size() > 1) {
      TaborParser.PatternItemContext second = context.lanePart.played().items.get(1);
      alone(
          Spans.of(second),
          "a part plays one pattern at a time",
          "Several patterns, joined by commas, are variations in a sheet: ");
    }
    At.Places places = statement instanceof Edit edit ? edit.places() : null;
    if (places == null) {
      return;
    }
    Num choose = places.choose();
    if (choose != null) {
      alone(
          choose.span(),
          "a choice among places makes variations",
          "It stands in a sheet, on a line that starts with each: ");
    } else if (!places.ends().isEmpty()) {
      int end = places.ends().get(0);
      Span before = places.items().get(end - 1).span();
      Span after = places.items().get(end).span();
      int from = before.end();
      int to = after.start();
      Span sign = new Span(from, to);
      alone(
          sign,
          "groups of places make variations",
          "They stand in a sheet, on a line that starts with each: ");
    }
  }

  private void alone(Span span, String message, String help) {
    problems.report(span, message, help + "each add kick at 2& 3 | 4&");
  }
}
