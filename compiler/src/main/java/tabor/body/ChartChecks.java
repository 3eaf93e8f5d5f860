package tabor.body;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.kit.Limits;
import tabor.rhythm.Tempo;

/** What becomes too fast or too far at the fastest tempo that a chart plays a section at. */
final class ChartChecks {
  private ChartChecks() {}

  static List<Diagnostic> check(Chart chart) {
    List<Diagnostic> diagnostics = new ArrayList<>();
    for (Chart.Turn turn : fastest(chart).values()) {
      Tempo own = turn.groove().setting().tempo();
      if (turn.tempo().quartersPerMinute().compareTo(own.quartersPerMinute()) > 0) {
        check(chart, turn.groove(), turn.tempo(), diagnostics);
      }
    }
    return diagnostics;
  }

  private static void check(Chart chart, Groove groove, Tempo tempo, List<Diagnostic> to) {
    Limits limits = groove.setting().kit().limitsInForce();
    Set<Object> already = new HashSet<>();
    PaceChecks.each(groove, groove.setting().tempo(), limits, f -> already.add(PaceChecks.key(f)));
    Map<Code, Finding> worst = new LinkedHashMap<>();
    PaceChecks.each(
        groove,
        tempo,
        limits,
        f -> {
          if (!already.contains(PaceChecks.key(f))) {
            worst.merge(f.code(), f, (a, b) -> b.weight().compareTo(a.weight()) > 0 ? b : a);
          }
        });
    for (Finding finding : worst.values()) {
      String at = "at tempo " + FindingWords.rate(tempo.perMinute()) + " " + finding.message();
      to.add(
          Diagnostic.of(finding.code(), chart.heading(), at)
              .in(
                  new Diagnostic.Place(
                      groove.name(), finding.at().bar(), FindingWords.count(groove, finding.at())))
              .help(finding.help())
              .label(finding.at().spot(), "here"));
    }
  }

  /** The fastest turn of each section by its name, in the order of the chart. */
  private static Map<String, Chart.Turn> fastest(Chart chart) {
    Map<String, Chart.Turn> found = new LinkedHashMap<>();
    for (Chart.Item item : chart.items()) {
      if (item instanceof Chart.Play play) {
        play.turns().forEach(turn -> add(turn.groove(), turn.tempo(), found));
      } else if (item instanceof Chart.Trade trade) {
        add(trade.turn().groove(), trade.turn().tempo(), found);
      } else if (item instanceof Chart.Climb climb) {
        climb.tempi().forEach(tempo -> add(climb.groove(), tempo, found));
      }
    }
    return found;
  }

  private static void add(Groove groove, Tempo tempo, Map<String, Chart.Turn> found) {
    Chart.Turn turn = new Chart.Turn(groove, tempo, groove.setting().feel());
    found.merge(
        groove.name(),
        turn,
        (a, b) ->
            b.tempo().quartersPerMinute().compareTo(a.tempo().quartersPerMinute()) > 0 ? b : a);
  }
}
