package tabor.emit.engrave;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.emit.font.OpenFont;
import tabor.groove.Groove;
import tabor.notation.Speller;
import tabor.resolve.Options;

/** Breaks are the best that there are, and those that a reader expects. */
class LineBreaksProperties {
  private static LineBreaks.Measured measured(List<Double> wants) {
    double[] want = wants.stream().mapToDouble(Double::doubleValue).toArray();
    double[] comfort = wants.stream().mapToDouble(w -> w * 0.7).toArray();
    double[] least = wants.stream().mapToDouble(w -> w * 0.55).toArray();
    List<Integer> numbers = IntStream.rangeClosed(1, want.length).boxed().toList();
    return new LineBreaks.Measured(numbers, want, comfort, least, 92, 95);
  }

  /** Every way to cut so many bars into lines. */
  private static List<List<Integer>> all(int count) {
    List<List<Integer>> ways = new ArrayList<>();
    for (int mask = 0; mask < 1 << (count - 1); mask++) {
      List<Integer> starts = new ArrayList<>(List.of(0));
      for (int i = 1; i < count; i++) {
        if ((mask >> (i - 1) & 1) == 1) {
          starts.add(i);
        }
      }
      ways.add(starts);
    }
    return ways;
  }

  @Property(tries = 150)
  void nothingIsCheaper(
      @ForAll @Size(min = 1, max = 10) List<@DoubleRange(min = 6, max = 70) Double> wants,
      @ForAll @IntRange(max = 12) int forced) {
    Set<Integer> starts = forced == 0 ? Set.of() : Set.of(forced);
    LineBreaks breaks = new LineBreaks(List.of(measured(wants)), new LineWishes(0, starts));
    List<Integer> best = breaks.best();
    double least = all(wants.size()).stream().mapToDouble(breaks::cost).min().orElseThrow();
    assertThat(breaks.cost(best)).isBetween(least - 1e-9, least + 1e-9).isFinite();
    if (forced > 1 && forced <= wants.size()) {
      assertThat(best).contains(forced - 1);
    }
  }

  @Property(tries = 60)
  void sectionsBrokenAlikeLoseLeastTogether(
      @ForAll @Size(8) List<@DoubleRange(min = 10, max = 40) Double> one,
      @ForAll @Size(8) List<@DoubleRange(min = 10, max = 40) Double> two) {
    LineBreaks breaks = new LineBreaks(List.of(measured(one), measured(two)), LineWishes.NONE);
    double least = all(8).stream().mapToDouble(breaks::cost).min().orElseThrow();
    assertThat(breaks.cost(breaks.best())).isBetween(least - 1e-9, least + 1e-9);
  }

  private static Groove groove(String words, int bars) {
    String text = "groove g\n  bars " + bars + "\n  ostinato hihat : " + words + "\n";
    return new Compiler(Loader.NONE)
        .compile(java.nio.file.Path.of("breaks.tabor"), text, Options.NONE)
        .lesson()
        .grooves()
        .get(0);
  }

  private static String lines(Engraving engraving) {
    List<String> counts = new ArrayList<>();
    for (Engraving.StaffSystem system : engraving.systems()) {
      long bars = system.moments().stream().map(Engraving.Moment::bar).distinct().count();
      counts.add(Long.toString(bars));
    }
    return String.join("+", counts);
  }

  @ParameterizedTest
  @CsvSource({
    "xx xx xx xx, 4, 4",
    "xx xx xx xx, 8, 4+4",
    "xx xx xx xx, 10, 5+5",
    "xx xx xx xx, 16, 4+4+4+4",
    "xxxx xxxx xxxx xxxx, 6, 3+3",
    "xxxx xxxx xxxx xxxx, 8, 2+2+2+2",
  })
  void equalBarsAreSpreadEvenly(String words, int bars, String expected) {
    Look look = Look.FULL;
    Engraving engraving = Engraver.engrave(Speller.spell(groove(words, bars)), look, font());
    assertThat(lines(engraving)).isEqualTo(expected);
  }

  @ParameterizedTest
  @CsvSource({"xxxx xxxx xxxx xxxx, 7", "xxxx xxxx xxxx xxxx, 5"})
  void noBarIsLeftAlone(String words, int bars) {
    Engraving engraving = Engraver.engrave(Speller.spell(groove(words, bars)), Look.FULL, font());
    assertThat(lines(engraving).split("\\+", -1)).allMatch(n -> List.of("2", "3").contains(n));
  }

  @ParameterizedTest
  @CsvSource({
    "xx xx xx xx, 8, 2, 2+2+2+2",
    "xx xx xx xx, 7, 3, 3+3+1",
    // Eight bars of sixteenths cannot be read in one line: fewer, evenly.
    "xxxx xxxx xxxx xxxx, 8, 8, 3+3+2",
  })
  void barsALine(String words, int bars, int wanted, String expected) {
    Look look = Look.FULL.withLines(new LineWishes(wanted, Set.of()));
    Engraving engraving = Engraver.engrave(Speller.spell(groove(words, bars)), look, font());
    assertThat(lines(engraving)).isEqualTo(expected);
  }

  @ParameterizedTest
  @CsvSource({"xx xx xx xx, 8, 4", "x x x x, 4, 3"})
  void aLineBeginsWhereItIsAskedTo(String words, int bars, int start) {
    Look look = Look.FULL.withLines(new LineWishes(0, Set.of(start)));
    Engraving engraving = Engraver.engrave(Speller.spell(groove(words, bars)), look, font());
    assertThat(engraving.systems()).anyMatch(system -> system.moments().get(0).bar() == start);
  }

  private static OpenFont font() {
    return OpenFont.get();
  }
}
