package tabor.syntax;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.source.Span;

/** A line of a player that stands nowhere else. */
public sealed interface PlayerStatement extends Statement {
  /** Calls the method of {@code cases} that fits. */
  <R> R match(Cases<R> cases);

  /** One method for each kind of line. */
  interface Cases<R> {
    R openHanded(OpenHanded line);

    R tempoShare(TempoShare line);

    R sections(Sections line);
  }

  /** {@code open-handed}. */
  record OpenHanded(Span span) implements PlayerStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.openHanded(this);
    }
  }

  /** {@code tempo 80%}. */
  record TempoShare(Num percent, Span span) implements PlayerStatement {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.tempoShare(this);
    }
  }

  /** {@code sections pad to quiet answer}; one range or more. */
  record Sections(List<Range> ranges, Span span) implements PlayerStatement {
    /** Copies the list. */
    public Sections {
      ranges = List.copyOf(ranges);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.sections(this);
    }
  }

  /**
   * Some sections, one after another: {@code first 3}, {@code pad}, {@code pad to quiet}.
   *
   * @param first how many from the first of the file; null where sections are named
   * @param from the first or only one; null where they are counted
   * @param to the last one; null for one alone
   */
  record Range(@Nullable Num first, @Nullable Name from, @Nullable Name to) {}
}
