package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import tabor.groove.Groove;
import tabor.rhythm.Meter;
import tabor.rhythm.Meters;
import tabor.rhythm.Time;

/** Meters taken in turn and beats in groups. */
class MetersTest {
  private static Groove only(String text) {
    return Compact.compile(text).lesson().grooves().get(0);
  }

  private static final String MIXED = "groove g\n time 4/4 3/4\n";

  @Test
  void barsTakeTheMetersInTurn() {
    Meters meters = new Meters(List.of(Meter.of(4, 4), Meter.of(3, 4)));
    assertThat(meters.of(0)).isEqualTo(Meter.of(4, 4));
    assertThat(meters.of(1)).isEqualTo(Meter.of(4, 4));
    assertThat(meters.of(2)).isEqualTo(Meter.of(3, 4));
    assertThat(meters.of(3)).isEqualTo(Meter.of(4, 4));
    assertThat(meters.start(1)).isEqualTo(Time.ZERO);
    assertThat(meters.start(2)).isEqualTo(Time.of(1));
    assertThat(meters.start(4)).isEqualTo(Time.of(11, 4));
    assertThat(meters.length(3)).isEqualTo(Time.of(11, 4));
    assertThat(meters.barAt(Time.of(7, 8))).isEqualTo(1);
    assertThat(meters.barAt(Time.of(1))).isEqualTo(2);
    assertThat(meters.barAt(Time.of(7, 4))).isEqualTo(3);
    assertThat(meters.words()).isEqualTo("4/4 3/4");
  }

  @Test
  void aBareTempoCountsTheFirstMetersBeat() {
    assertThat(only("tempo 60\ngroove g\n time 6/8 2/4\n kick : x . | x .\n").setting().tempo())
        .isEqualTo(new tabor.rhythm.Tempo(Time.of(3, 8), Time.of(60)));
  }

  @Test
  void theLengthOfPatternsAndOstinatosIsWholeRounds() {
    assertThat(only(MIXED + " ostinato kick : x . . . | x . .\n").bars()).isEqualTo(2);
    assertThat(only(MIXED + " hands play paradiddle in quarters\n").bars()).isEqualTo(16);
  }

  @Test
  void anOstinatoThatMeetsAnotherMeterIsToldOnce() {
    assertThat(
            Compact.problems(
                MIXED + " bars 4\n ostinato kick : x . . .\n snare : l . . . | . . . | % | %\n"))
        .containsExactly("4 bar-length");
  }

  @Test
  void aRepeatTakesTheLatestBarOfItsMeter() {
    assertThat(Compact.of(only(MIXED + " kick : x . . . | . x . | % | %\n")))
        .isEqualTo("0 rf kick | 1/4 rf kick | 0 rf kick | 1/4 rf kick");
    assertThat(Compact.problems(MIXED + " kick : x . . . | % | x . . .\n"))
        .containsExactly("3 nothing-there");
  }

  @Test
  void countsPassOverBarsThatLackTheBeat() {
    assertThat(
            Compact.of(
                only(
                    MIXED
                        + " kick : x . . x | x . . | % | %\n"
                        + " accent kick at 4\n"
                        + " accent kick at 1 in bar 2\n")))
        .isEqualTo("0 rf kick, 3/4 rf kick> | 0 rf kick> | 0 rf kick, 3/4 rf kick> | 0 rf kick");
    assertThat(Compact.problems(MIXED + " kick : x . . x | x . .\n add kick at 4 in bar 2\n"))
        .containsExactly("4 count-outside-bar");
  }

  @Test
  void shiftTurnsInExactTime() {
    assertThat(Compact.of(only(MIXED + " kick : . . . x | . . x\n shift kick later by 1 beat\n")))
        .isEqualTo("0 rf kick | 0 rf kick");
    assertThat(Compact.problems(MIXED + " kick : . . . x | . . x\n shift kick later by 1 bar\n"))
        .containsExactly("4 bar-length");
  }

  @Test
  void barsOfOneMeterDoNotGoIntoBarsOfAnother() {
    String three = "groove three\n time 3/4\n kick : x . .\n";
    assertThat(
            Compact.problems(
                three + MIXED + " kick : x . . . | x . .\n take kick from three in bar 2\n"))
        .isEmpty();
    assertThat(
            Compact.problems(
                three
                    + MIXED
                    + " kick : x . . . | x . .\n take kick from three\n fill three in bar 1\n"))
        .containsExactly("7 bar-length", "8 bar-length");
    assertThat(Compact.problems(MIXED + " kick : x . . . | x . .\nstep s\n bars 3\n")).isEmpty();
    assertThat(Compact.problems(MIXED + " kick : x . . . | x . . | x . . .\nstep s\n bars 4\n"))
        .containsExactly("5 bar-length");
  }

  @Test
  void groupsLeaveTheBeatsAsTheyAre() {
    Meter meter = only("groove g\n time 5/4 grouped 3+2\n kick : x . . x .\n").meter();
    assertThat(meter.beatCount()).isEqualTo(5);
    assertThat(meter.groups()).containsExactly(3, 2);
    assertThat(meter.words()).isEqualTo("5/4 grouped 3+2");
    assertThat(Compact.problems("groove g\n time 5/4 grouped 3+3\n kick : x\n"))
        .containsExactly("2 bar-length");
  }
}
