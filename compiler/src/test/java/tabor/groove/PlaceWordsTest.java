package tabor.groove;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import tabor.kit.Limb;
import tabor.testing.Sketch;

/** Where strokes stand, in words that lead back to them. */
class PlaceWordsTest {
  @Provide
  Arbitrary<List<List<Integer>>> places() {
    Arbitrary<List<Integer>> bar =
        Arbitraries.integers()
            .between(0, 15)
            .set()
            .ofMaxSize(4)
            .map(s -> List.copyOf(new TreeSet<>(s)));
    Arbitrary<List<Integer>> beats = Arbitraries.of(List.of(0, 4, 8, 12), List.of(2, 6, 10, 14));
    // Few different bars, so that some are alike.
    return Arbitraries.oneOf(bar, beats)
        .list()
        .ofSize(2)
        .flatMap(
            two ->
                Arbitraries.of(List.<List<Integer>>of(List.of(), two.get(0), two.get(1)))
                    .list()
                    .ofMinSize(1)
                    .ofMaxSize(12));
  }

  @Property
  void placesInWordsLeadBackToThem(@ForAll("places") List<List<Integer>> bars) {
    Sketch sketch = Sketch.groove("g").bars(bars.size());
    TreeSet<String> there = new TreeSet<>();
    for (int bar = 1; bar <= bars.size(); bar++) {
      for (int at : bars.get(bar - 1)) {
        char[] word = "....".toCharArray();
        word[at % 4] = 'x';
        sketch.word(bar, at / 4, Limb.LEFT_HAND, "snare", new String(word));
        there.add(bar + ":" + at);
      }
    }
    if (there.isEmpty()) {
      return;
    }
    Groove groove = sketch.done();
    new PlaceWords(groove, Terms.PLAIN)
        .of(groove.strokes())
        .filter(words -> !words.matches(".* in \\d+ bars.*"))
        .ifPresent(words -> assertThat(read(words, bars.size())).as(words).isEqualTo(there));
  }

  /** Reads {@code on every beat and &, 1e and 2e in bars 2 to 4, on 3 in bar 1}. */
  private static Set<String> read(String words, int all) {
    Set<String> places = new TreeSet<>();
    for (String phrase : words.split("(^|, )on ", -1)) {
      if (phrase.isEmpty()) {
        continue;
      }
      String[] halves = phrase.split(" in ", 2);
      List<Integer> bars = bars(halves.length == 1 ? "" : halves[1], all);
      boolean every = false;
      for (String count : halves[0].split(", | and ", -1)) {
        if (count.startsWith("every ")) {
          every = true;
        }
        String name = count.replace("every ", "");
        boolean numbered = Character.isDigit(name.charAt(0));
        every &= !numbered;
        String syllable = numbered ? name.substring(1) : name.replace("beat", "");
        int in = Arrays.asList("", "e", "&", "a").indexOf(syllable);
        for (int beat = 0; beat < 4; beat++) {
          if (every || name.charAt(0) - '1' == beat) {
            for (int bar : bars) {
              places.add(bar + ":" + (beat * 4 + in));
            }
          }
        }
      }
    }
    return places;
  }

  private static List<Integer> bars(String words, int all) {
    List<Integer> bars = new ArrayList<>();
    if (words.startsWith("every ")) {
      int step = Integer.parseInt(words.replaceAll("\\D", ""));
      assertThat(words).isEqualTo("every " + ordinal(step) + " bar");
      for (int bar = step; bar <= all; bar += step) {
        bars.add(bar);
      }
    } else if (words.contains(" to ")) {
      String[] ends = words.replace("bars ", "").split(" to ", -1);
      for (int bar = Integer.parseInt(ends[0]); bar <= Integer.parseInt(ends[1]); bar++) {
        bars.add(bar);
      }
    } else if (words.isEmpty()) {
      for (int bar = 1; bar <= all; bar++) {
        bars.add(bar);
      }
    } else {
      for (String bar : words.replaceFirst("bars? ", "").split(", | and ", -1)) {
        bars.add(Integer.valueOf(bar));
      }
    }
    return bars;
  }

