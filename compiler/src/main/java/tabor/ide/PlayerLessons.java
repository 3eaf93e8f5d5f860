package tabor.ide;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import tabor.build.PlayerLesson;
import tabor.compile.Compiled;
import tabor.groove.Lesson;
import tabor.groove.Player;
import tabor.resolve.Options;

/** Lessons as one of their players gets them. */
public final class PlayerLessons {
  private PlayerLessons() {}

  /**
   * A lesson as a player gets it.
   *
   * @param name of the lesson's file, without its ending
   * @param player who
   * @param compiled worked out for this player
   * @param lesson what the player gets of it; empty if no section is left
   */
  public record View(String name, Player player, Compiled compiled, Optional<Lesson> lesson) {}

  /**
   * The lesson in which a player stands; of a file of players alone, the lessons of the workspace
   * that use it, by their names. Empty if nothing knows this player.
   *
   * @param file where the player stands
   * @param player the name
   */
  public static List<View> of(Compiled file, String player, Library library) {
    List<Compiled> lessons =
        file.lesson().sections().isEmpty()
            ? References.filesWith(file, file, library)
            : List.of(file);
    return lessons.stream()
        .filter(lesson -> !lesson.lesson().sections().isEmpty())
        .sorted(Comparator.comparing(Compiled::file))
        .flatMap(lesson -> view(lesson, player, library).stream())
        .toList();
  }

  private static Optional<View> view(Compiled lesson, String name, Library library) {
    return lesson.lesson().extras().players().stream()
        .filter(player -> player.name().equals(name))
        .findFirst()
        .map(
            player -> {
              Compiled own = library.trial(lesson.file(), lesson.text(), Options.NONE.of(player));
              return new View(
                  lesson.lesson().file(), player, own, PlayerLesson.of(own.lesson(), player));
            });
  }
}
