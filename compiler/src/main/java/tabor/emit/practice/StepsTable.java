package tabor.emit.practice;

import java.util.ArrayList;
import java.util.List;
import tabor.body.Difficulty;
import tabor.groove.Changes;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.kit.Limb;
import tabor.rhythm.Time;
import tabor.source.DisplayWidth;

/** A lesson at a glance: one row for each groove and step. */
public final class StepsTable {
  private static final List<String> HEADS =
      List.of(
          "",
          "step",
          "tempo",
          "hardest limb",
          "",
          "RH",
          "LH",
          "RF",
          "LF",
          "limbs",
          "together",
          "changed");

  /** Columns from this one on are numbers, set to the right. */
  private static final int FIRST_NUMBER = 4;

  private StepsTable() {}

  /** One row of the table. */
  private record Row(Groove groove, Difficulty difficulty, Changes changes) {
    static Row of(Groove groove) {
      return new Row(groove, Difficulty.of(groove), Changes.of(groove));
    }

    List<String> cells(int number) {
      List<String> cells = new ArrayList<>();
      cells.add(Integer.toString(number));
      cells.add(groove.name());
      cells.add(groove.setting().tempo().words());
      Limb hardest = difficulty.hardest();
      cells.add(hardest == null ? "-" : hardest.words());
      cells.add(hardest == null ? "" : difficulty.share() + " %");
      for (Limb limb : Limb.values()) {
        cells.add(rate(limb));
      }
      cells.add(Integer.toString(difficulty.limbs()));
      cells.add(Integer.toString(difficulty.together()));
      cells.add(groove.isStep() ? Integer.toString(changes.count()) : "-");
      return cells;
    }

    String rate(Limb limb) {
      Time rate = difficulty.perSecond().get(limb);
      if (rate == null) {
        return "-";
      }
      long tenths = rate.times(10).rounded();
      return tenths / 10 + "." + tenths % 10;
    }
  }

  /** The table of a lesson as text; lines end with LF. */
  public static String text(Lesson lesson) {
    List<List<String>> table = new ArrayList<>();
    table.add(HEADS);
    List<Row> rows = rows(lesson);
    for (Row row : rows) {
      table.add(row.cells(table.size()));
    }
    int[] widths = new int[HEADS.size()];
    for (List<String> cells : table) {
      for (int i = 0; i < widths.length; i++) {
        widths[i] = Math.max(widths[i], DisplayWidth.of(cells.get(i)));
      }
    }
    List<String> lines = new ArrayList<>();
    lines.add(TableText.clean(lesson.title()));
    lines.add("");
    lines.add(line(HEADS, widths));
    for (int i = 0; i < rows.size(); i++) {
      Row row = rows.get(i);
      lines.add(line(table.get(i + 1), widths));
      String indent = " ".repeat(widths[0] + 2);
      String title = row.groove().title();
      if (title != null && !title.isBlank()) {
        lines.add(indent + TableText.clean(title));
      }
      for (String change : row.changes().words()) {
        lines.add(indent + "- " + TableText.clean(change));
      }
    }
    lines.add("");
    lines.add("RH LH RF LF: strokes per second of each hand and foot, over the whole section.");
    lines.add(
        "hardest limb: the one nearest to its comfortable limit, and how near at this tempo.");
    lines.add("together: places where two limbs or more strike at once.");
    lines.add(
        "changed: strokes that are new, different or left out, compared with the section it comes"
            + " from.");
    return String.join("\n", lines) + "\n";
  }

  /** The table with tabs between its cells and a row of names; lines end with LF. */
  public static String tsv(Lesson lesson) {
    StringBuilder out =
        new StringBuilder(
            "number\tstep\ttitle\tchange\ttempo\thardest_limb\tshare_percent\tright_hand"
                + "\tleft_hand\tright_foot\tleft_foot\tlimbs\ttogether\tchanged\n");
    int number = 0;
    for (Row row : rows(lesson)) {
      List<String> cells = row.cells(++number);
      String title = row.groove().title();
      List<String> all = new ArrayList<>(cells.subList(0, 2));
      all.add(title == null ? "" : TableText.clean(title));
      all.add(TableText.clean(row.changes().text()));
      all.addAll(cells.subList(2, 4));
      all.add(cells.get(4).replace(" %", ""));
      all.addAll(cells.subList(5, cells.size()));
      out.append(String.join("\t", all)).append('\n');
    }
    return out.toString();
  }

  private static List<Row> rows(Lesson lesson) {
    return lesson.grooves().stream().map(Row::of).toList();
  }

  private static String line(List<String> cells, int[] widths) {
    StringBuilder line = new StringBuilder();
    for (int i = 0; i < widths.length; i++) {
      line.append(i == 0 ? "" : i == FIRST_NUMBER ? " " : "  ");
      line.append(
          i == 0 || i >= FIRST_NUMBER
              ? TableText.right(cells.get(i), widths[i])
              : DisplayWidth.padded(cells.get(i), widths[i]));
    }
    return line.toString().stripTrailing();
  }
}
