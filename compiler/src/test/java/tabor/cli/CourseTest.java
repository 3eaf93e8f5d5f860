package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The course of the examples in a repository of its own: its recipe, its site, two teachers. */
class CourseTest {
  private static final Path COURSE = Path.of("../examples/course");
  private static final Pattern LINK = Pattern.compile(" (?:href|src)=\"([^\"]*)\"");

  @TempDir private static Path temp;
  private static GitSandbox git;

  @BeforeAll
  static void cloneIt() throws Exception {
    git = new GitSandbox(temp);
    copy(COURSE, git.folder());
    git.commit("The course");
    done("git clone -q . ../fresh && sh ../fresh/build.sh ../site");
  }

  /** Copies what is written by hand, not what a recipe has left there. */
  static void copy(Path from, Path to) throws IOException {
    try (Stream<Path> all = Files.walk(from)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        Path name = from.relativize(file);
        if (!name.startsWith("out")) {
          Path copied = to.resolve(name.toString());
          Files.createDirectories(copied.getParent());
          Files.copy(file, copied);
        }
      }
    }
  }

  private static String done(String line) throws IOException, InterruptedException {
    Ran ran = git.shell(line);
    assertThat(ran.code()).as(ran.out()).isZero();
    return ran.out();
  }

  private static Path site() {
    return temp.resolve("site");
  }

  private static String page(String name) throws IOException {
    return Files.readString(site().resolve(name));
  }

  @Test
  void theRecipeMakesAPageAndASheetForEachWeek() throws IOException {
    try (Stream<Path> made = Files.list(site())) {
      assertThat(made.map(file -> file.getFileName().toString()).filter(n -> !n.startsWith(".")))
          .containsExactlyInAnyOrder(
              "index.html",
              "week-1.html",
              "week-2.html",
              "week-3.html",
              "week-4.html",
              "saturday-1.pdf",
              "saturday-2.pdf",
              "saturday-3.pdf",
              "saturday-4.pdf",
              "small-kit.pdf");
    }
    assertThat(page("index.html")).doesNotContain("<script");
    for (int week = 1; week <= 4; week++) {
      assertThat(page("week-" + week + ".html"))
          .containsOnlyOnce("<script>")
          .contains("class=\"tabor-player\"");
      byte[] sheet = Files.readAllBytes(site().resolve("saturday-" + week + ".pdf"));
      assertThat(new String(sheet, 0, 5, StandardCharsets.ISO_8859_1)).isEqualTo("%PDF-");
    }
    // What the third week says to its teacher is on no page.
    assertThat(page("week-3.html")).doesNotContain("back of the hall");
  }

  @Test
  void everyLinkLeadsToAFileOfTheSiteAndEveryFileIsReached() throws IOException {
    TreeSet<String> reached = new TreeSet<>(List.of("index.html"));
    TreeSet<String> waiting = new TreeSet<>(reached);
    while (!waiting.isEmpty()) {
      String name = waiting.pollFirst();
      assertThat(site().resolve(name)).as(name).isRegularFile();
      if (!name.endsWith(".html")) {
        continue;
      }
      Matcher link = LINK.matcher(page(name).replaceAll("(?s)<script>.*?</script>", ""));
      while (link.find()) {
        String to = URLDecoder.decode(link.group(1), StandardCharsets.UTF_8).replaceAll("#.*", "");
        assertThat(to).as("a link of " + name).doesNotContain(":", "//");
        if (!to.isEmpty() && reached.add(to)) {
          waiting.add(to);
        }
      }
    }
    assertThat(reached).hasSize(10);
  }

  @Test
  void aSecondRunMakesTheSameAndNothingAnew() throws Exception {
    String said = done("sh ../fresh/build.sh ../site");
    assertThat(said).contains("0 documents woven into ../site, 5 unchanged");
    assertThat(said.lines().filter(line -> line.endsWith(", nothing changed"))).hasSize(5);
  }

  /** Makes a copy that is set up, changes files in it by sed and records that. */
  private static void teacher(String name, String... edits) throws Exception {
    StringBuilder line = new StringBuilder("set -e; git clone -q . ../" + name + "; cd ../" + name);
    line.append("; git config user.name '").append(name).append("'");
    line.append("; git config user.email teacher@example.org; tabor git-setup >/dev/null");
    for (String edit : edits) {
      line.append("; ").append(edit);
    }
    done(line + "; tabor check .; tabor format --check .; git commit -qam 'Edits of " + name + "'");
  }

  @Test
  void twoTeachersEditAndGitPutsItTogetherWithoutAMarker() throws Exception {
    teacher(
        "ann",
        "sed -i 's/^tempo 76/tempo 72/' saturday-3.tabor",
        "printf '\\nstep feet \"The feet alone\" from beat\\n  drop hihat\\n  drop snare\\n'"
            + " >> saturday-4.tabor",
        "sed -i 's/from beat$/from verse/' saturday-4.tabor",
        "sed -i 's/play lead 2 times/play lead 3 times/' saturday-4.tabor");
    teacher(
        "bea",
        "sed -i 's/^on    hall/on    five-piece/; s/^goal .*/goal  \"Quiet and even\"/'"
            + " saturday-3.tabor",
        "printf '\\nstep hat \"The hi-hat alone\" from verse\\n  drop snare\\n  drop kick\\n'"
            + " >> saturday-4.tabor",
        "sed -i 's/cue  \"Everybody\"/cue  \"All\"/' saturday-4.tabor");
    String pull = "cd ../ann && git pull -q --no-rebase --no-edit ../bea";
    // By text alone the two cannot be put together.
    String byText = "git -c merge.tabor.driver='git merge-file %A %O %B' pull";
    Ran plain = git.shell(pull.replace("git pull", byText));
    assertThat(plain.code()).as(plain.out()).isNotZero();
    assertThat(plain.out()).contains("conflict in saturday-3", "conflict in saturday-4");
    done("cd ../ann && git merge --abort");
    done(pull);
    String week3 = Files.readString(temp.resolve("ann/saturday-3.tabor"));
    assertThat(week3).contains("tempo 72\non    five-piece\n", "goal  \"Quiet and even\"");
    String week4 = Files.readString(temp.resolve("ann/saturday-4.tabor"));
    assertThat(week4)
        .contains("play lead 3 times", "cue  \"All\"", "step feet", "step hat")
        .doesNotContain("<<<<", ">>>>");
    done("cd ../ann && sh build.sh && git status --porcelain | (! grep .)");
    assertThat(temp.resolve("ann/out/week-4.html")).content().contains("The hi-hat alone");
  }
}
