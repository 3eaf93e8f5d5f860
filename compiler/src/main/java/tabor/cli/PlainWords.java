package tabor.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.resolve.Options;

/**
 * A command line that says what people and docs builds say all day. It goes past the command line
 * parser, which alone takes longer than reading a page, or than seeing that a thousand pages are as
 * they were.
 *
 * @param command {@code check}, {@code build} or {@code weave}
 * @param words files and folders
 * @param options what follows the options, which are among those of {@link #OPTIONS}, each once
 */
record PlainWords(String command, List<String> words, Map<String, String> options) {
  private static final String OUT = "-o";

  /** The commands, and their usual options, each with a word after it. */
  private static final Map<String, Set<String>> OPTIONS =
      Map.of(
          "check", Set.of(),
          "build", Set.of(OUT, "--as"),
          "weave", Set.of(OUT, "--lessons"));

  /** What a command line says; null if the command line parser has to look at it. */
  static @Nullable PlainWords of(String[] args) {
    Set<String> usual = args.length == 0 ? null : OPTIONS.get(args[0]);
    if (usual == null) {
      return null;
    }
    List<String> words = new ArrayList<>();
    Map<String, String> options = new LinkedHashMap<>();
    for (int i = 1; i < args.length; i++) {
      String word = args[i];
      if (isPlain(word)) {
        words.add(word);
      } else if (usual.contains(word)
          && !options.containsKey(word)
          && i + 1 < args.length
          && isPlain(args[i + 1])) {
        options.put(word, args[++i]);
      } else {
        return null;
      }
    }
    boolean whole = !words.isEmpty() && (options.containsKey(OUT) || !usual.contains(OUT));
    return whole ? new PlainWords(args[0], words, options) : null;
  }

  /** True for a word that is no option. */
  private static boolean isPlain(String word) {
    boolean option = word.startsWith("-") && !word.equals(SourceReader.STDIN);
    return !option && !word.startsWith("@") && !word.isEmpty();
  }

  /** Runs the command; returns its exit code. */
  int run(Io io) {
    String folder = options.getOrDefault(OUT, "");
    return switch (command) {
      case "build" -> BuildCommand.plain(io, words, folder, options.get("--as"));
      case "weave" -> WeaveRun.plain(io, words, folder, options.get("--lessons"));
      default -> Check.run(io, words, Options.NONE, List.of(), Check.Style.TEXT, false, null);
    };
  }
}
