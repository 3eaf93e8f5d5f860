package tabor.emit.html;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.emit.engrave.Box;
import tabor.emit.engrave.Contour;
import tabor.emit.engrave.Drawing;
import tabor.emit.engrave.Mark;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.Levels;
import tabor.groove.PageNotes;
import tabor.groove.SectionWords;
import tabor.groove.Stroke;
import tabor.kit.Kits;
import tabor.kit.Limb;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Meters;
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
        Meters.of(meter),
        Kits.FIVE_PIECE,
        tempo,
        Feel.STRAIGHT,
        Levels.DEFAULT,
        true,
        true,
        true,
        SectionWords.USUAL);
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
        new Groove.Setting(
            own.meters(),
            own.kit(),
            own.tempo(),
            feel,
            own.levels(),
            true,
            true,
            true,
            own.wording());
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
        Set.of(),
        PageNotes.NONE);
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
            new Chart.Climb(
                groove,
                tempi,
                Feel.STRAIGHT,
                Time.of(5),
                2,
                Chart.Every.TIMES,
                null,
                Chart.Extras.NONE)),
        List.of("A breath between the rungs is allowed."),
        PageNotes.NONE);
  }

  /** A drawing that stands in for an engraving: a staff and a dot for each stroke. */
  static Pictures pictures() {
    return new Pictures() {
      @Override
      public Score score(Groove groove) {
        double width = 6 + 32.0 * groove.bars();
        List<Mark> marks = new ArrayList<>();
        for (int line = 0; line < 5; line++) {
          marks.add(new Mark.Ink(Contour.band(1, 4.04 + line, width - 1, 4.04 + line, 0.08)));
        }
        List<Moment> moments = new ArrayList<>();
        for (Stroke stroke : groove.strokes()) {
          Time at = groove.meters().start(stroke.bar()).plus(stroke.at());
          double x = 5 + 32.0 * at.num() / at.den();
          double y = 8 - 0.5 * stroke.surface().place().halfSpaces();
          Box box = new Box(x - 0.5, y - 0.5, x + 0.5, y + 0.5);
          marks.add(new Mark.Ink(Contour.rounded(box, 0.4, 0)));
          if (moments.isEmpty() || !moments.get(moments.size() - 1).at().equals(at)) {
            moments.add(new Moment(at, x));
          }
        }
        Drawing drawing = new Drawing(width, 11, groove.caption(), "drawing", marks);
        return new Score(new Picture(List.of(new StaffRow(drawing, 2, moments))), null);
      }

      @Override
      public Key key(List<Groove> grooves) {
        return Key.NONE;
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
