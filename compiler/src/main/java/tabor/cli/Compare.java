package tabor.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import tabor.compare.ComparedFile;
import tabor.compare.FileChange;
import tabor.compare.FileComparison;
import tabor.compile.Compiled;
import tabor.cores.SpareCores;
import tabor.diagnostic.Code;
import tabor.diagnostic.Severity;
import tabor.resolve.Options;

/** The work of {@code tabor diff}: finds the files that belong together and compares them. */
final class Compare {
  /** What stands for a file that is not there. */
  private static final String NOTHING = "/dev/null";

  private final Toolchain toolchain;

  Compare(Io io) {
    this.toolchain = new Toolchain(io, Options.NONE);
  }

  /** How changes are printed. */
  enum Style {
    TEXT,
    MARKDOWN,
    JSON
  }

  /** True if a word of the command line names a folder. */
  static boolean isFolder(String word) {
    return !word.equals(SourceReader.STDIN) && Files.isDirectory(SourceFiles.path(word));
  }

  /** Compares two files, or two folders file by file; what cannot be read ends the command. */
  List<ComparedFile> compare(String old, String now) {
    if (old.equals(SourceReader.STDIN) && now.equals(SourceReader.STDIN)) {
      throw Failure.usage("only one of the two can be standard input");
    }
    if (isFolder(old) != isFolder(now)) {
      throw Failure.usage(
          (isFolder(old) ? old : now) + " is a folder and the other is none; name two of a kind");
    }
    if (!isFolder(old)) {
      return List.of(
          file(new Named(old, SourceFiles.path(old)), new Named(now, SourceFiles.path(now))));
    }
    Map<String, Path> left = lessons(SourceFiles.path(old));
    Map<String, Path> right = lessons(SourceFiles.path(now));
    Map<String, Path> names = new TreeMap<>(left);
    names.putAll(right);
    List<ComparedFile> files = new ArrayList<>();
    for (String name : names.keySet()) {
      files.add(file(named(left.get(name)), named(right.get(name))));
    }
    return List.copyOf(files);
  }

  /** Compares what git hands over: texts in files of its own, and the paths that they belong to. */
  ComparedFile ofGit(String path, String old, String newPath, String now) {
    return file(new Named(path, SourceFiles.path(old)), new Named(newPath, SourceFiles.path(now)));
  }

  /** The lessons of a folder by their path in it; none if it has none. */
  private static Map<String, Path> lessons(Path folder) {
    Map<String, Path> found = new TreeMap<>();
    try {
      for (Path file : SourceFiles.find(List.of(folder.toString()))) {
        found.put(folder.relativize(file).toString(), file);
      }
    } catch (Failure nothing) {
      if (nothing.code() != ExitCode.USAGE) {
        throw Failure.usage(nothing.getMessage());
      }
    }
    return found;
  }

  /**
   * A text and the file that it belongs to.
   *
   * @param name what the file is called: files in use are looked for beside it
   * @param text where the text is
   */
  private record Named(String name, Path text) {
    boolean isNothing() {
      return text.toString().equals(NOTHING);
    }
  }

  private static Named named(@Nullable Path file) {
    return file == null ? new Named(NOTHING, Path.of(NOTHING)) : new Named(file.toString(), file);
  }

  private ComparedFile file(Named old, Named now) {
    List<Compiled> both = SpareCores.map(List.of(old, now), this::compiled);
    Compiled before = both.get(0);
    Compiled after = both.get(1);
    boolean sameText = before.text().equals(after.text());
    List<String> notes = new ArrayList<>();
    if (!sameText) {
      note(notes, old.isNothing() ? null : "the old file", before);
      note(notes, now.isNothing() ? null : "the new file", after);
    }
    if (old.isNothing() && now.isNothing()) {
      throw Failure.usage("there is no file to compare");
    }
    return new ComparedFile(
        old.isNothing() ? null : old.name(),
        now.isNothing() ? null : now.name(),
        sameText && old.name().equals(now.name())
            ? new FileChange(List.of(), List.of())
            : FileComparison.of(before, after),
        sameText,
        notes);
  }

  private Compiled compiled(Named named) {
    if (named.isNothing()) {
      return toolchain.compile(Path.of("nothing.tabor"), "");
    }
    Compiled compiled = toolchain.compile(named.text(), SourceFiles.path(named.name()));
    compiled.diagnostics().stream()
        .filter(d -> isUnreadable(d.code()) && compiled.lesson().sections().isEmpty())
        .filter(d -> compiled.syntax().isEmpty())
        .findFirst()
        .ifPresent(
            d -> {
              throw Failure.usage(named.name() + " cannot be read: " + d.message());
            });
    return compiled;
  }

  private static boolean isUnreadable(Code code) {
    return code == Code.UNREADABLE || code == Code.NOT_UTF8 || code == Code.TOO_LONG;
  }

  private static void note(List<String> notes, @Nullable String which, Compiled compiled) {
    long errors =
        compiled.diagnostics().stream().filter(d -> d.severity() == Severity.ERROR).count();
    if (which != null && errors > 0) {
      notes.add(which + " has " + (errors == 1 ? "an error" : errors + " errors"));
    }
  }
}
