package tabor.ide;

import java.util.Collections;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import tabor.build.PlayerLesson;
import tabor.compile.Compiled;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Severity;
import tabor.groove.Lesson;
import tabor.groove.Player;
import tabor.resolve.Options;
import tabor.source.Passage;

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
   * @param problems errors and warnings of what the player gets that the lesson as it is written
   *     does not have, in their order: what the kit lacks, what is too fast or too far
   */
  public record View(
      String name,
      Player player,
      Compiled compiled,
      Optional<Lesson> lesson,
      List<Diagnostic> problems) {
    /** Copies the list. */
    public View {
      problems = List.copyOf(problems);
    }
  }

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
              Optional<Lesson> got = PlayerLesson.of(own.lesson(), player);
              return new View(lesson.lesson().file(), player, own, got, problems(lesson, own, got));
            });
  }

  private static List<Diagnostic> problems(Compiled written, Compiled own, Optional<Lesson> got) {
    Set<String> known =
        written.diagnostics().stream().map(PlayerLessons::said).collect(Collectors.toSet());
    Set<Passage> left = Collections.newSetFromMap(new IdentityHashMap<>());
    own.lesson().sections().forEach(section -> left.add(section.heading().passage()));
    got.ifPresent(lesson -> lesson.sections().forEach(one -> left.remove(one.heading().passage())));
    return own.diagnostics().stream()
        .filter(one -> one.severity() != Severity.HINT)
        .filter(one -> !left.contains(one.spot().passage()) && !known.contains(said(one)))
        .toList();
  }

  private static String said(Diagnostic one) {
    return (one.place() == null ? "" : one.place().words()) + "\n" + one.message();
  }
}
