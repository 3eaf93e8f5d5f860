package tabor.perform;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.groove.Level;
import tabor.groove.Levels;
import tabor.groove.Loudness;
import tabor.groove.Ornament;
import tabor.groove.Ornaments;
import tabor.groove.Stroke;
import tabor.kit.Kits;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.rhythm.Division;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Slot;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;
import tabor.source.Passage;
import tabor.source.Span;
import tabor.source.Spot;

/** Grooves made by hand, stroke by stroke, for tests of what comes after the compiler. */
public final class Made {
  private static final Spot NOWHERE = new Spot(new Passage(""), new Span(0, 0));

  private final String name;
  private Meter meter = Meter.COMMON;
  private Tempo tempo = new Tempo(Time.of(1, 4), Time.of(90));
  private Feel feel = Feel.STRAIGHT;
  private int bars = 1;
  private Time pickup = Time.ZERO;
  private final List<Stroke> strokes = new ArrayList<>();
  private final List<Loudness.Mark> marks = new ArrayList<>();
  private final List<Loudness.Hairpin> hairpins = new ArrayList<>();

  private Made(String name) {
    this.name = name;
  }

  /** A groove of one bar of 4/4 at 90. */
  public static Made groove(String name) {
    return new Made(name);
  }

  public Made meter(Meter other) {
    meter = other;
    tempo = new Tempo(other.tempoBeat(), tempo.perMinute());
    return this;
  }

  public Made tempo(long perMinute) {
    tempo = tempo.at(Time.of(perMinute));
    return this;
  }

  public Made tempo(Time perMinute) {
    tempo = tempo.at(perMinute);
    return this;
  }

  public Made swing(Feel.Unit unit, long num, long den) {
    feel = new Feel(unit, Time.of(num, den));
    return this;
  }

  public Made bars(int number) {
    bars = number;
    return this;
  }

  public Made pickup(Time length) {
    pickup = length;
    return this;
  }

  public Made mark(int bar, Time at, Loudness loudness) {
    marks.add(new Loudness.Mark(bar, at, loudness));
    return this;
  }

  public Made hairpin(int fromBar, Time from, int toBar, Time to, Loudness target) {
    hairpins.add(new Loudness.Hairpin(true, fromBar, from, toBar, to, target));
    return this;
  }

  /**
   * A word of one beat: a letter for each slot, {@code X} accent, {@code x} plain, {@code g} ghost,
   * {@code .} nothing, {@code -} the one before goes on.
   */
  public Made word(int bar, int beat, Limb limb, String surface, String letters, Ornament... with) {
    return word(bar, beat, 1, limb, surface, letters, with);
  }

  public Made word(
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
      Level level = letter == 'X' ? Level.ACCENT : letter == 'g' ? Level.GHOST : Level.PLAIN;
      add(bar, slot, slot.length(meter).times(held), limb, surface, level, with);
    }
    return this;
  }

  private void add(
      int bar, Slot slot, Time length, Limb limb, String surface, Level level, Ornament... with) {
    Ornaments ornaments = Ornaments.NONE;
    for (Ornament ornament : with) {
      ornaments = ornaments.with(ornament);
    }
    strokes.add(
        new Stroke(
            bar,
            slot.start(meter),
            length,
            limb,
            surface(surface),
            level,
            ornaments,
            slot,
            NOWHERE,
            false));
  }

  private static Surface surface(String name) {
    @Nullable Surface found = Kits.FIVE_PIECE.surface(name);
    if (found == null) {
      throw new IllegalArgumentException(name);
    }
    return found;
  }

  /** The groove. */
  public Groove done() {
    List<Stroke> sorted = new ArrayList<>(strokes);
    sorted.sort(Stroke.ORDER);
    return new Groove(
        name,
        null,
        NOWHERE,
        null,
        new Groove.Setting(meter, Kits.FIVE_PIECE, tempo, feel, Levels.DEFAULT, true, true),
        bars,
        pickup,
        sorted,
        sorted,
        Map.of(),
        marks,
        hairpins,
        List.of(),
        Set.of());
  }

  /** A chart of these items. */
  public static tabor.groove.Chart chart(tabor.groove.Chart.Item... items) {
    return new tabor.groove.Chart("practice", null, NOWHERE, List.of(items), List.of());
  }

  /** A turn of a groove as it stands. */
  public static tabor.groove.Chart.Turn turn(Groove groove) {
    return new tabor.groove.Chart.Turn(groove, groove.setting().tempo(), groove.setting().feel());
  }
}
