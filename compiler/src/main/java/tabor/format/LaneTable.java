package tabor.format;

import java.util.ArrayList;
import java.util.List;
import tabor.syntax.Beat;
import tabor.syntax.LaneBar;
import tabor.syntax.PartStatement;

/**
 * The lanes of one system as lines: colons under each other, beat under beat, bar line under bar
 * line. A word that spreads over several beats takes their width.
 */
final class LaneTable {
  /** A word to be set: where it starts, over how many beats it goes, and its text. */
  private record Cell(int beat, int beats, String text) {}

  /** A word may claim to spread over any number of beats; the table need not be that wide. */
  private static final int MOST_BEATS = 64;

  private final List<PartStatement.Lane> lanes;

  /** The words of each bar of each lane, printed once. */
  private final List<List<List<Cell>>> cells;

  /** Widths of the beats of each bar. */
  private final List<List<Integer>> widths = new ArrayList<>();

  private LaneTable(List<PartStatement.Lane> lanes) {
    this.lanes = lanes;
    this.cells =
        lanes.stream().map(lane -> lane.bars().stream().map(LaneTable::cells).toList()).toList();
  }

  /** One line for each lane. */
  static List<String> lines(List<PartStatement.Lane> lanes) {
    return new LaneTable(lanes).lines();
  }

  private List<String> lines() {
    int label = 0;
    for (int i = 0; i < lanes.size(); i++) {
      label = Math.max(label, BeatPrinter.label(lanes.get(i)).length());
      for (int bar = 0; bar < cells.get(i).size(); bar++) {
        if (bar == widths.size()) {
          widths.add(new ArrayList<>());
        }
        for (Cell cell : cells.get(i).get(bar)) {
          if (cell.beats() == 1) {
            widen(bar, cell);
          }
        }
      }
    }
    for (List<List<Cell>> lane : cells) {
      for (int bar = 0; bar < lane.size(); bar++) {
        for (Cell cell : lane.get(bar)) {
          widen(bar, cell);
        }
      }
    }
    List<String> lines = new ArrayList<>();
    for (int i = 0; i < lanes.size(); i++) {
      lines.add(line(lanes.get(i), cells.get(i), label));
    }
    return lines;
  }

  private static List<Cell> cells(LaneBar bar) {
    List<Cell> cells = new ArrayList<>();
    int at = 0;
    for (Beat beat : bar.beats()) {
      int beats = beat.beats() == null ? 1 : Math.min(MOST_BEATS, beat.beats().whole());
      cells.add(new Cell(at, beats, BeatPrinter.beat(beat)));
      at += beats;
    }
    return cells;
  }

  /** Makes the beats of a cell at least as wide as its word; what is missing goes to the last. */
  private void widen(int bar, Cell cell) {
    List<Integer> beats = widths.get(bar);
    while (beats.size() < cell.beat() + cell.beats()) {
      beats.add(1);
    }
    int missing = cell.text().length() - width(beats, cell.beat(), cell.beat() + cell.beats());
    if (missing > 0) {
      int last = cell.beat() + cell.beats() - 1;
      beats.set(last, beats.get(last) + missing);
    }
  }

  private static int width(List<Integer> beats, int from, int to) {
    int sum = Math.max(0, to - from - 1);
    for (int i = from; i < to; i++) {
      sum += beats.get(i);
    }
    return sum;
  }

  private String line(PartStatement.Lane lane, List<List<Cell>> words, int label) {
    StringBuilder line = new StringBuilder(pad(BeatPrinter.label(lane), label)).append(" :");
    for (int bar = 0; bar < lane.bars().size(); bar++) {
      List<Integer> beats = widths.get(bar);
      line.append(bar == 0 ? " " : " | ");
      int start = line.length();
      if (lane.bars().get(bar).repeat()) {
        line.append('%');
      }
      int beat = 0;
      int column = start;
      for (Cell cell : words.get(bar)) {
        for (; beat < cell.beat(); beat++) {
          column += beats.get(beat) + 1;
        }
        line.append(" ".repeat(column - line.length())).append(cell.text());
      }
      int end = start + Math.max(1, width(beats, 0, beats.size()));
      line.append(" ".repeat(Math.max(0, end - line.length())));
    }
    return line.toString().stripTrailing();
  }

  private static String pad(String text, int width) {
    return text + " ".repeat(width - text.length());
  }
}
