package tabor.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import tabor.build.BuildOptions;
import tabor.build.Form;
import tabor.build.Output;
import tabor.build.PlayerLesson;
import tabor.compile.Compiled;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Near;
import tabor.emit.pdf.HandoutLook;
import tabor.groove.Lesson;
import tabor.groove.Player;
import tabor.report.TextReport;
import tabor.source.VisibleText;

/** The work of {@code tabor build --for}: the outputs of lessons for some of their players. */
final class StudentBuild {
  private final Io io;
  private final Path folder;
  private final List<Form> forms;
  private final BuildOptions wanted;
  private final Function<Path, List<Student>> compiling;
  private final Function<Student, BuildOptions> asked;
  private final Progress progress;
  private boolean failed;

  /** What one source becomes. */
  private record Plan(Path source, Student student, Lesson lesson, List<Output> outputs) {}

  private StudentBuild(
      Io io,
      Path folder,
      List<Form> forms,
      BuildOptions wanted,
      Function<Path, List<Student>> compiling,
      Function<Student, BuildOptions> asked) {
    this.io = io;
    this.folder = folder;
    this.forms = forms;
    this.wanted = wanted;
    this.compiling = compiling;
    this.asked = asked;
    this.progress = new Progress(io);
  }

  /** Compiles everything named and writes the outputs of every source that has no errors. */
  static int run(
      Io io,
      List<Path> sources,
      Path folder,
      List<Form> forms,
      BuildOptions wanted,
      PlayerOptions player) {
    Toolchain toolchain = new Toolchain(io, player.options());
    return new StudentBuild(
            io,
            folder,
            forms,
            wanted,
            path -> compile(io, toolchain, path, player.students()),
            student -> asked(wanted, player, student))
        .run(sources);
  }

  private static List<Student> compile(Io io, Toolchain toolchain, Path path, List<String> names) {
    List<Student> students = toolchain.studentsOfOne(path, names);
    if (students.stream().allMatch(StudentBuild::isClassFile)) {
      io.err().print("tabor: " + shown(path) + " has players and nothing to play; passed over\n");
      return List.of();
    }
    return students;
  }

  /** True for a file of players alone, which lessons use. */
  static boolean isClassFile(Student student) {
    return !student.compiled().hasErrors() && student.compiled().lesson().sections().isEmpty();
  }

  /** What is asked for of the outputs of a student. */
  private static BuildOptions asked(BuildOptions wanted, PlayerOptions options, Student student) {
    HandoutLook look = wanted.handout().withNote(options.note(student.player()));
    Player player = student.player();
    return wanted.withHandout(
        player == null
            ? look
            : look.withReader(
                PlayerLesson.reader(student.compiled().lesson(), player, look.reader())));
  }

  /** What goes wrong with one lesson is told, and the others are built. */
  int run(List<Path> sources) {
    List<Plan> plans = new ArrayList<>();
    for (int i = 0; i < sources.size(); i++) {
      Path source = sources.get(i);
      progress.at("reading " + source, i, sources.size());
      guarded(source, () -> plans.addAll(read(source)));
    }
    progress.done();
    refuseUnknown(plans);
    refuseClashes(plans);
    if (!plans.isEmpty()) {
      OutputFiles.makeFolder(folder);
    }
    plans.forEach(plan -> guarded(plan.source(), () -> write(plan)));
    progress.done();
    return failed ? ExitCode.ERRORS : ExitCode.FINE;
  }

  private void guarded(Path source, Faults.Work work) {
    if (!Faults.catching(io, source.toString(), work)) {
      failed = true;
    }
  }

  private List<Plan> read(Path source) {
    List<Student> students = compiling.apply(source);
    List<Compiled> told = Students.toldOnce(students);
    List<Plan> plans = new ArrayList<>();
    for (int i = 0; i < students.size(); i++) {
      read(source, students.get(i), warned(told.get(i), i == 0)).ifPresent(plans::add);
    }
    return plans;
  }

