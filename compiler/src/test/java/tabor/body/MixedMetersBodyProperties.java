package tabor.body;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.groove.Groove;
import tabor.resolve.Options;

/**
 * Bars of quarters in turn are played as one long bar of all these quarters is: the same hands, the
 * same findings.
 */
class MixedMetersBodyProperties {
  private static final List<String> WORDS =
      List.of("x", "xx", "xxxx", ".", "x.xx", "xxx", ".x", "x/", "'x", "xxxxxxxx");

  @Property(tries = 150)
  void barlinesChangeNothing(@ForAll long seed) {
    Random random = new Random(seed);
    List<Integer> cycle = new ArrayList<>();
    for (int i = 0; i < 2 + random.nextInt(3); i++) {
      cycle.add(2 + random.nextInt(4));
    }
    int rounds = 1 + random.nextInt(2);
    int all = rounds * cycle.stream().mapToInt(n -> n).sum();
    String tempo = "tempo " + (60 + random.nextInt(200)) + "\n";
    StringBuilder mixed = new StringBuilder("time");
    cycle.forEach(count -> mixed.append(' ').append(count).append("/4"));
    mixed.append('\n').append(tempo).append("groove g\n");
    StringBuilder one = new StringBuilder("time " + all + "/4\n" + tempo + "groove g\n");
    for (String part : List.of("hihat", "snare", "kick")) {
      mixed.append("  ").append(part).append(" :");
      one.append("  ").append(part).append(" :");
      for (int round = 0; round < rounds; round++) {
        for (int i = 0; i < cycle.size(); i++) {
          mixed.append(round + i == 0 ? "" : " |");
          for (int beat = 0; beat < cycle.get(i); beat++) {
            String word = " " + WORDS.get(random.nextInt(WORDS.size())) + ":1";
            mixed.append(word);
            one.append(word);
          }
        }
      }
      mixed.append('\n');
      one.append('\n');
    }
    Compiled a = compiled(mixed.toString());
    Compiled b = compiled(one.toString());
    assertThat(played(a)).as("%s", mixed).isEqualTo(played(b));
    assertThat(found(a)).as("%s", mixed).isEqualTo(found(b));
  }

  private static Compiled compiled(String text) {
    return new Compiler(Loader.NONE).compile(Path.of("lesson.tabor"), text, Options.NONE);
  }

  private static List<String> played(Compiled compiled) {
    Groove groove = compiled.lesson().grooves().get(0);
    return groove.strokes().stream()
        .map(s -> groove.position(s) + " " + s.limb() + " " + s.surface().name())
        .toList();
  }

  private static List<String> found(Compiled compiled) {
    return compiled.diagnostics().stream()
        .map(found -> found.code() + " " + found.severity())
        .sorted()
        .toList();
  }
}
