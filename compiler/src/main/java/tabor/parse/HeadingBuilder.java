package tabor.parse;

import tabor.grammar.TaborParser;
import tabor.grammar.TaborParserBaseVisitor;
import tabor.syntax.Heading;

/** Trees of headings to records. */
final class HeadingBuilder extends TaborParserBaseVisitor<Heading> {
  private final Leaves leaves;
  private final BeatBuilder beats;

  HeadingBuilder(Leaves leaves, BeatBuilder beats) {
    this.leaves = leaves;
    this.beats = beats;
  }

  @Override
  public Heading visitPatternHeading(TaborParser.PatternHeadingContext line) {
    if (line.places.isEmpty()) {
      leaves.report(
          Spans.of(line), "this pattern has no strokes", "Write them after the colon: RlrrLrll");
    }
    return new Heading.Pattern(Leaves.name(line.id), beats.elements(line.places), Spans.of(line));
  }

  @Override
  public Heading visitKitHeading(TaborParser.KitHeadingContext line) {
    return new Heading.Kit(Leaves.name(line.id), Leaves.nameOrNull(line.like), Spans.of(line));
  }

  @Override
  public Heading visitGrooveHeading(TaborParser.GrooveHeadingContext line) {
    return new Heading.Groove(Leaves.name(line.id), Leaves.titleOrNull(line.title), Spans.of(line));
  }

  @Override
  public Heading visitStepHeading(TaborParser.StepHeadingContext line) {
    return new Heading.Step(
        Leaves.nameOrNull(line.id),
        Leaves.titleOrNull(line.title),
        Leaves.nameOrNull(line.from),
        Spans.of(line));
  }

  @Override
  public Heading visitChartHeading(TaborParser.ChartHeadingContext line) {
    return new Heading.Chart(Leaves.name(line.id), Leaves.titleOrNull(line.title), Spans.of(line));
  }
}
