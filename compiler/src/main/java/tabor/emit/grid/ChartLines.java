package tabor.emit.grid;

import java.util.ArrayList;
import java.util.List;
import tabor.groove.Chart;
import tabor.perform.ChartWords;
import tabor.perform.RoadMap;
import tabor.words.Words;

/**
 * A chart as a list of what is played. A line in which time passes begins with the minute and the
 * bar at which it starts; the total closes the list.
 */
final class ChartLines {
  private ChartLines() {}

  /** One line for each item, and the total. */
  static List<String> of(Chart chart, Words words) {
    ChartWords chartWords = new ChartWords(words);
    RoadMap map = RoadMap.of(chart);
    int wide = RoadMap.clock(map.micros()).length();
    int digits = String.valueOf(map.bars()).length();
    List<String> lines = new ArrayList<>();
    for (RoadMap.Stop stop : map.stops()) {
      String said = TextWrapper.clean(chartWords.of(stop.item()));
      if (stop.segments() == 0) {
        lines.add("- " + said);
        continue;
      }
      String tempo = stop.item() instanceof Chart.Climb ? "" : stop.tempo(words);
      lines.add(
          "- "
              + padded(RoadMap.clock(stop.start()), wide)
              + "  "
              + (stop.bars() > 0
                  ? words.text("grid.bar", padded(String.valueOf(stop.bar()), digits)) + "  "
                  : "")
              + (tempo.isEmpty() ? said : words.text("grid.at-tempo", said, tempo)));
    }
    lines.add(
        "- "
            + RoadMap.clock(map.micros())
            + "  "
            + words.text("grid.in-all", chartWords.bars(map.bars())));
    return lines;
  }

  private static String padded(String number, int width) {
    return " ".repeat(Math.max(0, width - number.length())) + number;
  }
}
