package tabor.emit.grid;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import tabor.emit.grid.GridBar.Cell;
import tabor.emit.grid.GridBar.Column;
import tabor.emit.grid.GridLayout.Sheet;
import tabor.lists.Lists;
import tabor.words.Words;

/** Sets laid-out bars in lines. Widths are chosen here and nowhere else. */
final class GridWriter {
  /** No line is longer. */
  static final int MOST_COLUMNS = 100;

  private static final int MOST_NAME = 22;
  private static final String REPEAT = "%  ";

  private final Sheet sheet;
  private final Words words;
  private final int gutter;
  private final int room;
  private final boolean even;
  private final int pitch;
  private final int before;
  private final boolean beatGaps;
  private final List<String> lines = new ArrayList<>();

  /** Columns of one bar that stand in one line. */
  private record Piece(GridBar bar, int from, int to) {
    List<Column> columns() {
      return bar.columns().subList(from, to);
    }
  }

  private GridWriter(Sheet sheet, Words words) {
    this.sheet = sheet;
    this.words = words;
    int longest = 7;
    for (List<String> names : List.of(sheet.parts(), sheet.sticks())) {
      for (String name : names) {
        longest = Math.max(longest, Math.min(MOST_NAME, name.length()));
      }
    }
    // A space at least stands after a heading such as "bars 10-11".
    this.gutter = Math.max(longest + 2, longestHeading(sheet.bars()) + 1);
    this.room = MOST_COLUMNS - gutter;
    List<Column> all = new ArrayList<>();
    sheet.bars().forEach(bar -> all.addAll(bar.columns()));
    this.before = Lists.most(all, GridWriter::before);
    this.pitch = before + Math.max(1, Lists.most(all, GridWriter::after)) + 1;
    this.beatGaps = Lists.any(all, column -> !column.startsBeat());
    this.even = Lists.all(sheet.bars(), bar -> width(bar, true) <= room);
  }

  /** The bars as lines of at most {@link #MOST_COLUMNS} columns, an empty line between systems. */
  static List<String> write(Sheet sheet, Words words) {
    GridWriter writer = new GridWriter(sheet, words);
    List<Piece> line = new ArrayList<>();
    int used = 0;
    for (GridBar bar : sheet.bars()) {
      for (Piece piece : writer.pieces(bar)) {
        int width = writer.width(piece);
        if (!line.isEmpty() && used + 2 + width > writer.room) {
          writer.system(line);
          line.clear();
          used = 0;
        }
        used += (line.isEmpty() ? 0 : 2) + width;
        line.add(piece);
      }
    }
    writer.system(line);
    return writer.lines;
  }

  // Widths.

  /** How long the longest heading can be that a line of these bars may get. */
  private int longestHeading(List<GridBar> bars) {
    int last = bars.isEmpty() ? 1 : bars.get(bars.size() - 1).number();
    int digits = Integer.toString(last).length();
    int beats =
        Integer.toString(Lists.most(bars, bar -> Lists.most(bar.columns(), Column::beat))).length();
    int range = bars.size() < 2 ? 0 : words.text("grid.bars", "", "").length() + 2 * digits;
    return Math.max(range, words.text("grid.bar", ".").length() + digits + beats);
  }

  private static int before(Column column) {
    return Lists.most(column.cells(), cell -> cell.before().length());
  }

  private static int after(Column column) {
    int most = 1;
    for (Cell cell : column.cells()) {
      most = Math.max(most, 1 + cell.after().length());
    }
    for (List<String> texts : List.of(column.counts(), column.sticks())) {
      for (String text : texts) {
        most = Math.max(most, text.length());
      }
    }
    return most;
  }

  private int beforeWidth(Column column) {
    return even ? before : before(column);
  }

  private int width(Column column, boolean evenly) {
    return evenly ? pitch : before(column) + after(column) + 1;
  }

  private int gap(Column column, boolean first) {
    return beatGaps && column.startsBeat() && !first ? 1 : 0;
  }

  private int width(GridBar bar, boolean evenly) {
    if (bar.repeat()) {
      return REPEAT.length();
    }
    int width = 0;
    for (int i = 0; i < bar.columns().size(); i++) {
      width += width(bar.columns().get(i), evenly) + gap(bar.columns().get(i), i == 0);
    }
    return width;
  }

  private int width(Piece piece) {
    if (piece.bar().repeat()) {
      return REPEAT.length();
    }
    int width = 0;
    boolean first = true;
    for (Column column : piece.columns()) {
      width += width(column, even) + gap(column, first);
      first = false;
    }
    return width;
  }

