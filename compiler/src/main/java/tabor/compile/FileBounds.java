package tabor.compile;

import java.util.ArrayList;
import java.util.List;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Severity;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.Sheet;
import tabor.perform.Performer;
import tabor.resolve.ChartSize;
import tabor.resolve.Gaps;
import tabor.resolve.Resolved;
import tabor.source.Spot;

/** How much the sections of one file may ask for together, by the length of its text. */
final class FileBounds {
  /** Most strokes that the sections of a file may hold together, however long it is. */
  private static final long MOST_STROKES = 250_000;

  /** What the sections of a file may cost to work out together, however long it is. */
  private static final long MOST_EFFORT = 12_000_000;

  /** What a stroke of a finished section costs, in the effort of a stroke that an edit looks at. */
  private static final long FINISHING = 10;

  /** What a section costs whatever is in it, in strokes. */
  private static final long STROKES_OF_A_SECTION = 10;

  /** Most players of a file: each may ask for every output. */
  static final int MOST_PLAYERS = 200;

  /** Most errors of a file that are told. */
  private static final int MOST_ERRORS = 1000;

  /** Most problems of a file of any kind that are told. */
  private static final int MOST_PROBLEMS = 10_000;

  /** What a few words may ask for: every output grows with it. */
  private static final long LEAST_STROKES = 20_000;

  /** What a bar counts at least, in strokes: an empty one is written and drawn as well. */
  private static final long STROKES_OF_A_BAR = 4;

  private static final String SEVERAL_FILES = "make several files of this one";

  private static final long LEAST_EFFORT = 1_500_000;

  /** What each character of a text may add to that. */
  private static final long STROKES_OF_A_CHARACTER = 2;

  private static final long EFFORT_OF_A_CHARACTER = 20;

  private final Edition edition;
  private final long mostStrokes;
  private final long mostEffort;
  private long strokes;
  private long bars;
  private long effort;
  private long sounds;
  private boolean chartsExceeded;
  private int errors;
  private int told;
  private int toldErrors;

  /**
   * Bounds of a file.
   *
   * @param length of its text, in characters
   */
  FileBounds(Edition edition, long length) {
    this.edition = edition;
    this.mostStrokes = Math.min(MOST_STROKES, LEAST_STROKES + STROKES_OF_A_CHARACTER * length);
    this.mostEffort = Math.min(MOST_EFFORT, LEAST_EFFORT + EFFORT_OF_A_CHARACTER * length);
  }

  /** True if nothing further is to be worked out. */
  boolean isExceeded() {
    return effort > mostEffort || errors > MOST_ERRORS;
  }

  /** True if no further chart is to be worked out. */
  boolean isExceededByCharts() {
    return chartsExceeded || errors > MOST_ERRORS;
  }

  /**
   * True if what is told of the header and the sections above one is enough.
   *
   * @param above all of it; asked again, with more at its end
   */
  boolean isEnough(List<Diagnostic> above) {
    toldErrors += errors(above.subList(told, above.size()));
    told = above.size();
    return told > MOST_PROBLEMS || toldErrors > MOST_ERRORS;
  }

  /** What is said at the heading of the section from which on nothing is told. */
  static Diagnostic enough(SectionNode node) {
    return Diagnostic.of(
            Code.TOO_LONG,
            node.headingLine().spot(),
            "there are too many problems before this line; from here on nothing is told")
        .help("correct those first");
  }

  /** What is said at the first player that is one too many; those below it are not there. */
  static Diagnostic manyPlayers(SectionNode node) {
    return Diagnostic.of(
            Code.TOO_LONG,
            node.headingLine().spot(),
            "a file has at most " + MOST_PLAYERS + " players")
        .help("make a file for each class");
  }

  private static int errors(List<Diagnostic> found) {
    int errors = 0;
    for (Diagnostic one : found) {
      errors += one.severity() == Severity.ERROR ? 1 : 0;
    }
    return errors;
  }

  /** A section as it was worked out, or in its place what it is too much of. */
  Resolved section(SectionNode node, Resolved found) {
    List<Groove> grooves =
        found.section() instanceof Sheet sheet
            ? sheet.grooves()
            : found.section() instanceof Groove groove ? List.of(groove) : List.of();
    for (Groove groove : grooves) {
      // A step that changes nothing costs as much as any other in most outputs.
      strokes += groove.written().size();
      bars += groove.bars();
      effort += FINISHING * (STROKES_OF_A_SECTION + groove.written().size());
    }
    effort += found.effort();
    errors += errors(node.syntax.problems()) + errors(found.diagnostics());
    if (strokes > mostStrokes) {
      // Nothing below is worked out.
      effort = Long.MAX_VALUE;
      return tooLong(
          node, found, "the sections so far have more than " + mostStrokes + " strokes together");
    }
    long mostBars = mostStrokes / STROKES_OF_A_BAR;
    if (bars > mostBars) {
      effort = Long.MAX_VALUE;
      return tooLong(
          node, found, "the sections so far have more than " + mostBars + " bars together");
    }
    return effort <= mostEffort
        ? found
        : tooLong(
            node,
            found,
            "the sections so far have too many strokes, and changes of them, together");
  }

  /** A chart as it was worked out, or in its place what it is too much of. */
  Resolved chart(SectionNode node, Chart chart, Resolved found) {
    Performer.Size size =
        found.partial()
            ? new Performer.Size(ChartSize.sounds(chart), false, -1)
            : Performer.size(chart, ChartSize.MOST_SOUNDS - sounds);
    sounds += size.strokes();
    errors += errors(node.syntax.problems()) + errors(found.diagnostics());
    chartsExceeded |= sounds > ChartSize.MOST_SOUNDS;
    Spot here = size.item() < 0 ? node.headingLine().spot() : found.items().get(size.item());
    if (size.isTooLong()) {
      return tooLong(
          node, found, here, "here the chart grows longer than 24 hours", "play fewer times");
    }
    return sounds > ChartSize.MOST_SOUNDS && !found.partial()
        ? tooLong(
            node,
            found,
            here,
            "the charts so far have more than " + ChartSize.MOST_SOUNDS + " strokes together",
            SEVERAL_FILES)
        : found;
  }

  private Resolved tooLong(SectionNode node, Resolved found, String message) {
    return tooLong(node, found, node.headingLine().spot(), message, SEVERAL_FILES);
  }

  private Resolved tooLong(
      SectionNode node, Resolved found, Spot here, String message, String help) {
    edition.memo(node).resolved = null;
    List<Diagnostic> problems = new ArrayList<>(found.diagnostics());
    problems.add(Diagnostic.of(Code.TOO_LONG, here, message).help(help));
    return new Resolved(null, Gaps.ALL, problems, 0);
  }
}
