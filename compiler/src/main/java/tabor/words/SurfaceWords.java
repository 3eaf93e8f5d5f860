package tabor.words;

import java.util.Properties;
import org.jspecify.annotations.Nullable;
import tabor.kit.Surface;

/**
 * What the surfaces of the built-in kits are called in other languages. English says them as the
 * table of surfaces does, and so does every language a surface of the writer's own.
 */
final class SurfaceWords {
  private SurfaceWords() {}

  /** Loaded when somebody asks: reading a lesson does not. */
  private static final class Loaded {
    static final Properties WORDS = Words.properties("surfaces.properties", null);
  }

  /**
   * A form of a surface's name.
   *
   * @param form {@code ""} for the name by itself, {@code .label}, or a {@link Words.Form} such as
   *     {@code .to}
   * @return null in English, for a surface of the writer's own, and for a label like the name
   */
  static @Nullable String find(Language language, Surface surface, String form) {
    return language == Language.EN
        ? null
        : Loaded.WORDS.getProperty(language.word() + "." + surface.name() + form);
  }
}
