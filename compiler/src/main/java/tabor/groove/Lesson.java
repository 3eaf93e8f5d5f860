package tabor.groove;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A file, finished.
 *
 * @param file the source's name without its ending
 * @param title as written, else the file's name
 * @param by as written; null if nobody is named
 * @param setting what the header says: what sections start from
 * @param sections in the order of the file; sections with errors are missing
 */
public record Lesson(
    String file,
    String title,
    @Nullable String by,
    Groove.Setting setting,
    List<Section> sections) {
  /** Copies the list. */
  public Lesson {
    sections = List.copyOf(sections);
  }

  /** The grooves and steps in order. */
  public List<Groove> grooves() {
    return sections.stream().filter(Groove.class::isInstance).map(Groove.class::cast).toList();
  }

  /** The charts in order. */
  public List<Chart> charts() {
    return sections.stream().filter(Chart.class::isInstance).map(Chart.class::cast).toList();
  }
}
