package tabor.syntax;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.groove.Level;
import tabor.rhythm.Count.Syllable;
import tabor.rhythm.NoteValue;
import tabor.source.Span;

/**
 * Where an edit acts. A part that is null does not narrow it.
 *
 * @param places after {@code at}; null for every place
 * @param bars after {@code in}; null for every bar
 * @param where the level asked for after {@code where}; null for every level
 */
public record At(@Nullable Places places, @Nullable Bars bars, @Nullable Ref<Level> where) {
  /** Every stroke. */
  public static final At EVERYWHERE = new At(null, null, null);

  /** True if no part narrows it. */
  public boolean isEverywhere() {
    return places == null && bars == null && where == null;
  }

  /**
   * What follows {@code at}.
   *
   * @param items all places in order, one or more
   * @param choose N of {@code N of PLACES}; null where that is not written. Only a line that makes
   *     variations has it
   * @param ends for each group between bar signs but the last, the number of items before its end:
   *     none where there are no bar signs
   * @param span where
   */
  public record Places(List<Place> items, @Nullable Num choose, List<Integer> ends, Span span) {
    /** Copies the lists. */
    public Places {
      items = List.copyOf(items);
      ends = List.copyOf(ends);
    }

    /** Places without choices. */
    public Places(List<Place> items, Span span) {
      this(items, null, List.of(), span);
    }

    /** The groups between bar signs, one or more. */
    public List<List<Place>> groups() {
      List<List<Place>> groups = new ArrayList<>(ends.size() + 1);
      int from = 0;
      for (int end : ends) {
        groups.add(items.subList(from, end));
        from = end;
      }
      groups.add(items.subList(from, items.size()));
      return groups;
    }
  }

  /** One of the places. */
  public sealed interface Place {
    /** Where it is written. */
    Span span();

    /** Calls the method of {@code cases} that fits. */
    <R> R match(PlaceCases<R> cases);
  }

  /** One method for each kind of place. */
  public interface PlaceCases<R> {
    R one(One place);

    R range(Range place);

    R every(EverySyllable place);

    R everySlot(EverySlot place);

    R everyValue(EveryValue place);

    R everySaid(EverySaid place);
  }

  /** {@code 2&}. */
  public record One(CountRef count) implements Place {
    @Override
    public Span span() {
      return count.span();
    }

    @Override
    public <R> R match(PlaceCases<R> cases) {
      return cases.one(this);
    }
  }

  /** {@code 2& to 3a}. */
  public record Range(CountRef from, CountRef to) implements Place {
    @Override
    public Span span() {
      return from.span().to(to.span());
    }

    @Override
    public <R> R match(PlaceCases<R> cases) {
      return cases.range(this);
    }
  }

  /** {@code every &}; {@link Syllable#NONE} is {@code every beat}. */
  public record EverySyllable(Syllable syllable, Span span) implements Place {
    @Override
    public <R> R match(PlaceCases<R> cases) {
      return cases.every(this);
    }
  }

  /** {@code every .5}: the Nth slot of each beat, 1-based. */
  public record EverySlot(Num slot, Span span) implements Place {
    @Override
    public <R> R match(PlaceCases<R> cases) {
      return cases.everySlot(this);
    }
  }

  /** {@code every sixteenth}. */
  public record EveryValue(NoteValue value, Span span) implements Place {
    @Override
    public <R> R match(PlaceCases<R> cases) {
      return cases.everyValue(this);
    }
  }

  /**
   * {@code every trip}: a word that the header says is counted with.
   *
   * @param word as it is compared
   */
  public record EverySaid(String word, Span span) implements Place {
    @Override
    public <R> R match(PlaceCases<R> cases) {
      return cases.everySaid(this);
    }
  }

  /** What follows {@code in}. The span leaves out {@code in}. */
  public sealed interface Bars {
    /** Where it is written. */
    Span span();

    /** Calls the method of {@code cases} that fits. */
    <R> R match(BarsCases<R> cases);
  }

  /** One method for each way to name bars. */
  public interface BarsCases<R> {
    R listed(Listed bars);

    R through(Through bars);

    R last(Last bars);

    R everyNth(EveryNth bars);
  }

  /** {@code in bars 2 4 6}, or one bar. */
  public record Listed(List<Num> bars, Span span) implements Bars {
    /** Copies the list. */
    public Listed {
      bars = List.copyOf(bars);
    }

    @Override
    public <R> R match(BarsCases<R> cases) {
      return cases.listed(this);
    }
  }

  /** {@code in bars 2 to 4}. */
  public record Through(Num from, Num to, Span span) implements Bars {
    @Override
    public <R> R match(BarsCases<R> cases) {
      return cases.through(this);
    }
  }

  /** {@code in last bar}. */
  public record Last(Span span) implements Bars {
    @Override
    public <R> R match(BarsCases<R> cases) {
      return cases.last(this);
    }
  }

  /** {@code in every 4th bar}; the number is 1 or more. */
  public record EveryNth(Num n, Span span) implements Bars {
    @Override
    public <R> R match(BarsCases<R> cases) {
      return cases.everyNth(this);
    }
  }
}
