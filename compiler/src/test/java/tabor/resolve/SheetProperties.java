package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import tabor.compile.Compiled;
import tabor.diagnostic.Severity;
import tabor.groove.Groove;
import tabor.groove.Sheet;

/** Sheets against what they stand for: steps written out by hand, and the number of choices. */
class SheetProperties {
  private static final List<String> COUNTS =
      List.of("1", "1&", "2", "2&", "3", "3&", "4", "4&", "1e/4", "2a/4", "3e/4", "4a/4");

  /** A line of a sheet: as written there, and what it is in a step for each of its choices. */
  private record Written(String line, List<String> choices) {
    static Written plain(String line) {
      return new Written(line, List.of());
    }
  }

  private final List<Written> lines = new ArrayList<>();
  private int bars;

  private String beat() {
    return "groove beat\n hihat : "
        + "xx xx xx xx | ".repeat(bars - 1)
        + "xx xx xx xx\n snare : "
        + ". x . x | ".repeat(bars - 1)
        + ". x . x\n kick : "
        + "x . . . | ".repeat(bars - 1)
        + "x . . .\n";
  }

  private static List<String> places(Random random, int least) {
    List<String> all = new ArrayList<>(COUNTS);
    java.util.Collections.shuffle(all, random);
    return all.subList(0, least + random.nextInt(3));
  }

  private static String bar(Random random) {
    String[] words = {"x", ".", "xx", ".x", "x..x", "X", "(x)"};
    StringBuilder bar = new StringBuilder();
    for (int beat = 0; beat < 4; beat++) {
      bar.append(beat == 0 ? "" : " ").append(words[random.nextInt(words.length)]);
    }
    return bar.toString();
  }

  /** Strokes of the hi-hat are never taken away, so that a change of them finds some. */
  private Written line(Random random) {
    String[] edits = {"add kick at ", "add tom1 at ", "add kick with right accented at "};
    String edit = edits[random.nextInt(edits.length)];
    List<String> choices = new ArrayList<>();
    switch (random.nextInt(8)) {
      case 0 -> {
        return Written.plain("accent hihat at 1 3");
      }
      case 1 -> {
        return Written.plain("add kick at " + COUNTS.get(random.nextInt(COUNTS.size())));
      }
      case 2 -> {
        List<String> bodies = new ArrayList<>();
        for (int i = 0; i < 1 + random.nextInt(3); i++) {
          String bar = bar(random);
          bodies.add(bar);
          choices.add("kick : " + (bar + " | ").repeat(bars - 1) + bar);
        }
        return new Written("each kick : " + String.join(" | ", bodies), choices);
      }
      case 3 -> {
        List<String> groups = new ArrayList<>();
        for (int i = 0; i < 2 + random.nextInt(2); i++) {
          String group = String.join(" ", places(random, 1));
          groups.add(group);
          choices.add(edit + group);
        }
        return new Written("each " + edit + String.join(" | ", groups), choices);
      }
      case 4 -> {
        List<String> places = places(random, 3);
        for (int i = 0; i < places.size(); i++) {
          for (int j = i + 1; j < places.size(); j++) {
            choices.add(edit + places.get(i) + " " + places.get(j));
          }
        }
        return new Written("each " + edit + "2 of " + String.join(" ", places), choices);
      }
      case 5 -> {
        for (int bar = 1; bar <= bars; bar++) {
          choices.add("ghost hihat in bar " + bar);
        }
        return new Written("each ghost hihat in bars 1" + (bars > 1 ? " to " + bars : ""), choices);
      }
      case 6 -> {
        for (int beat = 1; beat <= 4; beat++) {
          choices.add("accent hihat at " + beat + "&");
        }
        return new Written("each accent hihat at every &", choices);
      }
      default -> {
        List<String> places = places(random, 1);
        places.forEach(place -> choices.add(edit + place));
        return new Written("each " + edit + String.join(" ", places), choices);
      }
    }
  }

  @Property(tries = 120)
  void aVariationIsTheStepThatHasItsLineWrittenOut(@ForAll long seed) {
    Random random = new Random(seed);
    lines.clear();
    bars = 1 + random.nextInt(2);
    lines.add(new Written("each swap hands", List.of("swap hands")));
    for (int i = 0; i < 1 + random.nextInt(4); i++) {
      lines.add(line(random));
    }
    StringBuilder sheet = new StringBuilder(beat()).append("sheet s \"S\" from beat\n");
    lines.forEach(line -> sheet.append(' ').append(line.line()).append('\n'));
    Compiled compiled = Compact.compile(sheet.toString());
    if (compiled.diagnostics().stream().anyMatch(d -> d.severity() == Severity.ERROR)) {
      // Two limbs may meet on one place: then the step says so too.
      assertThat(steps().stream().anyMatch(Step::wrong)).as(sheet.toString()).isTrue();
      return;
    }
    List<String> wanted = new ArrayList<>();
    for (Step step : steps()) {
      assertThat(step.wrong()).as(sheet.toString()).isFalse();
      if (!wanted.contains(step.strokes())) {
        wanted.add(step.strokes());
      }
    }
    Sheet made = compiled.lesson().sheets().get(0);
    assertThat(made.grooves().stream().map(SheetProperties::strokes).toList())
        .as(sheet.toString())
        .isEqualTo(wanted);
    for (int i = 0; i < made.grooves().size(); i++) {
      assertThat(made.grooves().get(i).name()).isEqualTo("s-" + (i + 1));
    }
  }

  private record Step(String strokes, boolean wrong) {}

  /** Each choice of each line as a step of its own, the other lines that vary taken out. */
  private List<Step> steps() {
    List<Step> steps = new ArrayList<>();
    for (Written varied : lines) {
      for (String choice : varied.choices()) {
        StringBuilder text = new StringBuilder(beat()).append("step t from beat\n");
        for (Written line : lines) {
          if (line == varied) {
            text.append(' ').append(choice).append('\n');
          } else if (line.choices().isEmpty()) {
            text.append(' ').append(line.line()).append('\n');
          }
        }
        Compiled compiled = Compact.compile(text.toString());
        boolean wrong =
            compiled.diagnostics().stream().anyMatch(d -> d.severity() == Severity.ERROR);
        List<Groove> grooves = compiled.lesson().grooves();
        steps.add(new Step(strokes(grooves.get(grooves.size() - 1)), wrong));
      }
    }
    return steps;
  }

  private static String strokes(Groove groove) {
    return groove.bars() + ": " + Compact.of(groove);
  }

  /** Pascal's triangle: each number is the sum of the two above it. */
  @Property(tries = 60)
  void choicesOfPlacesAreAsManyAsPascalsTriangleSays(
      @ForAll @IntRange(min = 1, max = 11) int all,
      @ForAll @IntRange(min = 1, max = 12) int taken) {
    long[] row = new long[all + 2];
    row[0] = 1;
    for (int i = 1; i <= all; i++) {
      for (int j = i; j > 0; j--) {
        row[j] += row[j - 1];
      }
    }
    String text =
        "groove beat\n hihat : xx xx xx xx\nsheet s \"S\" from beat\n each add kick at "
            + taken
            + " of "
            + String.join(" ", COUNTS.subList(0, all))
            + "\n";
    List<String> problems = Compact.problems(text);
    if (taken > all) {
      assertThat(problems).containsExactly("4 syntax");
    } else if (row[taken] > 64) {
      assertThat(problems).containsExactly("4 too-long");
    } else {
      assertThat(problems).isEmpty();
      assertThat(Compact.compile(text).lesson().sheets().get(0).variations())
          .hasSize((int) row[taken]);
    }
  }
}
