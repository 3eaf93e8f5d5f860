package tabor.rhythm;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CountNamesTest {
  private static final Meter SIX_EIGHT = Meter.of(6, 8);

  private static List<String> names(Meter meter, int beat, int beats, int slots) {
    Division division = new Division(beat, beats, slots);
    return IntStream.range(0, slots)
        .mapToObj(i -> CountNames.of(new Slot(division, i, List.of()), meter).toString())
        .toList();
  }

  @Test
  void plainBeats() {
    assertThat(names(Meter.COMMON, 0, 1, 1)).containsExactly("1");
    assertThat(names(Meter.COMMON, 0, 1, 2)).containsExactly("1", "1&");
    assertThat(names(Meter.COMMON, 1, 1, 3)).containsExactly("2", "2&", "2a");
    assertThat(names(Meter.COMMON, 3, 1, 4)).containsExactly("4", "4e", "4&", "4a");
    assertThat(names(Meter.COMMON, 0, 1, 5)).containsExactly("1", "1.2", "1.3", "1.4", "1.5");
    assertThat(names(Meter.COMMON, 0, 1, 6)).containsExactly("1", "1.2", "1.3", "1&", "1.5", "1.6");
    assertThat(names(Meter.COMMON, 0, 1, 9)).contains("1&", "1a").doesNotContain("1e");
    assertThat(names(Meter.COMMON, 0, 1, 12)).containsSequence("1.3", "1e", "1.5", "1.6", "1&");
  }

  @Test
  void dottedBeats() {
    assertThat(names(SIX_EIGHT, 1, 1, 2)).containsExactly("2", "2&");
    assertThat(names(SIX_EIGHT, 1, 1, 3)).containsExactly("2", "2&", "2a");
    assertThat(names(SIX_EIGHT, 0, 1, 4)).containsExactly("1", "1e", "1&", "1a");
    assertThat(names(SIX_EIGHT, 0, 1, 6)).containsExactly("1", "1.2", "1&", "1.4", "1a", "1.6");
    assertThat(names(SIX_EIGHT, 0, 1, 10)).doesNotContain("1&");
  }

  @Test
  void wordsOverSeveralBeatsKeepTheMetersNames() {
    assertThat(names(Meter.COMMON, 0, 2, 3)).containsExactly("1", "1.2", "1.3");
    assertThat(names(Meter.COMMON, 2, 2, 4)).containsExactly("3", "3&", "4", "4&");
    assertThat(names(Meter.COMMON, 0, 4, 6)).containsExactly("1", "1.2", "1.3", "3", "1.5", "1.6");
  }

  @Test
  void groups() {
    Slot second =
        new Slot(new Division(2, 1, 2), 1, List.of(new Slot.Part(1, 2), new Slot.Part(0, 2)));
    assertThat(CountNames.of(second, Meter.COMMON)).hasToString("3&.2");
    Slot onTheBeat = new Slot(new Division(0, 1, 4), 0, List.of(new Slot.Part(1, 3)));
    assertThat(CountNames.of(onTheBeat, Meter.COMMON)).hasToString("1.1.2");
    Slot first = new Slot(new Division(0, 1, 4), 2, List.of(new Slot.Part(0, 3)));
    assertThat(CountNames.of(first, Meter.COMMON)).hasToString("1&");
  }

  @Test
  void placesWithoutAStroke() {
    assertThat(CountNames.of(Time.of(3, 16), Meter.COMMON)).hasToString("1a");
    assertThat(CountNames.of(Time.of(1, 12), Meter.COMMON)).hasToString("1&/3");
    assertThat(CountNames.of(Time.of(9, 20), Meter.COMMON)).hasToString("2.5/5");
    assertThat(CountNames.of(Time.of(1, 8), SIX_EIGHT)).hasToString("1&");
    assertThat(CountNames.of(Time.of(3, 16), SIX_EIGHT)).hasToString("1&/2");
    Division triplet = new Division(0, 1, 3);
    assertThat(CountNames.of(triplet, Time.of(3, 16), Meter.COMMON)).hasToString("1a");
    assertThat(CountNames.of(triplet, Time.of(1, 24), Meter.COMMON)).hasToString("1.2/6");
  }

  /**
   * The table of the notation's page: which slot, counted from 0, a syllable is; -1 where it has
   * none.
   */
  @ParameterizedTest
  @CsvSource({
    "1, plain, -1, -1, -1",
    "2, plain, -1, 1, -1",
    "3, plain, -1, 1, 2",
    "4, plain, 1, 2, 3",
    "5, plain, -1, -1, -1",
    "6, plain, -1, 3, -1",
    "7, plain, -1, -1, -1",
    "8, plain, 2, 4, 6",
    "9, plain, -1, 3, 6",
    "10, plain, -1, 5, -1",
    "12, plain, 3, 6, 9",
    "1, dotted, -1, -1, -1",
    "2, dotted, -1, 1, -1",
    "3, dotted, -1, 1, 2",
    "4, dotted, 1, 2, 3",
    "5, dotted, -1, -1, -1",
    "6, dotted, -1, 2, 4",
    "8, dotted, 2, 4, 6",
    "9, dotted, -1, 3, 6",
    "10, dotted, -1, -1, -1",
    "12, dotted, -1, 4, 8",
  })
  void syllablesStandForSlots(int slots, String beat, int e, int and, int a) {
    boolean dotted = beat.equals("dotted");
    assertThat(Syllables.slot(slots, dotted, Count.Syllable.NONE)).isZero();
    assertThat(Syllables.slot(slots, dotted, Count.Syllable.E)).isEqualTo(e);
    assertThat(Syllables.slot(slots, dotted, Count.Syllable.AND)).isEqualTo(and);
    assertThat(Syllables.slot(slots, dotted, Count.Syllable.A)).isEqualTo(a);
  }
}
