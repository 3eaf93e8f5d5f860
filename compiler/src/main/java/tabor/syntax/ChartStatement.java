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

    R clickAt(ClickAt line);

    R clickBars(ClickBars line);

    R play(Play line);

    R trade(Trade line);

    R rest(Rest line);

    R restTime(RestTime line);

    R climb(Climb line);

    R ramp(Ramp line);

    R hold(Hold line);

    R cue(Cue line);

    R mark(Mark line);
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

  /** {@code click at 2 4}: on these beats of the bar, one or more, counted from 1. */
  record ClickAt(List<Num> beats, Span span) implements ChartStatement {
    /** Copies the list. */
    public ClickAt {
      beats = List.copyOf(beats);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.clickAt(this);
    }
  }

  /** {@code click 2 bars on 1 off}. */
  record ClickBars(Num on, Num off, Span span) implements ChartStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.clickBars(this);
    }
  }

  /** {@code play SECTION… CLAUSES}; one section or more. */
  record Play(List<Name> sections, Clauses clauses, Span span) implements ChartStatement {
    /** Copies the list. */
    public Play {
      sections = List.copyOf(sections);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.play(this);
    }
  }

  /** {@code trade SECTION N bars CLAUSES}. */
  record Trade(Name section, Num bars, Clauses clauses, Span span) implements ChartStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.trade(this);
    }
  }

  /** {@code rest N bars}. */
  record Rest(Num bars, Span span) implements ChartStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.rest(this);
    }
  }

  /** {@code rest 30 seconds}. */
  record RestTime(Duration length, Span span) implements ChartStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.restTime(this);
    }
  }

  /**
   * {@code climb SECTION from T to T by D every N times|bars CLAUSES}; {@code every} is null where
   * the rungs share a time.
   */
  record Climb(
      Name section,
      Num from,
      Num to,
      Num by,
      @Nullable Num every,
      boolean inBars,
      Clauses clauses,
      Span span)
      implements ChartStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.climb(this);
    }
  }

  /** {@code tempo 92 to 60 over 4 bars}. */
  record Ramp(SettingStatement.Tempo from, Num to, Num bars, Span span) implements ChartStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.ramp(this);
    }
  }

  /** {@code hold 4 beats}. */
  record Hold(Num beats, Span span) implements ChartStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.hold(this);
    }
  }

  /** {@code cue "…" [in bar N]}. */
  record Cue(Text text, @Nullable Num bar, Span span) implements ChartStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.cue(this);
    }
  }

  /** {@code mark "A"}. */
  record Mark(Text text, Span span) implements ChartStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.mark(this);
    }
  }

  /** A length of time as written: {@code 3 minutes}, {@code 30 seconds}. */
  record Duration(Num number, boolean minutes, Span span) {}

  /**
   * What may follow in a {@code play}, {@code trade} or {@code climb}, in any order, each once. At
   * most one of {@code times}, {@code bars} and {@code time} is there.
   *
   * @param each where {@code each} stands; null where it does not
   * @param times {@code N times}
   * @param bars {@code N bars}
   * @param time {@code for N minutes}
   * @param tempo {@code at tempo T}
   * @param without what is left to the student; empty for nothing
   * @param fill {@code fill SECTION}
   */
  record Clauses(
      @Nullable Span each,
      @Nullable Num times,
      @Nullable Num bars,
      @Nullable Duration time,
      SettingStatement.@Nullable Tempo tempo,
      List<TargetRef> without,
      @Nullable Name fill) {
    /** Copies the list. */
    public Clauses {
      without = List.copyOf(without);
    }
  }
}
