package tabor.cli;

import java.io.ByteArrayInputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;

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
      chart c
        count-in 1 bar
        play up 2 times
        climb beat from 60 to 80 by 10 every 2 times
      """;

  /** Runs the commands; always ends well. */
  public static void main(String[] args) {
    for (String command : new String[] {"check -", "check --hints --report json -"}) {
      Main.run(command.split(" "), io());
    }
  }

  private static Io io() {
    return Io.of(
        new ByteArrayInputStream(LESSON.getBytes(StandardCharsets.UTF_8)),
        OutputStream.nullOutputStream(),
        OutputStream.nullOutputStream(),
        false,
        false,
        Map.of());
  }
}
