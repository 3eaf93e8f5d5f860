package tabor.compare;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A file and what became of it.
 *
 * @param before what the old one is called; null where there is none
 * @param after what the new one is called; null where there is none
 * @param change what changed in its music
 * @param sameText true if not a byte is other
 * @param notes what else is to be said, such as errors that stand in the way
 */
public record ComparedFile(
    @Nullable String before,
    @Nullable String after,
    FileChange change,
    boolean sameText,
    List<String> notes) {
  /** Copies the list. */
  public ComparedFile {
    notes = List.copyOf(notes);
    if (before == null && after == null) {
      throw new IllegalArgumentException("no file");
    }
  }

  /** True if both are there and sound the same. */
  public boolean isSame() {
    return before != null && after != null && change.isEmpty();
  }

  /** What the file is called now, or was. */
  public String name() {
    if (after != null) {
      return after;
    }
    return before == null ? "" : before;
  }

  /** What is to be said before the changes; empty if nothing is. */
  public String words() {
    if (before == null) {
      return "is new";
    }
    if (after == null) {
      return "is taken out";
    }
    return change.isEmpty() ? "the same music" + (sameText ? "" : ", written otherwise") : "";
  }
}
