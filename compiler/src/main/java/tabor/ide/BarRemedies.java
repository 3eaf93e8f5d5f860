package tabor.ide;

import java.util.ArrayList;
import java.util.List;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.source.Span;
import tabor.syntax.Bar;
import tabor.syntax.Beat;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;

/** Mends of bars that are too short, too long, too few or too many. */
final class BarRemedies {
  private final Cursor cursor;
  private final List<Mend> found = new ArrayList<>();

  private BarRemedies(Cursor cursor) {
    this.cursor = cursor;
  }

  static List<Mend> of(Cursor cursor, Diagnostic diagnostic, Span span) {
    BarRemedies remedies = new BarRemedies(cursor);
    Line line = cursor.line();
    if (line != null && line.statement() instanceof PartStatement.Lane lane) {
      if (diagnostic.code() == Code.BAR_LENGTH) {
        remedies.length(lane, span);
      } else {
        remedies.count(line, lane);
      }
    }
    return remedies.found;
  }

  private void length(PartStatement.Lane lane, Span span) {
    for (int i = 0; i < lane.bars().size(); i++) {
      Bar bar = lane.bars().get(i);
      Span where = cursor.inFile(bar.span());
      if (bar.repeat() || where.end() < span.start() || where.start() > span.end()) {
        continue;
      }
      if (i > 0) {
        found.add(Mend.of("repeat the bar before", where, "%"));
      }
      narrow(bar);
    }
  }

  /** A last word that spreads too far: over fewer beats, down to one. */
  private void narrow(Bar bar) {
    Beat last = bar.beats().get(bar.beats().size() - 1);
    if (last.beats() == null) {
      return;
    }
    for (int beats = last.beats().whole() - 1; beats >= 1; beats--) {
      Span number = cursor.inFile(last.beats().span());
      Mend mend =
          beats == 1
              ? Mend.of(
                  "let the last word be one beat", new Span(number.start() - 1, number.end()), "")
              : Mend.of(
                  "let the last word be " + beats + " beats", number, Integer.toString(beats));
      found.add(mend);
    }
  }

  /** Repeats or cuts whole bars; how many are wanted is not known here, so each number is tried. */
  private void count(Line line, PartStatement.Lane lane) {
    int end = cursor.inFile(lane.span()).end();
    String text = cursor.compiled().text();
    boolean closed =
        text.substring(cursor.start() + line.start(), end).stripTrailing().endsWith("|");
    StringBuilder more = new StringBuilder();
    for (int bars = 1; bars <= 8; bars++) {
      more.append(closed ? " % |" : " | %");
      found.add(
          Mend.of(
              bars == 1 ? "repeat the last bar" : "repeat the last bar " + bars + " times",
              new Span(end, end),
              more.toString()));
    }
    for (int keep = lane.bars().size() - 1; keep >= 1; keep--) {
      int from = cursor.inFile(lane.bars().get(keep - 1).span()).end();
      int cut = lane.bars().size() - keep;
      found.add(
          Mend.of(
              cut == 1 ? "cut the last bar" : "cut the last " + cut + " bars",
              new Span(from, end),
              ""));
    }
  }
}
