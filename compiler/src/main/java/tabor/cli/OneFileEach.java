package tabor.cli;

import java.nio.file.Path;
import java.text.Normalizer;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;

/** Sees to it that no two things are written to one file. */
final class OneFileEach {
  private final Map<String, String> taken = new HashMap<>();

  private final Path folder;

  /** For the files of a folder. */
  OneFileEach(Path folder) {
    this.folder = folder;
  }

  /**
   * Takes a file for something. Names that differ in case or in the way that an accent is encoded
   * are one file on some disks.
   *
   * @param file its name in the folder
   * @param owner what is written there, as a person knows it
   * @throws Failure if the file is taken
   */
  void take(String file, String owner) {
    String name = composed(file).toLowerCase(Locale.ROOT);
    String before = taken.put(name, owner);
    if (before != null) {
      throw Failure.outside(
          before
              + " and "
              + owner
              + " would both be written to "
              + folder.resolve(file)
              + "; nothing is written: rename one, or build them into different folders");
    }
  }

  /** Java's tables of accents are set up only where there may be one. */
  private static String composed(String file) {
    for (int i = 0; i < file.length(); i++) {
      if (file.charAt(i) >= 0x80) {
        return Normalizer.normalize(file, Normalizer.Form.NFC);
      }
    }
    return file;
  }
}
