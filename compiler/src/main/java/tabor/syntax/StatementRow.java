package tabor.syntax;

import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.grammar.StatementTexts;

/**
 * What there is to say of one statement, or of one sign of the beats.
 *
 * @param number its place in the table, from 0
 * @param label the name of its grammar rule; {@link StatementTable#SIGN} for a sign
 * @param keyword the word that its line starts with, or the sign; null where a line starts with
 *     whom or what it is about
 * @param sections where it may stand; for a heading everywhere, since it ends what stands above it
 */
public record StatementRow(
    int number, String label, @Nullable String keyword, Set<SectionKind> sections) {
  /** Copies the set. */
  public StatementRow {
    sections = Set.copyOf(sections);
  }

  /** How it is written: lower-case words as they stand, words in capitals for something. */
  public String usage() {
    return StatementTexts.texts(number)[0];
  }

  /** What it does, in one sentence or two. */
  public String meaning() {
    return StatementTexts.texts(number)[1];
  }

  /** A line of its own. */
  public String example() {
    return StatementTexts.texts(number)[2];
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
