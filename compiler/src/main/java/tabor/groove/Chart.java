package tabor.groove;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.lists.Lists;
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
 * @param page what it says for the printed page
 */
public record Chart(
    String name,
    @Nullable String title,
    Spot heading,
    List<Item> items,
    List<String> prose,
    PageNotes page)
    implements Section {
  /** Copies the lists. */
  public Chart {
    items = List.copyOf(items);
    prose = List.copyOf(prose);
  }

  /** The same with other items. */
  public Chart with(List<Item> others) {
    return new Chart(name, title, heading, others, prose, page);
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

    /** What it plays in order, each rung of a ladder by itself; none where nothing is played. */
    default List<Turn> turns() {
      return List.of();
    }
  }

  /** One method for each kind of item. */
  public interface Cases<R> {
    R countIn(CountIn item);

    R click(SetClick item);

    R play(Play item);

    R rest(Rest item);

    R climb(Climb item);

    R trade(Trade item);

    R pause(Pause item);

    R ramp(Ramp item);

    R dynamic(SetDynamic item);

    R hold(Hold item);

    R cue(Cue item);

    R mark(Mark item);
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

  /**
   * The click from here on.
   *
   * @param click what it plays
   * @param beats the beats of the bar on which it plays, from 1; empty for all of them. Beats that
   *     a bar lacks are passed over
   * @param barsOn bars for which it plays; 0 if it never pauses
   * @param barsOff bars for which it is silent after them; then it plays again. They are counted
   *     from the next section on
   */
  public record SetClick(Click click, List<Integer> beats, int barsOn, int barsOff)
      implements Item {
    /** Copies the list. */
    public SetClick {
      beats = List.copyOf(beats);
    }

    /** On all beats, all the time. */
    public SetClick(Click click) {
      this(click, List.of(), 0, 0);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.click(this);
    }
  }

  /**
   * Sections in turn.
   *
   * @param turns the sections, each at its tempo and feel; of a sheet all its variations
   * @param amount how often or how long
   * @param each true if each turn is played that often or long before the next, false if the row of
   *     all of them is
   * @param extras what is left to the student, and the fill
   * @param named the sections named on the line: a sheet stands here once
   */
  public record Play(
      List<Turn> turns, Amount amount, boolean each, Extras extras, List<Section> named)
      implements Item {
    /** Copies the lists. */
    public Play {
      turns = List.copyOf(turns);
      named = List.copyOf(named);
    }

    /** Sections in turn, the row so many times, 1 or more. */
    public Play(List<Turn> turns, int times) {
      this(
          turns,
          new Amount(times, 0, null),
          false,
          Extras.NONE,
          Lists.map(turns, turn -> (Section) turn.groove()));
    }

    /** How often the row is played, 1 or more; 1 where bars or a time say how long. */
    public int times() {
      return Math.max(1, amount.times());
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.play(this);
    }
  }

  /**
   * How often or how long something is played; exactly one is set.
   *
   * @param times so many times, 1 or more; 0 if something else is set
   * @param bars so many bars, cut at the end, 1 or more; 0 if something else is set
   * @param seconds whole repeats, at least as long as that; null if something else is set
   */
  public record Amount(int times, int bars, @Nullable Time seconds) {
    /** Once. */
    public static final Amount ONCE = new Amount(1, 0, null);

    /** Throws unless exactly one is set. */
    public Amount {
      int set = (times > 0 ? 1 : 0) + (bars > 0 ? 1 : 0) + (seconds == null ? 0 : 1);
      if (set != 1) {
        throw new IllegalArgumentException("amount " + times + " " + bars + " " + seconds);
      }
    }
  }

  /**
   * What else a line says of what it plays.
   *
   * @param without the parts that are left to the student; empty for none
   * @param fill takes the last bar of the last time, or its last beats if it has nothing but a
   *     pickup; null for none
   */
  public record Extras(List<Part> without, @Nullable Groove fill) {
    /** Nothing else. */
    public static final Extras NONE = new Extras(List.of(), null);

    /** Copies the list. */
    public Extras {
      without = List.copyOf(without);
    }

    /** True for nothing else. */
    public boolean isEmpty() {
      return without.isEmpty() && fill == null;
    }
  }

  /**
   * Bars of a section, then as many left to the student, in turn; the section pauses meanwhile.
   *
   * @param turn the section at its tempo and feel
   * @param bars at a time, 1 to the section's own
   * @param amount how often, or how long; never bars
   * @param extras what is left to the student in the section's bars too, and the fill
   */
  public record Trade(Turn turn, int bars, Amount amount, Extras extras) implements Item {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.trade(this);
    }

    @Override
    public List<Turn> turns() {
      return List.of(turn);
    }
  }

  /** So many seconds of silence, without the click. */
  public record Pause(Time seconds) implements Item {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.pause(this);
    }
  }

  /**
   * The tempo changes gradually from here: at each beat by an equal step. The first beat is at the
   * first tempo, the first beat after the bars at the second, which then holds.
   *
   * @param from at the first beat
   * @param to after the last
   * @param bars over how many, 1 or more
   */
  public record Ramp(Tempo from, Tempo to, int bars) implements Item {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.ramp(this);
    }
  }

  /** How loud everything that follows is, over what the sections say. */
  public record SetDynamic(Loudness loudness) implements Item {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.dynamic(this);
    }
  }

  /** The last stroke of what was played rings so many beats, 1 or more; the count stops. */
  public record Hold(int beats) implements Item {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.hold(this);
    }
  }

  /**
   * Words for whoever plays.
   *
   * @param text what they say
   * @param bar the bar of what is played next, from 1, in which they stand; 0 for this place
   */
  public record Cue(String text, int bar) implements Item {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.cue(this);
    }
  }

  /** A rehearsal mark for what follows. */
  public record Mark(String text) implements Item {
    @Override
    public <R> R match(Cases<R> cases) {
      return cases.mark(this);
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
   * @param seconds how long the whole ladder lasts at least, shared by the rungs, each in multiples
   *     of {@code every}; null where {@code every} alone decides
   * @param extras what is left to the student, and the fill of each rung
   */
  public record Climb(
      Groove groove,
      List<Tempo> tempi,
      Feel feel,
      Time by,
      int every,
      Every unit,
      @Nullable Time seconds,
      Extras extras)
      implements Item {
    /** Copies the list. */
    public Climb {
      tempi = List.copyOf(tempi);
    }

    /** The same with something else left to the student, or another fill. */
    Climb with(Extras others) {
      return new Climb(groove, tempi, feel, by, every, unit, seconds, others);
    }

    @Override
    public List<Turn> turns() {
      return Lists.map(tempi, tempo -> new Turn(groove, tempo, feel));
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
