package tabor.find;

import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import tabor.body.RudimentFinder;
import tabor.groove.Groove;
import tabor.groove.Level;
import tabor.groove.Ornament;
import tabor.groove.Stroke;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;

/**
 * Something that a section makes a student do.
 *
 * @param kind what sort of thing
 * @param name what a drummer calls it: {@code flam}, {@code triplets}, {@code 6/8}
 */
public record Technique(Kind kind, String name) {
  /** Meters and divisions first: they are learnt before what is played in them. */
  public static final Comparator<Technique> ORDER = Comparator.comparing(Technique::kind);

  /** Sorts of technique. */
  public enum Kind {
    /** Time signatures. */
    METER("Meters"),
    /** How finely a beat is divided. */
    DIVISION("Divisions"),
    /** How loud single strokes are, and what is done to them. */
    STROKE("Strokes"),
    /** What the hands play. */
    RUDIMENT("Rudiments");

    private final String heading;

    Kind(String heading) {
      this.heading = heading;
    }

    /** What stands before a list of them. */
    public String heading() {
      return heading;
    }
  }

  /** The name in a sentence: of a rudiment without the signs that join its words. */
  public String words() {
    return kind == Kind.RUDIMENT ? name.replace('-', ' ') : name;
  }

  /** What a section uses, kind by kind, each in the order in which it comes. */
  public static List<Technique> of(Groove groove) {
    Set<Technique> found = new LinkedHashSet<>();
    for (int bar = groove.firstBar(); bar <= groove.bars(); bar++) {
      found.add(new Technique(Kind.METER, groove.meter(bar).words()));
    }
    divisions(groove).forEach(name -> found.add(new Technique(Kind.DIVISION, name)));
    for (Stroke stroke : groove.strokes()) {
      if (stroke.level() != Level.PLAIN) {
        String name = stroke.level() == Level.GHOST ? "ghost note" : "accent";
        found.add(new Technique(Kind.STROKE, name));
      }
      stroke
          .ornaments()
          .list()
          .forEach(ornament -> found.add(new Technique(Kind.STROKE, name(ornament))));
    }
    for (RudimentFinder.Found rudiment : RudimentFinder.find(groove)) {
      // A flam is a stroke and a rudiment: it is named once.
      if (!found.contains(new Technique(Kind.STROKE, rudiment.name()))) {
        found.add(new Technique(Kind.RUDIMENT, rudiment.name()));
      }
    }
    return found.stream().sorted(ORDER).toList();
  }

  private static String name(Ornament ornament) {
    return switch (ornament) {
      case FLAM -> "flam";
      case DRAG -> "drag";
      case RUFF -> "ruff";
      case DIDDLE -> "diddle";
      case OPEN_ROLL -> "open roll";
      case ROLL -> "roll";
      case BUZZ -> "buzz";
      case CHOKE -> "choke";
      case RIMSHOT -> "rimshot";
    };
  }

  /** A stretch of a bar that is divided as a whole: a beat, or as many as a word spreads over. */
  private record Stretch(int bar, int beat, int beats) {}

  /** The names of the divisions that strokes make audible, in the order in which they come. */
  private static Set<String> divisions(Groove groove) {
    Map<Stretch, Long> parts =
        new TreeMap<>(
            Comparator.comparingInt(Stretch::bar)
                .thenComparingInt(Stretch::beat)
                .thenComparingInt(Stretch::beats));
    for (Stroke stroke : groove.strokes()) {
      Meter meter = groove.meter(stroke.bar());
      int beat = stroke.slot().division().beat();
      int beats = stroke.slot().division().beats();
      if (beats == 1 || !stroke.slot().division().isInside(meter)) {
        beat = meter.beatAt(stroke.at());
        beats = 1;
      }
      Time start = meter.beatStart(beat);
      Time share = stroke.at().minus(start).over(length(meter, beat, beats));
      parts.merge(new Stretch(stroke.bar(), beat, beats), share.den(), Time::lcm);
    }
    Set<String> names = new LinkedHashSet<>();
    parts.forEach(
        (stretch, number) -> {
          Meter meter = groove.meter(stretch.bar());
          Time length = length(meter, stretch.beat(), stretch.beats());
          names.add(division(length, number, stretch.beats()));
        });
    return names;
  }

  private static Time length(Meter meter, int beat, int beats) {
    Time sum = Time.ZERO;
    for (int i = beat; i < beat + beats; i++) {
      sum = sum.plus(meter.beat(i));
    }
    return sum;
  }

  /**
   * The name of a division.
   *
   * @param length how long what is divided is, in whole notes
   * @param parts into how many equal parts
   * @param beats how many beats of the meter it is long
   */
  static String division(Time length, long parts, int beats) {
    Time value = length.over(parts);
    if (Meter.isPlain(value)) {
      return values(value);
    }
    if (parts == 1) {
      return Meter.isDotted(value) ? "dotted " + values(value.times(2).over(3)) : "whole beats";
    }
    boolean plain = Meter.isPlain(length);
    if (plain && parts == 3) {
      return beats == 1 ? "triplets" : "triplets over " + beats + " beats";
    }
    if (plain && parts == 6) {
      return "sextuplets";
    }
    if (Meter.isDotted(length) && parts == 2) {
      return "two in a dotted beat";
    }
    return parts + (beats == 1 ? " to a beat" : " over " + beats + " beats");
  }

  private static String values(Time value) {
    return switch ((int) value.den()) {
      case 1 -> "whole notes";
      case 2 -> "half notes";
      case 4 -> "quarters";
      case 8 -> "eighths";
      case 16 -> "sixteenths";
      case 32 -> "thirty-seconds";
      default -> value.num() + "/" + value.den() + " notes";
    };
  }
}
