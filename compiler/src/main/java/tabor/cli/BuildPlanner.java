package tabor.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import tabor.build.BuildOptions;
import tabor.build.Form;
import tabor.build.Output;
import tabor.compile.Compiled;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Severity;
import tabor.groove.Lesson;
import tabor.groove.Player;
import tabor.lists.Lists;
import tabor.report.TextReport;
import tabor.source.VisibleText;

/**
 * Says what a source becomes, and what there is to say about it. Safe for several threads.
 *
 * @param colour true for reports in colour
 * @param compiling works a source out for those who get it
 * @param wanted what is asked for of a student's outputs
 * @param started when the build began, in milliseconds since 1970
 */
record BuildPlanner(
    boolean colour,
    List<Form> forms,
    Function<Path, List<Student>> compiling,
    Function<Student, BuildOptions> wanted,
    long started) {
  /**
   * True if what was said of a finished plan can be said again: the colours of a report are part of
   * it.
   */
  boolean canRepeat(BuildIndex.Unit unit) {
    return unit.said().isEmpty() || Boolean.toString(colour).equals(unit.questions().get("colour"));
  }

  /** The plan that a finished one was noted as. */
  static BuildPlan known(Path source, BuildIndex.Unit unit) {
    Map<String, List<String>> files = new LinkedHashMap<>();
    for (String file : new TreeSet<>(unit.outputs().keySet())) {
      String player = unit.questions().getOrDefault("for " + file, "");
      files.computeIfAbsent(player, p -> new ArrayList<>()).add(file);
    }
    List<BuildPlan.Part> parts = new ArrayList<>();
    for (String player : words(unit, "players")) {
      List<String> own = files.getOrDefault(player, List.of());
      parts.add(new BuildPlan.Part(source, player, own, null));
    }
    return new BuildPlan(source, words(unit, "sections"), parts, unit.sources(), true, true, "");
  }

  private static List<String> words(BuildIndex.Unit unit, String asked) {
    return List.of(unit.questions().getOrDefault(asked, "").split(" ", -1));
  }

  /** What the index keeps of a plan besides its files: the answers that {@link #known} reads. */
  Map<String, String> noted(BuildPlan plan) {
    Map<String, String> noted = new LinkedHashMap<>();
    noted.put("colour", Boolean.toString(colour));
    noted.put("sections", String.join(" ", plan.sections()));
    noted.put("players", String.join(" ", Lists.map(plan.parts(), BuildPlan.Part::player)));
    for (BuildPlan.Part part : plan.parts()) {
      if (!part.player().isEmpty()) {
        part.files().forEach(file -> noted.put("for " + file, part.player()));
      }
    }
    return noted;
  }

  /** Compiles a source and plans its files; what there is to say goes to {@code aside}. */
  BuildPlan plan(Path source, Io aside) {
    List<Student> students = compiling.apply(source);
    if (Lists.all(students, Student::isClassFile)) {
      aside
          .err()
          .print(
              "tabor: "
                  + BuildPlan.shown(source)
                  + " has players and nothing to play; passed over\n");
      return new BuildPlan(source, List.of(), List.of(), Map.of(), false, true, "");
    }
    List<Compiled> told = Students.toldOnce(students);
    Map<Path, Fingerprint> sources = new LinkedHashMap<>();
    Set<String> sections = new LinkedHashSet<>();
    List<BuildPlan.Part> parts = new ArrayList<>();
    boolean refused = false;
    for (int i = 0; i < students.size(); i++) {
      Student student = students.get(i);
      Compiled compiled = warned(told.get(i), i == 0);
      report(student, compiled, aside);
      Optional<Lesson> lesson = lesson(source, student, aside);
      if (lesson.isPresent()) {
        sections.addAll(names(lesson.get()));
        Set<Form> made = possible(source, student, lesson.get(), aside);
        refused |= !made.containsAll(forms);
        BuildPlan.Part part = part(source, student, lesson.get(), made);
        if (!part.files().isEmpty()) {
          parts.add(part);
        }
      }
      sources.put(source, Fingerprint.MISSING);
      compiled.places().values().forEach(where -> sources.put(where.file(), Fingerprint.MISSING));
    }
    sources.replaceAll((file, none) -> Fingerprint.of(file));
    // Saved while it was compiled, it may not be what was compiled: such a lesson is not noted.
    boolean settled = !Lists.any(sources.values(), print -> print.isLater(started));
    boolean whole = !refused && parts.size() == students.size();
    return new BuildPlan(source, List.copyOf(sections), parts, sources, settled, whole, "");
  }

  /** What a student gets of the lesson; if that is nothing, why. */
  private static Optional<Lesson> lesson(Path source, Student student, Io aside) {
    String of = student.words();
    Lesson lesson = student.lesson();
    if (student.compiled().hasErrors()) {
      aside.err().print("tabor: nothing is written for " + BuildPlan.shown(source) + of + "\n");
      return Optional.empty();
    }
    if (lesson == null) {
      aside.err().print("tabor: " + VisibleText.line(source + ": " + student.nothing()) + "\n");
      return Optional.empty();
    }
    return Optional.of(lesson);
  }

  private static String player(Student student) {
    Player player = student.player();
    return player == null ? "" : player.name();
  }

  private static boolean isQuiet(Compiled compiled) {
    return Lists.all(compiled.diagnostics(), d -> d.severity() == Severity.HINT);
  }

  private void report(Student student, Compiled compiled, Io aside) {
    if (compiled.diagnostics().isEmpty()) {
      return;
    }
    if (!isQuiet(compiled) && student.player() != null) {
      aside.err().print(VisibleText.line(student.heading()) + "\n");
    }
    aside.err().print(new TextReport(colour).of(compiled, false));
  }

  /** With what the forms asked for have to say. */
  private Compiled warned(Compiled compiled, boolean first) {
    if (!first || compiled.hasErrors()) {
      return compiled;
    }
    List<Diagnostic> all = new ArrayList<>(compiled.diagnostics());
    forms.forEach(form -> form.warning(compiled.lesson()).ifPresent(all::add));
    return compiled.with(all);
  }

  /** The forms that can be made of a lesson, in order; of the others it is said why not. */
  private Set<Form> possible(Path source, Student student, Lesson lesson, Io aside) {
    Set<Form> possible = new LinkedHashSet<>(forms);
    possible.removeIf(
        form -> {
          Optional<String> reason = form.refusal(lesson, wanted.apply(student));
          reason.ifPresent(
              why ->
                  Main.complain(
                      aside,
                      Failure.outside(
                          "no " + form.word() + " of " + BuildPlan.shown(source) + ": " + why)));
          return reason.isPresent();
        });
    return possible;
  }

  private BuildPlan.Part part(Path source, Student student, Lesson lesson, Set<Form> made) {
    BuildOptions own = wanted.apply(student);
    List<Output> outputs = new ArrayList<>();
    for (Form form : made) {
      outputs.addAll(form.outputs(lesson, own));
    }
    List<String> files = Lists.map(outputs, Output::name);
    return new BuildPlan.Part(source, player(student), files, outputs);
  }

  /** What {@code --only} may name. */
  private static List<String> names(Lesson lesson) {
    Set<String> names = new LinkedHashSet<>();
    lesson.sections().forEach(section -> names.add(section.name()));
    lesson.grooves().forEach(groove -> names.add(groove.name()));
    return List.copyOf(names);
  }
}
