package tabor.format;

import java.util.Locale;
import java.util.stream.Collectors;
import tabor.syntax.ChartStatement;
import tabor.syntax.Name;
import tabor.syntax.Num;

/** Lines of charts to text; clauses in one order. */
final class ChartPrinter implements ChartStatement.Cases<String> {
  @Override
  public String countIn(ChartStatement.CountIn line) {
    return "count-in " + Printer.counted(line.bars(), "bar");
  }

  @Override
  public String click(ChartStatement.SetClick line) {
    return "click " + line.click().value().name().toLowerCase(Locale.ROOT);
  }

  @Override
  public String clickAt(ChartStatement.ClickAt line) {
    return "click at "
        + line.beats().stream().map(Printer::number).collect(Collectors.joining(" "));
  }

  @Override
  public String clickBars(ChartStatement.ClickBars line) {
    return "click "
        + Printer.counted(line.on(), "bar")
        + " on "
        + Printer.number(line.off())
        + " off";
  }

  @Override
  public String play(ChartStatement.Play line) {
    return "play "
        + line.sections().stream().map(Name::text).collect(Collectors.joining(" "))
        + clauses(line.clauses());
  }

  @Override
  public String trade(ChartStatement.Trade line) {
    return "trade "
        + line.section().text()
        + " "
        + Printer.counted(line.bars(), "bar")
        + clauses(line.clauses());
  }

  @Override
  public String rest(ChartStatement.Rest line) {
    return "rest " + Printer.counted(line.bars(), "bar");
  }

  @Override
  public String restTime(ChartStatement.RestTime line) {
    return "rest " + duration(line.length());
  }

  @Override
  public String climb(ChartStatement.Climb line) {
    Num every = line.every();
    return "climb "
        + line.section().text()
        + " from "
        + Printer.number(line.from())
        + " to "
        + Printer.number(line.to())
        + " by "
        + Printer.number(line.by())
        + (every == null ? "" : " every " + Printer.counted(every, line.inBars() ? "bar" : "time"))
        + clauses(line.clauses());
  }

  @Override
  public String ramp(ChartStatement.Ramp line) {
    return "tempo "
        + Printer.tempo(line.from())
        + " to "
        + Printer.number(line.to())
        + " over "
        + Printer.counted(line.bars(), "bar");
  }

  @Override
  public String hold(ChartStatement.Hold line) {
    return "hold " + Printer.counted(line.beats(), "beat");
  }

  @Override
  public String cue(ChartStatement.Cue line) {
    return "cue "
        + Printer.quoted(line.text())
        + (line.bar() == null ? "" : " in bar " + Printer.number(line.bar()));
  }

  @Override
  public String mark(ChartStatement.Mark line) {
    return "mark " + Printer.quoted(line.text());
  }

  private static String clauses(ChartStatement.Clauses said) {
    return (said.each() == null ? "" : " each")
        + (said.times() == null ? "" : " " + Printer.counted(said.times(), "time"))
        + (said.bars() == null ? "" : " " + Printer.counted(said.bars(), "bar"))
        + (said.time() == null ? "" : " for " + duration(said.time()))
        + (said.tempo() == null ? "" : " at tempo " + Printer.tempo(said.tempo()))
        + (said.without().isEmpty() ? "" : " without " + Printer.targets(said.without()))
        + Printer.optional(" fill ", said.fill());
  }

  private static String duration(ChartStatement.Duration length) {
    String unit = length.minutes() ? "minute" : "second";
    return Printer.counted(length.number(), unit);
  }
}
