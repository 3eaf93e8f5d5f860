package tabor.find;

import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import tabor.body.RudimentFinder;
import tabor.groove.Groove;
import tabor.groove.Level;
import tabor.groove.Ornament;
import tabor.groove.Stroke;
import tabor.rhythm.Meter;
import tabor.rhythm.Time;
import tabor.words.Words;

/**
 * Something that a section makes a student do.
 *
 * @param kind what sort of thing
 * @param key of its name among the fixed words; empty where it has one name in all languages
 * @param parts of the name, some of them keys themselves; without a key the name itself
 */
public record Technique(Kind kind, String key, List<String> parts) {
  /** Begins the keys of names. */
  private static final String NAMES = "technique.";

  /** Meters and divisions first: they are learnt before what is played in them. */
  public static final Comparator<Technique> ORDER = Comparator.comparing(Technique::kind);

  /** Sorts of technique. */
  public enum Kind {
    /** Time signatures. */
    METER,
    /** How finely a beat is divided. */
    DIVISION,
    /** How loud single strokes are, and what is done to them. */
    STROKE,
    /** What the hands play. */
    RUDIMENT
  }

  /** Copies the list. */
  public Technique {
    parts = List.copyOf(parts);
  }

  private static Technique of(Kind kind, String key, Object... parts) {
    return new Technique(kind, key, Stream.of(parts).map(String::valueOf).toList());
  }

  /** What a drummer calls it: {@code flam}, {@code triplets}, {@code 6/8}. */
  public String name() {
    return words(Words.english());
  }

  /** What it is called in a language; a rudiment without the signs that join its words. */
  public String words(Words words) {
    if (key.isEmpty()) {
      return parts.get(0).replace('-', ' ');
    }
    Object[] said =
        parts.stream().map(part -> part.startsWith(NAMES) ? words.text(part) : part).toArray();
    return words.text(key, said);
  }

  /** What a section uses, kind by kind, each in the order in which it comes. */
  public static List<Technique> of(Groove groove) {
    Set<Technique> found = new LinkedHashSet<>();
    for (int bar = groove.firstBar(); bar <= groove.bars(); bar++) {
      found.add(meter(groove.meter(bar)));
    }
    found.addAll(divisions(groove));
    Set<String> named = new HashSet<>();
    for (Stroke stroke : groove.strokes()) {
      if (stroke.level() != Level.PLAIN) {
        String name = stroke.level() == Level.GHOST ? "ghost-note" : "accent";
        found.add(of(Kind.STROKE, NAMES + name));
      }
      for (Ornament ornament : stroke.ornaments().list()) {
        named.add(Words.word(ornament));
        found.add(of(Kind.STROKE, "ornament." + Words.word(ornament)));
      }
    }
    for (RudimentFinder.Found rudiment : RudimentFinder.find(groove)) {
      // A flam is a stroke and a rudiment: it is named once.
      if (!named.contains(rudiment.name())) {
        found.add(of(Kind.RUDIMENT, "", rudiment.name()));
      }
    }
    return found.stream().sorted(ORDER).toList();
  }

  /** {@code 7/8 in 2+2+3} is a signature, what joins them, and numbers. */
  private static Technique meter(Meter meter) {
    String[] words = meter.words().split(" ", -1);
    return words.length == 3
        ? of(Kind.METER, "meter." + words[1], words[0], words[2])
        : of(Kind.METER, "", meter.words());
  }

  /** A stretch of a bar that is divided as a whole: a beat, or as many as a word spreads over. */
  private record Stretch(int bar, int beat, int beats) {}

  /** The divisions that strokes make audible, in the order in which they come. */
  private static Set<Technique> divisions(Groove groove) {
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
    Set<Technique> found = new LinkedHashSet<>();
    parts.forEach(
        (stretch, number) -> {
          Meter meter = groove.meter(stretch.bar());
          Time length = length(meter, stretch.beat(), stretch.beats());
          found.add(division(length, number, stretch.beats()));
        });
    return found;
  }

  private static Time length(Meter meter, int beat, int beats) {
    Time sum = Time.ZERO;
    for (int i = beat; i < beat + beats; i++) {
      sum = sum.plus(meter.beat(i));
    }
    return sum;
  }

  /**
   * A division.
   *
   * @param length how long what is divided is, in whole notes
   * @param parts into how many equal parts
   * @param beats how many beats of the meter it is long
   */
  static Technique division(Time length, long parts, int beats) {
    Time value = length.over(parts);
    if (Meter.isPlain(value)) {
      return values(value);
    }
    if (parts == 1) {
      return Meter.isDotted(value)
          ? of(Kind.DIVISION, "values.dotted", NAMES + value.times(2).over(3).den())
          : of(Kind.DIVISION, "technique.whole-beats");
    }
    boolean plain = Meter.isPlain(length);
    if (plain && parts == 3) {
      return beats == 1
          ? of(Kind.DIVISION, "technique.triplets")
          : of(Kind.DIVISION, "technique.triplets-over", beats);
    }
    if (plain && parts == 6) {
      return of(Kind.DIVISION, "technique.sextuplets");
    }
    if (Meter.isDotted(length) && parts == 2) {
      return of(Kind.DIVISION, "technique.two-in-dotted");
    }
    return beats == 1
        ? of(Kind.DIVISION, "technique.to-a-beat", parts)
        : of(Kind.DIVISION, "technique.over-beats", parts, beats);
  }

  private static Technique values(Time value) {
    return value.den() <= 32
        ? of(Kind.DIVISION, NAMES + value.den())
        : of(Kind.DIVISION, "technique.notes", value);
  }
}
