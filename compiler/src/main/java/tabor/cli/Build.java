package tabor.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tabor.build.BuildOptions;
import tabor.build.Form;
import tabor.build.Output;
import tabor.cli.Faults.Done;
import tabor.cores.SpareCores;
import tabor.diagnostic.Near;
import tabor.lists.Lists;

/** The work of {@code tabor build}. */
final class Build {
  /** The index in the output folder. */
  static final String INDEX = ".tabor-build";

  private final Io io;
  private final Path folder;
  private final BuildOptions wanted;
  private final Progress progress;
  private final Extent extent;
  private final long started = System.currentTimeMillis();
  private final BuildPlanner planner;
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

  /** What has been written of one source so far. */
  private static final class Writing {
    private final Map<String, Fingerprint> written = new LinkedHashMap<>();
    private int left;

    Writing(int parts) {
      left = parts;
    }

    /** Notes what was written of a part; gives everything, once nothing is left. */
    synchronized Map<String, Fingerprint> done(Map<String, Fingerprint> part) {
      written.putAll(part);
      left--;
      return left == 0 ? Map.copyOf(written) : Map.of();
    }
  }

  /** What became of an output; {@code refused} says why it could not be written, or nothing. */
  private record Written(String name, Fingerprint print, boolean same, String refused) {}

  /** A part that is to be written, of a plan. */
  private record Task(BuildPlan plan, BuildPlan.Part part, Writing writing) {}

  /**
   * Writes into a folder.
   *
   * @param wanted what is asked for of everything
   * @param compiling works a source out for those who get it; a test may let it fail
   * @param own what is asked for of a student's outputs
   */
  Build(
      Io io,
      Path folder,
      List<Form> forms,
      BuildOptions wanted,
      Function<Path, List<Student>> compiling,
      Function<Student, BuildOptions> own,
      Extent extent) {
    this.io = io;
    this.folder = folder;
    this.wanted = wanted;
    this.extent = extent;
    this.progress = new Progress(io);
    this.planner = new BuildPlanner(io.colourErr(), forms, compiling, own, started);
  }

  /**
   * What goes wrong with one lesson is told, and the others are built. On all cores; what is said
   * is said in the order of the sources, and of the students of each.
   */
  int run(List<Path> sources) {
    BuildIndex index =
        extent.settings().isEmpty()
            ? null
            : BuildIndex.read(folder, INDEX, extent.settings(), extent.force());
    List<BuildPlan> plans = new ArrayList<>();
    for (Done<BuildPlan> done : read(sources, index)) {
      tell(done);
      BuildPlan plan = done.result();
      if (plan != null) {
        failed |= !plan.whole();
        plans.add(plan.saying(done.said()));
      }
    }
    refuseUnknown(plans);
    refuseClashes(plans);
    List<Task> tasks = tasks(plans);
    if (Lists.any(tasks, task -> task.part().outputs() != null)) {
      OutputFiles.makeFolder(folder);
    }
    for (Done<String> done : write(tasks, index)) {
      if (!done.said().isEmpty()) {
        io.out().flush();
      }
      tell(done);
      io.out().print(done.result() == null ? "" : done.result());
    }
    io.out().flush();
    Path deps = extent.deps();
    if (deps != null) {
      OutputFiles.write(deps, MakeRules.of(plans, folder));
    }
    if (index != null) {
      index.tidy();
    }
    return failed ? ExitCode.ERRORS : ExitCode.FINE;
  }

  private static List<Task> tasks(List<BuildPlan> plans) {
    List<Task> tasks = new ArrayList<>();
    for (BuildPlan plan : plans) {
      Writing writing = new Writing(plan.parts().size());
      plan.parts().forEach(part -> tasks.add(new Task(plan, part, writing)));
    }
    return tasks;
  }

  private void tell(Done<?> done) {
    io.err().print(done.said());
    failed |= !done.good();
  }

  /** Plans every source; of what is as it was last time, the plan that was noted. */
  private List<Done<BuildPlan>> read(List<Path> sources, @Nullable BuildIndex index) {
    if (index == null) {
      return plan(sources);
    }
    List<Path> stale =
        AllCores.without(sources, s -> isFresh(s, index), progress, "what has changed");
    Iterator<Done<BuildPlan>> planned = plan(stale).iterator();
    Set<Path> changed = new HashSet<>(stale);
    List<Done<BuildPlan>> all = new ArrayList<>();
    for (Path source : sources) {
      BuildIndex.Unit known = changed.contains(source) ? null : index.unit(source.toString());
      all.add(
          known == null
              ? planned.next()
              : new Done<>(String.join("", known.said()), true, BuildPlanner.known(source, known)));
    }
    return all;
  }

