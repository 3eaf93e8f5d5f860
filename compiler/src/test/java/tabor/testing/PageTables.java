package tabor.testing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** The tables of a page in docs, as a reader sees them. */
public final class PageTables {
  private final Path page;

  private PageTables(Path page) {
    this.page = page;
  }

  /** The tables of a page, {@code surfaces.md}. */
  public static PageTables of(String page) {
    return new PageTables(Path.of("../docs", page));
  }

  /**
   * A row of a table.
   *
   * @param first its first cell
   * @param cells its other cells by the heads of their columns
   */
  public record Row(String first, Map<String, String> cells) {
    /** A cell that the table has. */
    public String cell(String column) {
      return Objects.requireNonNull(cells.get(column), column);
    }

    /** A cell with a number. */
    public int number(String column) {
      return Integer.parseInt(cell(column));
    }

    @Override
    public String toString() {
      return first;
    }
  }

  /** The rows of the tables that have this column. */
  public List<Row> with(String column) {
    List<Row> rows = new ArrayList<>();
    List<String> heads = List.of();
    for (String line : lines()) {
      List<String> cells = cells(line);
      if (cells.isEmpty()) {
        heads = List.of();
      } else if (heads.isEmpty()) {
        heads = cells;
      } else if (heads.contains(column) && !cells.get(0).startsWith("-")) {
        Map<String, String> named = new LinkedHashMap<>();
        for (int i = 1; i < cells.size(); i++) {
          named.put(heads.get(i), cells.get(i));
        }
        rows.add(new Row(cells.get(0), named));
      }
    }
    return rows;
  }

  private List<String> lines() {
    try {
      return Files.readAllLines(page);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<String> cells(String line) {
    List<String> cells = new ArrayList<>();
    if (line.startsWith("|")) {
      String[] parts = line.split("\\|", -1);
      for (int i = 1; i < parts.length - 1; i++) {
        cells.add(parts[i].strip().replace("`", ""));
      }
    }
    return cells;
  }
}
