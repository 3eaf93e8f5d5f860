package tabor.cli;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tabor.build.BuildOptions;
import tabor.build.Form;
import tabor.build.Output;
import tabor.compile.Compiled;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Near;
import tabor.diagnostic.Severity;
import tabor.groove.Lesson;
import tabor.report.TextReport;
import tabor.source.VisibleText;

/** The work of {@code tabor build}. */
final class Build {
  /** The index in the output folder. */
  static final String INDEX = ".tabor-build";

  private final Io io;
  private final Path folder;
  private final List<Form> forms;
  private final BuildOptions wanted;
  private final Function<Path, Compiled> compiling;
  private final Progress progress;
  private final Extent extent;
  private final long started = System.currentTimeMillis();
  private boolean failed;

  /**
   * How much is done.
   *
   * @param settings everything but the lessons that outputs depend on; empty to keep no index
   * @param force true to make everything anew
   * @param deps the file for what depends on what; null for none
   */
  record Extent(String settings, boolean force, @Nullable Path deps) {
    /** Everything, and nothing is remembered. */
    static final Extent ALL = new Extent("", false, null);
  }

  /**
   * What one source becomes.
   *
   * @param sections the names of its sections
   * @param files the names of the files it becomes
   * @param sources what they are made of
   * @param clean true if nothing was noticed in it, so that it need not be made again
   * @param outputs makes their bytes; null if they are there already
   */
  private record Plan(
      Path source,
      List<String> sections,
      List<String> files,
      Map<Path, Fingerprint> sources,
      boolean clean,
      @Nullable List<Output> outputs) {}

  /**
   * What came of working on one source.
   *
   * @param said what there was to say, for standard error
   * @param good false if something went wrong
   */
  private record Done<T>(String said, boolean good, @Nullable T result) {}

  /** Compiles with {@code compiling}, which a test may let fail. */
  Build(
      Io io,
      Path folder,
      List<Form> forms,
      BuildOptions wanted,
      Function<Path, Compiled> compiling) {
    this(io, folder, forms, wanted, compiling, Extent.ALL);
  }

  /** Compiles with {@code compiling}, as far as {@code extent} says. */
  Build(
      Io io,
      Path folder,
      List<Form> forms,
      BuildOptions wanted,
      Function<Path, Compiled> compiling,
      Extent extent) {
    this.io = io;
    this.folder = folder;
    this.forms = forms;
    this.wanted = wanted;
    this.compiling = compiling;
    this.extent = extent;
    this.progress = new Progress(io);
  }

  /**
   * What goes wrong with one lesson is told, and the others are built. On all cores; what is said
   * is said in the order of the sources.
   */
  int run(List<Path> sources) {
    // A single lesson is made sooner than looked up.
    BuildIndex index =
        extent.settings().isEmpty() || sources.size() < 2
            ? null
            : BuildIndex.read(folder, INDEX, extent.settings(), extent.force());
    List<Plan> plans = new ArrayList<>();
    for (Done<Plan> done :
        AllCores.map(sources, source -> read(source, index), progress, s -> "reading " + s)) {
      tell(done);
      if (done.result() != null) {
        plans.add(done.result());
      }
    }
    refuseUnknown(plans);
    refuseClashes(plans);
    if (!plans.isEmpty()) {
      OutputFiles.makeFolder(folder);
    }
    boolean made = false;
    for (Done<String> done :
        AllCores.map(plans, plan -> write(plan, index), progress, p -> "making " + p.source())) {
      tell(done);
      made |= done.result() != null;
      io.out().print(done.result() == null ? "" : done.result());
      io.out().flush();
    }
    Path deps = extent.deps();
    if (deps != null) {
      OutputFiles.write(deps, dependencies(plans).getBytes(StandardCharsets.UTF_8));
    }
    if (index != null && made) {
      index.save();
    }
    return failed ? ExitCode.ERRORS : ExitCode.FINE;
  }

  private void tell(Done<?> done) {
    io.err().print(done.said());
    failed |= !done.good();
  }

  /** Works on one source; what it says is kept, to be said in its turn. */
  private <T> Done<T> guarded(Path source, Function<Io, Optional<T>> work) {
    ByteArrayOutputStream said = new ByteArrayOutputStream();
    Io aside = io.withErr(said);
    List<T> results = new ArrayList<>();
    boolean good =
        Faults.catching(aside, source.toString(), () -> work.apply(aside).ifPresent(results::add));
    aside.err().flush();
    boolean none = results.isEmpty();
    return new Done<>(
        said.toString(StandardCharsets.UTF_8), good && !none, none ? null : results.get(0));
  }

  private Done<Plan> read(Path source, @Nullable BuildIndex index) {
    BuildIndex.Unit known = index == null ? null : index.unit(source.toString());
    if (known != null && index.isFresh(source.toString())) {
      List<String> sections =
          List.of(known.questions().getOrDefault("sections", "").split(" ", -1));
      List<String> files = known.outputs().keySet().stream().sorted().toList();
      return new Done<>("", true, new Plan(source, sections, files, known.sources(), true, null));
    }
    return guarded(source, aside -> read(source, aside));
  }

  private Optional<Plan> read(Path source, Io aside) {
    Compiled compiled = warned(compiling.apply(source));
    report(compiled, aside);
    if (compiled.hasErrors()) {
      aside.err().print("tabor: nothing is written for " + shown(source) + "\n");
      return Optional.empty();
    }
    return Optional.of(plan(source, compiled));
  }