  private static String ordinal(int n) {
    return switch (n) {
      case 2 -> "2nd";
      case 3 -> "3rd";
      default -> n + "th";
    };
  }

  /** The places of one stroke on 1 in each of these bars. */
  private static String inBars(int all, int... bars) {
    Sketch sketch = Sketch.groove("g").bars(all);
    for (int bar : bars) {
      sketch.word(bar, 0, Limb.LEFT_HAND, "snare", "x");
    }
    Groove groove = sketch.done();
    return new PlaceWords(groove, Terms.PLAIN).of(groove.strokes()).orElse("too many");
  }

  @Test
  void barsAreNamedShortly() {
    assertThat(inBars(12, 4, 8, 12)).isEqualTo("on 1 in every 4th bar");
    assertThat(inBars(14, 4, 8, 12)).isEqualTo("on 1 in every 4th bar");
    assertThat(inBars(16, 4, 8, 12)).isEqualTo("on 1 in bars 4, 8 and 12");
    assertThat(inBars(12, 4, 8)).isEqualTo("on 1 in bars 4 and 8");
    assertThat(inBars(6, 2, 4, 6)).isEqualTo("on 1 in every 2nd bar");
    assertThat(inBars(63, 21, 42, 63)).isEqualTo("on 1 in every 21st bar");
    assertThat(inBars(66, 22, 44, 66)).isEqualTo("on 1 in every 22nd bar");
    assertThat(inBars(69, 23, 46, 69)).isEqualTo("on 1 in every 23rd bar");
    assertThat(inBars(33, 11, 22, 33)).isEqualTo("on 1 in every 11th bar");
    assertThat(inBars(36, 12, 24, 36)).isEqualTo("on 1 in every 12th bar");
    assertThat(inBars(39, 13, 26, 39)).isEqualTo("on 1 in every 13th bar");
    assertThat(inBars(9, 2, 3, 4)).isEqualTo("on 1 in bars 2 to 4");
    assertThat(inBars(9, 1, 2, 3, 4, 5, 6, 7)).isEqualTo("on 1 in bars 1 to 7");
    assertThat(inBars(9, 1, 2, 4, 5, 7, 8)).isEqualTo("on 1 in bars 1, 2, 4, 5, 7 and 8");
    assertThat(inBars(9, 1, 2, 4, 5, 6, 7, 8)).isEqualTo("on 1 in 7 bars");
    assertThat(inBars(4, 1, 2, 3, 4)).isEqualTo("on 1");
    assertThat(inBars(4, 3)).isEqualTo("on 1 in bar 3");
  }

  @Test
  void thePickupIsNoNumber() {
    Groove pickup =
        Sketch.groove("g").pickup(1).part(Limb.LEFT_HAND, "snare", "x | x . . .").done();
    assertThat(new PlaceWords(pickup, Terms.PLAIN).of(pickup.strokes().subList(0, 1)))
        .contains("on 4 in the pickup");
    assertThat(new PlaceWords(pickup, Terms.PLAIN).barNames(List.of(0))).isEqualTo("the pickup");
  }

  /** A list that nobody would read is not made. */
  @Test
  void tooManyPlacesAreOnlyCounted() {
    Groove six = Sketch.groove("g").part(Limb.LEFT_HAND, "snare", "x.x. xx.. x..x .").done();
    assertThat(new PlaceWords(six, Terms.PLAIN).of(six.strokes()))
        .contains("on 1, 1&, 2, 2e, 3 and 3a");
    Groove seven = Sketch.groove("g").part(Limb.LEFT_HAND, "snare", "x.x. xx.. x..x .x..").done();
    assertThat(new PlaceWords(seven, Terms.PLAIN).of(seven.strokes())).isEmpty();
  }
}
