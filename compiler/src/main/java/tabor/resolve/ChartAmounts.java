package tabor.resolve;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;
import tabor.syntax.ChartStatement;
import tabor.syntax.Line;
import tabor.syntax.Num;

/** Reads how often, how long and how fast a chart's lines are played, and says what is too much. */
record ChartAmounts(Problems problems, View view) {
  /** How often a line may be played, and how many bars it may last. */
  static final int MOST_TIMES = 100_000;

  private static final int MOST_RUNGS = 10_000;
  private static final Time A_DAY = Time.of(24 * 60 * 60);

  /** The number that a line says; 0, and said so, if it is out of range. */
  int within(Line line, Num number, int most, String what) {
    int value = number.whole();
    if (value >= 1 && value <= most) {
      return value;
    }
    problems.lost(
        Code.TOO_LONG,
        line,
        number.span(),
        what + " is longer than Tabor plays",
        "write " + most + " or fewer");
    return 0;
  }

  /** How often or how long; null, and said so, if that is too much. */
  Chart.@Nullable Amount amount(Line line, ChartStatement.Clauses said) {
    Num times = said.times();
    Num bars = said.bars();
    ChartStatement.Duration time = said.time();
    if (time != null) {
      Time seconds = seconds(line, time);
      return seconds == null ? null : new Chart.Amount(0, 0, seconds);
    }
    if (bars != null) {
      int count = within(line, bars, MOST_TIMES, "this line");
      return count == 0 ? null : new Chart.Amount(0, count, null);
    }
    int count = times == null ? 1 : within(line, times, MOST_TIMES, "this line");
    return count == 0 ? null : new Chart.Amount(count, 0, null);
  }

  /** A length of time in seconds; null, and said so, if it is longer than a day. */
  @Nullable Time seconds(Line line, ChartStatement.Duration time) {
    Time seconds = time.number().value().times(time.minutes() ? 60 : 1);
    if (seconds.compareTo(A_DAY) <= 0) {
      return seconds;
    }
    problems.lost(
        Code.TOO_LONG, line, time.span(), "this is longer than 24 hours", "write a shorter time");
    return null;
  }

  /** The tempi of a ladder; none, and said so, if they are too many. */
  List<Tempo> rungs(Line line, ChartStatement.Climb item, Groove groove) {
    Time from = view.share(item.from().value());
    Time to = view.share(item.to().value());
    Time by = view.share(item.by().value());
    boolean down = to.before(from);
    Time distance = down ? from.minus(to) : to.minus(from);
    if (distance.over(by).compareTo(Time.of(MOST_RUNGS)) > 0) {
      problems.tell(
          Code.TOO_LONG,
          line,
          item.span(),
          "this ladder has more than " + MOST_RUNGS + " steps",
          "climb by more at a time");
      return List.of();
    }
    Time beat = groove.meter().tempoBeat();
    List<Tempo> tempi = new ArrayList<>();
    Time step = down ? by.negate() : by;
    for (Time at = from; down ? to.before(at) : at.before(to); at = at.plus(step)) {
      tempi.add(new Tempo(beat, at));
    }
    tempi.add(new Tempo(beat, to));
    return tempi;
  }

  /** Says so where the chart grows longer than a day, or beyond what can be written out. */
  void measure(List<Chart.Item> finished, List<Line> lines) {
    BigInteger all = BigInteger.ZERO;
    long sounds = 0;
    for (int i = 0; i < finished.size(); i++) {
      all = all.add(ChartSize.length(finished.get(i)));
      sounds += ChartSize.sounds(finished.get(i));
      boolean day = all.compareTo(ChartSize.DAY) > 0;
      if (day || sounds > ChartSize.MOST_SOUNDS) {
        problems.lost(
            Code.TOO_LONG,
            lines.get(i),
            lines.get(i).statement().span(),
            day
                ? "here the chart grows longer than 24 hours"
                : "here the chart grows beyond " + ChartSize.MOST_SOUNDS + " strokes",
            "play fewer times");
        return;
      }
    }
  }
}
