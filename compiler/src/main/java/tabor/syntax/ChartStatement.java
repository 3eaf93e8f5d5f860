package tabor.syntax;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.groove.Chart;
import tabor.source.Span;

/** A line of a chart, {@code tempo}, {@code feel} and {@code text} apart. */
public sealed interface ChartStatement extends Statement {
  /** Calls the method of {@code cases} that fits. */
  <R> R match(Cases<R> cases);

  /** One method for each kind of line. */
  interface Cases<R> {
    R countIn(CountIn line);

    R click(SetClick line);

    R play(Play line);

    R rest(Rest line);

    R climb(Climb line);
  }

  /** {@code count-in N bars}. */
  record CountIn(Num bars, Span span) implements ChartStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.countIn(this);
    }
  }

  /** {@code click on|off|quarters|eighths}. */
  record SetClick(Ref<Chart.Click> click, Span span) implements ChartStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.click(this);
    }
  }

  /** {@code play SECTION… [N times] [at tempo T]}. */
  record Play(
      List<Name> sections, @Nullable Num times, SettingStatement.@Nullable Tempo tempo, Span span)
      implements ChartStatement {
    /** Copies the list. */
    public Play {
      sections = List.copyOf(sections);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.play(this);
    }
  }

  /** {@code rest N bars}. */
  record Rest(Num bars, Span span) implements ChartStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.rest(this);
    }
  }

  /** {@code climb SECTION from T to T by D every N times|bars}. */
  record Climb(Name section, Num from, Num to, Num by, Num every, boolean inBars, Span span)
      implements ChartStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.climb(this);
    }
  }
}
