package tabor.cli;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class OneFileEachTest {
  @Test
  void namesThatAreOneFileOnSomeDiskAreRefused() {
    OneFileEach files = new OneFileEach(Path.of("out"));
    files.take("Zo\u00e9.mia.pdf", "one");
    assertThatCode(() -> files.take("Zoe.mia.pdf", "two")).doesNotThrowAnyException();
    assertThatThrownBy(() -> files.take("zoe.mia.pdf", "three"))
        .hasMessageContaining("two and three would both be written to");
    // On some disks an accent is a character of its own.
    String apart = "Zoe\u0301.mia.pdf";
    assertThatThrownBy(() -> files.take(apart, "four")).hasMessageContaining("one and four would");
  }
}
