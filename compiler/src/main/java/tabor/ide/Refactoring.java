package tabor.ide;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * Another way to write the same music, as a person chooses it. It is worked out and tried only when
 * it is chosen.
 *
 * @param title what it does, in a few words
 * @param work finds the edits
 */
public record Refactoring(String title, Function<Library, Optional<List<TextEdit>>> work) {
  /**
   * The edits of the file, in order; empty if they would change more than the title says: a stroke,
   * a dynamic, a text or a comment.
   */
  public Optional<List<TextEdit>> edits(Library library) {
    return work.apply(library);
  }
}
