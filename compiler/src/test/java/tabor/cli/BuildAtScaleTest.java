package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Many lessons at once, and again. */
class BuildAtScaleTest {
  @TempDir Path work;

  private long time = 1_700_000_000_000L;

  private void write(String name, String text) throws IOException {
    Path file = work.resolve("in").resolve(name);
    Files.createDirectories(file.getParent());
    Files.writeString(file, text);
    time += 10_000;
    Files.setLastModifiedTime(file, FileTime.fromMillis(time));
  }

  private void lessons(int count) throws IOException {
    write("part.tabor", "pattern row : rlrl\n");
    for (int i = 1; i <= count; i++) {
      String use = i % 2 == 0 ? "use \"part.tabor\"\n" : "pattern row : rrll\n";
      write(
          "l" + i + ".tabor",
          use + "groove beat" + i + "\n  hands play row in eighths\n  kick : x . x .\n");
    }
  }

  private Ran build(String out, String... more) {
    List<String> words =
        Stream.concat(
                Stream.of(
                    "build", work.resolve("in").toString(), "-o", work.resolve(out).toString()),
                Stream.of(more))
            .toList();
    return Ran.of(words.toArray(String[]::new));
  }

  private Map<String, String> files(String folder) throws IOException {
    Map<String, String> files = new TreeMap<>();
    try (Stream<Path> all = Files.list(work.resolve(folder))) {
      for (Path file : all.toList()) {
        String name = file.getFileName().toString();
        if (!name.equals(Build.INDEX) && !name.endsWith(".d")) {
          files.put(name, new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1));
        }
      }
    }
    return files;
  }

  @Test
  void onAllCoresTheBytesAreThoseOfOneAfterTheOther() throws IOException {
    lessons(12);
    assertThat(build("all", "--as", "all").code()).isZero();
    for (int i = 1; i <= 12; i++) {
      Path lesson = work.resolve("in/l" + i + ".tabor");
      Ran.of("build", lesson.toString(), "-o", work.resolve("single").toString(), "--as", "all");
    }
    Map<String, String> all = files("all");
    all.keySet().removeIf(name -> name.startsWith("part."));
    assertThat(all).isEqualTo(files("single"));
  }

  @Test
  void aSecondRunMakesWhatHasChanged() throws IOException {
    lessons(6);
    String first = build("out").out();
    Ran second = build("out");
    assertThat(second.out()).isEqualTo(first.replace("\n", ", nothing changed\n"));

    write("part.tabor", "pattern row : rllr\n");
    Ran third = build("out");
    assertThat(third.out().lines().filter(line -> !line.endsWith("nothing changed")))
        .as("the three that use it; its own list of nothing is as it was")
        .hasSize(3);
    assertThat(files("out")).isEqualTo(fresh());
    Files.delete(work.resolve("out/l1.txt"));
    build("out");
    assertThat(files("out")).isEqualTo(fresh());
    Files.writeString(work.resolve("out/l1.txt"), "spoilt");
    build("out", "--force");
    assertThat(files("out")).isEqualTo(fresh());
  }

  private Map<String, String> fresh() throws IOException {
    String name = "fresh" + System.nanoTime();
    build(name);
    return files(name);
  }

  @Test
  void warningsAndErrorsAreToldEachTimeInOrder() throws IOException {
    lessons(4);
    write("l2.tabor", "groove wrong\n  snare : x\n");
    write("l3.tabor", "pattern idle : rl\ngroove g\n  snare : x . x .\n");
    Ran one = build("out");
    Ran two = build("out");
    assertThat(one.code()).isEqualTo(1);
    assertThat(two.err()).isEqualTo(one.err()).contains("l2.tabor:2:11: error", "l3.tabor:1:9");
    assertThat(one.err().indexOf("l2.tabor")).isLessThan(one.err().indexOf("l3.tabor"));
  }

  /** What is asked of the page and for whom is part of what is remembered. */
  @Test
  void otherWishesMakeEverythingAnew() throws IOException {
    lessons(2);
    build("out", "--as", "pdf,png");
    for (String wish :
        List.of(
            "--large",
            "--clean",
            "--teacher",
            "--no-caution",
            "--caution=Short breaks.",
            "--paper=letter",
            "--transparent",
            "--no-count-in",
            "--left-handed",
            "--tempo=50")) {
      assertThat(build("out", "--as", "pdf,png", wish).code()).as(wish).isZero();
      build("other", "--as", "pdf,png", wish, "--force");
      assertThat(files("out")).as(wish).isEqualTo(files("other"));
    }
  }

  /** A lesson with a warning is not made anew to say it again: its index entry stays. */
  @Test
  void warningsAreToldAgainOfWhatIsNotMadeAnew() throws IOException {
    write("a.tabor", "pattern idle : rl\ngroove g\n  snare : x . x .\n");
    write("b.tabor", "groove g\n  hands : rlrl rlrl rlrl rlrl\n");
    Ran one = build("out");
    assertThat(one.code()).isZero();
    assertThat(one.err()).contains("a.tabor:1:9: warning: ");
    String index = Files.readString(work.resolve("out").resolve(Build.INDEX));
    Ran two = build("out");
    assertThat(two.err()).isEqualTo(one.err());
    assertThat(Files.readString(work.resolve("out").resolve(Build.INDEX))).isEqualTo(index);

    write("a.tabor", "groove g\n  snare : x . x .\n");
    assertThat(build("out").err()).doesNotContain("warning");
    assertThat(build("out").err()).doesNotContain("warning");
  }

  /** On a terminal the same words come in colour, also where they were printed without before. */
  @Test
  void warningsAreToldAgainInTheColoursOfNow() throws IOException {
    write("a.tabor", "pattern idle : rl\ngroove g\n  snare : x . x .\n");
    String[] words = {"build", work.resolve("in").toString(), "-o", work.resolve("out").toString()};
    assertThat(Ran.of(words).err()).doesNotContain("\033");
    Ran colours = Ran.on(new byte[0], Map.of("TERM", "xterm"), true, words);
    assertThat(colours.err()).contains("\033");
    assertThat(Ran.on(new byte[0], Map.of("TERM", "xterm"), true, words).err())
        .isEqualTo(colours.err());
    assertThat(Ran.of(words).err()).doesNotContain("\033").contains("a.tabor:1:9: warning: ");
  }

  @Test
  void shardsTogetherAreTheWholeAndStayAsTheyAre() throws IOException {
    lessons(24);
    List<String> together = new ArrayList<>();
    Map<String, Integer> parts = new TreeMap<>();
    for (int k = 1; k <= 4; k++) {
      build("s" + k, "--shard", k + "/4");
      List<String> names =
          Files.exists(work.resolve("s" + k)) ? List.copyOf(files("s" + k).keySet()) : List.of();
      together.addAll(names);
      for (String name : names) {
        parts.put(name, k);
      }
    }
    build("whole");
    assertThat(together).containsExactlyInAnyOrderElementsOf(files("whole").keySet());
    Files.delete(work.resolve("in/l7.tabor"));
    write("new.tabor", "groove g\n  snare : x . x .\n");
    for (int k = 1; k <= 4; k++) {
      build("t" + k, "--shard", k + "/4");
      if (Files.exists(work.resolve("t" + k))) {
        for (String name : files("t" + k).keySet()) {
          assertThat(parts.getOrDefault(name, k)).as(name).isEqualTo(k);
        }
      }
    }
    for (String wrong : List.of("0/4", "5/4", "a", "1/1001", "1/0", "-1/4")) {
      assertThat(build("x", "--shard=" + wrong).code()).as(wrong).isEqualTo(ExitCode.USAGE);
    }
  }

  @Test
  void partsAreAboutEquallyLarge() {
    List<Path> many = new ArrayList<>();
    for (int i = 0; i < 8000; i++) {
      many.add(Path.of("lessons", "week-" + i + ".tabor"));
    }
    for (int k = 1; k <= 8; k++) {
      assertThat(Shard.of(k + "/8").of(many)).hasSizeBetween(900, 1100);
    }
  }

  @Test
  void makeBuildsTheSameBytesAndOnlyWhatDependsOnAChange() throws Exception {
    assumeTrue(Files.isExecutable(Path.of("/usr/bin/make")), "make is not installed");
    lessons(3);
    Path tabor = work.resolve("tabor");
    Files.writeString(
        tabor,
        "#!/bin/sh\nexec '"
            + Path.of(System.getProperty("java.home"), "bin", "java")
            + "' -XX:TieredStopAtLevel=1 -cp '"
            + System.getProperty("java.class.path")
            + "' tabor.cli.Main \"$@\"\n");
    Files.setPosixFilePermissions(tabor, PosixFilePermissions.fromString("rwxr-xr-x"));
    // The recipe of docs/commands.md, with the lessons' folder and the program's place of this
    // test.
    String recipe = Files.readString(Path.of("../docs/commands.md"));
    int from = recipe.indexOf("```make\n") + "```make\n".length();
    String make =
        recipe
            .substring(from, recipe.indexOf("```", from))
            .replace("tabor build", "../tabor build");
    Path course = Files.createDirectory(work.resolve("course"));
    Files.writeString(course.resolve("Makefile"), make);
    Files.move(work.resolve("in"), course.resolve("lessons"));
    assertThat(make(course)).contains("l1.tabor", "l2.tabor", "l3.tabor");
    Files.createSymbolicLink(work.resolve("in"), course.resolve("lessons"));
    build("direct");
    assertThat(files("course/out")).isEqualTo(files("direct"));
    assertThat(make(course)).doesNotContain("../tabor build");
    Files.writeString(course.resolve("lessons/part.tabor"), "pattern row : rllr\n");
    assertThat(make(course)).contains("l2.tabor").doesNotContain("l1.tabor", "l3.tabor");
  }

  private static String make(Path course) throws IOException, InterruptedException {
    Path log = course.resolve("log.d");
    int code =
        new ProcessBuilder("make", "-j", "2")
            .directory(course.toFile())
            .redirectErrorStream(true)
            .redirectOutput(log.toFile())
            .start()
            .waitFor();
    String said = Files.readString(log);
    assertThat(code).as(said).isZero();
    return said;
  }
}
