package tabor.parse;

import tabor.grammar.TaborParser;
import tabor.grammar.TaborParserBaseVisitor;
import tabor.syntax.Heading;

/** Trees of headings to records. */
final class HeadingBuilder extends TaborParserBaseVisitor<Heading> {
  private final FirstProblem problems;
  private final BeatBuilder beats;

  HeadingBuilder(FirstProblem problems, BeatBuilder beats) {
    this.problems = problems;
    this.beats = beats;
  }

  @Override
  public Heading visitPatternHeading(TaborParser.PatternHeadingContext line) {
    if (line.places.isEmpty()) {
      problems.report(
          Spans.of(line), "this pattern has no strokes", "Write them after the colon: RlrrLrll");
    }
    return new Heading.Pattern(
        NameBuilder.name(line.id), beats.elements(line.places), Spans.of(line));
  }

  @Override
  public Heading visitKitHeading(TaborParser.KitHeadingContext line) {
    return new Heading.Kit(
        NameBuilder.name(line.id), NameBuilder.nameOrNull(line.like), Spans.of(line));
  }

  @Override
  public Heading visitPlayerHeading(TaborParser.PlayerHeadingContext line) {
    return new Heading.Player(
        NameBuilder.name(line.id), TextBuilder.titleOrNull(line.words), Spans.of(line));
  }

  @Override
  public Heading visitSheetHeading(TaborParser.SheetHeadingContext line) {
    return new Heading.Sheet(
        NameBuilder.name(line.id),
        TextBuilder.titleOrNull(line.words),
        NameBuilder.nameOrNull(line.from),
        Spans.of(line));
  }

  @Override
  public Heading visitGrooveHeading(TaborParser.GrooveHeadingContext line) {
    return new Heading.Groove(
        NameBuilder.name(line.id), TextBuilder.titleOrNull(line.words), Spans.of(line));
  }

  @Override
  public Heading visitStepHeading(TaborParser.StepHeadingContext line) {
    return new Heading.Step(
        NameBuilder.nameOrNull(line.id),
        TextBuilder.titleOrNull(line.words),
        NameBuilder.nameOrNull(line.from),
        Spans.of(line));
  }

  @Override
  public Heading visitChartHeading(TaborParser.ChartHeadingContext line) {
    return new Heading.Chart(
        NameBuilder.name(line.id), TextBuilder.titleOrNull(line.words), Spans.of(line));
  }
}
