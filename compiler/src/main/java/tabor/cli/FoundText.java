package tabor.cli;

import java.util.ArrayList;
import java.util.List;
import tabor.emit.html.FoundPage;
import tabor.find.Found;
import tabor.kit.Limb;
import tabor.report.Json;
import tabor.report.Version;
import tabor.source.DisplayWidth;
import tabor.source.VisibleText;
import tabor.words.Words;

/** What was found, as a table and as data. */
final class FoundText {
  /** What stands over the columns. */
  static final List<String> HEADS =
      List.of("file", "section", "meter", "tempo", "hardest limb", "rudiments");

  private FoundText() {}

  /**
   * A line for each section.
   *
   * @param compared true to say how far each is from what it was compared with
   */
  static String table(List<Found> all, boolean compared) {
    if (all.isEmpty()) {
      return "";
    }
    List<List<String>> rows = new ArrayList<>();
    rows.add(new ArrayList<>(HEADS));
    if (compared) {
      rows.get(0).add(0, "how far");
    }
    all.forEach(found -> rows.add(row(found, compared)));
    int[] widths = new int[rows.get(0).size()];
    for (List<String> row : rows) {
      for (int i = 0; i < widths.length; i++) {
        widths[i] = Math.max(widths[i], DisplayWidth.of(row.get(i)));
      }
    }
    StringBuilder out = new StringBuilder();
    for (List<String> row : rows) {
      out.append(line(row, widths));
    }
    return out.toString();
  }

  /**
   * A line of cells with two spaces or more between them. A cell that is too wide for its column
   * moves what follows only as far as it must: the next one with room to spare is in line again.
   */
  static String line(List<String> row, int[] widths) {
    StringBuilder line = new StringBuilder();
    int due = 0;
    int at = 0;
    for (int i = 0; i < widths.length; i++) {
      due += widths[i] + 2;
      int room = Math.max(due - at, DisplayWidth.of(row.get(i)) + 2);
      line.append(DisplayWidth.padded(row.get(i), room));
      at += room;
    }
    return line.toString().stripTrailing() + "\n";
  }

  static List<String> row(Found found, boolean compared) {
    List<String> row = new ArrayList<>();
    if (compared) {
      row.add(FoundPage.likeness(found.likeness(), Words.english()));
    }
    Limb limb = found.difficulty().hardest();
    row.add(VisibleText.line(found.file()));
    row.add(found.groove().name());
    row.add(found.groove().meters().words());
    row.add(found.groove().setting().tempo().words());
    row.add(limb == null ? "-" : limb.words() + " " + found.difficulty().share() + " %");
    row.add(found.rudiments().isEmpty() ? "-" : String.join(", ", found.rudiments()));
    return row;
  }

  /** The same as one JSON object. */
  static String json(List<Found> all) {
    Json json = new Json();
    json.object(
        () -> {
          json.text("tabor", Version.TEXT);
          json.array("found", () -> all.forEach(found -> json.object(() -> fields(json, found))));
        });
    return json.toString();
  }

  private static void fields(Json json, Found found) {
    Limb limb = found.difficulty().hardest();
    json.text("file", found.file());
    json.text("lesson", found.lesson());
    json.text("section", found.groove().name());
    json.text("title", found.groove().caption());
    json.text("meter", found.groove().meters().words());
    json.text("tempo", found.groove().setting().tempo().words());
    json.text("hardestLimb", limb == null ? null : limb.words());
    json.number("percent", (int) Math.min(found.difficulty().share(), Integer.MAX_VALUE));
    json.texts("rudiments", found.rudiments());
    json.number("kickStrokesOff", found.likeness().kick());
    json.number("handStrokesOff", found.likeness().hands());
  }
}
