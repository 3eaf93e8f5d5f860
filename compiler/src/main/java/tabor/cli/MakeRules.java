package tabor.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/** What depends on what, as rules for make. */
final class MakeRules {
  private MakeRules() {}

  /**
   * The outputs of each lesson depend on its files; a file that went away is no error.
   *
   * @param folder where the outputs are
   */
  static String of(List<BuildPlan> plans, Path folder) {
    StringBuilder out = new StringBuilder();
    Set<String> all = new TreeSet<>();
    for (BuildPlan plan : plans) {
      List<String> from = plan.sources().keySet().stream().map(MakeRules::name).sorted().toList();
      List<String> to = plan.files().stream().map(f -> name(folder.resolve(f))).toList();
      if (!to.isEmpty()) {
        out.append(String.join(" ", to)).append(": ").append(String.join(" ", from)).append('\n');
        all.addAll(from);
      }
    }
    all.forEach(file -> out.append('\n').append(file).append(":\n"));
    return out.toString();
  }

  /** A name as a makefile writes it, as seen from the current folder. */
  private static String name(Path file) {
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
