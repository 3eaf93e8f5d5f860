package tabor.syntax;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.rhythm.Count.Syllable;
import tabor.source.Span;

/**
 * Where an edit acts. A part that is null does not narrow it.
 *
 * @param places counts, after {@code at}; null for every place
 * @param bars after {@code in}; null for every bar
 * @param where the level asked for, {@code accented}, {@code plain} or {@code ghosted}; null for
 *     every level
 */
public record At(@Nullable Places places, @Nullable Bars bars, @Nullable Word where) {
  /** Every stroke. */
  public static final At EVERYWHERE = new At(null, null, null);

  /** True if no part narrows it. */
  public boolean isEverywhere() {
    return places == null && bars == null && where == null;
  }

  /** What follows {@code at}. */
  public record Places(List<Place> items, Span span) {
    /** Copies the list. */
    public Places {
      items = List.copyOf(items);
    }
  }

  /** One of the places. */
  public sealed interface Place {
    /** Where it is written. */
    Span span();
  }

  /** {@code 2&}. */
  public record One(CountWord count) implements Place {
    @Override
    public Span span() {
      return count.span();
    }
  }

  /** {@code 2& to 3a}. */
  public record Range(CountWord from, CountWord to) implements Place {
    @Override
    public Span span() {
      return from.span().to(to.span());
    }
  }

  /** {@code every &}; {@link Syllable#NONE} is {@code every beat}. */
  public record Every(Syllable syllable, Span span) implements Place {}

  /** What follows {@code in}. */
  public sealed interface Bars {
    /** Where it is written. */
    Span span();
  }

  /** {@code in bars 2 4 6}, or one bar. */
  public record Listed(List<Num> bars, Span span) implements Bars {
    /** Copies the list. */
    public Listed {
      bars = List.copyOf(bars);
    }
  }

  /** {@code in bars 2 to 4}. */
  public record Through(Num from, Num to, Span span) implements Bars {}

  /** {@code in last bar}. */
  public record Last(Span span) implements Bars {}

  /** {@code in every 4th bar}. */
  public record EveryNth(Num n, Span span) implements Bars {}
}
