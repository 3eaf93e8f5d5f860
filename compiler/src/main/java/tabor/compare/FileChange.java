package tabor.compare;

import java.util.List;

/**
 * What changed in the music of a file.
 *
 * @param details what is said of the lesson as a whole
 * @param sections the sections with a change, in the order of the new file, those that are gone
 *     where they stood
 */
public record FileChange(List<Detail> details, List<SectionChange> sections) {
  /** Copies the lists. */
  public FileChange {
    details = List.copyOf(details);
    sections = List.copyOf(sections);
  }

  /** True if the music is the same. */
  public boolean isEmpty() {
    return details.isEmpty() && sections.isEmpty();
  }
}
