package tabor.cli;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A line of {@code weave} that says what, where to and whose lessons, and nothing else, as a docs
 * build does each time. It goes past the command line parser, which alone would take as long as
 * seeing that a thousand pages are as they were.
 *
 * @param folder the folder to write into
 * @param lessons the folder of lessons; null for the documents' own
 * @param words documents and folders of documents
 */
record PlainWeave(String folder, @Nullable String lessons, List<String> words) {
  /** What a command line says; null if the command line parser has to look at it. */
  static @Nullable PlainWeave of(String[] args) {
    String folder = null;
    String lessons = null;
    List<String> words = new ArrayList<>();
    for (int i = 1; i < args.length; i++) {
      boolean last = i + 1 == args.length;
      if (args[i].equals("-o") && folder == null && !last && Main.isPlain(args[i + 1])) {
        folder = args[++i];
      } else if (args[i].equals("--lessons")
          && lessons == null
          && !last
          && Main.isPlain(args[i + 1])) {
        lessons = args[++i];
      } else if (Main.isPlain(args[i])) {
        words.add(args[i]);
      } else {
        return null;
      }
    }
    return args.length == 0 || !args[0].equals("weave") || folder == null || words.isEmpty()
        ? null
        : new PlainWeave(folder, lessons, words);
  }

  /** Weaves; returns the exit code. */
  int run(Io io) {
    return WeaveRun.plain(SourceFiles.path(folder), lessons, words, io);
  }
}
