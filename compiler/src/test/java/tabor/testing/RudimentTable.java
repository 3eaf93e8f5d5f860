package tabor.testing;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** The table of rudiments that tests compare with; the file names its sources. */
public final class RudimentTable {
  private RudimentTable() {}

  /**
   * A row.
   *
   * @param right one cycle, right lead, one token a place
   * @param left one cycle, left lead
   * @param next which hand starts the next cycle, in the words of the file
   */
  public record Row(String name, String right, String left, String next) {}

  /** All rows in order. */
  public static List<Row> rows() {
    List<Row> rows = new ArrayList<>();
    try (InputStream in = RudimentTable.class.getResourceAsStream("/tabor/pattern/rudiments.tsv")) {
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      for (String line : text.lines().filter(l -> !l.startsWith("#")).skip(1).toList()) {
        String[] cells = line.split("\t", -1);
        rows.add(new Row(cells[0], cells[1], cells[2], cells[3]));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return rows;
  }
}
