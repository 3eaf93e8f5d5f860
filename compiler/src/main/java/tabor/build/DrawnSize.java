package tabor.build;

import java.util.List;
import java.util.Optional;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.lists.Lists;

/**
 * How much of a lesson is drawn at once. Notes take a thousand times as long to draw as to read, so
 * that a text that looks harmless could keep a machine busy for a long time. The bounds lie beyond
 * what is taught from one file: a term of sixty sections of sixteen bars, each bar of two dozen
 * strokes, has 24,000.
 */
public final class DrawnSize {
  /** What a person can do about it on the command line. */
  public static final String WAY_OUT =
      "; name some sections with --only, or make several sections or lessons of it";

  /** What a section costs whatever is in it, in strokes. */
  private static final long STROKES_OF_A_SECTION = 12;

  /** What a bar costs beside its strokes: empty ones are drawn too. */
  private static final long STROKES_OF_A_BAR = 3;

  /** Most strokes of one section that is drawn: four hundred full bars on end. */
  static final long MOST_OF_A_SECTION = 12_000;

  /** Most strokes that are drawn of a lesson, sections and bars counted in. */
  static final long MOST = 30_000;

  /** The same for a page of what was found in many lessons. */
  static final long MOST_FOUND = 60_000;

  /** The same for pictures of dots, which take longer. */
  static final long MOST_IN_DOTS = 27_000;

  /** The same for sections beside what they were before, each side for itself. */
  static final long MOST_COMPARED = 12_000;

  /** The same for one place of a document, which shows sections and not a whole term. */
  static final long MOST_IN_A_DOCUMENT = 12_000;

  private DrawnSize() {}

  /**
   * Why a lesson is not drawn, in a sentence; empty if it is.
   *
   * @param options which of its sections are wanted
   */
  public static Optional<String> refusal(Lesson lesson, BuildOptions options) {
    return refusal(lesson, options, MOST);
  }

  /** Why a lesson is not drawn at one place of a document, in a sentence; empty if it is. */
  public static Optional<String> refusalInADocument(Lesson lesson) {
    return refusal(lesson, BuildOptions.ALL, MOST_IN_A_DOCUMENT);
  }

  /** What a section takes of the most that is drawn at once. */
  static long of(Groove groove) {
    return STROKES_OF_A_SECTION + STROKES_OF_A_BAR * groove.bars() + groove.written().size();
  }

  static Optional<String> refusal(Lesson lesson, BuildOptions options, long most) {
    BuildOptions own = options.in(lesson);
    List<Groove> drawn = Lists.filter(lesson.grooves(), own::wants);
    Optional<Groove> tooLong =
        Lists.first(drawn, groove -> groove.written().size() > MOST_OF_A_SECTION);
    if (tooLong.isPresent()) {
      Groove section = tooLong.get();
      return Optional.of(
          tooMuch(section.written().size() + " strokes", "section “" + section.name() + "”"));
    }
    if (size(drawn) <= most) {
      return Optional.empty();
    }
    return Optional.of(tooMuch(drawn));
  }

  private static String tooMuch(List<Groove> all) {
    long strokes = 0;
    long bars = 0;
    for (Groove groove : all) {
      strokes += groove.written().size();
      bars += groove.bars();
    }
    return tooMuch(
        bars > strokes ? bars + " bars" : strokes + " strokes",
        all.size() == 1 ? "one section" : all.size() + " sections");
  }

  private static String tooMuch(String amount, String where) {
    return amount + " in " + where + " are too much to draw at once";
  }

  /**
   * Why sections are not drawn beside each other, in a sentence; empty if they are.
   *
   * @param before how some of them were
   * @param after how some of them are: what is more counts
   */
  public static Optional<String> refusal(List<Groove> before, List<Groove> after) {
    List<Groove> more = size(before) > size(after) ? before : after;
    return size(more) <= MOST_COMPARED ? Optional.empty() : Optional.of(tooMuch(more));
  }

  private static long size(List<Groove> grooves) {
    long all = 0;
    for (Groove groove : grooves) {
      all += of(groove);
    }
    return all;
  }
}
