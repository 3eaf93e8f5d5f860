package tabor.merge;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;

/** The lines of the merged text as they come. */
final class MergedText {
  private final Merger.Markers markers;
  private final String lineEnd;
  private final List<Row> rows = new ArrayList<>();
  private final List<String> conflicts = new ArrayList<>();

  /**
   * An empty text.
   *
   * @param lineEnd what every line ends with; empty where the lines keep their own
   */
  MergedText(Merger.Markers markers, String lineEnd) {
    this.markers = markers;
    this.lineEnd = lineEnd;
  }

  List<Row> rows() {
    return rows;
  }

  List<String> conflicts() {
    return conflicts;
  }

  void add(Row row) {
    rows.add(row);
  }

  /** Both sides between markers. */
  void conflict(String why, List<Row> ours, List<Row> theirs) {
    conflicts.add(why);
    String end = lineEnd.isEmpty() ? "\n" : lineEnd;
    rows.add(marker(markers.open(), end));
    rows.addAll(ours);
    rows.add(marker(markers.middle(), end));
    rows.addAll(theirs);
    rows.add(marker(markers.close(), end));
  }

  private static Row marker(String text, String end) {
    return new Row("", text, "", end, null, text, Row.About.NOTHING);
  }

  /** Makes the step or sheet whose lines start at {@code first} say what it is made from. */
  boolean sayFrom(int first, String name) {
    for (int i = first; i < rows.size(); i++) {
      Row row = rows.get(i);
      if (Origins.isFromAbove(row.statement())) {
        String from = " from " + name;
        rows.set(i, row.saying(row.core() + from, row.meaning() + from));
        return true;
      }
    }
    return false;
  }

  /**
   * Both sides may have put a section in front of a comment, which then stands before each of them:
   * it is written once.
   */
  void dropDoubledComments(
      Map<String, Integer> base, Map<String, Integer> ours, Map<String, Integer> theirs) {
    Map<String, Integer> left = counts(rows, Row::isComment);
    List<Row> kept = new ArrayList<>();
    for (int i = rows.size() - 1; i >= 0; i--) {
      kept.add(rows.get(i));
      String said = rows.get(i).meaning();
      if (rows.get(i).isComment() && base.containsKey(said)) {
        int was = base.getOrDefault(said, 0);
        int our = ours.getOrDefault(said, 0);
        int their = theirs.getOrDefault(said, 0);
        int wanted = our == their || their == was ? our : our == was ? their : our + their - was;
        if (left.getOrDefault(said, 0) > Math.max(wanted, 0)) {
          left.merge(said, -1, Integer::sum);
          kept.remove(kept.size() - 1);
        }
      }
    }
    Collections.reverse(kept);
    rows.clear();
    rows.addAll(kept);
  }

  /**
   * Statements of which there are more or fewer than the two sides together make: each side has
   * moved one to another section, or one has moved what the other took out.
   */
  List<String> miscounted(
      Map<String, Integer> base, Map<String, Integer> ours, Map<String, Integer> theirs) {
    Map<String, Integer> counts = counts(rows, Row::isStatement);
    Set<String> said = new HashSet<>(base.keySet());
    said.addAll(ours.keySet());
    said.addAll(theirs.keySet());
    List<String> wrong = new ArrayList<>();
    for (String one : said) {
      int was = base.getOrDefault(one, 0);
      int our = ours.getOrDefault(one, 0);
      int their = theirs.getOrDefault(one, 0);
      int now = counts.getOrDefault(one, 0);
      int wanted = our == was ? their : their == was ? our : now;
      if (now != wanted) {
        wrong.add(one);
      }
    }
    // Few of many: only they are put in order.
    Collections.sort(wrong);
    wrong.replaceAll(
        one -> "both sides moved this line, or one moved it and the other took it out: " + one);
    return wrong;
  }

  /** How often lines of a kind stand among others. */
  static Map<String, Integer> counts(List<Row> rows, Predicate<Row> which) {
    Map<String, Integer> counts = new HashMap<>();
    rows.stream().filter(which).forEach(row -> counts.merge(row.meaning(), 1, Integer::sum));
    return counts;
  }

  /** The text; a line that is not the last has an end. */
  @Override
  public String toString() {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < rows.size(); i++) {
      Row row = rows.get(i);
      String raw = row.raw();
      if (row.end().isEmpty() && i + 1 < rows.size()) {
        raw += lineEnd.isEmpty() ? "\n" : lineEnd;
      }
      text.append(raw);
    }
    String all = text.toString();
    return lineEnd.isEmpty() ? all : all.replaceAll("\r\n|\r|\n", lineEnd);
  }
}
