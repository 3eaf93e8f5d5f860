package tabor.parse;

import java.util.List;
import tabor.grammar.TaborLexer;
import tabor.grammar.TaborParser;
import tabor.grammar.TaborParserBaseVisitor;
import tabor.syntax.ChartStatement;
import tabor.syntax.Word;

/** Trees of chart lines to records. */
final class ChartBuilder extends TaborParserBaseVisitor<ChartStatement> {
  private final Leaves leaves;
  private final SettingBuilder settings;

  ChartBuilder(Leaves leaves, SettingBuilder settings) {
    this.leaves = leaves;
    this.settings = settings;
  }

  @Override
  public ChartStatement visitCountIn(TaborParser.CountInContext line) {
    return new ChartStatement.CountIn(
        leaves.positive(line.value, "the number of bars"), Spans.of(line));
  }

  @Override
  public ChartStatement visitClick(TaborParser.ClickContext line) {
    return new ChartStatement.Click(
        leaves.listed(line.how.word, Lists.CLICKS, "a click"), Spans.of(line));
  }

  @Override
  public ChartStatement visitPlay(TaborParser.PlayContext line) {
    List<Word> sections = line.sections.stream().map(Leaves::name).toList();
    return new ChartStatement.Play(
        sections,
        line.value == null ? null : leaves.positive(line.value, "the number of times"),
        settings.tempoOrNull(line.speed),
        Spans.of(line));
  }

  @Override
  public ChartStatement visitRest(TaborParser.RestContext line) {
    return new ChartStatement.Rest(
        leaves.positive(line.value, "the number of bars"), Spans.of(line));
  }

  @Override
  public ChartStatement visitClimb(TaborParser.ClimbContext line) {
    Word unit = Leaves.word(line.unit);
    if (line.unit.getType() == TaborLexer.NAME) {
      leaves.report(Leaves.unlisted(unit, List.of("times", "bars"), "a number of times or bars"));
    }
    var by = new tabor.syntax.Num(Leaves.exact(line.by.digits.getText()), Spans.of(line.by));
    if (by.value().sign() == 0) {
      leaves.report(by.span(), "a climb by 0 never arrives", "Say by how much each stage differs");
    }
    return new ChartStatement.Climb(
        Leaves.name(line.section),
        leaves.speed(line.from),
        leaves.speed(line.to),
        by,
        leaves.positive(line.value, "the number of " + unit.text()),
        unit,
        Spans.of(line));
  }
}
