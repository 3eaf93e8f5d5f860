package tabor.cli;

import java.util.List;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import tabor.groove.Groove;
import tabor.groove.Lesson;

/** The players that lessons give limits to. */
final class Players {
  private Players() {}

  /** Ends the command if a player was asked for that no section of the lessons knows. */
  static void require(@Nullable String player, List<Lesson> lessons) {
    if (player == null) {
      return;
    }
    TreeSet<String> known = new TreeSet<>();
    boolean anything = false;
    for (Lesson lesson : lessons) {
      for (Groove groove : lesson.grooves()) {
        anything = true;
        known.addAll(groove.setting().kit().limits().keySet());
      }
    }
    if (!anything || known.contains(player)) {
      return;
    }
    known.remove("");
    throw Failure.usage(
        "no limits line names a player "
            + player
            + (known.isEmpty()
                ? "; write limits " + player + " hands 4 to 6"
                : "; there is " + String.join(", ", known)));
  }
}
