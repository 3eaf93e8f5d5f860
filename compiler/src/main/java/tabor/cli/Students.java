package tabor.cli;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import tabor.build.PlayerLesson;
import tabor.compile.Compiled;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Near;
import tabor.groove.Lesson;
import tabor.groove.Player;
import tabor.resolve.Options;
import tabor.source.Span;

/** Works a lesson out for the students named by {@code --for}. */
final class Students {
  /** Means every player of the lesson. */
  static final String ALL = "all";

  private Students() {}

  /**
   * The lesson for each student, in the order named; once, for nobody in particular, if nobody is
   * named. Students who play alike share the work.
   *
   * @param names as {@code --for} has them
   * @param options what is asked for besides
   * @param work compiles the lesson
   * @throws Failure if the lesson has no such player
   */
  static List<Student> of(List<String> names, Options options, Function<Options, Compiled> work) {
    Compiled plain = work.apply(options);
    if (names.isEmpty()) {
      return List.of(new Student(null, plain, plain.lesson()));
    }
    Map<Options, Compiled> known = new HashMap<>();
    known.put(options, plain);
    List<Student> students = new ArrayList<>();
    Set<Player> chosen = chosen(names, plain.lesson());
    if (plain.hasErrors()) {
      // Told once, for everybody.
      return List.of(new Student(null, plain, plain.lesson()));
    }
    for (Player player : chosen) {
      Compiled own = known.computeIfAbsent(options.of(player), work);
      Lesson lesson = PlayerLesson.of(own.lesson(), player).orElse(null);
      students.add(new Student(player, own, lesson));
    }
    return students;
  }

  /** The players that words name, each once. */
  private static Set<Player> chosen(List<String> names, Lesson lesson) {
    List<Player> all = lesson.extras().players();
    if (all.isEmpty()) {
      throw Failure.usage(
          "there is no player in this lesson; write one below its header, or in a file that it"
              + " uses: player mia \"Mia\"");
    }
    List<String> known = all.stream().map(Player::name).toList();
    Set<Player> chosen = new LinkedHashSet<>();
    for (String name : names) {
      if (name.equals(ALL)) {
        chosen.addAll(all);
        continue;
      }
      int at = known.indexOf(name);
      if (at < 0) {
        List<String> near = Near.names(name, known);
        throw Failure.usage(
            "there is no player "
                + name
                + (near.isEmpty()
                    ? "; there is " + String.join(", ", known)
                    : "; did you mean " + String.join(" or ", near) + "?"));
      }
      chosen.add(all.get(at));
    }
    return chosen;
  }

  /** What was told of one lesson, in one. */
  static Compiled together(List<Compiled> told) {
    Compiled first = told.get(0);
    List<Diagnostic> all = new ArrayList<>();
    told.forEach(one -> all.addAll(one.diagnostics()));
    return first.with(all);
  }

  /** The students' lessons, without what was told of an earlier one already. */
  static List<Compiled> toldOnce(List<Student> students) {
    if (students.size() == 1) {
      return List.of(students.get(0).compiled());
    }
    record Told(Object code, Object passage, Span span, String message) {}
    Set<Told> told = new HashSet<>();
    List<Compiled> found = new ArrayList<>();
    for (Student student : students) {
      Compiled one = student.compiled();
      List<Diagnostic> fresh = new ArrayList<>();
      for (Diagnostic diagnostic : one.diagnostics()) {
        Compiled.Where where = one.places().get(diagnostic.spot().passage());
        if (told.add(
            new Told(
                diagnostic.code(),
                where == null ? diagnostic.spot().passage() : where,
                diagnostic.spot().span(),
                diagnostic.message()))) {
          fresh.add(diagnostic);
        }
      }
      found.add(one.with(fresh));
    }
    return found;
  }
}
