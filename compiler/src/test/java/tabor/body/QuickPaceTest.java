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
}
