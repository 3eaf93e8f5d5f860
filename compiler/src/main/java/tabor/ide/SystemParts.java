package tabor.ide;

import java.util.ArrayList;
import java.util.List;
import tabor.compile.Compiled;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Groove;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;

/** The parts that sound together with one part: they need equally many bars. */
final class SystemParts {
  private final Cursor cursor;

  /** The lines with a part of the same system, this one among them; none that repeats itself. */
  private final List<Line> lines = new ArrayList<>();

  private int systems = 1;

  private SystemParts(Cursor cursor) {
    this.cursor = cursor;
  }

  /** The parts around the line at a cursor. */
  static SystemParts around(Cursor cursor) {
    SystemParts parts = new SystemParts(cursor);
    Line here = cursor.line();
    boolean passed = false;
    for (Line line : cursor.section().lines()) {
      if (line.statement() instanceof PartStatement.Next) {
        parts.systems++;
        if (!passed) {
          parts.lines.clear();
        }
        passed |= parts.lines.contains(here);
      } else if (!passed && line.statement() instanceof PartStatement.Lane lane) {
        if (!lane.ostinato()) {
          parts.lines.add(line);
        }
      }
    }
    return parts;
  }

  /** True if a part of so many bars, a pickup counted as one, goes with all that is said. */
  boolean takes(int bars) {
    Line here = cursor.line();
    return lines.stream().filter(line -> line != here).allMatch(line -> bars(line) == bars)
        && takesInAll(bars);
  }

  /** True if nothing but other parts stands against parts of so many bars. */
  private boolean takesInAll(int bars) {
    boolean said =
        cursor.section().lines().stream()
            .anyMatch(line -> line.statement() instanceof PartStatement.Bars);
    Groove groove = cursor.groove().orElse(null);
    if (groove == null || (!said && !groove.isStep())) {
      return true;
    }
    int counted = groove.bars() + (groove.firstBar() == 0 ? 1 : 0);
    return systems == 1 && bars == counted;
  }

  private static int bars(Line line) {
    return line.statement() instanceof PartStatement.Lane lane ? lane.bars().size() : 0;
  }

  /**
   * The bar lines that every one of the parts lacks, if all lack some and have equally many bars
   * with them; else none.
   */
  List<TextEdit> barLines() {
    Compiled compiled = cursor.compiled();
    List<TextEdit> all = new ArrayList<>();
    int bars = -1;
    for (Line line : lines) {
      int before = all.size();
      for (Diagnostic diagnostic : compiled.diagnostics()) {
        if (diagnostic.code() == Code.BAR_LENGTH
            && diagnostic.spot().passage() == line.passage()
            && line.spot().span().touches(diagnostic.spot().span().start())) {
          List<TextEdit> some = barLines(diagnostic);
          if (some.isEmpty()) {
            return List.of();
          }
          all.addAll(some);
        }
      }
      int now = bars(line) + all.size() - before;
      if (all.size() == before || (bars >= 0 && now != bars)) {
        return List.of();
      }
      bars = now;
    }
    return takesInAll(bars) ? all : List.of();
  }

  private List<TextEdit> barLines(Diagnostic diagnostic) {
    for (Diagnostic.Fix fix : diagnostic.fixes()) {
      if (fix.edits().stream().allMatch(edit -> edit.text().equals(" |"))) {
        return fix.edits().stream()
            .map(edit -> new TextEdit(cursor.compiled().span(edit.spot()), edit.text()))
            .toList();
      }
    }
    return List.of();
  }
}
