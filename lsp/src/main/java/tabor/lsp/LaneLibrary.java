package tabor.lsp;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.ide.Library;
import tabor.resolve.Options;

/**
 * Other files and other texts for the requests of one lane. Open files are those that the typing
 * lane compiled; what else is needed is compiled here, by compilers of the lane's own.
 */
final class LaneLibrary implements Library {
  private final Workspace workspace;
  private final CompiledFiles compiled;

  /** What this request has been given: every time the same. */
  private final Map<Path, Compiled> served = new HashMap<>();

  private final Compiler files = new Compiler(this::load);

  /**
   * Compiles texts that nobody has written, so that these do not push out what is kept. It starts
   * from what the typing lane made of a file when that was opened.
   */
  private final Compiler trials;

  private volatile boolean used;
  private @Nullable List<Path> listed;
  private @Nullable Path folder;
  private Scheduler.Wanted wanted = () -> {};

  LaneLibrary(Workspace workspace, CompiledFiles compiled) {
    this.workspace = workspace;
    this.compiled = compiled;
    this.trials = new Compiler(this::load, compiled::forOthers);
  }

  /** From here on it serves this request, and stops when that is not wanted any more. */
  LaneLibrary serving(Scheduler.Wanted request) {
    wanted = request;
    served.clear();
    listed = null;
    return this;
  }

  /** True if something is kept of a file. In this lane alone. */
  boolean keeps(Path path) {
    return served.containsKey(path) || files.keeps(path) || trials.keeps(path);
  }

  /** False if nothing was ever compiled here. Any thread may ask. */
  boolean isUsed() {
    return used;
  }

  /** Lets go of a file that is no longer open. In this lane alone. */
  void forget(Path path) {
    served.remove(path);
    files.forget(path);
    trials.forget(path);
  }

  private Loader.Found load(Path user, String written) {
    return workspace.load(folder, user, written);
  }

  @Override
  public Optional<Compiled> file(Path path) {
    wanted.check();
    Optional<OpenDocument> open = workspace.open(path);
    if (open.isPresent()) {
      Optional<Compiled> there = compiled.known(open.get());
      if (there.isPresent()) {
        return there;
      }
    }
    Compiled before = served.get(path);
    if (before != null) {
      return Optional.of(before);
    }
    Optional<Compiled> made =
        open.map(OpenDocument::text)
            .or(() -> workspace.read(path))
            .map(text -> compile(path, text));
    made.ifPresent(one -> served.put(path, one));
    return made;
  }

  @Override
  public boolean mayUseOthers(Path path) {
    wanted.check();
    return workspace.open(path).map(OpenDocument::text).or(() -> workspace.read(path)).stream()
        .anyMatch(text -> text.contains("use"));
  }

  private Compiled compile(Path path, String text) {
    folder = path.getParent();
    used = true;
    return files.compile(path, text, Options.NONE);
  }

  @Override
  public Compiled trial(Path path, String text) {
    return trial(path, text, Options.NONE);
  }

  @Override
  public Compiled trial(Path path, String text, Options options) {
    wanted.check();
    folder = path.getParent();
    used = true;
    Compiled made = trials.compile(path, text, options);
    wanted.check();
    return made;
  }

  @Override
  public List<Path> files() {
    // Walking through folders takes longer than all the rest: once for a request.
    if (listed == null) {
      wanted.check();
      listed = workspace.files();
    }
    return listed;
  }
}
