package tabor.emit.grid;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.groove.Lesson;
import tabor.resolve.Options;
import tabor.source.DisplayWidth;

class GridTest {
  private static Lesson lesson(String source) {
    Compiled compiled = new Compiler(Loader.NONE).compile(Path.of("a.tabor"), source, Options.NONE);
    assertThat(compiled.hasErrors()).as(source).isFalse();
    return compiled.lesson();
  }

  private static String bars(String source) {
    return Grid.bars(lesson(source).grooves().get(0));
  }

  @Test
  void twoDivisionsOfOneBeatHaveTheirOwnCounts() {
    assertThat(bars("groove a\n  hands : rlr rlr rlr rlr\n  kick : x..x . ..x. .\n"))
        .isEqualTo(
            """
            bar 1    1   &   a    2 & a  3   &   a    4 & a
                     1 e   &   a         3 e   &   a
            snare    x   x   x    x x x  x   x   x    x x x
            kick     x .   .   x  .      . .   x   .  .
            hands    R   L   R    R L R  R   L   R    R L R
            """);
  }

  @Test
  void levelsAndOrnamentsAreWrittenAsInTheNotation() {
    assertThat(bars("groove a\n  snare : R(l)r~l/ 'r . L^\n"))
        .contains("snare     X  (x)  x~  x/  'x                .                X^")
        .as("counts stand above the letters")
        .contains("bar 1     1   e   &   a    2                3                4");
  }

  @Test
  void minutesAndBarsOfAChartStandBelowEachOther() {
    String text =
        "groove a \"Eighths and a backbeat for the community hall\"\n  hihat : xx xx xx xx\n"
            + "chart c\n  play a 12 times at tempo 100\n  tempo 80 to 100 over 2 bars\n"
            + "  play a 4 times\n";
    assertThat(Grid.of(lesson(text), section -> section.name().equals("c")))
        .contains(
            "\n   - 0:00  bar  1  Eighths and a backbeat for the community hall: 12 times at\n")
        .contains("\n                   quarter = 100\n")
        .contains("\n   - 0:29  bar 13  Eighths and a")
        .containsPattern("\n   - 0:[34]\\d  in all, 16 bars\n");
  }

  @Test
  void wideBarsAreBrokenBeforeABeat() {
    String wide = "groove a\n  hands : " + "rlrlrlrlrlrlrlrl ".repeat(4).strip() + "\n";
    String grid = bars(wide);
    assertThat(grid.lines()).allMatch(line -> line.length() <= GridWriter.MOST_COLUMNS);
    assertThat(grid).contains("bar 1.3");
  }

  /** One part for each sign: what is written comes out again. */
  @Test
  void everyOrnamentHasItsOwnSign() {
    String grid = bars("groove a\n  snare : r/ r// r~ r^\n");
    assertThat(grid.lines().filter(line -> line.startsWith("snare")).findFirst().orElse(""))
        .isEqualTo("snare    x/  x// x~  x^");
    String graces = bars("groove a\n  snare : 'r ''r '''r .\n  kick : x . . .\n");
    assertThat(graces).containsSubsequence(" 'x", " ''x", "'''x");
    assertThat(bars("groove a\n  crash : r! . . .\n")).contains("x!");
  }

  @Test
  void legendNamesEachOrnament() {
    assertThat(
            Grid.of(
                lesson(
                    "groove a\n"
                        + "  snare : 'r ''r '''r r^\n"
                        + "step b\n"
                        + "  snare : r/ r// r~ .\n"
                        + "  crash : . . . r!\n"),
                any -> true))
        .contains(
            "Signs: x stroke, 'x flam, ''x drag, '''x ruff, x/ diddle, x// open roll, x~\n"
                + "buzz, x! choke, x^ rimshot, . silent\n");
  }

  @Test
  void longSectionsHaveRoomForTheNumbersOfTheirBars() {
    assertThat(bars("groove s\n  bars 12\n  ostinato snare : x x x x\n"))
        .contains("bars 10-12 1 2 3 4 |");
    assertThat(bars("groove s\n  bars 120\n  ostinato kick : x x x x\n"))
        .contains("bars 113-120 1 2 3 4 |");
  }

  @Test
  void aSwungEighthBesideATripletIsItsLastThird() {
    String source =
        "feel swing eighths 62%\n"
            + "groove a\n"
            + "  ride : rr r r r\n"
            + "  snare : lll . . .\n"
            + "step b\n"
            + "  drop ride at 1&\n";
    assertThat(bars(source)).contains("1  &  a ").contains("x  .  x ").contains("x  x  x ");
    assertThat(bars(source)).contains("RL L  RL");
    assertThat(Grid.of(lesson(source), any -> true)).contains("ride: left out on 1&");
  }

  @Test
  void theHeadNamesTheKitThatIsPlayedWhereverItWasMade() {
    Compiled compiled =
        new Compiler(
                (user, name) ->
                    Loader.Found.text(Path.of("kits.tabor"), "kit hall like five-piece\n"))
            .compile(
                Path.of("a.tabor"),
                "on hall\nuse \"kits.tabor\"\ngroove a\n  kick : x . . .\n",
                Options.NONE);
    assertThat(Grid.of(compiled.lesson(), any -> true)).contains("quarter = 90, hall kit\n");
  }

  @Test
  void whatAKitLacksIsToldOnce() {
    String grid =
        Grid.of(
            lesson("on junior\ngroove a\n  right : c m t .\nstep b\n  add tom2 with right at 4\n"),
            any -> true);
    assertThat(grid)
        .containsOnlyOnce("on this kit: crash on the ride, second tom on the floor tom\n");
  }

  @Test
  void legendNamesOnlyWhatIsUsed() {
    String grid = Grid.of(lesson("groove a\n  hands : R(l)rl r l r\n"), any -> true);
    assertThat(grid).endsWith("\nSigns: x stroke, X accent, (x) ghost, . silent\n");
  }

  @Test
  void hostileTitlesStayOnTheirLine() {
    String source = "title \"A\u202Eb\u0007\tc\"\ngroove a \"T\u2028u\"\n  hands : r r r r\n";
    assertThat(Grid.of(lesson(source), any -> true)).startsWith("Ab c\n").contains("1. Tu (a)\n");
  }

  @Test
  void aStepWithoutChangesSaysSo() {
    assertThat(Grid.of(lesson("groove a\n  kick : x . . .\nstep b\n"), any -> true))
        .contains("2. b\n   as before\n");
  }

  /** Every stroke stands in one column, under its count, and no line is too long. */
  @Property(tries = 150)
  void everyStrokeIsShownOnce(
      @ForAll @IntRange(min = 1, max = 12) int first,
      @ForAll @IntRange(min = 1, max = 12) int second,
      @ForAll @IntRange(min = 1, max = 9) int third) {
    String hands = "rl".repeat(6).substring(0, first) + " r " + "lr".repeat(6).substring(0, third);
    String source =
        "groove a\n  time 3/4\n  hands : "
            + hands
            + "\n  kick : x "
            + "x".repeat(second)
            + " x.x\n";
    String grid = bars(source);
    assertThat(grid.chars().filter(c -> c == 'x').count())
        .isEqualTo(first + 1 + third + second + 3);
    assertThat(grid.lines().mapToInt(DisplayWidth::of).max().orElse(0)).isLessThanOrEqualTo(100);
  }
}
