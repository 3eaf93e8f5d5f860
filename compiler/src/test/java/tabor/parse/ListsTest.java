package tabor.parse;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import tabor.groove.Loudness;

class ListsTest {
  /** The reader may not know the model, but the two must agree. */
  @Test
  void dynamicsAreThoseOfTheModel() {
    assertThat(Lists.DYNAMICS)
        .containsExactlyElementsOf(Arrays.stream(Loudness.values()).map(Loudness::word).toList());
  }
}
