package tabor.build;

import static org.assertj.core.api.Assertions.assertThat;
import static tabor.kit.Limb.RIGHT_FOOT;
import static tabor.kit.Limb.RIGHT_HAND;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import tabor.emit.engrave.Engraver;
import tabor.emit.engrave.Engraving;
import tabor.emit.engrave.Look;
import tabor.emit.engrave.Shown;
import tabor.emit.font.OpenFont;
import tabor.emit.musicxml.MusicXml;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.notation.Speller;
import tabor.perform.Performance;
import tabor.perform.Performer;
import tabor.perform.Sound;
import tabor.testing.Sketch;

/** A groove that has nothing but its pickup: no empty bar is written or played behind it. */
class ShortFillTest {
  private static final Groove FILL =
      Sketch.groove("run").pickup(1).part(RIGHT_HAND, "snare", "xxxx | . . . .").done();
  private static final Groove BEAT =
      Sketch.groove("beat").part(RIGHT_FOOT, "kick", "x x x x").done();

  @Test
  void onlyThePickupIsPrinted() {
    Engraving engraving = Engraver.engrave(Speller.spell(FILL), Look.FULL, OpenFont.get());
    assertThat(engraving.words()).doesNotContain("silent");
    List<Shown.Piece> pieces = Shown.of(engraving.whole().marks());
    assertThat(pieces).noneMatch(piece -> piece.kind().equals("rest"));
    // A single line at its end, and no sign that it is repeated.
    assertThat(pieces.stream().filter(piece -> piece.kind().equals("barlines"))).hasSize(1);
  }

  @Test
  void onlyThePickupIsInMusicXml() {
    Lesson lesson = new Lesson("lesson", "Saturday", null, FILL.setting(), List.of(FILL, BEAT));
    String text = new String(MusicXml.bytes(lesson, s -> true), StandardCharsets.UTF_8);
    assertThat(text.split("<measure ", -1)).hasSize(1 + 2);
    assertThat(text).contains("<measure number=\"1\" implicit=\"yes\">").doesNotContain("<rest");
  }

  /** Two bars of four beats, the last beat the fill's. */
  @Test
  void inAChartItTakesTheLastBeats() {
    Chart.Play play =
        new Chart.Play(
            List.of(Sketch.turn(BEAT)),
            new Chart.Amount(2, 0, null),
            false,
            new Chart.Extras(List.of(), FILL),
            List.of(BEAT));
    Performance performance = Performer.chart(Sketch.chart(play));
    assertThat(starts(performance, "kick"))
        .containsExactly("0", "1/4", "1/2", "3/4", "1", "5/4", "3/2");
    assertThat(starts(performance, "snare")).containsExactly("7/4", "29/16", "15/8", "31/16");
  }

  /** Practised by itself it comes once a bar. */
  @Test
  void asALoopItComesOnceABar() {
    Performance twice = Performer.twice(FILL, 0);
    assertThat(starts(twice, "snare"))
        .containsExactly("0", "1/16", "1/8", "3/16", "1", "17/16", "9/8", "19/16");
    assertThat(Performer.round(FILL).sounds()).hasSize(4);
  }

  private static List<String> starts(Performance performance, String surface) {
    return performance.sounds().stream()
        .filter(sound -> sound.kind() == Sound.Kind.STROKE)
        .filter(sound -> sound.surface() != null && sound.surface().name().equals(surface))
        .map(sound -> sound.start().toString())
        .toList();
  }
}
