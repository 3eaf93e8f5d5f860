package tabor.resolve;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.groove.Level;
import tabor.rhythm.Count;
import tabor.source.Span;
import tabor.syntax.At;
import tabor.syntax.CountRef;

/** What an edit speaks of that is not there, or not plainly. */
public sealed interface Miss {
  /** A bar that the section does not have. */
  record NoBar(Span span) implements Miss {}

  /**
   * A count that may mean several places of a bar; two readings or more.
   *
   * @param single true for a count that is written, false for one of those that {@code every} means
   */
  record Ambiguous(CountRef count, int bar, List<CountReading> readings, boolean single)
      implements Miss {
    /** Copies the list. */
    public Ambiguous {
      readings = List.copyOf(readings);
    }

    /** Where that is written, counted from the line. */
    public Span span() {
      return count.span();
    }
  }

  /** A count with a word that the lesson is not counted with. */
  record Unsaid(CountRef count, int bar) implements Miss {
    /** Where that is written, counted from the line. */
    public Span span() {
      return count.span();
    }
  }

  /** A word after {@code every} that the lesson is not counted with. */
  record UnsaidEvery(At.EverySaid place) implements Miss {}

  /**
   * A place that a bar does not have.
   *
   * @param count the count, or what is closest to one in a range; null for {@code every}
   */
  record Outside(Span span, @Nullable Count count, int bar) implements Miss {}

  /**
   * A place or bar without a stroke of the target.
   *
   * @param count the count asked for; null where no single one was
   * @param bar the first bar that lacks it
   * @param level the only level asked for; null for every level
   */
  record Nothing(Span span, @Nullable Count count, int bar, @Nullable Level level)
      implements Miss {}
}
