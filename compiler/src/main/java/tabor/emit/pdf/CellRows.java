package tabor.emit.pdf;

import java.util.ArrayList;
import java.util.List;

/**
 * Puts sections that are narrow enough side by side, in order, so that they take the least height:
 * best overall. Rows keep their number of columns where they can.
 */
final class CellRows {
  /** What the empty place of a cell costs, in points of height, but for the last row's. */
  private static final double EMPTY = 45;

  /** The same in the last row, where sections run out. */
  private static final double LAST = 10;

  /** What another number of columns than in the row before costs, in points of height. */
  private static final double CHANGE = 25;

  /**
   * Sections side by side.
   *
   * @param from the first
   * @param to after the last
   * @param columns into how many columns the row is divided; 1 for the whole width
   */
  record Row(int from, int to, int columns) {}

  /** Answers about sections. */
  interface Cells {
    /** True if a section stands in one of so many columns as a whole. */
    boolean fits(int section, int columns);

    /** Height of a section in one of so many columns, in points. */
    double height(int section, int columns);

    /** True if a section must begin a row. */
    boolean beginsRow(int section);
  }

  private CellRows() {}

  /** The rows of so many sections, in {@code most} columns at most. */
  static List<Row> of(int count, int most, Cells cells) {
    double[][] best = new double[count + 1][most + 1];
    Row[][] chosen = new Row[count + 1][most + 1];
    int[][] before = new int[count + 1][most + 1];
    for (int end = 1; end <= count; end++) {
      java.util.Arrays.fill(best[end], Double.POSITIVE_INFINITY);
      for (int columns = 1; columns <= most; columns++) {
        double height = 0;
        for (int start = end - 1; start >= 0 && end - start <= columns; start--) {
          if (columns > 1 && !cells.fits(start, columns)) {
            break;
          }
          height = Math.max(height, cells.height(start, columns));
          for (int earlier = start == 0 ? 0 : 1; earlier <= (start == 0 ? 0 : most); earlier++) {
            double cost = best[start][earlier] + height;
            cost += (end == count ? LAST : EMPTY) * empty(start, end, columns, most, cells);
            cost += earlier > 0 && earlier != columns ? CHANGE : 0;
            if (cost < best[end][columns]) {
              best[end][columns] = cost;
              chosen[end][columns] = new Row(start, end, columns);
              before[end][columns] = earlier;
            }
          }
          if (cells.beginsRow(start)) {
            break;
          }
        }
      }
    }
    return chosen(count, most, best, chosen, before);
  }

  /** Empty places of a row: one also beside a narrow section that has the width to itself. */
  private static int empty(int start, int end, int columns, int most, Cells cells) {
    boolean alone = columns == 1 && most > 1 && cells.fits(start, 2);
    return alone ? 1 : columns - (end - start);
  }

  private static List<Row> chosen(
      int count, int most, double[][] best, Row[][] chosen, int[][] before) {
    List<Row> rows = new ArrayList<>();
    int columns = 0;
    for (int c = 1; count > 0 && c <= most; c++) {
      columns = columns == 0 || best[count][c] < best[count][columns] ? c : columns;
    }
    for (int end = count; end > 0; ) {
      Row row = chosen[end][columns];
      rows.add(0, row);
      columns = before[end][columns];
      end = row.from();
    }
    return rows;
  }
}
