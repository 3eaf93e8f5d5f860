package tabor.resolve;

import tabor.lists.Lists;
import tabor.syntax.SettingStatement;
import tabor.syntax.SettingStatement.Shown;

/**
 * What is printed above and below the notes.
 *
 * @param counts counts above
 * @param sticking the sticking below
 * @param changes marks on what a step changed
 */
public record Shows(boolean counts, boolean sticking, boolean changes) {
  /** All of it. */
  public static final Shows ALL = new Shows(true, true, true);

  /**
   * What a {@code show} line leaves. It lists what is shown; the marks stay unless it says
   * otherwise. A line that speaks of the marks alone leaves the rest as it was.
   */
  Shows after(SettingStatement.Show line) {
    boolean none = has(line, Shown.NONE);
    boolean marks = !none && !has(line, Shown.NO_CHANGES);
    boolean lists = none || has(line, Shown.COUNTS) || has(line, Shown.STICKING);
    return lists
        ? new Shows(has(line, Shown.COUNTS), has(line, Shown.STICKING), marks)
        : new Shows(counts, sticking, marks);
  }

  private static boolean has(SettingStatement.Show line, Shown what) {
    return Lists.any(line.shown(), shown -> shown.value() == what);
  }
}
