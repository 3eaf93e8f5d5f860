package tabor.weave;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import tabor.compile.Compiled;
import tabor.compile.Loader;
import tabor.resolve.Options;

/** Finds what documents name. Files are read by whoever weaves, never here. */
public interface Lessons {
  /**
   * The lesson that a document names with {@code file=}, compiled.
   *
   * @param document the file with the block
   * @param written the name as written there
   * @param options what is asked for besides: those of a player
   */
  Found find(Path document, String written, Options options);

  /** Finds the files that notation within a document uses. */
  Loader loader(Path document);

  /**
   * What was found.
   *
   * @param lesson as compiled; null if there is trouble
   * @param trouble why there is none, in half a sentence: {@code is not there}; null if there is
   */
  record Found(@Nullable Compiled lesson, @Nullable String trouble) {
    /** A lesson. */
    public static Found of(Compiled lesson) {
      return new Found(lesson, null);
    }

    /** None, and why. */
    public static Found trouble(String why) {
      return new Found(null, why);
    }
  }

  /** For documents that stand alone. */
  Lessons NONE =
      new Lessons() {
        @Override
        public Found find(Path document, String written, Options options) {
          return Found.trouble("cannot be read here: only notation within the document is");
        }

        @Override
        public Loader loader(Path document) {
          return Loader.NONE;
        }
      };
}
