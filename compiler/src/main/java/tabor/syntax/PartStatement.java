package tabor.syntax;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.source.Span;

/** A line that writes strokes, or says how bars are laid out. */
public sealed interface PartStatement extends Statement {
  /** Calls the method of {@code cases} that fits. */
  <R> R match(Cases<R> cases);

  /** One method for each kind of line. */
  interface Cases<R> {
    R lane(Lane line);

    R played(Played line);

    R next(Next line);

    R pickup(Pickup line);

    R bars(Bars line);
  }

  /**
   * {@code [ostinato] SUBJECT : bars}.
   *
   * @param subject a limb, {@code hands}, {@code feet}, {@code line} or a surface
   * @param ostinato true for a lane that goes round
   * @param bars one or more
   */
  record Lane(Word subject, boolean ostinato, List<Bar> bars, Span span) implements PartStatement {
    /** Copies the list. */
    public Lane {
      bars = List.copyOf(bars);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.lane(this);
    }
  }

  /**
   * {@code SUBJECT play NAME [left-lead] in VALUE}, or {@code SUBJECT play euclid K N in VALUE}.
   *
   * @param subject as of a lane
   * @param pattern the name, {@code euclid} included
   * @param strokes K; null unless it is {@code euclid}
   * @param places N; null unless it is {@code euclid}
   * @param leftLead true if r and l are exchanged
   * @param value a note value, singular or plural
   */
  record Played(
      Word subject,
      Word pattern,
      @Nullable Num strokes,
      @Nullable Num places,
      boolean leftLead,
      Word value,
      Span span)
      implements PartStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.played(this);
    }
  }

  /** {@code next}. */
  record Next(Span span) implements PartStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.next(this);
    }
  }

  /** {@code pickup 1 beat}. */
  record Pickup(Num beats, Span span) implements PartStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.pickup(this);
    }
  }

  /** {@code bars N}. */
  record Bars(Num bars, Span span) implements PartStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.bars(this);
    }
  }
}
