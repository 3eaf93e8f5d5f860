package tabor.emit.strokes;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.List;
import tabor.groove.Groove;
import tabor.groove.Ornament;

/** Writes the stroke list of grooves and steps. */
public final class StrokeList {
  private StrokeList() {}

  /** The first row of the TSV. */
  static final String COLUMNS =
      "section\tbar\tat\tsurface\tlimb\tlevel\tornaments\tcount\tlength\tms";

  /** Tab-separated: a row of names, then a row for each stroke. */
  public static String tsv(List<Groove> grooves) {
    StringBuilder text = new StringBuilder(COLUMNS).append('\n');
    for (Groove groove : grooves) {
      for (StrokeRow row : StrokeRow.of(groove)) {
        text.append(row.section()).append('\t').append(row.bar()).append('\t').append(row.at());
        text.append('\t').append(row.surface()).append('\t').append(row.limb());
        text.append('\t').append(row.level()).append('\t').append(row.ornaments());
        text.append('\t').append(row.count()).append('\t').append(row.length());
        text.append('\t').append(row.millis()).append('\n');
      }
    }
    return text.toString();
  }

  /**
   * A JSON array with an object for each stroke; exact times are fractions as strings, ornaments an
   * array, {@code bar} and {@code ms} numbers.
   */
  public static String json(List<Groove> grooves) {
    StringWriter text = new StringWriter();
    JsonWriter json = new JsonWriter(text);
    json.setIndent("  ");
    json.setHtmlSafe(false);
    try {
      json.beginArray();
      for (Groove groove : grooves) {
        for (StrokeRow row : StrokeRow.of(groove)) {
          write(json, row);
        }
      }
      json.endArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return text.append('\n').toString();
  }

  private static void write(JsonWriter json, StrokeRow row) throws IOException {
    json.beginObject();
    json.name("section").value(row.section());
    json.name("bar").value(row.bar());
    json.name("at").value(row.at().toString());
    json.name("surface").value(row.surface());
    json.name("limb").value(row.limb());
    json.name("level").value(row.level());
    json.name("ornaments").beginArray();
    for (Ornament ornament : row.ornaments().list()) {
      json.value(ornament.word());
    }
    json.endArray();
    json.name("count").value(row.count());
    json.name("length").value(row.length().toString());
    json.name("ms").value(new BigDecimal(row.millis()));
    json.endObject();
  }
}
