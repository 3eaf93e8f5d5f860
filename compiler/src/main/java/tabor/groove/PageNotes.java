package tabor.groove;

import java.util.List;

/**
 * What a section says for the printed page.
 *
 * @param wishes layout, its own and those it took over from the section it came from
 * @param newPage true if it starts a page
 * @param goals in the order written
 * @param teacher texts for the teacher alone, in the order written: printed with {@code --teacher}
 *     only, in no other output
 * @param blankSticking true if boxes are printed in place of the hands
 * @param blankParts the parts that are printed empty; they sound
 * @param blankBars number of empty bars to write on in place of notes; 0 for a section with notes
 * @param lineStarts the bars before which the writer began a line with {@code next}, in order
 */
public record PageNotes(
    PageWishes wishes,
    boolean newPage,
    List<String> goals,
    List<String> teacher,
    boolean blankSticking,
    List<Part> blankParts,
    int blankBars,
    List<Integer> lineStarts) {
  /** Nothing is said. */
  public static final PageNotes NONE =
      new PageNotes(PageWishes.NONE, false, List.of(), List.of(), false, List.of(), 0, List.of());

  /** Copies the lists. */
  public PageNotes {
    goals = List.copyOf(goals);
    teacher = List.copyOf(teacher);
    blankParts = List.copyOf(blankParts);
    lineStarts = List.copyOf(lineStarts);
  }
}
