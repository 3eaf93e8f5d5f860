package tabor.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Weaves documents into a folder, and says what became of them. */
final class WeaveRun {
  /** The picture folder's name where none is given. */
  static final String PICTURES = "pictures";

  private WeaveRun() {}

  /** Weaves into complete pages, with all as it is where nothing is said. */
  static int plain(Io io, List<String> words, String folder, @Nullable String lessons) {
    Path into = SourceFiles.path(folder);
    Weave weave = new Weave(into, Weave.To.HTML, false, false, PICTURES, lessons(lessons));
    return into(into, words, weave, io);
  }

  /** The folder of lessons that was named; null if none was. */
  static @Nullable Path lessons(@Nullable String word) {
    if (word == null) {
      return null;
    }
    Path folder = SourceFiles.path(word);
    if (!Files.isDirectory(folder)) {
      throw Failure.usage("--lessons takes a folder, and there is none called " + word);
    }
    return folder;
  }

  /**
   * Weaves; returns the exit code.
   *
   * @param words the documents and folders as typed
   */
  static int into(Path into, List<String> words, Weave weave, Io io) {
    List<DocumentFiles.Document> documents = DocumentFiles.find(words, into);
    Set<Path> roots = new LinkedHashSet<>();
    documents.forEach(document -> roots.add(document.root()));
    for (Path root : roots) {
      if (DocumentFiles.real(root).equals(DocumentFiles.real(into))) {
        throw Failure.usage(
            "the documents lie in " + into + " themselves: name another folder, or use --in-place");
      }
    }
    Set<String> reports = new LinkedHashSet<>();
    int done = 0;
    int fresh = 0;
    int failed = 0;
    for (Weave.Outcome outcome : weave.run(documents, new Progress(io))) {
      reports.addAll(outcome.said());
      if (outcome.state() == Weave.State.FAILED) {
        failed++;
        reports.add("tabor: nothing is written for " + outcome.document().path() + "\n");
      } else if (outcome.document().isMarkdown()) {
        done += outcome.state() == Weave.State.DONE ? 1 : 0;
        fresh += outcome.state() == Weave.State.FRESH ? 1 : 0;
      }
    }
    reports.forEach(io.err()::print);
    io.out()
        .print(
            pages(done)
                + " woven into "
                + into
                + (fresh > 0 ? ", " + fresh + " unchanged" : "")
                + (failed > 0 ? ", " + failed + " with problems" : "")
                + "\n");
    return failed > 0 ? ExitCode.ERRORS : ExitCode.FINE;
  }

  private static String pages(int count) {
    return count == 1 ? "1 document" : count + " documents";
  }
}
