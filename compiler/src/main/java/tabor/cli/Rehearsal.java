package tabor.cli;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Runs the usual commands once on a small lesson and throws the results away. The build records the
 * classes of this run in an archive that later starts read instead of the jar.
 */
final class Rehearsal {
  private Rehearsal() {}

  private static final String LESSON =
      """
      title "Rehearsal"
      time 4/4
      tempo 92
      pattern six : RlrrLl
      groove beat "A beat"
        hihat : rr rr rrrr rr=
        snare : . l {ll}. 'L
        ostinato kick : x . .x .
        text "Prose."
      step up "Up"
        right plays ride
        ghost left at 2
        add kick at 2& 3a
      groove roll
        hands play six in triplets
      groove broken
        hands : rl rl rlr
      """;

  private static final String FINE = LESSON.substring(0, LESSON.indexOf("groove broken"));

  private static final String REST =
      """
      chart c
        count-in 1 bar
        play up 2 times
        climb beat from 60 to 80 by 10 every 2 times
      """;

  /** Runs the commands; always ends well. */
  public static void main(String[] args) throws IOException {
    Path folder = Files.createTempDirectory("tabor");
    try {
      run(LESSON, "check", "-");
      run(LESSON, "check", "--hints", "--report", "json", "-");
      run(LESSON, "explain", "bar-length");
      run(LESSON, "--help");
      run(FINE + REST, "check", "-");
      run(FINE + REST, "list", "-");
      run(FINE + REST, "grid", "-");
      run(FINE + REST, "build", "-", "--as", "all", "-o", folder.toString());
    } finally {
      try (Stream<Path> files = Files.list(folder)) {
        for (Path file : (Iterable<Path>) files::iterator) {
          Files.delete(file);
        }
      }
      Files.delete(folder);
    }
  }

  private static void run(String source, String... words) {
    Main.run(
        words,
        Io.of(
            new ByteArrayInputStream(source.getBytes(StandardCharsets.UTF_8)),
            OutputStream.nullOutputStream(),
            OutputStream.nullOutputStream(),
            false,
            false,
            Map.of()));
  }
}
