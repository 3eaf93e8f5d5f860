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
import tabor.groove.ChartCases;
import tabor.groove.Groove;
import tabor.kit.Limits;
import tabor.rhythm.Tempo;

/** What becomes too fast or too far at the fastest tempo that a chart plays a section at. */
final class ChartChecks {
  private ChartChecks() {}

  static List<Diagnostic> check(Chart chart) {
    List<Diagnostic> diagnostics = new ArrayList<>();
    FastestTempi tempi = new FastestTempi();
    for (Chart.Item item : chart.items()) {
      item.match(tempi);
    }
    for (Chart.Turn turn : tempi.byName.values()) {
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

  /** Collects the fastest turn of each section, in the order of the chart. */
  private static final class FastestTempi extends ChartCases<Boolean> {
    final Map<String, Chart.Turn> byName = new LinkedHashMap<>();

    FastestTempi() {
      super(false);
    }

    private boolean add(Groove groove, Tempo tempo) {
      Chart.Turn turn = new Chart.Turn(groove, tempo, groove.setting().feel());
      byName.merge(
          groove.name(),
          turn,
          (a, b) ->
              b.tempo().quartersPerMinute().compareTo(a.tempo().quartersPerMinute()) > 0 ? b : a);
      return true;
    }

    @Override
    public Boolean play(Chart.Play item) {
      for (Chart.Turn turn : item.turns()) {
        add(turn.groove(), turn.tempo());
      }
      return true;
    }

    @Override
    public Boolean trade(Chart.Trade item) {
      return add(item.turn().groove(), item.turn().tempo());
    }

    @Override
    public Boolean climb(Chart.Climb item) {
      for (Tempo tempo : item.tempi()) {
        add(item.groove(), tempo);
      }
      return true;
    }
  }
}
