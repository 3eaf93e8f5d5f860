package tabor.testing;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.Level;
import tabor.groove.Levels;
import tabor.groove.Loudness;
import tabor.groove.Ornament;
import tabor.groove.Ornaments;
import tabor.groove.PageNotes;
import tabor.groove.SectionWords;
import tabor.groove.Snap;
import tabor.groove.Stroke;
import tabor.kit.Kit;
import tabor.kit.Kits;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.rhythm.Division;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Meters;
import tabor.rhythm.Slot;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;
import tabor.source.Passage;
import tabor.source.Span;
import tabor.source.Spot;

/**
 * A section made by hand, without parser and resolver: parts in the words of a lane, one limb and
 * one surface each. {@code x} is a stroke, {@code X} an accent, {@code g} a ghost; {@code . - { }},
 * grace notes, suffixes, {@code :2} and {@code |} are read as in a lane.
 */
public final class Sketch {
  private static final Spot NOWHERE = new Spot(new Passage(""), new Span(0, 0));

  private final String name;
  private Meters meters = Meters.of(Meter.COMMON);
  private Kit kit = Kits.FIVE_PIECE;
  private Time perMinute = Time.of(90);
  private Time pickup = Time.ZERO;
  private int bars = 1;
  private @Nullable Groove base;
  private @Nullable String title;
  private List<String> prose = List.of();
  private Feel feel = Feel.STRAIGHT;
  private Set<Integer> repeats = Set.of();
  private final List<Stroke> strokes = new ArrayList<>();
  private final List<Loudness.Mark> marks = new ArrayList<>();
  private final List<Loudness.Hairpin> hairpins = new ArrayList<>();

  private Sketch(String name) {
    this.name = name;
  }

  /** A section of one bar of 4/4 unless its parts are longer. */
  public static Sketch groove(String name) {
    return new Sketch(name);
  }

  public Sketch title(@Nullable String text) {
    title = text;
    return this;
  }

  public Sketch prose(String... texts) {
    prose = List.of(texts);
    return this;
  }

  /**
   * Makes it a step of a section, null for none; it takes nothing from the section but its name.
   */
  public Sketch step(@Nullable Groove from) {
    base = from;
    return this;
  }

  public Sketch tempo(long beats) {
    return tempo(Time.of(beats));
  }

  public Sketch tempo(Time beats) {
    perMinute = beats;
    return this;
  }

  public Sketch meter(Meter other) {
    return meters(Meters.of(other));
  }

  /** Meters in turn. */
  public Sketch meters(Meters others) {
    meters = others;
    return this;
  }

  public Sketch swing(Feel.Unit unit, long num, long den) {
    return feel(new Feel(unit, Time.of(num, den)));
  }

  public Sketch kit(Kit other) {
    kit = other;
    return this;
  }

  public Sketch feel(Feel other) {
    feel = other;
    return this;
  }

  /** Bar 0 with so many beats; parts then begin with it. */
  public Sketch pickup(int beats) {
    Meter meter = meters.first();
    pickup = meter.bar().minus(meter.beatStart(meter.beatCount() - beats));
    return this;
  }

  /** Bar 0 of this length. */
  public Sketch pickup(Time length) {
    pickup = length;
    return this;
  }

  public Sketch bars(int number) {
    bars = Math.max(bars, number);
    return this;
  }

  public Sketch repeats(Integer... numbers) {
    repeats = Set.of(numbers);
    return this;
  }

  public Sketch mark(int bar, Time at, Loudness loudness) {
    marks.add(new Loudness.Mark(bar, at, loudness));
    return this;
  }

  public Sketch hairpin(Loudness.Hairpin hairpin) {
    hairpins.add(hairpin);
    return this;
  }

  /** Adds a part. */
  public Sketch part(Limb limb, String surface, String words) {
    int bar = pickup.sign() > 0 ? 0 : 1;
    for (String written : words.split("\\|", -1)) {
      int beat = 0;
      if (bar == 0) {
        beat = meters.first().beatAt(meters.first().bar().minus(pickup));
      }
      for (String word : written.trim().split("\\s+", -1)) {
        if (word.isEmpty()) {
          continue;
        }
        int colon = word.indexOf(':');
        int beats = colon < 0 ? 1 : Integer.parseInt(word.substring(colon + 1));
        new WordReader(bar, limb, surface(surface))
            .read(colon < 0 ? word : word.substring(0, colon), beat, beats);
        beat += beats;
      }
      bars(bar);
      bar++;
    }
    return this;
  }

  /**
   * A word of one beat: a letter for each slot, {@code X} accent, {@code x} plain, {@code g} ghost,
   * {@code .} nothing, {@code -} the one before in the word goes on.
   */
  public Sketch word(
      int bar, int beat, Limb limb, String surface, String letters, Ornament... with) {
    return word(bar, beat, 1, limb, surface, letters, with);
  }

  public Sketch word(
      int bar, int beat, int beats, Limb limb, String surface, String letters, Ornament... with) {
    Division division = new Division(beat, beats, letters.length());
    for (int i = 0; i < letters.length(); i++) {
      char letter = letters.charAt(i);
      if (letter == '.' || letter == '-') {
        continue;
      }
      int held = 1;
      while (i + held < letters.length() && letters.charAt(i + held) == '-') {
        held++;
      }
      Slot slot = new Slot(division, i, List.of());
      Level level = level(letter);
      add(bar, slot, slot.length(meters.of(bar)).times(held), limb, surface, level, with);
    }
    return this;
  }

