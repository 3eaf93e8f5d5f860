package tabor.resolve;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.groove.Chart;
import tabor.rhythm.Meter;
import tabor.rhythm.Tempo;
import tabor.syntax.ChartStatement;
import tabor.syntax.Line;

/**
 * The items of a chart that take something from those around them.
 *
 * @param lines the line of each item
 * @param bare where a gradual tempo starts, as written, by the index of its item
 */
record ChartNeighbours(
    Problems problems, List<Chart.Item> items, List<Line> lines, Map<Integer, TempoMark> bare) {
  /**
   * Count-ins take meter and tempo of what follows, rests of what was before, else follows; a
   * gradual tempo counts the beats of what follows.
   */
  List<Chart.Item> finished() {
    List<Chart.Item> done = new ArrayList<>();
    for (int i = 0; i < items.size(); i++) {
      Chart.Item item = items.get(i);
      if (item instanceof Chart.CountIn countIn) {
        Chart.Turn next = firstFrom(i);
        done.add(
            next == null
                ? countIn
                : new Chart.CountIn(countIn.bars(), next.groove(), next.tempo()));
      } else if (item instanceof Chart.Rest rest) {
        Chart.Turn near = lastBefore(i);
        near = near == null ? firstFrom(i) : near;
        done.add(near == null ? rest : new Chart.Rest(rest.bars(), near.groove(), near.tempo()));
      } else if (item instanceof Chart.Ramp ramp) {
        done.add(ramp(ramp, i));
      } else {
        if (item instanceof Chart.Cue cue) {
          checkBar(cue, i);
        }
        done.add(item);
      }
    }
    return done;
  }

  private Chart.Ramp ramp(Chart.Ramp ramp, int index) {
    Chart.Turn next = firstFrom(index);
    TempoMark from = bare.get(index);
    if (next == null || from == null) {
      return ramp;
    }
    Meter meter = next.groove().meter();
    Tempo to = new TempoMark(from.beat(), ramp.to().perMinute()).in(meter);
    return new Chart.Ramp(from.in(meter), to, ramp.bars());
  }

  /** A cue stands in a bar of the line that follows. */
  private void checkBar(Chart.Cue cue, int index) {
    Line line = lines.get(index);
    if (!(line.statement() instanceof ChartStatement.Cue written) || written.bar() == null) {
      return;
    }
    Chart.Item next = null;
    for (int i = index + 1; i < items.size() && next == null; i++) {
      Chart.Item item = items.get(i);
      next =
          item instanceof Chart.Play || item instanceof Chart.Climb || item instanceof Chart.Trade
              ? item
              : null;
    }
    if (next == null) {
      problems.tell(
          Code.NOTHING_THERE,
          line,
          written.bar().span(),
          "nothing is played below, so there is no bar " + cue.bar() + " for this cue",
          "write the cue above the line that it is for");
      return;
    }
    long bars = ChartSize.bars(next);
    if (bars > 0 && cue.bar() > bars) {
      problems.tell(
          Code.COUNT_OUTSIDE_BAR,
          line,
          written.bar().span(),
          "the line below has " + SectionLength.bars(bars) + ", so there is no bar " + cue.bar(),
          "the last is bar " + bars);
    }
  }

  private Chart.@Nullable Turn firstFrom(int index) {
    Chart.Turn found = null;
    for (int i = index; i < items.size() && found == null; i++) {
      found = turn(items.get(i), false);
    }
    return found;
  }

  private Chart.@Nullable Turn lastBefore(int index) {
    Chart.Turn found = null;
    for (int i = index - 1; i >= 0 && found == null; i--) {
      found = turn(items.get(i), true);
    }
    return found;
  }

  /** The first turn that an item plays, or the last; null for one that plays nothing. */
  private static Chart.@Nullable Turn turn(Chart.Item item, boolean last) {
    if (item instanceof Chart.Play play) {
      return play.turns().get(last ? play.turns().size() - 1 : 0);
    }
    if (item instanceof Chart.Climb climb) {
      Tempo tempo = climb.tempi().get(last ? climb.tempi().size() - 1 : 0);
      return new Chart.Turn(climb.groove(), tempo, climb.feel());
    }
    return item instanceof Chart.Trade trade ? trade.turn() : null;
  }
}
