package tabor.ide;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** What sounds together with the stroke under the cursor, marked §. */
class SimultaneousTest {
  private static List<Integer> columns(String marked) {
    String text = marked.replace("§", "");
    return Simultaneous.at(MemoryFiles.alone(text), marked.indexOf('§')).stream()
        .map(span -> span.start() - LineEnds.start(text, span.start()))
        .toList();
  }

  @Test
  void strokesOfTheSameBarAndPlace() {
    String text = "groove a\n  snare : . l . l | . l . l\n  kick  : x x . . | x §x . .\n";
    assertThat(columns(text)).containsExactlyInAnyOrder(22, 22);
    assertThat(columns(text.replace("§", "").replace("x x . . |", "§x x . . |")))
        .containsExactly(10);
  }

  @Test
  void nothingOffTheStrokes() {
    assertThat(columns("groove §a\n  snare : . l . l\n")).isEmpty();
  }
}
