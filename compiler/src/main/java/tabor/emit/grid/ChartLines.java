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

  /** What is said, and before it a dash with the minute and the bar, in columns of their own. */
  record Item(String lead, String said) {}

  /** One line for each item, and the total. */
  static List<Item> of(Chart chart, Words words) {
    ChartWords chartWords = new ChartWords(words);
    RoadMap map = RoadMap.of(chart);
    int wide = RoadMap.clock(map.micros()).length();
    int digits = String.valueOf(map.bars()).length();
    List<Item> lines = new ArrayList<>();
    for (RoadMap.Stop stop : map.stops()) {
      String said = TextWrapper.clean(chartWords.of(stop.item()));
      if (stop.segments() == 0) {
        lines.add(new Item("- ", said));
        continue;
      }
      String tempo = stop.item() instanceof Chart.Climb ? "" : stop.tempo(words);
      String bar =
          stop.bars() > 0
              ? words.text("grid.bar", padded(String.valueOf(stop.bar()), digits)) + "  "
              : "";
      lines.add(
          new Item(
              "- " + padded(RoadMap.clock(stop.start()), wide) + "  " + bar,
              tempo.isEmpty() ? said : words.text("grid.at-tempo", said, tempo)));
    }
    lines.add(
        new Item(
            "- " + RoadMap.clock(map.micros()) + "  ",
            words.text("grid.in-all", chartWords.bars(map.bars()))));
    return lines;
  }

  private static String padded(String number, int width) {
    return " ".repeat(Math.max(0, width - number.length())) + number;
  }
}
