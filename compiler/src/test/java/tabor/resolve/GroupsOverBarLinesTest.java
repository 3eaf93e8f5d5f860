package tabor.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.groove.Groove;
import tabor.groove.Stroke;

/**
 * Slots of a played pattern that cross a bar line: what they hold is in the bar where it sounds.
 */
class GroupsOverBarLinesTest {
  private static List<String> places(String text) {
    List<Groove> grooves =
        new Compiler(Loader.NONE)
            .compile(Path.of("g.tabor"), text, Options.NONE)
            .lesson()
            .grooves();
    Groove last = grooves.get(grooves.size() - 1);
    return last.strokes().stream().map(GroupsOverBarLinesTest::place).toList();
  }

  private static String place(Stroke stroke) {
    return stroke.bar() + " " + stroke.at();
  }

  @Test
  void aGroupGoesOnInTheNextBar() {
    // Slots of a twelfth: the eighth one of bar 1 runs from 7/12 to 2/3, over the line at 5/8.
    String text =
        "time 5/8\npattern p : .......{rr}\ngroove g\n  bars 2\n  hands play p in triplets\n";
    assertThat(places(text)).startsWith("1 7/12", "2 0");
  }

  @Test
  void behindTheEndThereIsNothing() {
    String text =
        "time 5/8\npattern p : .......{rr}\ngroove g\n  bars 1\n  hands play p in triplets\n";
    assertThat(places(text)).containsExactly("1 7/12");
  }
}
