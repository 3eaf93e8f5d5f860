package tabor.groove;

import tabor.rhythm.Count;
import tabor.rhythm.Count.Syllable;
import tabor.rhythm.CountNames;
import tabor.rhythm.Division;
import tabor.rhythm.Meter;
import tabor.rhythm.Slot;
import tabor.rhythm.Syllables;
import tabor.rhythm.Time;

/** Counts as they are printed: with the words of a lesson in place of our own syllables. */
public final class CountLabels {
  private final CountingWords words;

  /** Counts in some words. */
  public CountLabels(CountingWords words) {
    this.words = words;
  }

  /** The counts of a section as printed. */
  public static CountLabels of(Groove groove) {
    return new CountLabels(groove.setting().wording().printed());
  }

  /** What stands above a slot: the number of its beat, a syllable, or nothing. */
  public String above(Slot slot, Meter meter) {
    Count count = CountNames.of(slot, meter);
    if (words.goesThrough(meter)) {
      return through(slot.place(meter), meter, count);
    }
    if (!count.places().isEmpty()) {
      return "";
    }
    return count.syllable() == Syllable.NONE
        ? beat(count.beat() - 1, meter)
        : words.printed(parts(slot, count, meter), count.syllable());
  }

  /** True if the bars of a meter are counted in eighths from the barline on. */
  boolean goThrough(Meter meter) {
    return words.goesThrough(meter);
  }

  /** What stands above a beat, 0-based. */
  public String beat(int beat, Meter meter) {
    if (words.goesThrough(meter)) {
      Time eighths = meter.beatStart(beat).times(8);
      return eighths.isWhole() ? Long.toString(eighths.num() + 1) : "";
    }
    return words.onBeat() == null ? Integer.toString(beat + 1) : words.onBeat();
  }

  /**
   * What is said after the number of a count, {@code .N} parts included; empty on the beat itself.
   */
  public String after(Slot slot, Meter meter) {
    Count count = CountNames.of(slot, meter);
    return after(count, parts(slot, count, meter));
  }

  private String after(Count count, int parts) {
    String text = count.toString().substring(Integer.toString(count.beat()).length());
    if (count.syllable() == Syllable.NONE) {
      return text;
    }
    String said = words.printed(parts, count.syllable());
    String sign = count.syllable().sign();
    // A word of the lesson names its division, so that none is added to it.
    String rest = text.substring(sign.length());
    return said.equals(sign) ? text : said + rest.replaceFirst("/[0-9]+$", "");
  }

  /** A count in full, such as {@code 2trip}: it can be written in places and means the same. */
  public String full(Slot slot, Meter meter) {
    Count count = CountNames.of(slot, meter);
    return full(count, slot.place(meter), parts(slot, count, meter), meter);
  }

  /** The count of a stroke by its time, however its group is divided. */
  public Count of(Stroke stroke, Meter meter) {
    Division division = stroke.slot().division();
    return division.isInside(meter)
        ? CountNames.of(division, stroke.at(), meter)
        : CountNames.of(stroke.at(), meter);
  }

  /** The same in full. */
  public String full(Stroke stroke, Meter meter) {
    Count count = of(stroke, meter);
    return full(count, stroke.at(), parts(stroke, count, meter), meter);
  }

  /** The number that is said for a stroke: that of its beat, or the word for a beat. */
  public String number(Stroke stroke, Meter meter) {
    Count count = of(stroke, meter);
    if (words.goesThrough(meter)) {
      return full(count, stroke.at(), 1, meter);
    }
    boolean plain = count.syllable() == Syllable.NONE && count.places().isEmpty();
    return plain ? beat(count.beat() - 1, meter) : Integer.toString(count.beat());
  }

  /** What is said for its syllable; empty on a beat and where it is only numbered. */
  public String syllable(Stroke stroke, Meter meter) {
    Count count = of(stroke, meter);
    return count.syllable() == Syllable.NONE || words.goesThrough(meter)
        ? ""
        : words.printed(parts(stroke, count, meter), count.syllable());
  }

  private static int parts(Stroke stroke, Count count, Meter meter) {
    int beat = count.beat() - 1;
    Division division = stroke.slot().division();
    boolean own = count.division() == 0 && division.beats() == 1 && division.beat() == beat;
    Time slots =
        stroke.at().minus(meter.beatStart(beat)).over(meter.beat(beat)).times(division.slots());
    return own && slots.isWhole()
        ? parts(division.slots(), beat, meter)
        : parts(stroke.at(), count, meter);
  }

  /** The count of a place where no stroke is meant. */
  public String full(Time at, Meter meter) {
    Count count = CountNames.of(at, meter);
    return full(count, at, parts(at, count, meter), meter);
  }

  private String full(Count count, Time at, int parts, Meter meter) {
    if (!words.goesThrough(meter)) {
      return count.beat() + after(count, parts);
    }
    Time eighths = at.times(8);
    return eighths.isWhole() ? Long.toString(eighths.num() + 1) : count.toString();
  }

  /** Eighths from the barline on, with the halves between them. */
  private String through(Time place, Meter meter, Count count) {
    Time eighths = place.times(8);
    if (eighths.isWhole()) {
      return Long.toString(eighths.num() + 1);
    }
    boolean dotted = Meter.isDotted(meter.beat(count.beat() - 1));
    return eighths.times(2).isWhole() && dotted ? words.printed(2, Syllable.AND) : "";
  }

  /** Into how many counted parts the beat of a count falls. */
  private static int parts(Slot slot, Count count, Meter meter) {
    int beat = count.beat() - 1;
    Division division = slot.division();
    return count.division() == 0 && division.beats() == 1 && division.beat() == beat
        ? parts(division.slots(), beat, meter)
        : parts(slot.place(meter), count, meter);
  }

  private static int parts(Time at, Count count, Meter meter) {
    int beat = count.beat() - 1;
    Time part = at.minus(meter.beatStart(beat)).over(meter.beat(beat));
    return parts(count.division() == 0 ? (int) part.den() : count.division(), beat, meter);
  }

  private static int parts(int slots, int beat, Meter meter) {
    return Syllables.parts(slots, Meter.isDotted(meter.beat(beat)));
  }
}
