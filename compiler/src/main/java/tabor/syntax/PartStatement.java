package tabor.syntax;

import java.util.List;
import tabor.rhythm.NoteValue;
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

    R blankBars(BlankBars line);

    R blankPart(BlankPart line);
  }

  /** {@code [ostinato] SUBJECT : bars}; one bar or more. */
  record Lane(Subject subject, boolean ostinato, List<LaneBar> bars, Span span)
      implements PartStatement {
    /** Copies the list. */
    public Lane {
      bars = List.copyOf(bars);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.lane(this);
    }
  }

  /** {@code SUBJECT play PATTERN [left-lead] in VALUE}. */
  record Played(
      Subject subject, PatternSource pattern, boolean leftLead, Ref<NoteValue> value, Span span)
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

  /** {@code blank 4 bars}: staves for the student to write on. */
  record BlankBars(Num bars, Span span) implements PartStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.blankBars(this);
    }
  }

  /** {@code blank kick}, {@code blank sticking}; no targets for the sticking. */
  record BlankPart(List<TargetRef> targets, Span span) implements PartStatement {
    /** Copies the list. */
    public BlankPart {
      targets = List.copyOf(targets);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.blankPart(this);
    }
  }

  /** What a lane plays. */
  sealed interface PatternSource {
    /** Where it is written. */
    Span span();
  }

  /** A pattern, rudiment or timeline. */
  record Named(Name name) implements PatternSource {
    @Override
    public Span span() {
      return name.span();
    }
  }

  /** {@code spread K over N}: K strokes over N places, as evenly as they go; 1 ≤ K ≤ N. */
  record Spread(Num strokes, Num places, Span span) implements PatternSource {}
}
