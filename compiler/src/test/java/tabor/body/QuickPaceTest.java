package tabor.body;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.statistics.Statistics;
import org.junit.jupiter.api.Test;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Groove;
import tabor.kit.Limb;
import tabor.kit.Limits;
import tabor.rhythm.Time;

/** The quick look never passes what the exact one would report. */
class QuickPaceTest {
  record Part(Limb limb, String surface, List<String> beats) {}

  @Provide
  Arbitrary<List<Part>> parts() {
    Arbitrary<String> beat = Arbitraries.of("x", ".", "xx", "x.", "xxx", "x..x", "xxxx", ".x.x");
    return Combinators.combine(
            Arbitraries.of(Limb.RIGHT_HAND, Limb.LEFT_HAND),
            Arbitraries.of("snare", "hihat", "floor", "ride", "crash", "china"),
            beat.list().ofSize(8))
        .as(Part::new)
        .list()
        .ofMinSize(1)
        .ofMaxSize(3);
  }

  /** Two bars, so that what is looked at goes over a bar line and round the end. */
  private static Groove played(List<Part> parts, int tempo) {
    Played played = new Played().tempo(tempo);
    for (Part part : parts) {
      String first = String.join(" ", part.beats().subList(0, 4));
      String second = String.join(" ", part.beats().subList(4, 8));
      played.part(part.limb(), part.surface(), first + " | " + second);
    }
    return played.groove();
  }

  private static List<Demand> failing(Groove groove, Time secondsPerWhole) {
    List<Demand> failing = new ArrayList<>();
    Demands.each(
        groove,
        Limits.DEFAULT,
        Demands.Grade.EXTREME,
        demand -> {
          if (demand.fails(secondsPerWhole)) {
            failing.add(demand);
          }
        });
    return failing;
  }

  /** And it passes what is clearly fine: a tenth faster would still be. */
  @Property(tries = 300)
  void whatPassesIsFine(
      @ForAll("parts") List<Part> parts, @ForAll @IntRange(min = 20, max = 300) int tempo) {
    Groove groove = played(parts, tempo);
    Time whole = groove.setting().tempo().secondsPerWhole();
    boolean easy = QuickPace.isEasy(groove, groove.setting().tempo(), Limits.DEFAULT);
    Statistics.label("easy").collect(easy);
    if (easy) {
      assertThat(failing(groove, whole)).isEmpty();
    }
    // Two strokes of a limb at one instant are a clash, which the quick look leaves to others.
    long limbs = parts.stream().map(Part::limb).distinct().count();
    if (limbs == parts.size() && failing(groove, whole.times(10).over(11)).isEmpty()) {
      assertThat(easy).isTrue();
    }
  }

  /** Two strokes a thirty-second apart at tempo 300: 25 ms, across a barline and round the end. */
  @Test
  void whatIsTooFastAcrossABarline() {
    for (Limb limb : List.of(Limb.RIGHT_FOOT, Limb.RIGHT_HAND)) {
      String surface = limb.isHand() ? "snare" : "kick";
      for (String beats : List.of("x . . .......x", ". . . .......x | x . . .")) {
        Groove groove = new Played().tempo(300).part(limb, surface, beats).groove();
        assertThat(groove.bars()).isEqualTo(beats.startsWith("x") ? 1 : 2);
        assertThat(QuickPace.isEasy(groove, groove.setting().tempo(), Limits.DEFAULT))
            .as("%s: %s", limb, beats)
            .isFalse();
        assertThat(BodyChecks.check(groove)).extracting(Diagnostic::code).contains(Code.TOO_FAST);
      }
      Groove slow = new Played().tempo(30).part(limb, surface, ". . . ...x | x . . .").groove();
      assertThat(QuickPace.isEasy(slow, slow.setting().tempo(), Limits.DEFAULT)).isTrue();
    }
  }

  /**
   * Three sixteenths of one hand at tempo 180, 83 ms apart: two are within reach, three are not.
   * They lie over a bar line or over the end, with one or with two of them before it.
   */
  @Test
  void threeStrokesOverABarLineOrTheEnd() {
    List<String> three =
        List.of(
            "xx.. . . ...x",
            "x... . . ..xx",
            "x... . . . | . . . ..xx",
            "xx.. . . . | . . . ...x",
            ". x . ...x | xx.. . . .",
            ". x . ..xx | x... . . .");
    for (String beats : three) {
      Groove groove = new Played().tempo(180).part(Limb.LEFT_HAND, "snare", beats).groove();
      assertThat(QuickPace.isEasy(groove, groove.setting().tempo(), Limits.DEFAULT))
          .as(beats)
          .isFalse();
      Groove slow = new Played().tempo(120).part(Limb.LEFT_HAND, "snare", beats).groove();
      assertThat(QuickPace.isEasy(slow, slow.setting().tempo(), Limits.DEFAULT)).as(beats).isTrue();
      Groove two =
          new Played().tempo(180).part(Limb.LEFT_HAND, "snare", beats.replace("xx", "x.")).groove();
      assertThat(failing(two, two.setting().tempo().secondsPerWhole())).as(beats).isEmpty();
    }
  }
}