  private static String shown(Path path) {
    return VisibleText.line(path.toString());
  }

  /** With what the forms asked for have to say. */
  private Compiled warned(Compiled compiled) {
    if (compiled.hasErrors()) {
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

  private void report(Compiled compiled, Io aside) {
    if (!compiled.diagnostics().isEmpty()) {
      aside.err().print(new TextReport(io.colourErr()).of(compiled, false));
    }
  }

  private Plan plan(Path source, Compiled compiled) {
    Lesson lesson = compiled.lesson();
    List<Output> outputs = new ArrayList<>();
    for (Form form : forms) {
      form.refusal(lesson, wanted)
          .ifPresent(
              reason -> {
                throw Failure.outside(source + ": " + reason);
              });
      outputs.addAll(form.outputs(lesson, wanted));
    }
    Map<Path, Fingerprint> sources = new LinkedHashMap<>();
    sources.put(source, Fingerprint.MISSING);
    compiled.places().values().forEach(where -> sources.put(where.file(), Fingerprint.MISSING));
    sources.replaceAll((file, none) -> Fingerprint.of(file));
    // Saved while it was compiled, it may not be what was compiled: such a lesson is not noted.
    boolean settled = sources.values().stream().noneMatch(print -> print.isLater(started));
    boolean clean =
        settled && compiled.diagnostics().stream().allMatch(d -> d.severity() == Severity.HINT);
    return new Plan(
        source,
        names(lesson),
        outputs.stream().map(Output::name).toList(),
        sources,
        clean,
        outputs);
  }

  /** What {@code --only} may name. */
  private static List<String> names(Lesson lesson) {
    Set<String> names = new LinkedHashSet<>();
    lesson.sections().forEach(section -> names.add(section.name()));
    lesson.grooves().forEach(groove -> names.add(groove.name()));
    return List.copyOf(names);
  }

  private void refuseUnknown(List<Plan> plans) {
    Set<String> names = new LinkedHashSet<>();
    plans.forEach(plan -> names.addAll(plan.sections()));
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
    Map<String, Path> taken = new HashMap<>();
    for (Plan plan : plans) {
      for (String file : plan.files()) {
        Path before = taken.put(file.toLowerCase(Locale.ROOT), plan.source());
        if (before != null) {
          throw Failure.outside(
              before
                  + " and "
                  + plan.source()
                  + " would both be written to "
                  + folder.resolve(file)
                  + "; nothing is written: rename one, or build them into different folders");
        }
      }
    }
  }

  private Done<String> write(Plan plan, @Nullable BuildIndex index) {
    List<Output> outputs = plan.outputs();
    if (outputs == null) {
      int all = plan.files().size();
      return new Done<>("", true, line(plan, all, all));
    }
    return guarded(plan.source(), aside -> Optional.of(write(plan, outputs, index)));
  }

  private String write(Plan plan, List<Output> outputs, @Nullable BuildIndex index) {
    List<byte[]> made = new ArrayList<>();
    for (Output output : outputs) {
      made.add(output.bytes().get());
    }
    int same = 0;
    Map<String, Fingerprint> written = new LinkedHashMap<>();
    for (int i = 0; i < made.size(); i++) {
      Path file = folder.resolve(outputs.get(i).name());
      same += OutputFiles.write(file, made.get(i)) == OutputFiles.Outcome.UNCHANGED ? 1 : 0;
      written.put(outputs.get(i).name(), Fingerprint.of(file, made.get(i)));
    }
    // What has something to say is made anew next time, so that it is said again.
    if (index != null && plan.clean()) {
      Map<String, String> sections = Map.of("sections", String.join(" ", plan.sections()));
      index.add(
          plan.source().toString(),
          new BuildIndex.Unit(started, plan.sources(), written, sections));
    }
    return line(plan, made.size(), same);
  }

  private String line(Plan plan, int all, int same) {
    return shown(plan.source())
        + ": "
        + (all == 1 ? "1 file in " : all + " files in ")
        + shown(folder)
        + (same == 0 ? "" : same == all ? ", nothing changed" : ", " + same + " unchanged")
        + "\n";
  }

  /**
   * Rules for make: the outputs of each lesson depend on its files; a file that went away is no
   * error.
   */
  private String dependencies(List<Plan> plans) {
    StringBuilder out = new StringBuilder();
    Set<String> all = new TreeSet<>();
    for (Plan plan : plans) {
      List<String> from = plan.sources().keySet().stream().map(Build::forMake).sorted().toList();
      List<String> to = plan.files().stream().map(f -> forMake(folder.resolve(f))).toList();
      out.append(String.join(" ", to)).append(": ").append(String.join(" ", from)).append('\n');
      all.addAll(from);
    }
    all.forEach(file -> out.append('\n').append(file).append(":\n"));
    return out.toString();
  }

  /** A name as a makefile writes it, as seen from the current folder. */
  private static String forMake(Path file) {
    Path here = Path.of("").toAbsolutePath();
    Path whole = file.toAbsolutePath().normalize();
    Path shown = whole.startsWith(here) && !file.isAbsolute() ? here.relativize(whole) : whole;
    return shown
        .toString()
        .replace('\\', '/')
        .replace("$", "$$")
        .replace("#", "\\#")
        .replace(" ", "\\ ");
  }
}