  private List<Done<BuildPlan>> plan(List<Path> sources) {
    return AllCores.map(
        sources,
        source -> Faults.aside(io, source, aside -> planner.plan(source, aside)),
        progress,
        source -> "reading " + source);
  }

  private boolean isFresh(Path source, BuildIndex index) {
    BuildIndex.Unit known = index.unit(source.toString());
    return known != null && planner.canRepeat(known) && index.isFresh(source.toString());
  }

  private void refuseUnknown(List<BuildPlan> plans) {
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
        ? "; to choose from: " + String.join(", ", names)
        : "; did you mean " + near.get(0) + "?";
  }

  private void refuseClashes(List<BuildPlan> plans) {
    OneFileEach files = new OneFileEach(folder);
    for (BuildPlan plan : plans) {
      for (BuildPlan.Part part : plan.parts()) {
        part.files().forEach(file -> files.take(file, part.name()));
      }
    }
  }

  /** Writes every part that is not there already. */
  private List<Done<String>> write(List<Task> tasks, @Nullable BuildIndex index) {
    List<Task> left = Lists.filter(tasks, task -> task.part().outputs() != null);
    // Nothing else goes to other cores, so that these are free for the outputs of a single part.
    Iterator<Done<String>> made =
        AllCores.map(
                left,
                task -> Faults.aside(io, task.part().source(), aside -> write(task, index)),
                progress,
                task -> "making " + task.part().name())
            .iterator();
    List<Done<String>> all = new ArrayList<>();
    for (Task task : tasks) {
      int files = task.part().files().size();
      all.add(
          task.part().outputs() != null
              ? made.next()
              : new Done<>("", true, line(task.part(), files, files)));
    }
    return all;
  }

  private String write(Task task, @Nullable BuildIndex index) {
    List<Output> outputs = Objects.requireNonNull(task.part().outputs());
    int same = 0;
    Map<String, Fingerprint> written = new LinkedHashMap<>();
    List<String> refused = new ArrayList<>();
    for (Written each : SpareCores.map(outputs, this::written)) {
      same += each.same() ? 1 : 0;
      written.put(each.name(), each.print());
      if (!each.refused().isEmpty()) {
        refused.add(each.refused());
      }
    }
    if (!refused.isEmpty()) {
      throw Failure.outside(others(refused));
    }
    Map<String, Fingerprint> all = task.writing().done(written);
    BuildPlan plan = task.plan();
    if (index != null && plan.settled() && plan.whole() && !all.isEmpty()) {
      List<String> said = plan.said().isEmpty() ? List.of() : List.of(plan.said());
      index.add(
          plan.source().toString(),
          new BuildIndex.Unit(started, plan.sources(), all, planner.noted(plan), said));
    }
    return line(task.part(), outputs.size(), same);
  }

  /**
   * Makes one output and writes it. Each as soon as it is made: the sound files of a long lesson
   * are too much to keep. What cannot be written does not keep the others: the page may be open
   * elsewhere, the sound is not.
   */
  private Written written(Output output) {
    byte[] bytes = output.bytes().get();
    Path file = folder.resolve(output.name());
    try {
      boolean same = OutputFiles.write(file, bytes) == OutputFiles.Outcome.UNCHANGED;
      return new Written(output.name(), Fingerprint.of(file, bytes), same, "");
    } catch (Failure e) {
      return new Written(output.name(), Fingerprint.MISSING, false, String.valueOf(e.getMessage()));
    }
  }

  private static String others(List<String> refused) {
    int more = refused.size() - 1;
    return refused.get(0)
        + (more == 0 ? "" : more == 1 ? "; and 1 more file" : "; and " + more + " more files");
  }

  private String line(BuildPlan.Part part, int all, int same) {
    return part.name()
        + ": "
        + (all == 1 ? "1 file in " : all + " files in ")
        + BuildPlan.shown(folder)
        + (same == 0 ? "" : same == all ? ", nothing changed" : ", " + same + " unchanged")
        + "\n";
  }
}
