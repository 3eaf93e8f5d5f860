package tabor.testing;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Texts that are compared exactly with a file under {@code src/test/resources}. Run once with
 * {@code -Dtabor.goldens=write} to write them anew; the build never does.
 */
public final class Goldens {
  private static final Path ROOT = Path.of("src", "test", "resources");

  private Goldens() {}

  /** Fails unless {@code actual} is the text of the golden {@code name}, a path with slashes. */
  public static void check(String name, String actual) {
    Path file = ROOT.resolve(name);
    try {
      if ("write".equals(System.getProperty("tabor.goldens"))) {
        Files.createDirectories(file.getParent());
        Files.writeString(file, actual);
      }
      assertThat(Files.exists(file)).as("golden " + name + " is there").isTrue();
      assertThat(actual).as(name).isEqualTo(Files.readString(file, StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The text of a file under {@code src/test/resources}. */
  public static String resource(String name) {
    try {
      return Files.readString(ROOT.resolve(name));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
