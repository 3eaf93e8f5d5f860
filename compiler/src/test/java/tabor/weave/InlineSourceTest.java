package tabor.weave;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.resolve.Options;
import tabor.rhythm.Time;

class InlineSourceTest {
  private static Groove groove(String words) throws Trouble {
    String source = InlineSource.of(words);
    var compiled = new Compiler(Loader.NONE).compile(Path.of("inline"), source, Options.NONE);
    assertThat(compiled.hasErrors()).as(source).isFalse();
    return compiled.lesson().grooves().get(0);
  }

  private static List<Time> times(Groove groove) {
    return groove.strokes().stream().map(Stroke::at).toList();
  }

  @Test
  void aRowOfEightIsTwoBeatsOfSixteenths() throws Trouble {
    Groove groove = groove("RlrrLrll");
    assertThat(groove.meter().signature()).isEqualTo("2/4");
    assertThat(groove.bars()).isEqualTo(1);
    assertThat(groove.strokes()).hasSize(8);
    assertThat(times(groove).get(3)).isEqualTo(Time.of(3, 16));
  }

  @Test
  void aRowThatDoesNotComeOutIsEighths() throws Trouble {
    Groove groove = groove("rlrlr");
    assertThat(groove.meter().signature()).isEqualTo("5/8");
    assertThat(times(groove).get(4)).isEqualTo(Time.of(4, 8));
  }

  @Test
  void wordsAreBeats() throws Trouble {
    Groove groove = groove("rlr lrl");
    assertThat(groove.meter().signature()).isEqualTo("2/4");
    assertThat(times(groove).get(1)).isEqualTo(Time.of(1, 12));
    assertThat(groove("r l | l r").bars()).isEqualTo(2);
    assertThat(groove("rlr:2 l").meter().signature()).isEqualTo("3/4");
  }

  @Test
  void partsHaveHeadings() throws Trouble {
    Groove groove = groove("snare : ..x. ..x.; kick: x... x...");
    assertThat(groove.strokes()).hasSize(4);
    assertThat(groove.meter().signature()).isEqualTo("2/4");
  }

  @Test
  void everyRowUpToItsLimitMakesALesson() throws Trouble {
    for (int n = 1; n <= 64; n++) {
      Groove groove = groove("r".repeat(n));
      assertThat(groove.bars()).as(n + " strokes").isEqualTo(1);
      assertThat(groove.strokes()).hasSize(n);
    }
  }
}
