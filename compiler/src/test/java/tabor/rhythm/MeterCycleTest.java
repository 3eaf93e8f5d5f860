package tabor.rhythm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** Meters taken in turn, against bars written out one after the other. */
class MeterCycleTest {
  private static final Meter FOUR = Meter.of(4, 4);
  private static final Meter THREE = Meter.of(3, 4);
  private static final Meter SEVEN =
      new Meter(7, 8, List.of(Time.of(1, 4), Time.of(1, 4), Time.of(3, 8)));

  @Provide
  Arbitrary<Meters> cycles() {
    return Arbitraries.of(FOUR, THREE, SEVEN, Meter.of(6, 8))
        .list()
        .ofMinSize(1)
        .ofMaxSize(4)
        .map(Meters::new);
  }

  /** The lines of bars 1, 2, … as distances from the first, by going from bar to bar. */
  private static List<Time> lines(List<Meter> cycle, int bars) {
    List<Time> lines = new ArrayList<>();
    lines.add(Time.ZERO);
    for (int i = 0; i < bars; i++) {
      lines.add(lines.get(i).plus(cycle.get(i % cycle.size()).bar()));
    }
    return lines;
  }

  @Property
  void barsFollowOneAnother(@ForAll("cycles") Meters meters) {
    List<Time> lines = lines(meters.cycle(), 12);
    assertThat(meters.size()).isEqualTo(meters.cycle().size());
    assertThat(meters.cycleLength()).isEqualTo(lines.get(meters.size()));
    for (int bar = 1; bar <= 12; bar++) {
      assertThat(meters.of(bar)).isEqualTo(meters.cycle().get((bar - 1) % meters.size()));
      assertThat(meters.start(bar)).isEqualTo(lines.get(bar - 1));
      assertThat(meters.length(bar)).isEqualTo(lines.get(bar));
    }
  }

  @Property
  void aPlaceIsInTheBarBetweenItsLines(
      @ForAll("cycles") Meters meters, @ForAll @IntRange(min = 0, max = 150) int sixteenths) {
    Time place = Time.of(sixteenths, 16);
    List<Time> lines = lines(meters.cycle(), 30);
    int bar =
        IntStream.range(0, 30)
                .filter(i -> !place.before(lines.get(i)) && place.before(lines.get(i + 1)))
                .findFirst()
                .orElseThrow()
            + 1;
    assertThat(meters.barAt(place)).isEqualTo(bar);
  }

  /** A pickup has the first meter and ends at the line of bar 1. */
  @Test
  void thePickupHasTheFirstMeter() {
    Meters meters = new Meters(List.of(THREE, FOUR));
    assertThat(meters.first()).isEqualTo(THREE);
    assertThat(meters.of(0)).isEqualTo(THREE);
    assertThat(meters.start(0)).isEqualTo(Time.of(-3, 4));
    assertThat(Meters.of(FOUR).of(0)).isEqualTo(FOUR);
    assertThat(Meters.of(FOUR).start(0)).isEqualTo(Time.of(-1));
    assertThat(Meters.of(FOUR).cycle()).containsExactly(FOUR);
  }

  @Test
  void barsAreEqualOrNot() {
    assertThat(Meters.of(THREE).hasEqualBars()).isTrue();
    assertThat(new Meters(List.of(THREE, Meter.of(6, 8))).hasEqualBars()).isTrue();
    assertThat(new Meters(List.of(THREE, FOUR)).hasEqualBars()).isFalse();
    assertThatThrownBy(() -> new Meters(List.of())).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void theyAreSaidAsTheyAreWritten() {
    Meters meters = new Meters(List.of(FOUR, SEVEN));
    assertThat(meters.words()).isEqualTo("4/4 7/8 in 2+2+3");
    assertThat(meters).hasToString("4/4 7/8");
  }

  @Test
  void groupsAreOfAllTheBeats() {
    Meter five = new Meter(5, 4, Meter.of(5, 4).beats(), List.of(3, 2));
    assertThat(five.words()).isEqualTo("5/4 grouped 3+2");
    assertThat(five).hasToString("5/4");
    assertThatThrownBy(() -> new Meter(5, 4, Meter.of(5, 4).beats(), List.of(3, 3)))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void barsFitWhereTheBeatsAreTheSame() {
    Meter grouped = new Meter(4, 4, FOUR.beats(), List.of(2, 2));
    assertThat(FOUR.hasSameBeats(grouped)).isTrue();
    assertThat(FOUR.hasSameBeats(THREE)).isFalse();
    assertThat(FOUR.hasSameBeats(new Meter(8, 8, FOUR.beats()))).isFalse();
    assertThat(Meter.of(2, 2).hasSameBeats(new Meter(4, 4, Meter.of(2, 2).beats()))).isFalse();
    assertThat(FOUR.hasSameBeats(new Meter(4, 4, Meter.of(2, 2).beats()))).isFalse();
  }
}
