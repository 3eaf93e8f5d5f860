package tabor.emit.grid;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import tabor.groove.Chart;

/** A chart as a list of what is played. */
final class ChartLines implements Chart.Cases<String> {
  private ChartLines() {}

  /** One line for each item. */
  static List<String> of(Chart chart) {
    ChartLines words = new ChartLines();
    List<String> lines = new ArrayList<>();
    chart.items().forEach(item -> lines.add("- " + item.match(words)));
    return lines;
  }

  private static String some(int count, String one, String many) {
    return count == 1 ? "1 " + one : count + " " + many;
  }

  @Override
  public String countIn(Chart.CountIn item) {
    return "Count in " + some(item.bars(), "bar", "bars");
  }

  @Override
  public String click(Chart.SetClick item) {
    return switch (item.click()) {
      case OFF -> "click off";
      case ON -> "click on";
      case QUARTERS -> "click on quarters";
      case EIGHTHS -> "click on eighths";
    };
  }

  @Override
  public String play(Chart.Play item) {
    String names =
        item.turns().stream()
            .map(turn -> TextWrapper.clean(turn.groove().caption()))
            .collect(Collectors.joining(", then "));
    String tempi =
        item.turns().stream()
            .map(turn -> turn.tempo().words())
            .distinct()
            .collect(Collectors.joining(", then "));
    return names + ": " + some(item.times(), "time", "times") + " at " + tempi;
  }

  @Override
  public String rest(Chart.Rest item) {
    return "rest " + some(item.bars(), "bar", "bars");
  }

  @Override
  public String trade(Chart.Trade item) {
    return "trade "
        + TextWrapper.clean(item.turn().groove().caption())
        + ": "
        + some(item.bars(), "bar", "bars");
  }

  @Override
  public String pause(Chart.Pause item) {
    return "rest " + item.seconds().decimal() + " seconds";
  }

  @Override
  public String ramp(Chart.Ramp item) {
    return "tempo "
        + item.from().words()
        + " to "
        + item.to().words()
        + " over "
        + some(item.bars(), "bar", "bars");
  }

  @Override
  public String dynamic(Chart.SetDynamic item) {
    return "dynamic " + item.loudness().word();
  }

  @Override
  public String hold(Chart.Hold item) {
    return "hold " + some(item.beats(), "beat", "beats");
  }

  @Override
  public String cue(Chart.Cue item) {
    return TextWrapper.clean(item.text()) + (item.bar() == 0 ? "" : " (bar " + item.bar() + ")");
  }

  @Override
  public String mark(Chart.Mark item) {
    return "[" + TextWrapper.clean(item.text()) + "]";
  }

  @Override
  public String climb(Chart.Climb item) {
    String rungs =
        item.tempi().stream()
            .map(tempo -> tempo.perMinute().decimal())
            .collect(Collectors.joining(" "));
    String unit =
        switch (item.unit()) {
          case TIMES -> some(item.every(), "time", "times");
          case BARS -> some(item.every(), "bar", "bars");
        };
    return TextWrapper.clean(item.groove().caption()) + ": " + unit + " at each of " + rungs;
  }
}
