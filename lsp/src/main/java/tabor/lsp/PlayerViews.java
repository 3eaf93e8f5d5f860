package tabor.lsp;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.eclipse.lsp4j.Position;
import tabor.compile.Compiled;
import tabor.diagnostic.Diagnostic;
import tabor.emit.grid.Grid;
import tabor.groove.Lesson;
import tabor.groove.Player;
import tabor.ide.Cursor;
import tabor.ide.PlayerLessons;
import tabor.source.Passage;

/** A lesson as a player gets it, as a counted grid. */
final class PlayerViews {
  private PlayerViews() {}

  /** What is shown, and the name of the file that it is shown as. */
  record Shown(String name, String text) {}

  /** The player that a position stands in. */
  static String at(FileContext file, Position position) {
    Cursor cursor = Cursor.at(file.compiled(), file.offset(position));
    return file.compiled().lesson().extras().players().stream()
        .filter(player -> player.heading().passage() == cursor.section().passage())
        .map(Player::name)
        .findFirst()
        .orElseThrow(() -> Requests.refused("The cursor is in no player"));
  }

  /** The lesson, or all lessons that use a class file, one after the other. */
  static Shown of(FileContext file, String player) {
    Compiled home = file.compiled();
    if (home.lesson().extras().players().stream().noneMatch(one -> one.name().equals(player))) {
      throw Requests.refused("There is no player " + player);
    }
    List<PlayerLessons.View> views = PlayerLessons.of(home, player, file.library());
    if (views.isEmpty()) {
      throw Requests.refused("No lesson of this workspace uses this file");
    }
    List<String> texts = new ArrayList<>();
    for (PlayerLessons.View view : views) {
      String heading = views.size() == 1 ? "" : "# " + view.name() + "\n\n";
      texts.add(heading + text(view));
    }
    return new Shown(home.lesson().file() + "." + player, String.join("\n", texts));
  }

  private static String text(PlayerLessons.View view) {
    Optional<Lesson> lesson = view.lesson();
    Set<Passage> wrong = BrokenSections.passages(view.compiled());
    boolean any =
        lesson.isPresent()
            && lesson.get().sections().stream()
                .anyMatch(section -> !BrokenSections.isBroken(section, wrong));
    String problems = problems(view);
    if (lesson.isEmpty() || !any) {
      return "Nothing of "
          + view.name()
          + " is left for "
          + view.player().name()
          + ".\n"
          + problems;
    }
    String grid = Grid.of(lesson.get(), section -> !BrokenSections.isBroken(section, wrong));
    return (wrong.isEmpty()
            ? grid
            : grid + "\nSections with errors, and what rests on them, are left out.\n")
        + problems;
  }

  /** What this student cannot play as it is; empty if all fits. */
  private static String problems(PlayerLessons.View view) {
    if (view.problems().isEmpty()) {
      return "";
    }
    StringBuilder text = new StringBuilder("\nWhat does not fit ");
    text.append(view.player().caption()).append(":\n");
    for (Diagnostic one : view.problems()) {
      text.append("  ");
      if (one.place() != null) {
        text.append(one.place().words()).append(": ");
      }
      text.append(one.message()).append('\n');
      if (one.help() != null) {
        text.append("    ").append(one.help()).append('\n');
      }
    }
    return text.toString();
  }
}
