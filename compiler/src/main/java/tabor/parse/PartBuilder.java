package tabor.parse;

import java.util.ArrayList;
import java.util.List;
import org.antlr.v4.runtime.Token;
import tabor.grammar.TaborParser;
import tabor.grammar.TaborParserBaseVisitor;
import tabor.kit.Kits;
import tabor.rhythm.NoteValue;
import tabor.source.Span;
import tabor.syntax.Num;
import tabor.syntax.PartStatement;
import tabor.syntax.PartStatement.PatternSource;
import tabor.syntax.SheetLine;

/** Trees of lanes and what goes with them to records. */
final class PartBuilder extends TaborParserBaseVisitor<PartStatement> {
  /** More places than any rhythm has; it keeps memory in proportion to the text. */
  private static final int MOST_PLACES = 1000;

  /** {@code sixteenth-triplets}. */
  private static final int LONGEST_VALUE = 18;

  /** A section has no more. */
  private static final int MOST_BLANK = 512;

  private final FirstProblem problems;
  private final NumberBuilder numbers;
  private final BeatBuilder beats;
  private final SourceVisitor sources = new SourceVisitor();

  PartBuilder(FirstProblem problems, NumberBuilder numbers, BeatBuilder beats) {
    this.problems = problems;
    this.numbers = numbers;
    this.beats = beats;
  }

  @Override
  public PartStatement visitLane(TaborParser.LaneContext line) {
    // A blank before the end of the line belongs to the bars as parsed, not to the statement.
    Span last = Spans.of(line.body.items.get(line.body.items.size() - 1));
    Span whole = Spans.of(line);
    int end = line.body.stop == null ? last.end() : Spans.of(line.body.stop).end();
    Token stop = line.body.stop;
    boolean plural = stop != null && stop.getText().equals("s");
    if (plural && end - Spans.of(line.body).start() <= LONGEST_VALUE) {
      refuseNoteValue(line, whole);
    }
    return new PartStatement.Lane(
        NameBuilder.subject(line.who),
        line.ostinato != null,
        beats.bars(line.body),
        new Span(whole.start(), Math.max(last.end(), end)));
  }

  /** {@code hihat : eighths}. */
  private void refuseNoteValue(TaborParser.LaneContext line, Span whole) {
    String word = line.body.getText().strip();
    if (NoteValue.of(word).isEmpty()) {
      return;
    }
    String message = "after the colon come strokes, not a note value";
    String who = line.who.getText();
    if (Kits.FIVE_PIECE.surface(who) == null) {
      problems.report(Spans.of(line.body), message, "rl rl rl rl are eighths in 4/4");
      return;
    }
    String add = "add " + who + " at every " + word.substring(0, word.length() - 1);
    problems.report(
        SyntaxProblem.of(Spans.of(line.body), message, "Write xx xx xx xx for eighths, or " + add)
            .fix("Write " + add, whole, add));
  }

  @Override
  public PartStatement visitPlayed(TaborParser.PlayedContext line) {
    return new PartStatement.Played(
        NameBuilder.subject(line.who),
        line.items.get(0).source.accept(sources),
        line.items.get(0).lead != null,
        NameBuilder.noteValue(line.value),
        Spans.of(line));
  }

  @Override
  public PartStatement visitNext(TaborParser.NextContext line) {
    return new PartStatement.Next(Spans.of(line));
  }

  @Override
  public PartStatement visitPickup(TaborParser.PickupContext line) {
    return new PartStatement.Pickup(
        numbers.positive(line.value, "the number of beats"), Spans.of(line));
  }

  @Override
  public PartStatement visitBarsLine(TaborParser.BarsLineContext line) {
    return new PartStatement.Bars(
        numbers.positive(line.value, "the number of bars"), Spans.of(line));
  }

  @Override
  public PartStatement visitBlankBars(TaborParser.BlankBarsContext line) {
    return new PartStatement.BlankBars(
        numbers.whole(line.value, 1, MOST_BLANK, "the number of empty bars"), Spans.of(line));
  }

  @Override
  public PartStatement visitBlankPart(TaborParser.BlankPartContext line) {
    return new PartStatement.BlankPart(
        line.whom == null ? List.of() : NameBuilder.targets(line.whom), Spans.of(line));
  }

  /** The patterns behind the first of a list. */
  List<SheetLine.Pattern> others(TaborParser.PlayedContext line) {
    List<SheetLine.Pattern> others = new ArrayList<>(line.items.size() - 1);
    for (TaborParser.PatternItemContext item : line.items.subList(1, line.items.size())) {
      others.add(new SheetLine.Pattern(item.source.accept(sources), item.lead != null));
    }
    return others;
  }

  private final class SourceVisitor extends TaborParserBaseVisitor<PatternSource> {
    @Override
    public PatternSource visitNamedPattern(TaborParser.NamedPatternContext pattern) {
      return new PartStatement.Named(NameBuilder.name(pattern.id.id));
    }

    @Override
    public PatternSource visitSpreadPattern(TaborParser.SpreadPatternContext pattern) {
      Num strokes = numbers.positive(pattern.strokes, "the number of strokes");
      Num places = numbers.whole(pattern.places, 1, MOST_PLACES, "the number of places");
      if (places.whole() < strokes.whole()) {
        Span span = Spans.between(pattern.strokes, pattern.places);
        problems.report(
            SyntaxProblem.of(
                    span,
                    strokes.whole() + " strokes do not fit into " + places.whole() + " places",
                    "The strokes come first, then the places: spread 3 over 8")
                .fix("Turn them round", span, places.whole() + " over " + strokes.whole()));
      }
      return new PartStatement.Spread(strokes, places, Spans.of(pattern));
    }
  }
}
