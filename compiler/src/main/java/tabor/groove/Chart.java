package tabor.groove;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.rhythm.Feel;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;
import tabor.source.Spot;

/**
 * A play-along: sections one after another.
 *
 * @param name unique among the file's sections
 * @param title as written; null if it has none
 * @param heading where it stands in the source
 * @param items as written, tempo and feel settled
 * @param prose the texts in the order written
 */
public record Chart(
    String name, @Nullable String title, Spot heading, List<Item> items, List<String> prose)
    implements Section {

  /** Copies the lists. */
  public Chart {
    items = List.copyOf(items);
    prose = List.copyOf(prose);
  }

  /** What the click does. */
  public enum Click {
    OFF,
    /** Every beat of the meter. */
    ON,
    QUARTERS,
    EIGHTHS
  }

  /** Whether a climb steps after so many times through, or after so many bars. */
  public enum Every {
    TIMES,
    BARS
  }

  /** One line of a chart. */
  public sealed interface Item {
    /** Calls the method of {@code cases} that fits. */
    <R> R match(Cases<R> cases);
  }

  /** One method for each kind of item. */
  public interface Cases<R> {
    R countIn(CountIn item);

    R click(SetClick item);

    R play(Play item);

    R rest(Rest item);

    R climb(Climb item);
  }

  /**
   * Clicks before the music.
   *
   * @param bars how many, 1 or more
   * @param like the section whose meter is counted; null where none follows
   * @param tempo of the section that follows
   */
  public record CountIn(int bars, @Nullable Groove like, Tempo tempo) implements Item {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.countIn(this);
    }
  }

  /** The click from here on. */
  public record SetClick(Click click) implements Item {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.click(this);
    }
  }

  /**
   * Sections in turn.
   *
   * @param turns the sections, each at its tempo and feel
   * @param times how often the whole row is played, 1 or more
   */
  public record Play(List<Turn> turns, int times) implements Item {
    /** Copies the list. */
    public Play {
      turns = List.copyOf(turns);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.play(this);
    }
  }

  /** One section once, at a tempo and feel. */
  public record Turn(Groove groove, Tempo tempo, Feel feel) {}

  /** Bars of silence in the meter and tempo of the section before, else of the one after. */
  public record Rest(int bars, @Nullable Groove like, Tempo tempo) implements Item {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.rest(this);
    }
  }

  /**
   * The tempo ladder.
   *
   * @param groove what is played
   * @param tempi one for each rung, in order; the last is exactly the tempo it climbs to
   * @param feel where off-beats sound
   * @param by the written step, above 0, in beats per minute
   * @param every how many times or bars at each rung
   * @param unit times or bars
   */
  public record Climb(Groove groove, List<Tempo> tempi, Feel feel, Time by, int every, Every unit)
      implements Item {
    /** Copies the list. */
    public Climb {
      tempi = List.copyOf(tempi);
    }

    /** How often the section is played at each rung. */
    public int times() {
      return unit == Every.TIMES ? every : Math.max(1, every / groove.bars());
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.climb(this);
    }
  }
}
