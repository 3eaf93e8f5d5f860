package tabor.emit.html;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.Level;
import tabor.groove.Levels;
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

/** Small lessons, made by hand so that nothing but the page is under test. */
final class Samples {
  static final Spot NOWHERE = new Spot(new Passage(""), new Span(0, 0));
  static final Tempo TEMPO = new Tempo(Time.of(1, 4), Time.of(96));

  private Samples() {}

  static Groove.Setting setting(Meter meter, Tempo tempo) {
    return new Groove.Setting(
        meter, Kits.FIVE_PIECE, tempo, Feel.STRAIGHT, Levels.DEFAULT, true, true);
  }

  /** Strokes as words of {@code limb surface slots}: a letter is a stroke, a capital an accent. */
  static Groove groove(
      String name, @Nullable String title, @Nullable Groove base, String... parts) {
    List<Stroke> strokes = new ArrayList<>();
    int bars = 1;
    for (String part : parts) {
      String[] words = part.split(" ", -1);
      Limb limb = Limb.valueOf(words[0]);
      Surface surface = Kits.FIVE_PIECE.surface(words[1]);
      bars = Math.max(bars, (words.length - 2) / 4);
      for (int i = 2; i < words.length; i++) {
        word(strokes, limb, surface, i - 2, words[i]);
      }
    }
    strokes.sort(Stroke.ORDER);
    return new Groove(
        name,
        title,
        NOWHERE,
        base,
        setting(Meter.COMMON, TEMPO),
        bars,
        Time.ZERO,
        strokes,
        strokes,
        Map.of(),
        List.of(),
        List.of(),
        base == null
            ? List.of("Low taps, tall accents.\nCount aloud.", "The foot is a clock.")
            : List.of(),
        Set.of());
  }

  /** The same strokes in another feel. */
  static Groove swung(Groove groove, String name, Feel feel) {
    Groove.Setting own = groove.setting();
    Groove.Setting setting =
        new Groove.Setting(own.meter(), own.kit(), own.tempo(), feel, own.levels(), true, true);
    return new Groove(
        name,
        null,
        NOWHERE,
        null,
        setting,
        groove.bars(),
        groove.pickup(),
        groove.strokes(),
        groove.written(),
        groove.plays(),
        List.of(),
        List.of(),
        List.of(),
        Set.of());
  }

  private static void word(
      List<Stroke> strokes, Limb limb, Surface surface, int beat, String word) {
    Division division = new Division(beat % 4, 1, word.replace("'", "").length());
    int slot = 0;
    int small = 0;
    for (int i = 0; i < word.length(); i++) {
      char letter = word.charAt(i);
      if (letter == '\'') {
        small++;
        continue;
      }
      if (letter != '.') {
        Time length = Time.of(1, 4L * division.slots());
        Level level =
            letter == 'g'
                ? Level.GHOST
                : Character.isUpperCase(letter) ? Level.ACCENT : Level.PLAIN;
        Ornaments ornaments =
            small == 0 ? Ornaments.NONE : Ornaments.NONE.with(Ornament.values()[small - 1]);
        if (letter == '^') {
          ornaments = ornaments.with(Ornament.RIMSHOT);
        } else if (letter == '!') {
          ornaments = ornaments.with(Ornament.CHOKE);
        }
        strokes.add(
            new Stroke(
                1 + beat / 4,
                Time.of(beat % 4, 4).plus(length.times(slot)),
                length,
                limb,
                surface,
                level,
                ornaments,
                new Slot(division, slot, List.of()),
                NOWHERE,
                false));
      }
      slot++;
      small = 0;
    }
  }

  static Lesson lesson(String title, tabor.groove.Section... sections) {
    return new Lesson(
        "sample", title, "Saturday kit class", setting(Meter.COMMON, TEMPO), List.of(sections));
  }

  static Chart climb(String name, String title, Groove warmUp, Groove groove) {
    List<Tempo> tempi = new ArrayList<>();
    for (int t = 60; t <= 100; t += 5) {
      tempi.add(TEMPO.at(Time.of(t)));
    }
    return new Chart(
        name,
        title,
        NOWHERE,
        List.of(
            new Chart.CountIn(1, warmUp, TEMPO),
            new Chart.SetClick(Chart.Click.ON),
            new Chart.Play(List.of(new Chart.Turn(warmUp, TEMPO, Feel.STRAIGHT)), 2),
            new Chart.Rest(1, warmUp, TEMPO),
            new Chart.Climb(groove, tempi, Feel.STRAIGHT, Time.of(5), 2, Chart.Every.TIMES)),
        List.of("A breath between the rungs is allowed."));
  }

  /** A drawing that stands in for an engraving: a staff and a dot for each stroke. */
  static Pictures pictures() {
    return new Pictures() {
      @Override
      public Score score(Groove groove) {
        StringBuilder svg = new StringBuilder();
        int width = 60 + 320 * groove.bars();
        svg.append("<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"notation\" viewBox=\"0 0 ")
            .append(width)
            .append(" 110\" width=\"")
            .append(width)
            .append("\" height=\"110\" role=\"img\" fill=\"currentColor\" aria-label=\"drawing\">");
        for (int line = 0; line < 5; line++) {
          svg.append("<path d=\"M10 ")
              .append(40 + 10 * line)
              .append("H")
              .append(width - 10)
              .append("v0.8H10Z\"/>");
        }
        List<Place> places = new ArrayList<>();
        for (Stroke stroke : groove.strokes()) {
          Time at = Time.of(stroke.bar() - 1L).plus(stroke.at());
          double x = 50 + 320.0 * at.num() / at.den();
          int y = 80 - 5 * stroke.surface().place().halfSpaces();
          svg.append("<circle cx=\"").append(x).append("\" cy=\"").append(y).append("\" r=\"5\"/>");
          if (places.isEmpty() || !places.get(places.size() - 1).at().equals(at)) {
            places.add(new Place(at, x, 28, 92));
          }
        }
        return new Score(new Picture(svg.append("</svg>").toString(), places), null);
      }

      @Override
      public Key key(List<Groove> grooves) {
        return new Key("", "");
      }
    };
  }

  static Groove basic() {
    return groove(
        "feet",
        "Feet on the floor",
        null,
        "RIGHT_HAND hihat xx xx xx xx",
        "LEFT_HAND snare .. X. .. X.",
        "RIGHT_FOOT kick x. .. xx ..");
  }

  static Groove full(Groove base) {
    return groove(
        "answer",
        "The last double moves",
        base,
        "RIGHT_HAND ride xx xx xx xx xx xx xx xx",
        "LEFT_HAND snare ..g. X..g .g.. X..g ..g. 'X... ''x... ^...",
        "RIGHT_FOOT kick x. .x .. x. x. .x xx ..",
        "LEFT_FOOT hihat.foot .. x. .. x. .. x. .. x.");
  }
}
