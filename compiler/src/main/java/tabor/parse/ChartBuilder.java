package tabor.parse;

import tabor.grammar.TaborLexer;
import tabor.grammar.TaborParser;
import tabor.grammar.TaborParserBaseVisitor;
import tabor.groove.Chart;
import tabor.syntax.ChartStatement;
import tabor.syntax.Num;
import tabor.syntax.Ref;

/** Trees of chart lines to records. */
final class ChartBuilder extends TaborParserBaseVisitor<ChartStatement> {
  private final FirstProblem problems;
  private final NumberBuilder numbers;
  private final SettingBuilder settings;

  ChartBuilder(FirstProblem problems, NumberBuilder numbers, SettingBuilder settings) {
    this.problems = problems;
    this.numbers = numbers;
    this.settings = settings;
  }

  @Override
  public ChartStatement visitCountIn(TaborParser.CountInContext line) {
    return new ChartStatement.CountIn(
        numbers.positive(line.value, "the number of bars"), Spans.of(line));
  }

  @Override
  public ChartStatement visitClick(TaborParser.ClickContext line) {
    Chart.Click click =
        switch (line.how.getType()) {
          case TaborLexer.ON -> Chart.Click.ON;
          case TaborLexer.OFF -> Chart.Click.OFF;
          case TaborLexer.QUARTERS -> Chart.Click.QUARTERS;
          default -> Chart.Click.EIGHTHS;
        };
    return new ChartStatement.SetClick(new Ref<>(click, Spans.of(line.how)), Spans.of(line));
  }

  @Override
  public ChartStatement visitPlaySections(TaborParser.PlaySectionsContext line) {
    return new ChartStatement.Play(
        line.sections.stream().map(NameBuilder::sectionName).toList(),
        line.value == null ? null : numbers.positive(line.value, "the number of times"),
        settings.tempoOrNull(line.speed),
        Spans.of(line));
  }

  @Override
  public ChartStatement visitRestBars(TaborParser.RestBarsContext line) {
    return new ChartStatement.Rest(
        numbers.positive(line.value, "the number of bars"), Spans.of(line));
  }

  @Override
  public ChartStatement visitClimb(TaborParser.ClimbContext line) {
    boolean bars = line.unit.getType() == TaborLexer.BARS || line.unit.getType() == TaborLexer.BAR;
    Num by = new Num(NumberBuilder.exact(line.stage.getText()), Spans.of(line.stage));
    if (by.value().sign() == 0) {
      problems.report(
          by.span(), "a climb by 0 never arrives", "Say by how much each stage differs");
    }
    return new ChartStatement.Climb(
        NameBuilder.sectionName(line.section),
        numbers.speed(line.from),
        numbers.speed(line.to),
        by,
        numbers.positive(line.value, bars ? "the number of bars" : "the number of times"),
        bars,
        Spans.of(line));
  }
}
