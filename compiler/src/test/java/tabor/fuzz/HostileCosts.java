package tabor.fuzz;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * What each command costs on each of the {@link HostileFiles}: as a program it gives them to a
 * launcher of Tabor and prints what crosses the goal, and the dearest text of each command. Needs
 * GNU {@code time} in {@code /usr/bin}.
 */
public final class HostileCosts {
  /** What a text may cost: seconds and megabytes. */
  record Goal(double seconds, long megabytes) {
    static final Goal SHORT = new Goal(1, 300);
    static final Goal LONG = new Goal(10, 700);
  }

  /**
   * What a run cost.
   *
   * @param seconds the lesser of wall time and processor time: on a busy machine the first waits
   *     for others, and where there are several processors the second counts helpers twice
   */
  record Cost(double seconds, long megabytes, int exit) {
    boolean crosses(Goal goal) {
      return seconds > goal.seconds() || megabytes > goal.megabytes();
    }

    @Override
    public String toString() {
      return String.format(Locale.ROOT, "%6.2f s %5d MB, exit %d", seconds, megabytes, exit);
    }
  }

  /** What the commands read that no output needs. */
  private static final List<String> ON_ANY =
      List.of(
          "check FILE",
          "check --hints --report=json FILE",
          "check --report=sarif FILE",
          "format --check FILE",
          "grid --for-git FILE",
          "diff FILE OTHER",
          "diff OTHER FILE",
          "find ALONE",
          "overview -o OUT/overview.html ALONE",
          "merge FILE OTHER THIRD",
          "weave -o OUT --keep-going DOCUMENT");

  private static final List<String> ON_VALID =
      List.of(
          "list FILE",
          "list --as=json FILE",
          "grid FILE",
          "sticking --why FILE",
          "steps FILE",
          "steps --as=tsv FILE",
          "fastest FILE",
          "find --plays=paradiddle ALONE",
          "find --as=html -o OUT/found.html ALONE",
          "build --as=midi -o OUT FILE",
          "build --as=grid -o OUT FILE",
          "build --as=musicxml -o OUT FILE",
          "build --as=svg -o OUT FILE",
          "build --as=png -o OUT FILE",
          "build --as=pdf -o OUT FILE",
          "build --as=html -o OUT FILE",
          "build --as=wav -o OUT FILE",
          "handout -o OUT/handout.pdf FILE",
          "check --for=all FILE",
          "handout --for=all -o OUT FILE",
          "diff --as=svg FILE OTHER",
          "diff --as=pdf -o OUT/diff.pdf FILE OTHER",
          "weave -o OUT --to=markdown DOCUMENT");

  private final Path tabor;
  private final Path folder;

  private HostileCosts(Path tabor, Path folder) {
    this.tabor = tabor;
    this.folder = folder;
  }

  /**
   * Measures.
   *
   * @param args the launcher; a folder for the texts and what is made of them; if wanted, regular
   *     expressions that the names of texts, and the commands, must contain
   */
  public static void main(String[] args) throws IOException {
    Path folder = Path.of(args[1]).toAbsolutePath();
    HostileFiles.main(new String[] {folder.toString()});
    new HostileCosts(Path.of(args[0]).toAbsolutePath(), folder)
        .measure(
            Pattern.compile(args.length > 2 ? args[2] : ""),
            Pattern.compile(args.length > 3 ? args[3] : ""));
  }

  private void measure(Pattern names, Pattern commands) throws IOException {
    for (Map.Entry<String, String> file : HostileFiles.files().entrySet()) {
      String name = file.getKey();
      boolean used = name.contains("/") && !name.endsWith("/a");
      if (used || !names.matcher(name).find()) {
        continue;
      }
      String text = file.getValue();
      Path path = folder.resolve(name + ".tabor");
      sibling(path, ".other", "tempo 77\n" + text.replace("rl", "rr").replace("x . x", "x x x"));
      sibling(path, ".third", text.replace("rlrl r", "rlll r") + "\ngroove another\n  kick : x\n");
      Files.writeString(
          Path.of(path + ".md"), "# Hostile\n\n```tabor\n" + text + "\n```\n\nThe end.\n");
      Path alone = folder.resolve("alone");
      deleteAll(alone);
      Files.writeString(Files.createDirectories(alone).resolve("a.tabor"), text);
      Goal goal = text.length() <= HostileFiles.SHORT ? Goal.SHORT : Goal.LONG;
      List<String> all = new ArrayList<>(ON_ANY);
      if (run(path, "check FILE").exit() == 0) {
        all.addAll(ON_VALID);
      }
      for (String command : all) {
        if (commands.matcher(command).find()) {
          Cost cost = run(path, command);
          String mark = cost.crosses(goal) ? " CROSSES" : "";
          System.out.printf("%s  %-40s %s%s%n", cost, name, command, mark);
        }
      }
    }
  }

  private static void sibling(Path path, String suffix, String text) throws IOException {
    Files.writeString(Path.of(path.toString().replace(".tabor", suffix + ".tabor")), text);
  }

  private Cost run(Path file, String command) {
    Path out = folder.resolve("out");
    Path cost = folder.resolve("cost");
    try {
      deleteAll(out);
      Files.createDirectories(out);
      List<String> words =
          new ArrayList<>(
              List.of("/usr/bin/time", "-o", cost.toString(), "-f", "%e %U %S %M", "timeout"));
      words.add("100");
      words.add(tabor.toString());
      for (String word : command.split(" ", -1)) {
        words.add(
            switch (word) {
              case "FILE" -> file.toString();
              case "OTHER" -> file.toString().replace(".tabor", ".other.tabor");
              case "THIRD" -> file.toString().replace(".tabor", ".third.tabor");
              case "DOCUMENT" -> file + ".md";
              case "ALONE" -> folder.resolve("alone").toString();
              default -> word.replace("OUT", out.toString());
            });
      }
      Process process =
          new ProcessBuilder(words)
              .redirectErrorStream(true)
              .redirectInput(ProcessBuilder.Redirect.from(new java.io.File("/dev/null")))
              .redirectOutput(folder.resolve("said").toFile())
              .start();
      int exit = process.waitFor();
      List<String> lines = Files.readAllLines(cost, StandardCharsets.UTF_8);
      String[] figures = lines.get(lines.size() - 1).split(" ", -1);
      double wall = Double.parseDouble(figures[0]);
      double processor = Double.parseDouble(figures[1]) + Double.parseDouble(figures[2]);
      return new Cost(Math.min(wall, processor), Long.parseLong(figures[3]) / 1024, exit);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  private static void deleteAll(Path path) throws IOException {
    if (!Files.exists(path)) {
      return;
    }
    if (Files.isDirectory(path)) {
      List<Path> inside;
      try (Stream<Path> all = Files.list(path)) {
        inside = all.toList();
      }
      for (Path one : inside) {
        deleteAll(one);
      }
    }
    Files.delete(path);
  }
}
