package tabor.emit.html;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.Levels;
import tabor.groove.Stroke;
import tabor.kit.Kits;
import tabor.kit.Limb;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;
import tabor.source.Passage;
import tabor.source.Span;
import tabor.source.Spot;
import tabor.testing.Sketch;

/** Small lessons, made by hand so that nothing but the page is under test. */
final class Samples {
  static final Spot NOWHERE = new Spot(new Passage(""), new Span(0, 0));
  static final Tempo TEMPO = new Tempo(Time.of(1, 4), Time.of(96));

  private Samples() {}

  static Groove.Setting setting(Meter meter, Tempo tempo) {
    return new Groove.Setting(
        meter, Kits.FIVE_PIECE, tempo, Feel.STRAIGHT, Levels.DEFAULT, true, true);
  }

  /** Parts as {@code limb surface words}, the words as in a lane. */
  static Groove groove(
      String name, @Nullable String title, @Nullable Groove base, String... parts) {
    Sketch sketch = Sketch.groove(name).title(title).step(base).tempo(TEMPO.perMinute());
    for (String part : parts) {
      String[] words = part.split(" ", 3);
      sketch.part(Limb.valueOf(words[0]), words[1], words[2]);
    }
    if (base == null) {
      sketch.prose("Low taps, tall accents.\nCount aloud.", "The foot is a clock.");
    }
    return sketch.done();
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
        "RIGHT_HAND ride xx xx xx xx | xx xx xx xx",
        "LEFT_HAND snare ..g. X..g .g.. X..g | ..g. 'X... ''x... x^...",
        "RIGHT_FOOT kick x. .x .. x. | x. .x xx ..",
        "LEFT_FOOT hihat.foot .. x. .. x. | .. x. .. x.");
  }
}
