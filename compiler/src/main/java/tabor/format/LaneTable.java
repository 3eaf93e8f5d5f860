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

  /** Widths of the beats of each bar. */
  private final List<List<Integer>> widths = new ArrayList<>();

  private LaneTable(List<PartStatement.Lane> lanes) {
    this.lanes = lanes;
  }

  /** One line for each lane. */
  static List<String> lines(List<PartStatement.Lane> lanes) {
    return new LaneTable(lanes).lines();
  }

  private List<String> lines() {
    int label = 0;
    for (PartStatement.Lane lane : lanes) {
      label = Math.max(label, BeatPrinter.label(lane).length());
      for (int bar = 0; bar < lane.bars().size(); bar++) {
        if (bar == widths.size()) {
          widths.add(new ArrayList<>());
        }
        for (Cell cell : cells(lane.bars().get(bar))) {
          if (cell.beats() == 1) {
            widen(bar, cell);
          }
        }
      }
    }
    for (PartStatement.Lane lane : lanes) {
      for (int bar = 0; bar < lane.bars().size(); bar++) {
        for (Cell cell : cells(lane.bars().get(bar))) {
          widen(bar, cell);
        }
      }
    }
    List<String> lines = new ArrayList<>();
    for (PartStatement.Lane lane : lanes) {
      lines.add(line(lane, label));
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

  private String line(PartStatement.Lane lane, int label) {
    StringBuilder line = new StringBuilder(pad(BeatPrinter.label(lane), label)).append(" :");
    for (int bar = 0; bar < lane.bars().size(); bar++) {
      List<Integer> beats = widths.get(bar);
      line.append(bar == 0 ? " " : " | ");
      int start = line.length();
      if (lane.bars().get(bar).repeat()) {
        line.append('%');
      }
      for (Cell cell : cells(lane.bars().get(bar))) {
        int column = start + width(beats, 0, cell.beat()) + (cell.beat() == 0 ? 0 : 1);
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