  /** A bar in one piece, or where it is too wide in several, cut before beats where that helps. */
  private List<Piece> pieces(GridBar bar) {
    int all = bar.columns().size();
    if (bar.repeat() || width(bar, even) <= room) {
      return List.of(new Piece(bar, 0, all));
    }
    List<Piece> pieces = new ArrayList<>();
    int from = 0;
    while (from < all) {
      int to = from + 1;
      int lastBeat = from;
      int width = width(bar.columns().get(from), even);
      while (to < all) {
        Column next = bar.columns().get(to);
        width += width(next, even) + gap(next, false);
        if (width > room) {
          break;
        }
        if (next.startsBeat()) {
          lastBeat = to;
        }
        to++;
      }
      if (to < all && bar.columns().get(to).startsBeat()) {
        lastBeat = to;
      }
      int end = to == all || lastBeat == from ? to : lastBeat;
      pieces.add(new Piece(bar, from, end));
      from = end;
    }
    return pieces;
  }

  // Lines.

  private void system(List<Piece> pieces) {
    if (pieces.isEmpty()) {
      return;
    }
    if (!lines.isEmpty()) {
      lines.add("");
    }
    int countRows = Lists.most(pieces, piece -> piece.bar().repeat() ? 1 : used(piece.columns()));
    for (int row = 0; row < countRows; row++) {
      int at = row;
      lines.add(line(row == 0 ? heading(pieces) : "", pieces, c -> count(c, at), " "));
    }
    for (int part = 0; part < sheet.parts().size(); part++) {
      int at = part;
      if (!isHeard(pieces, at) && (at > 0 || anyHeard(pieces))) {
        continue;
      }
      lines.add(line(sheet.parts().get(part), pieces, c -> c.cells().get(at), REPEAT));
    }
    for (int row = 0; row < sheet.sticks().size(); row++) {
      int at = row;
      lines.add(line(sheet.sticks().get(row), pieces, c -> text(c.sticks().get(at)), " "));
    }
  }

  private boolean anyHeard(List<Piece> pieces) {
    for (int part = 0; part < sheet.parts().size(); part++) {
      if (isHeard(pieces, part)) {
        return true;
      }
    }
    return false;
  }

  /** True if a part has a stroke in these pieces; one that rests needs no row. */
  private static boolean isHeard(List<Piece> pieces, int part) {
    return Lists.any(
        pieces, piece -> Lists.any(piece.columns(), column -> column.cells().get(part).isHeard()));
  }

  private static int used(List<Column> columns) {
    int used = 1;
    for (Column column : columns) {
      for (int row = used; row < column.counts().size(); row++) {
        if (!column.counts().get(row).isEmpty()) {
          used = row + 1;
        }
      }
    }
    return used;
  }

  private static Cell count(Column column, int row) {
    return row < column.counts().size() ? text(column.counts().get(row)) : Cell.NONE;
  }

  private static Cell text(String text) {
    return text.isEmpty() ? Cell.NONE : new Cell("", text.charAt(0), text.substring(1));
  }

  private String heading(List<Piece> pieces) {
    Piece first = pieces.get(0);
    int number = first.bar().number();
    if (first.from() > 0) {
      return words.text("grid.bar", number + "." + first.columns().get(0).beat());
    }
    int last = pieces.get(pieces.size() - 1).bar().number();
    if (number == 0) {
      return words.text("grid.pickup");
    }
    return number == last
        ? words.text("grid.bar", Integer.toString(number))
        : words.text("grid.bars", Integer.toString(number), Integer.toString(last));
  }

  private String line(
      String name, List<Piece> pieces, Function<Column, Cell> chosen, String repeat) {
    String label = name.length() > MOST_NAME ? name.substring(0, MOST_NAME - 2) + ".." : name;
    StringBuilder line = new StringBuilder(label).append(" ".repeat(gutter - label.length()));
    for (int i = 0; i < pieces.size(); i++) {
      Piece piece = pieces.get(i);
      line.append(i == 0 ? "" : "| ");
      if (piece.bar().repeat()) {
        line.append(repeat).append(" ".repeat(REPEAT.length() - repeat.length()));
        continue;
      }
      boolean first = true;
      for (Column column : piece.columns()) {
        Cell cell = chosen.apply(column);
        line.append(" ".repeat(gap(column, first)));
        int pad = beforeWidth(column) - cell.before().length();
        line.append(" ".repeat(pad)).append(cell.before()).append(cell.letter());
        int rest = width(column, even) - beforeWidth(column) - 1 - cell.after().length();
        line.append(cell.after()).append(" ".repeat(rest));
        first = false;
      }
    }
    return line.toString().stripTrailing();
  }
}
