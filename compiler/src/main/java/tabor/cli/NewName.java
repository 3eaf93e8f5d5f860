package tabor.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.regex.Pattern;

/** Names that can be those of a file on every system, and what they are called in print. */
final class NewName {
  private static final int LONGEST = 100;
  private static final Pattern GOOD =
      Pattern.compile("[\\p{L}\\p{N}](?:[\\p{L}\\p{M}\\p{N} ._-]*[\\p{L}\\p{M}\\p{N}_-])?");

  /** Names that Windows keeps for devices, whatever their ending. */
  private static final Pattern DEVICE =
      Pattern.compile("(?:con|prn|aux|nul|com[0-9]|lpt[0-9])(?:\\..*)?");

  private NewName() {}

  /** The last part of a path, if it is a good name; else fails with a sentence. */
  static String check(Path path, String word) {
    Path last = path.getFileName();
    String name = last == null ? "" : last.toString();
    if (!GOOD.matcher(name).matches()) {
      throw Failure.usage(
          "a name begins with a letter or a digit, and takes spaces and - _ . within; "
              + word
              + " does not do");
    }
    if (name.length() > LONGEST) {
      throw Failure.usage("a name has at most " + LONGEST + " letters; this has " + name.length());
    }
    if (DEVICE.matcher(name.toLowerCase(Locale.ROOT)).matches()) {
      throw Failure.usage(name + " is a name that Windows keeps for a device; choose another one");
    }
    return name;
  }

  /** Fails with a sentence if the folder that something goes into is not there. */
  static void requireFolderOf(Path file) {
    Path folder = file.getParent();
    if (folder != null && !Files.isDirectory(folder)) {
      throw Failure.outside(
          Files.exists(folder)
              ? folder + " is a file, not a folder"
              : "there is no folder " + folder + "; make it first");
    }
  }

  /** What stands in print: {@code week-3} is {@code Week 3}. */
  static String title(String name) {
    String words = name.replaceAll("[^\\p{L}\\p{M}\\p{N}.]+", " ").strip();
    return words.isEmpty()
        ? "Saturday class"
        : new StringBuilder()
            .appendCodePoint(Character.toUpperCase(words.codePointAt(0)))
            .append(words, words.offsetByCodePoints(0, 1), words.length())
            .toString();
  }
}
