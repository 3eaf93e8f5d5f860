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

/** The quick look never passes what the exact one would report. */
class QuickPaceTest {
  record Part(Limb limb, String surface, List<String> beats) {}

  @Provide
  Arbitrary<List<Part>> parts() {
    Arbitrary<String> beat = Arbitraries.of("x", ".", "xx", "x.", "xxx", "x..x", "xxxx", ".x.x");
    return Combinators.combine(
            Arbitraries.of(Limb.RIGHT_HAND, Limb.LEFT_HAND),
            Arbitraries.of("snare", "hihat", "floor", "ride", "crash", "china"),
            beat.list().ofSize(4))
        .as(Part::new)
        .list()
        .ofMinSize(1)
        .ofMaxSize(3);
  }

  @Property(tries = 300)
  void whatPassesIsFine(
      @ForAll("parts") List<Part> parts, @ForAll @IntRange(min = 20, max = 300) int tempo) {
    Played played = new Played().tempo(tempo);
    for (Part part : parts) {
      played.part(part.limb(), part.surface(), String.join(" ", part.beats()));
    }
    Groove groove = played.groove();
    boolean easy = QuickPace.isEasy(groove, groove.setting().tempo(), Limits.DEFAULT);
    List<Demand> failing = new ArrayList<>();
    Demands.each(
        groove,
        Limits.DEFAULT,
        Demands.Grade.EXTREME,
        demand -> {
          if (demand.fails(groove.setting().tempo().secondsPerWhole())) {
            failing.add(demand);
          }
        });
    Statistics.label("easy").collect(easy);
    if (easy) {
      assertThat(failing).isEmpty();
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
}