  private Optional<Plan> read(Path source, Student student, Compiled compiled) {
    if (!compiled.diagnostics().isEmpty() && student.player() != null) {
      progress.done();
      io.err().print(VisibleText.line(student.heading()) + "\n");
    }
    report(compiled);
    if (student.compiled().hasErrors()) {
      failed = true;
      io.err().print("tabor: nothing is written for " + shown(source) + of(student) + "\n");
      return Optional.empty();
    }
    Lesson lesson = student.lesson();
    if (lesson == null) {
      failed = true;
      io.err().print("tabor: " + VisibleText.line(source + ": " + student.nothing()) + "\n");
      return Optional.empty();
    }
    return Optional.of(plan(source, student, lesson));
  }

  private static String of(Student student) {
    Player player = student.player();
    return player == null ? "" : " for " + VisibleText.line(player.name());
  }

  private static String shown(Path path) {
    return VisibleText.line(path.toString());
  }

  /** With what the forms asked for have to say. */
  private Compiled warned(Compiled compiled, boolean first) {
    if (!first || compiled.hasErrors()) {
      return compiled;
    }
    List<Diagnostic> all = new ArrayList<>(compiled.diagnostics());
    forms.forEach(form -> form.warning(compiled.lesson()).ifPresent(all::add));
    return new Compiled(
        compiled.file(),
        compiled.text(),
        compiled.lesson(),
        compiled.syntax(),
        all,
        compiled.places());
  }

  private void report(Compiled compiled) {
    if (!compiled.diagnostics().isEmpty()) {
      progress.done();
      io.err().print(new TextReport(io.colourErr()).of(compiled, false));
    }
  }

  private Plan plan(Path source, Student student, Lesson lesson) {
    BuildOptions wanted = asked.apply(student);
    List<Output> outputs = new ArrayList<>();
    for (Form form : forms) {
      form.refusal(lesson, wanted)
          .ifPresent(
              reason -> {
                throw Failure.outside(source + ": " + reason);
              });
      outputs.addAll(form.outputs(lesson, wanted));
    }
    return new Plan(source, student, lesson, outputs);
  }

  private void refuseUnknown(List<Plan> plans) {
    Set<String> names = new LinkedHashSet<>();
    for (Plan plan : plans) {
      plan.lesson().sections().forEach(section -> names.add(section.name()));
      plan.lesson().grooves().forEach(groove -> names.add(groove.name()));
    }
    for (String name : wanted.only()) {
      // A file with errors may have held the section.
      if (!names.contains(name) && !failed) {
        throw Failure.usage("there is no section " + name + offer(name, names));
      }
    }
  }

  private static String offer(String name, Collection<String> names) {
    List<String> near = Near.names(name, names);
    return near.isEmpty()
        ? "; there are " + String.join(", ", names)
        : "; did you mean " + near.get(0) + "?";
  }

  /** Names that differ in case only are one file on some disks. */
  private void refuseClashes(List<Plan> plans) {
    Map<String, Plan> taken = new HashMap<>();
    for (Plan plan : plans) {
      for (Output output : plan.outputs()) {
        Plan before = taken.put(output.name().toLowerCase(Locale.ROOT), plan);
        if (before != null) {
          throw Failure.outside(
              before.source()
                  + of(before.student())
                  + " and "
                  + plan.source()
                  + of(plan.student())
                  + " would both be written to "
                  + folder.resolve(output.name())
                  + "; nothing is written: rename one, or build them into different folders");
        }
      }
    }
  }

  private void write(Plan plan) {
    int[] counts = new int[OutputFiles.Outcome.values().length];
    List<byte[]> made = new ArrayList<>();
    for (Output output : plan.outputs()) {
      progress.at("making " + output.name(), made.size(), plan.outputs().size());
      made.add(output.bytes().get());
    }
    for (int i = 0; i < made.size(); i++) {
      Path file = folder.resolve(plan.outputs().get(i).name());
      counts[OutputFiles.write(file, made.get(i)).ordinal()]++;
    }
    progress.done();
    int all = made.size();
    int same = counts[OutputFiles.Outcome.UNCHANGED.ordinal()];
    io.out()
        .print(
            shown(plan.source())
                + of(plan.student())
                + ": "
                + (all == 1 ? "1 file in " : all + " files in ")
                + shown(folder)
                + (same == 0 ? "" : same == all ? ", nothing changed" : ", " + same + " unchanged")
                + "\n");
    io.out().flush();
  }
}
