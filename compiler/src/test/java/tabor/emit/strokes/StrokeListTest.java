package tabor.emit.strokes;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonParser;
import java.util.List;
import org.junit.jupiter.api.Test;
import tabor.groove.Groove;
import tabor.groove.Ornament;
import tabor.kit.Limb;
import tabor.rhythm.Feel;
import tabor.rhythm.Time;
import tabor.testing.Sketch;

class StrokeListTest {
  private static Groove groove() {
    return Sketch.groove("g")
        .tempo(90)
        .swing(Feel.Unit.EIGHTHS, 2, 3)
        .pickup(Time.of(1, 4))
        .word(0, 3, Limb.LEFT_HAND, "snare", ".X", Ornament.FLAM, Ornament.RIMSHOT)
        .word(1, 0, Limb.RIGHT_HAND, "ride", "x-xg")
        .word(1, 0, Limb.RIGHT_FOOT, "kick", "x")
        .done();
  }

  @Test
  void rowsInOrderWithExactPlacesAndSoundedTimes() {
    assertThat(StrokeList.tsv(List.of(groove())))
        .isEqualTo(
            """
            section	bar	at	surface	limb	level	ornaments	count	length	ms
            g	0	7/8	snare	left hand	accent	flam,rimshot	4&	1/8	444.444
            g	1	0	ride	right hand	plain	-	1	1/8	666.667
            g	1	0	kick	right foot	plain	-	1	1/4	666.667
            g	1	1/8	ride	right hand	plain	-	1&	1/16	1111.111
            g	1	3/16	ride	right hand	ghost	-	1a	1/16	1222.222
            """);
  }

  @Test
  void jsonSaysTheSame() {
    JsonArray rows = JsonParser.parseString(StrokeList.json(List.of(groove()))).getAsJsonArray();
    assertThat(rows).hasSize(5);
    assertThat(rows.get(0).toString())
        .isEqualTo(
            "{\"section\":\"g\",\"bar\":0,\"at\":\"7/8\",\"surface\":\"snare\",\"limb\":\"left"
                + " hand\",\"level\":\"accent\",\"ornaments\":[\"flam\",\"rimshot\"],"
                + "\"count\":\"4&\",\"length\":\"1/8\",\"ms\":444.444}");
    assertThat(StrokeList.json(List.of())).isEqualTo("[]\n");
  }
}
