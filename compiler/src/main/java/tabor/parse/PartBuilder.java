package tabor.parse;

import tabor.grammar.TaborParser;
import tabor.grammar.TaborParserBaseVisitor;
import tabor.source.Span;
import tabor.syntax.Num;
import tabor.syntax.PartStatement;
import tabor.syntax.Word;

/** Trees of lanes and what goes with them to records. */
final class PartBuilder extends TaborParserBaseVisitor<PartStatement> {
  /** More places than any rhythm has; it keeps memory in proportion to the text. */
  private static final int MOST_PLACES = 1000;

  private final Leaves leaves;
  private final BeatBuilder beats;

  PartBuilder(Leaves leaves, BeatBuilder beats) {
    this.leaves = leaves;
    this.beats = beats;
  }

  @Override
  public PartStatement visitLane(TaborParser.LaneContext line) {
    // A blank before the end of the line belongs to the bars as parsed, not to the statement.
    Span last = Spans.of(line.body.items.get(line.body.items.size() - 1));
    Span whole = Spans.of(line);
    int end = line.body.stop == null ? last.end() : Spans.of(line.body.stop).end();
    Word subject = Leaves.subject(line.who);
    return new PartStatement.Lane(
        subject,
        line.goesRound != null,
        beats.bars(line.body),
        new Span(whole.start(), Math.max(last.end(), end)));
  }

  @Override
  public PartStatement visitPlayed(TaborParser.PlayedContext line) {
    Word value = leaves.listed(line.value, Lists.VALUES_BOTH, "a note value");
    Num strokes = null;
    Num places = null;
    Word pattern;
    if (line.id == null) {
      pattern = Leaves.word(line.EUCLID().getSymbol());
      strokes = leaves.positive(line.strokes, "the number of strokes");
      places = leaves.whole(line.places, 1, MOST_PLACES, "the number of places");
      if (places.whole() < strokes.whole()) {
        leaves.report(
            Spans.between(line.strokes, line.places),
            strokes.whole() + " strokes do not fit into " + places.whole() + " places",
            "The strokes come first, then the places: euclid 3 8");
      }
    } else {
      pattern = Leaves.name(line.id);
    }
    return new PartStatement.Played(
        Leaves.subject(line.who),
        pattern,
        strokes,
        places,
        line.lead != null,
        value,
        Spans.of(line));
  }

  @Override
  public PartStatement visitNext(TaborParser.NextContext line) {
    return new PartStatement.Next(Spans.of(line));
  }

  @Override
  public PartStatement visitPickup(TaborParser.PickupContext line) {
    return new PartStatement.Pickup(
        leaves.positive(line.value, "the number of beats"), Spans.of(line));
  }

  @Override
  public PartStatement visitBarsLine(TaborParser.BarsLineContext line) {
    return new PartStatement.Bars(
        leaves.positive(line.value, "the number of bars"), Spans.of(line));
  }
}
