package tabor.syntax;

import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What there is to say of one statement, or of one sign of the beats.
 *
 * @param label the name of its grammar rule; {@link StatementTable#SIGN} for a sign
 * @param keyword the word that its line starts with, or the sign; null where a line starts with
 *     whom or what it is about
 * @param sections where it may stand; for a heading everywhere, since it ends what stands above it
 * @param usage how it is written: lower-case words as they stand, words in capitals for something
 * @param meaning what it does, in one sentence or two
 * @param example a line of its own
 */
public record StatementRow(
    String label,
    @Nullable String keyword,
    Set<SectionKind> sections,
    String usage,
    String meaning,
    String example) {
  /** Copies the set. */
  public StatementRow {
    sections = Set.copyOf(sections);
  }

  /** True for a sign of the beats, which is no statement. */
  public boolean isSign() {
    return label.equals(StatementTable.SIGN);
  }

  /** True for the first line of a section. */
  public boolean isHeading() {
    return keyword != null && SectionKind.opened(keyword).isPresent();
  }
}
