package tabor.groove;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.emit.grid.Grid;
import tabor.resolve.Options;

/** A chart that is cut reads like the chart whose lines were never written. */
class ChartCutProperties {
  private static final List<String> NAMES = List.of("pad", "beat", "waltz", "fill");

  private static final String SECTIONS =
      """
      title "Along"
      tempo 80
      groove pad
        snare : xx xx xx xx
      groove beat
        tempo 92
        hihat : xx xx xx xx
        kick  : x  .  x  .
      groove waltz
        time 3/4
        snare : x x x
      groove fill
        snare : xxxx xxxx xxxx xxxx
      chart along
      """;

  private static Lesson lesson(String source) {
    Compiled compiled =
        new Compiler(Loader.NONE).compile(Path.of("chart.tabor"), source, Options.NONE);
    assertThat(compiled.hasErrors()).as(source).isFalse();
    return compiled.lesson();
  }

  private static String read(Lesson lesson, Chart chart) {
    Lesson alone =
        new Lesson(lesson.file(), lesson.title(), lesson.by(), lesson.setting(), List.of(chart));
    return Grid.of(alone, section -> true);
  }

  @Property(tries = 150)
  void asIfTheRestHadNotBeenWritten(@ForAll long seed) {
    Random random = new Random(seed);
    Set<String> left = new HashSet<>();
    NAMES.stream().filter(name -> random.nextBoolean()).forEach(left::add);
    StringBuilder whole = new StringBuilder(SECTIONS);
    StringBuilder reduced = new StringBuilder(SECTIONS);
    boolean plays = false;
    int lines = 1 + random.nextInt(5);
    for (int i = 0; i < lines; i++) {
      if (random.nextInt(3) == 0) {
        String between = random.nextBoolean() ? "  rest 5 seconds\n" : "  click off\n";
        whole.append(between);
        reduced.append(between);
      }
      StringBuilder bound = new StringBuilder();
      bound.append(random.nextInt(3) == 0 ? "  mark \"" + (char) ('A' + i) + "\"\n" : "");
      bound.append(random.nextInt(3) == 0 ? "  cue \"Softly\"\n" : "");
      bound.append(random.nextInt(3) == 0 ? "  count-in 1 bar\n" : "");
      Line line = line(random, left);
      whole.append(bound).append(line.written());
      if (!line.left().isEmpty()) {
        reduced.append(bound).append(line.left());
        plays = true;
      }
    }
    Lesson all = lesson(whole.toString());
    Optional<Chart> cut = ChartCut.of(all.charts().get(0), left);
    assertThat(cut.isPresent()).as(whole.toString()).isEqualTo(plays);
    if (cut.isPresent()) {
      Lesson less = lesson(reduced.toString());
      assertThat(read(all, cut.get()))
          .as(whole + "\nwithout all but " + left)
          .isEqualTo(read(less, less.charts().get(0)));
    }
  }

  /** A line, and what is left of it; empty for nothing. */
  private record Line(String written, String left) {}

  private static Line line(Random random, Set<String> left) {
    String one = NAMES.get(random.nextInt(3));
    String other = NAMES.get(random.nextInt(3));
    switch (random.nextInt(4)) {
      case 0 -> {
        String fill = random.nextBoolean() && !one.equals("waltz") ? " fill fill" : "";
        String kept = left.contains("fill") ? fill : "";
        return one(one, "  play " + one + " 4 times", fill, kept, left);
      }
      case 1 -> {
        String some =
            List.of(one, other).stream()
                .filter(left::contains)
                .reduce("", (a, b) -> a.isEmpty() ? b : a + " " + b);
        return new Line(
            "  play " + one + " " + other + " 2 times\n",
            some.isEmpty() ? "" : "  play " + some + " 2 times\n");
      }
      case 2 -> {
        return one(one, "  climb " + one + " from 60 to 80 by 10 every 2 times", "", "", left);
      }
      default -> {
        return one(one, "  trade " + one + " 1 bar 3 times", "", "", left);
      }
    }
  }

  private static Line one(String name, String line, String fill, String kept, Set<String> left) {
    return new Line(line + fill + "\n", left.contains(name) ? line + kept + "\n" : "");
  }
}