  private void add(
      int bar, Slot slot, Time length, Limb limb, String surface, Level level, Ornament... with) {
    Ornaments ornaments = Ornaments.NONE;
    for (Ornament ornament : with) {
      ornaments = ornaments.with(ornament);
    }
    stroke(
        stroke(bar, slot.start(meters.of(bar)), length, limb, surface(surface), slot, ornaments)
            .at(level));
  }

  /** Adds a stroke as it is, whether it makes sense or not. */
  public Sketch stroke(Stroke stroke) {
    strokes.add(stroke);
    bars(stroke.bar());
    return this;
  }

  /** A plain stroke that needs no lane. */
  public static Stroke stroke(
      int bar, Time at, Time length, Limb limb, Surface surface, Slot slot, Ornaments ornaments) {
    return new Stroke(
        bar,
        at,
        length,
        limb,
        surface,
        Level.PLAIN,
        ornaments,
        slot,
        NOWHERE,
        false,
        false,
        false,
        null);
  }

  private static Level level(char letter) {
    return letter == 'X' ? Level.ACCENT : letter == 'g' ? Level.GHOST : Level.PLAIN;
  }

  private Surface surface(String surfaceName) {
    Surface found = kit.surface(surfaceName);
    if (found == null) {
      throw new IllegalArgumentException(surfaceName);
    }
    return found;
  }

  /** All its strokes so far belong to a line over the whole body. */
  public Sketch inLine() {
    strokes.replaceAll(stroke -> stroke.inLine(true));
    return this;
  }

  /** The section. */
  public Groove done() {
    List<Stroke> sorted = new ArrayList<>(strokes);
    sorted.sort(Stroke.ORDER);
    Tempo tempo = new Tempo(meters.first().tempoBeat(), perMinute);
    Groove.Setting setting =
        new Groove.Setting(
            meters, kit, tempo, feel, Levels.DEFAULT, true, true, true, SectionWords.USUAL);
    return new Groove(
        name,
        title,
        NOWHERE,
        base,
        setting,
        bars,
        pickup,
        Snap.strokes(setting, sorted),
        sorted,
        Map.of(),
        marks,
        hairpins,
        prose,
        repeats,
        PageNotes.NONE);
  }

  /** A chart of these items. */
  public static Chart chart(Chart.Item... items) {
    return new Chart("practice", null, NOWHERE, List.of(items), List.of(), PageNotes.NONE);
  }

  /** A turn of a groove as it stands. */
  public static Chart.Turn turn(Groove groove) {
    return new Chart.Turn(groove, groove.setting().tempo(), groove.setting().feel());
  }

  private final class WordReader {
    private final int bar;
    private final Limb limb;
    private final Surface surface;
    private String text = "";
    private int at;
    private int last = -1;

    WordReader(int bar, Limb limb, Surface surface) {
      this.bar = bar;
      this.limb = limb;
      this.surface = surface;
    }

    void read(String word, int beat, int beats) {
      text = word;
      Division division = new Division(beat, beats, count(0));
      for (int i = 0; at < text.length(); i++) {
        Slot slot = new Slot(division, i, List.of());
        place(division, i, List.of(), slot.start(meters.of(bar)), slot.length(meters.of(bar)));
      }
    }

    /** How many places follow up to the end of the group that starts at {@code from}. */
    private int count(int from) {
      int places = 0;
      int depth = 0;
      for (int i = from; i < text.length(); i++) {
        char c = text.charAt(i);
        if (c == '}' && --depth < 0) {
          break;
        }
        if (depth == 0 && "xXg.-{".indexOf(c) >= 0) {
          places++;
        }
        if (c == '{') {
          depth++;
        }
      }
      return places;
    }

    private void place(
        Division division, int index, List<Slot.Part> parts, Time start, Time length) {
      Ornaments ornaments = Ornaments.NONE;
      int small = 0;
      while (text.charAt(at) == '\'') {
        small++;
        at++;
      }
      char c = text.charAt(at++);
      if (c == '{') {
        int of = count(at);
        Time part = length.over(of);
        for (int i = 0; i < of; i++) {
          List<Slot.Part> deeper = new ArrayList<>(parts);
          deeper.add(new Slot.Part(i, of));
          place(division, index, deeper, start.plus(part.times(i)), part);
        }
        at++;
        return;
      }
      if (c == '-') {
        hold(length);
        return;
      }
      if (c == '.') {
        last = -1;
        return;
      }
      if (small > 0) {
        ornaments =
            ornaments.with(small == 1 ? Ornament.FLAM : small == 2 ? Ornament.DRAG : Ornament.RUFF);
      }
      while (at < text.length() && "/~!^".indexOf(text.charAt(at)) >= 0) {
        ornaments = suffix(ornaments, text.charAt(at++));
      }
      Level level = level(c);
      last = strokes.size();
      strokes.add(
          new Stroke(
              bar,
              start,
              length,
              limb,
              surface,
              level,
              ornaments,
              new Slot(division, index, parts),
              NOWHERE,
              false,
              false,
              false,
              null));
    }

    /** Lengthens this limb's last stroke, which may be of an earlier word. */
    private void hold(Time length) {
      if (last < 0) {
        for (int i = 0; i < strokes.size(); i++) {
          if (strokes.get(i).limb() == limb) {
            last = i;
          }
        }
      }
      Stroke held = strokes.get(last);
      strokes.set(last, held.moved(held.bar(), held.at(), held.length().plus(length), held.slot()));
    }

    private Ornaments suffix(Ornaments before, char sign) {
      return switch (sign) {
        case '/' -> before.with(before.has(Ornament.DIDDLE) ? Ornament.OPEN_ROLL : Ornament.DIDDLE);
        case '~' -> before.with(Ornament.BUZZ);
        case '!' -> before.with(Ornament.CHOKE);
        default -> before.with(Ornament.RIMSHOT);
      };
    }
  }
}
