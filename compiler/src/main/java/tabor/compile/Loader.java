package tabor.compile;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/** Finds the files that others use. Files are read by whoever calls the compiler, never by it. */
public interface Loader {
  /**
   * The file that {@code user} names with {@code use "written"}.
   *
   * @param user the file with the {@code use} line
   * @param written the name as written there
   */
  Found load(Path user, String written);

  /** Why a file is not there. */
  enum Trouble {
    /** There is no such file. */
    MISSING,
    /** It lies outside the folder tree, by its name or through a link. */
    OUTSIDE,
    /** It cannot be read, or is no text. */
    UNREADABLE,
    /** It is larger than a source may be. */
    TOO_LONG
  }

  /**
   * What was found.
   *
   * @param path the same for every way to name the same file
   * @param text its text; null if there is trouble
   * @param trouble why there is no text; null if there is one
   */
  record Found(Path path, @Nullable String text, @Nullable Trouble trouble) {
    /** A file with its text. */
    public static Found text(Path path, String text) {
      return new Found(path, text, null);
    }

    /** A file that could not be had. */
    public static Found trouble(Path path, Trouble trouble) {
      return new Found(path, null, trouble);
    }
  }

  /** For texts that stand alone: every file is missing. */
  Loader NONE = (user, written) -> Found.trouble(Path.of(written), Trouble.MISSING);
}
