package tabor.parse;

import java.util.ArrayList;
import java.util.List;
import org.antlr.v4.runtime.Token;
import tabor.grammar.TaborLexer;
import tabor.grammar.TaborParser;
import tabor.grammar.TaborParserBaseVisitor;
import tabor.groove.Chart;
import tabor.syntax.ChartStatement;
import tabor.syntax.Name;
import tabor.syntax.Num;
import tabor.syntax.Ref;
import tabor.syntax.SettingStatement;

/** Trees of chart lines to records. */
final class ChartBuilder extends TaborParserBaseVisitor<ChartStatement> {
  /** No bar has more, and no stroke rings longer. */
  private static final int MOST_BEATS = 64;

  private final FirstProblem problems;
  private final NumberBuilder numbers;
  private final SettingBuilder settings;
  private final ClauseBuilder clauses;

  ChartBuilder(FirstProblem problems, NumberBuilder numbers, SettingBuilder settings) {
    this.problems = problems;
    this.numbers = numbers;
    this.settings = settings;
    this.clauses = new ClauseBuilder(problems, numbers, settings);
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
  public ChartStatement visitClickAt(TaborParser.ClickAtContext line) {
    List<Num> beats = new ArrayList<>(line.beats.size());
    for (Token beat : line.beats) {
      beats.add(numbers.whole(beat, 1, MOST_BEATS, "a beat"));
    }
    return new ChartStatement.ClickAt(beats, Spans.of(line));
  }

  @Override
  public ChartStatement visitClickBars(TaborParser.ClickBarsContext line) {
    return new ChartStatement.ClickBars(
        numbers.positive(line.sounding, "the number of bars"),
        numbers.positive(line.silent, "the number of bars"),
        Spans.of(line));
  }

  @Override
  public ChartStatement visitPlaySections(TaborParser.PlaySectionsContext line) {
    List<Name> sections = new ArrayList<>(1 + line.more.size());
    sections.add(NameBuilder.name(line.first));
    line.more.forEach(name -> sections.add(NameBuilder.name(name)));
    return new ChartStatement.Play(sections, clauses.of(line.clauses), Spans.of(line));
  }

  @Override
  public ChartStatement visitTrade(TaborParser.TradeContext line) {
    ChartStatement.Clauses said = clauses.of(line.clauses);
    clauses.refuse(said.each(), "each", "a trade is of one section");
    clauses.refuse(
        said.bars(), "a trade says once how many bars it takes", "say how often: 4 times");
    return new ChartStatement.Trade(
        NameBuilder.name(line.section),
        numbers.positive(line.value, "the number of bars"),
        said,
        Spans.of(line));
  }

  @Override
  public ChartStatement visitRestBars(TaborParser.RestBarsContext line) {
    return new ChartStatement.Rest(
        numbers.positive(line.value, "the number of bars"), Spans.of(line));
  }

  @Override
  public ChartStatement visitRestTime(TaborParser.RestTimeContext line) {
    return new ChartStatement.RestTime(clauses.duration(line.length), Spans.of(line));
  }

  @Override
  public ChartStatement visitClimb(TaborParser.ClimbContext line) {
    boolean bars =
        line.unit != null
            && (line.unit.getType() == TaborLexer.BARS || line.unit.getType() == TaborLexer.BAR);
    Num by = new Num(NumberBuilder.exact(line.stage.getText()), Spans.of(line.stage));
    if (by.value().sign() == 0) {
      problems.report(
          by.span(), "a climb by 0 never arrives", "Say by how much each stage differs");
    }
    ChartStatement.Clauses said = clauses.of(line.clauses);
    clauses.ofClimb(said, line.value == null, Spans.of(line));
    return new ChartStatement.Climb(
        NameBuilder.name(line.section),
        numbers.speed(line.from),
        numbers.speed(line.to),
        by,
        line.value == null
            ? null
            : numbers.positive(line.value, bars ? "the number of bars" : "the number of times"),
        bars,
        said,
        Spans.of(line));
  }

  @Override
  public ChartStatement visitTempoRamp(TaborParser.TempoRampContext line) {
    SettingStatement.Tempo from = settings.tempo(line.speed);
    Num to = numbers.speed(line.to);
    if (from.perMinute().value().equals(to.value())) {
      problems.report(
          to.span(),
          "from " + line.speed.speed.getText() + " to " + line.to.getText() + " nothing changes",
          "Write a tempo that holds as `tempo " + line.to.getText() + "`");
    }
    return new ChartStatement.Ramp(
        from, to, numbers.positive(line.value, "the number of bars"), Spans.of(line));
  }

  @Override
  public ChartStatement visitHoldBeats(TaborParser.HoldBeatsContext line) {
    return new ChartStatement.Hold(
        numbers.whole(line.value, 1, MOST_BEATS, "the number of beats"), Spans.of(line));
  }

  @Override
  public ChartStatement visitCue(TaborParser.CueContext line) {
    return new ChartStatement.Cue(
        TextBuilder.title(line.words),
        line.value == null ? null : numbers.positive(line.value, "the number of a bar"),
        Spans.of(line));
  }

  @Override
  public ChartStatement visitMarkLine(TaborParser.MarkLineContext line) {
    return new ChartStatement.Mark(TextBuilder.title(line.words), Spans.of(line));
  }
}
