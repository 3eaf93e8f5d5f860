package tabor.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.resolve.Options;

class LongFileTest {
  /** A benchmark of a text with errors would measure something else. */
  @Test
  void isFineAndHasTheBars() {
    Compiled compiled =
        new Compiler(Loader.NONE)
            .compile(Path.of("long.tabor"), LongFile.ofBars(1000), Options.NONE);
    assertThat(compiled.diagnostics()).isEmpty();
    assertThat(compiled.lesson().grooves().stream().mapToInt(groove -> groove.bars()).sum())
        .isEqualTo(1000);
  }
}
