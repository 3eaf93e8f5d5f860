package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class NaturalOrderTest {
  @Test
  void numbersCountAsNumbers() {
    List<Path> sorted =
        List.of(
            Path.of("autumn", "week-2.tabor"),
            Path.of("autumn", "week-02.tabor"),
            Path.of("autumn", "week-3b.tabor"),
            Path.of("autumn", "week-10.tabor"),
            Path.of("autumn", "week-99999999999999999999.tabor"),
            Path.of("Spring", "week-1.tabor"),
            Path.of("spring", "week-1.tabor"),
            Path.of("spring", "week-1", "a.tabor"));
    for (int seed = 0; seed < 20; seed++) {
      List<Path> mixed = new ArrayList<>(sorted);
      Collections.shuffle(mixed, new Random(seed));
      mixed = NaturalOrder.sorted(mixed);
      assertThat(mixed.stream().map(Path::toString).filter(name -> !name.contains("02")))
          .containsSubsequence(
              Path.of("autumn", "week-2.tabor").toString(),
              Path.of("autumn", "week-3b.tabor").toString(),
              Path.of("autumn", "week-10.tabor").toString(),
              Path.of("autumn", "week-99999999999999999999.tabor").toString(),
              Path.of("spring", "week-1.tabor").toString());
      assertThat(mixed).as("one order for all").isEqualTo(order(sorted));
    }
  }

  private static List<Path> order(List<Path> paths) {
    return NaturalOrder.sorted(paths);
  }
}
