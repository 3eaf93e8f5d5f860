package tabor.emit.grid;

import java.util.List;

/**
 * One bar, laid out in columns.
 *
 * @param number 1-based; 0 is the pickup
 * @param repeat true if it is written as a repeat of the bar before
 * @param columns from left to right
 */
record GridBar(int number, boolean repeat, List<Column> columns) {
  /** Copies the list. */
  GridBar {
    columns = List.copyOf(columns);
  }

  /**
   * One place of the bar.
   *
   * @param startsBeat true for the first place of a beat
   * @param beat 1-based beat number
   * @param counts what is counted there, one entry for each row of counts, empty where nothing is
   * @param cells one for each part
   * @param sticks who strikes, one entry for each row of sticking, empty where nobody does
   */
  record Column(
      boolean startsBeat, int beat, List<String> counts, List<Cell> cells, List<String> sticks) {
    /** Copies the lists. */
    Column {
      counts = List.copyOf(counts);
      cells = List.copyOf(cells);
      sticks = List.copyOf(sticks);
    }
  }

  /**
   * What a part does at a place, as the notation writes it.
   *
   * @param before signs before the letter: grace notes, an opening parenthesis
   * @param letter {@code x}, {@code X}, {@code .}, {@code -} or a space
   * @param after signs after the letter
   */
  record Cell(String before, char letter, String after) {
    /** The part has no place here. */
    static final Cell NONE = new Cell("", ' ', "");

    /** The part is silent here. */
    static final Cell SILENT = new Cell("", '.', "");

    /** A roll goes on here. */
    static final Cell GOES_ON = new Cell("", '-', "");

    /** True for a stroke and for a roll that goes on. */
    boolean isHeard() {
      return letter != ' ' && letter != '.';
    }
  }
}
