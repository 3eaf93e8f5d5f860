package tabor.body;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.groove.Level;
import tabor.groove.Levels;
import tabor.groove.Ornament;
import tabor.groove.Ornaments;
import tabor.groove.PageNotes;
import tabor.groove.SectionWords;
import tabor.groove.Stroke;
import tabor.kit.Kit;
import tabor.kit.Kits;
import tabor.kit.Limb;
import tabor.kit.Position;
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
 * Builds sections for tests of the body without a parser. Each line is one part; its words are
 * beats, {@code x} strokes, {@code f d o b} strokes with a flam, a diddle, an open roll, a buzz,
 * and dots silence. Spots point into a passage of one line a part.
 */
final class Played {
  private final List<Stroke> strokes = new ArrayList<>();
  private final List<String> lines = new ArrayList<>();
  private Meter meter = Meter.COMMON;
  private Kit kit = Kits.FIVE_PIECE;
  private int perMinute = 90;
  private int bars = 1;
  private @Nullable Groove base;
  private final Passage passage;

  Played() {
    this.passage = new Passage("groove test\n" + " ".repeat(4000));
  }

  static Surface surface(String name) {
    Surface surface = Kits.FIVE_PIECE.surface(name);
    if (surface == null) {
      throw new IllegalArgumentException(name);
    }
    return surface;
  }

  /** The five-piece kit with some of its surfaces elsewhere. */
  static Kit placed(Map<String, Position> places) {
    return new Kit(
        "placed",
        Kits.FIVE_PIECE.surfaces(),
        Kits.FIVE_PIECE.letters(),
        Kits.FIVE_PIECE.standIns(),
        places,
        Map.of(),
        false);
  }

  Played meter(Meter other) {
    meter = other;
    return this;
  }

  Played kit(Kit other) {
    kit = other;
    return this;
  }

  Played tempo(int beats) {
    perMinute = beats;
    return this;
  }

  Played from(Groove section) {
    base = section;
    strokes.addAll(section.strokes());
    bars = section.bars();
    return this;
  }

  Played part(Limb limb, String surface, String words) {
    int line = lines.size() + 1;
    lines.add(words);
    int last =
        words(
            words,
            (bar, slot, sign) -> {
              int at = line * 100 + bar * 20 + slot.division().beat();
              Spot spot = new Spot(passage, new Span(at, at + 1));
              strokes.add(stroke(meter, bar, slot, limb, surface, sign, spot));
            });
    bars = Math.max(bars, last);
    return this;
  }

  /** Takes one sign that is not a dot. */
  interface Sign {
    void at(int bar, Slot slot, char sign);
  }

  /** Reads the signs of a part in order; the number of its last bar. */
  static int words(String words, Sign taker) {
    int bar = 0;
    for (String text : words.split("\\|", -1)) {
      bar++;
      String[] beats = text.trim().split(" +", -1);
      for (int beat = 0; beat < beats.length; beat++) {
        Division division = new Division(beat, 1, Math.max(1, beats[beat].length()));
        for (int i = 0; i < beats[beat].length(); i++) {
          char sign = beats[beat].charAt(i);
          if (sign != '.') {
            taker.at(bar, new Slot(division, i, List.of()), sign);
          }
        }
      }
    }
    return bar;
  }

  static Stroke stroke(
      Meter meter, int bar, Slot slot, Limb limb, String surface, char sign, Spot spot) {
    Ornaments ornaments =
        switch (sign) {
          case 'f' -> Ornaments.NONE.with(Ornament.FLAM);
          case 'd' -> Ornaments.NONE.with(Ornament.DIDDLE);
          case 'o' -> Ornaments.NONE.with(Ornament.OPEN_ROLL);
          case 'b' -> Ornaments.NONE.with(Ornament.BUZZ);
          default -> Ornaments.NONE;
        };
    return new Stroke(
        bar,
        slot.start(meter),
        slot.length(meter),
        limb,
        surface(surface),
        Level.PLAIN,
        ornaments,
        slot,
        spot,
        false,
        false,
        false,
        null);
  }

  /** Marks the strokes of the part added last as dealt by the compiler. */
  Played dealt() {
    int line = lines.size();
    strokes.replaceAll(
        s ->
            s.spot().passage() == passage && s.spot().span().start() / 100 == line
                ? s.by(s.limb(), true)
                : s);
    return this;
  }

  static Groove.Setting setting(Meter meter, Kit kit, int perMinute) {
    return new Groove.Setting(
        Meters.of(meter),
        kit,
        new Tempo(meter.tempoBeat(), Time.of(perMinute)),
        Feel.STRAIGHT,
        Levels.DEFAULT,
        true,
        true,
        true,
        SectionWords.USUAL);
  }

  Groove groove() {
    strokes.sort(Stroke.ORDER);
    return groove(
        strokes, new Spot(passage, new Span(0, 11)), base, setting(meter, kit, perMinute), bars);
  }

  /** A section of these strokes, which are in order. */
  static Groove of(List<Stroke> strokes, Meter meter, int bars, int perMinute) {
    Spot heading = new Spot(strokes.get(0).spot().passage(), new Span(0, 0));
    return groove(strokes, heading, null, setting(meter, Kits.FIVE_PIECE, perMinute), bars);
  }

  /** A section like another, with these strokes. */
  static Groove like(
      Groove other, @Nullable Groove base, int bars, Time pickup, List<Stroke> strokes) {
    return new Groove(
        other.name(),
        null,
        other.heading(),
        base,
        other.setting(),
        bars,
        pickup,
        strokes,
        strokes,
        other.plays(),
        List.of(),
        List.of(),
        List.of(),
        other.repeats(),
        PageNotes.NONE);
  }

  private static Groove groove(
      List<Stroke> strokes, Spot heading, @Nullable Groove base, Groove.Setting setting, int bars) {
    return new Groove(
        "test",
        null,
        heading,
        base,
        setting,
        bars,
        Time.ZERO,
        strokes,
        strokes,
        Map.of(),
        List.of(),
        List.of(),
        List.of(),
        Set.of(),
        PageNotes.NONE);
  }
}
