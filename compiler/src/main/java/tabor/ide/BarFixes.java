package tabor.ide;

import java.util.List;
import java.util.Optional;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.source.Span;
import tabor.source.Spot;
import tabor.syntax.Beat;
import tabor.syntax.LaneBar;
import tabor.syntax.Line;
import tabor.syntax.PartStatement;

/** Fixes of bars that are too short or too long, and of parts with too few or too many of them. */
record BarFixes(Cursor cursor, Diagnostic diagnostic, List<QuickFix> found) {
  void find() {
    Line line = cursor.line();
    if (line != null && diagnostic.code() == Code.BAR_LENGTH) {
      if (line.statement() instanceof PartStatement.Lane lane) {
        length(lane);
      }
    } else if (line != null) {
      count(line);
    }
  }

  private void length(PartStatement.Lane lane) {
    Span span = cursor.compiled().span(diagnostic.spot());
    for (int i = 0; i < lane.bars().size(); i++) {
      LaneBar bar = lane.bars().get(i);
      Span where = cursor.inFile(bar.span());
      if (!bar.repeat() && where.touches(span.start())) {
        narrow(bar);
        List<TextEdit> lines = SystemParts.around(cursor).barLines();
        if (!lines.isEmpty()) {
          found.add(new QuickFix("Set the bar lines of all these parts", lines, false));
        }
        if (i > 0 && canRepeat(lane.bars().get(i - 1))) {
          found.add(QuickFix.of("Replace this bar with the bar before", where, "%"));
        }
        return;
      }
    }
  }

  /** True if the bar before can be played again: a whole bar of the same meter, without a fault. */
  private boolean canRepeat(LaneBar before) {
    int bar = bar();
    return bar > 1
        && cursor.meter(bar - 1).equals(cursor.meter(bar))
        && (before.repeat() || sum(before) == cursor.meter(bar).beatCount());
  }

  /** A last word that spreads too far: over fewer beats, down to one. */
  private void narrow(LaneBar bar) {
    Beat last = bar.beats().get(bar.beats().size() - 1);
    long needed = sum(bar) - cursor.meter(bar()).beatCount();
    int left = (int) (beats(last) - needed);
    if (last.beats() == null || bar() == 0 || needed <= 0 || left < 1) {
      return;
    }
    Span number = cursor.inFile(last.beats().span());
    found.add(
        left == 1
            ? QuickFix.of(
                "Let the last word be one beat", new Span(number.start() - 1, number.end()), "")
            : QuickFix.of(
                "Let the last word be " + left + " beats", number, Integer.toString(left)));
  }

  private static long beats(Beat beat) {
    return beat.beats() == null ? 1 : Math.max(1, beat.beats().whole());
  }

  private static long sum(LaneBar bar) {
    return bar.beats().stream().mapToLong(BarFixes::beats).sum();
  }

  /** The bar that the diagnostic is about; 0 for the pickup. */
  private int bar() {
    Diagnostic.Place place = diagnostic.place();
    Integer bar = place == null ? null : place.bar();
    return bar == null ? 0 : bar;
  }

  /** Repeats or cuts whole bars, so that the part is as long as the other one. */
  private void count(Line line) {
    Optional<Integer> wanted = otherBars();
    if (wanted.isEmpty()) {
      return;
    }
    if (line.statement() instanceof PartStatement.Bars bars) {
      found.add(
          QuickFix.of(
              "Write bars " + wanted.get(),
              cursor.inFile(bars.bars().span()),
              wanted.get().toString()));
    } else if (line.statement() instanceof PartStatement.Lane lane && !lane.ostinato()) {
      int more = wanted.get() - lane.bars().size();
      if (more > 0) {
        repeat(lane, more);
      } else if (more < 0) {
        cut(lane, -more);
      }
    }
  }

  /** How many bars the part or the line has that the diagnostic's label shows. */
  private Optional<Integer> otherBars() {
    for (Diagnostic.Label label : diagnostic.labels()) {
      Spot spot = label.spot();
      for (Line line : cursor.section().lines()) {
        if (line.passage() == spot.passage() && line.spot().equals(spot)) {
          if (line.statement() instanceof PartStatement.Lane lane && !lane.ostinato()) {
            return Optional.of(lane.bars().size());
          }
          if (line.statement() instanceof PartStatement.Bars bars) {
            return Optional.of(bars.bars().whole());
          }
        }
      }
    }
    return Optional.empty();
  }

  private void repeat(PartStatement.Lane lane, int more) {
    int end = cursor.inFile(lane.span()).end();
    boolean closed = cursor.compiled().text().charAt(end - 1) == '|';
    found.add(
        QuickFix.of(
            more == 1 ? "Repeat the last bar" : "Repeat the last bar " + more + " times",
            new Span(end, end),
            (closed ? " % |" : " | %").repeat(more)));
  }

  private void cut(PartStatement.Lane lane, int bars) {
    int keep = lane.bars().size() - bars;
    if (keep > 0) {
      int from = cursor.inFile(lane.bars().get(keep - 1).span()).end();
      found.add(
          QuickFix.of(
              bars == 1 ? "Cut the last bar" : "Cut the last " + bars + " bars",
              new Span(from, cursor.inFile(lane.span()).end()),
              ""));
    }
  }
}
