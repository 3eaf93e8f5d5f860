package tabor.cli;

import org.jspecify.annotations.Nullable;
import tabor.compile.Compiled;
import tabor.groove.Lesson;
import tabor.groove.Player;

/**
 * A lesson for one student, or for nobody in particular.
 *
 * @param player who; null for nobody in particular
 * @param compiled the lesson worked out for this student
 * @param lesson what the student gets of it; null if no section is left
 */
record Student(@Nullable Player player, Compiled compiled, @Nullable Lesson lesson) {
  /** A line that says for whom the following is, where there are several. */
  String heading() {
    return player == null ? "" : "For " + player.caption() + " (" + player.name() + "):";
  }

  /** For whom, to stand behind the name of a lesson: {@code for mia}; empty without a player. */
  String words() {
    return player == null ? "" : BuildPlan.of(player.name());
  }

  /** True for a player of a file of players alone, which lessons use. */
  boolean isClassFile() {
    return player != null && !compiled.hasErrors() && compiled.lesson().sections().isEmpty();
  }

  /** Why this student gets nothing. */
  String nothing() {
    return player == null
        ? "there is nothing in it"
        : "nothing of it is left for "
            + player.name()
            + ": none of the sections that this player gets is in this lesson";
  }
}
