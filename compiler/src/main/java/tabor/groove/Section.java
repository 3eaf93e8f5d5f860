package tabor.groove;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.source.Spot;

/** A groove, a step, a sheet or a chart. */
public sealed interface Section permits Groove, Sheet, Chart {
  /** Its name, unique among the sections of a file. */
  String name();

  /** Its title as written; null if it has none. */
  @Nullable String title();

  /** Its heading. */
  Spot heading();

  /** Its texts in the order written. */
  List<String> prose();

  /** What it says for the printed page. */
  PageNotes page();

  /** The title, or the name where there is no title. */
  default String caption() {
    String title = title();
    return title == null || title.isBlank() ? name() : title;
  }
}
