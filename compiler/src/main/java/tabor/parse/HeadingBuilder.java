package tabor.parse;

import tabor.grammar.TaborParser;
import tabor.grammar.TaborParserBaseVisitor;
import tabor.syntax.Heading;
import tabor.syntax.Name;

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
    return new Heading.Pattern(name(line.id), beats.elements(line.places), Spans.of(line));
  }

  @Override
  public Heading visitKitHeading(TaborParser.KitHeadingContext line) {
    return new Heading.Kit(
        name(line.id), line.like == null ? null : NameBuilder.kitName(line.like), Spans.of(line));
  }

  @Override
  public Heading visitPlayerHeading(TaborParser.PlayerHeadingContext line) {
    return new Heading.Player(name(line.id), TextBuilder.titleOrNull(line.words), Spans.of(line));
  }

  @Override
  public Heading visitSheetHeading(TaborParser.SheetHeadingContext line) {
    return new Heading.Sheet(
        name(line.id),
        TextBuilder.titleOrNull(line.words),
        line.from == null ? null : NameBuilder.sectionName(line.from),
        Spans.of(line));
  }

  @Override
  public Heading visitGrooveHeading(TaborParser.GrooveHeadingContext line) {
    return new Heading.Groove(name(line.id), TextBuilder.titleOrNull(line.words), Spans.of(line));
  }

  @Override
  public Heading visitStepHeading(TaborParser.StepHeadingContext line) {
    return new Heading.Step(
        NameBuilder.newName(line.id),
        TextBuilder.titleOrNull(line.words),
        line.from == null ? null : NameBuilder.sectionName(line.from),
        Spans.of(line));
  }

  @Override
  public Heading visitChartHeading(TaborParser.ChartHeadingContext line) {
    return new Heading.Chart(name(line.id), TextBuilder.titleOrNull(line.words), Spans.of(line));
  }

  private static Name name(TaborParser.NewNameContext name) {
    return NameBuilder.name(name.id);
  }
}
