package tabor.source;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Objects;

/** Texts that come with the program. */
public final class ResourceText {
  private ResourceText() {}

  /**
   * A text in UTF-8 that lies beside a class, its lines ended by LF whatever the sources were
   * checked out with. Throws {@link NullPointerException} if it is not there.
   */
  public static String of(Class<?> owner, String name) {
    try (InputStream in = owner.getResourceAsStream(name)) {
      byte[] bytes = Objects.requireNonNull(in, name).readAllBytes();
      return new String(bytes, StandardCharsets.UTF_8).replace("\r\n", "\n");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
