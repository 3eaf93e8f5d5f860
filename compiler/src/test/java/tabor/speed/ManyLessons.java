package tabor.speed;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Writes a folder of lessons, to see how long a look through all of them takes. */
public final class ManyLessons {
  private ManyLessons() {}

  /**
   * Writes random valid lessons, the same for the same number: {@code FOLDER COUNT [BARS]}.
   *
   * @param words the folder, how many lessons, and about how many bars each has; 12 if not said
   */
  public static void main(String[] words) throws IOException {
    Path folder = Files.createDirectories(Path.of(words[0]));
    int bars = words.length > 2 ? Integer.parseInt(words[2]) : 12;
    for (int i = 1; i <= Integer.parseInt(words[1]); i++) {
      Files.writeString(
          folder.resolve("week-" + i + ".tabor"), tabor.testing.Files.ofBars(bars, i));
    }
  }
}
