package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Git itself, in a repository of its own, calls Tabor as git-setup has told it. */
class GitRepositoryTest {
  private static final String LESSON =
      """
      title  "Six-eight workshop"
      time   6/8
      tempo  60

      groove pads "On the snare"
        hands play paradiddle-diddle in sixteenths
        text  "Low taps, tall accents."

      step feet "Kick on one"
        add kick at 1
      """;

  @TempDir private Path temp;
  private Path repository;
  private String program;

  @BeforeEach
  void makeRepository() throws IOException, InterruptedException {
    assumeTrue(runs("git", "--version"), "git is not installed");
    repository = Files.createDirectories(temp.resolve("our class"));
    git("init", "-q", "-b", "trunk");
    git("config", "user.name", "A teacher");
    git("config", "user.email", "teacher@example.org");
    git("config", "commit.gpgsign", "false");
    // A launcher with a space in its path: the classes that are being tested.
    Path launcher = temp.resolve("a tool").resolve("tabor");
    Files.createDirectories(launcher.getParent());
    Files.writeString(
        launcher,
        "#!/bin/sh\nexec '"
            + Path.of(System.getProperty("java.home"), "bin", "java")
            + "' -XX:TieredStopAtLevel=1 -Dtabor.out=pipe -Dtabor.err=pipe -cp '"
            + System.getProperty("java.class.path")
            + "' tabor.cli.Main \"$@\"\n");
    Files.setPosixFilePermissions(launcher, PosixFilePermissions.fromString("rwxr-xr-x"));
    program = "'" + launcher + "'";
    write("lesson.tabor", LESSON);
  }

  private static boolean runs(String... words) throws InterruptedException {
    try {
      return new ProcessBuilder(words).redirectErrorStream(true).start().waitFor() == 0;
    } catch (IOException missing) {
      return false;
    }
  }

  /**
   * What a program said.
   *
   * @param code its exit code
   * @param text what it printed, complaints included
   */
  private record Said(int code, String text) {}

  private Said run(String input, List<String> words) throws IOException, InterruptedException {
    ProcessBuilder builder = new ProcessBuilder(words).directory(repository.toFile());
    builder.redirectErrorStream(true);
    Map<String, String> env = builder.environment();
    env.keySet().removeIf(name -> name.startsWith("GIT_"));
    env.put("GIT_CONFIG_GLOBAL", "/dev/null");
    env.put("GIT_CONFIG_SYSTEM", "/dev/null");
    env.put("GIT_EDITOR", "true");
    env.put("LC_ALL", "C.UTF-8");
    Process process = builder.start();
    process.getOutputStream().write(input.getBytes(StandardCharsets.UTF_8));
    process.getOutputStream().close();
    String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    return new Said(process.waitFor(), text);
  }

  private Said git(String... words) throws IOException, InterruptedException {
    List<String> all = new ArrayList<>(List.of("git"));
    all.addAll(List.of(words));
    return run("", all);
  }

  private String done(String... words) throws IOException, InterruptedException {
    Said said = git(words);
    assertThat(said.code()).as(said.text()).isZero();
    return said.text();
  }

  private void write(String name, String text) throws IOException {
    Files.writeString(repository.resolve(name), text);
  }

  private String read(String name) throws IOException {
    return Files.readString(repository.resolve(name));
  }

  private Ran setup(String... words) {
    java.io.ByteArrayOutputStream out = new java.io.ByteArrayOutputStream();
    java.io.ByteArrayOutputStream err = new java.io.ByteArrayOutputStream();
    Io io = Io.of(java.io.InputStream.nullInputStream(), out, err, false, false, Map.of());
    GitSetup setup = new GitSetup(io, Git.around(repository));
    int code = words.length == 0 ? setup.write(program) : setup.remove();
    io.out().flush();
    io.err().flush();
    return new Ran(
        code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }

  private void commit(String message) throws IOException, InterruptedException {
    done("add", "-A");
    done("commit", "-q", "-m", message);
  }

  @Test
  void setupSaysEveryLineAndUndoesExactlyWhatItSet() throws Exception {
    String before = read(".git/config");
    Ran first = setup();
    assertThat(first.code()).isZero();
    assertThat(first.out())
        .contains("set diff.tabor.command = " + program + " diff\n")
        .contains("set diff.tabor.textconv = ")
        .contains("set diff.tabor.xfuncname = ")
        .contains("set merge.tabor.driver = ")
        .contains("added to .gitattributes: *.tabor diff=tabor merge=tabor\n");
    String set = read(".git/config");
    assertThat(setup().out()).isEqualTo("everything is set already\n");
    assertThat(read(".git/config")).isEqualTo(set);
    Ran removed = setup("--remove");
    assertThat(removed.out().lines()).hasSameSizeAs(first.out().lines().toList());
    assertThat(read(".git/config")).isEqualTo(before);
    assertThat(repository.resolve(".gitattributes")).doesNotExist();
    assertThat(setup("--remove").out()).isEqualTo("there is nothing of ours to remove\n");
  }

  @Test
  void setupLeavesAloneWhatIsNotItsOwn() throws Exception {
    write(".gitattributes", "*.png binary");
    done("config", "diff.tabor.command", "another");
    Ran ran = setup();
    assertThat(ran.code()).isEqualTo(1);
    assertThat(ran.err()).contains("diff.tabor.command is set to something else already");
    assertThat(read(".gitattributes")).isEqualTo("*.png binary\n*.tabor diff=tabor merge=tabor\n");
    done("config", "merge.tabor.name", "mine now");
    setup("--remove");
    assertThat(read(".gitattributes")).isEqualTo("*.png binary");
    assertThat(done("config", "diff.tabor.command")).isEqualTo("another\n");
    assertThat(done("config", "merge.tabor.name")).isEqualTo("mine now\n");
    assertThat(git("config", "merge.tabor.driver").code()).isEqualTo(1);
  }

  @Test
  void setupOutsideARepositorySaysSo() {
    org.assertj.core.api.Assertions.assertThatThrownBy(() -> Git.around(temp))
        .hasMessageContaining("in no git repository");
  }

  @Test
  void diffLogShowAndAddSpeakOfMusic() throws Exception {
    setup();
    commit("A lesson");
    write("lesson.tabor", LESSON.replace("tempo  60", "tempo 66").replace("at 1\n", "at 1 2\n"));
    assertThat(done("diff"))
        .isEqualTo("lesson.tabor\n  tempo 60 → 66\n  step feet, bar 1: kick added on 2\n");
    assertThat(done("diff", "--no-ext-diff"))
        .contains("@@ ")
        .contains("kick")
        .doesNotContain("add kick at 1 2");
    assertThat(done("diff", "--no-ext-diff", "--no-textconv", "-U0"))
        .contains("-tempo  60\n+tempo 66\n")
        .contains("@@ step feet");
    // The first hunk of two is taken, the second is not: git add works on the text itself.
    Said chosen = run("s\ny\nn\n", List.of("git", "add", "-p"));
    assertThat(chosen.code()).as(chosen.text()).isZero();
    assertThat(done("diff", "--cached")).isEqualTo("lesson.tabor\n  tempo 60 → 66\n");
    assertThat(done("diff")).isEqualTo("lesson.tabor\n  step feet, bar 1: kick added on 2\n");
    done("commit", "-q", "-m", "Faster");
    assertThat(done("show", "--format=%s")).contains("Faster").contains("66").contains("@@");
    assertThat(done("log", "-p", "--format=%s")).contains("Faster").contains("A lesson");
    assertThat(done("log", "-p", "--ext-diff", "--format=%s"))
        .contains("lesson.tabor\n  tempo 60 → 66\n")
        .contains("lesson.tabor: is new\n");
  }

  @Test
  void newRenamedTakenOutAndUnreadableFilesDoNotStopTheRest() throws Exception {
    setup();
    write("old.tabor", LESSON);
    write("wrong.tabor", "groove a\n  kick : x x\n");
    commit("Lessons");
    done("mv", "old.tabor", "renamed.tabor");
    write("renamed.tabor", LESSON.replace("at 1\n", "at 1 2\n"));
    write("new.tabor", LESSON);
    done("rm", "-q", "lesson.tabor");
    Files.write(repository.resolve("wrong.tabor"), new byte[] {'t', (byte) 0xff, '\n'});
    done("add", "-A");
    String diff = done("diff", "--cached", "-M60%");
    assertThat(diff)
        .contains("wrong.tabor: ")
        .contains("cannot be read: byte 2")
        .contains("kick added on 2");
    // A version with errors has no grid: its text stands for it.
    assertThat(done("log", "-p", "--format=%s")).contains("+  kick : x x");
  }

  @Test
  void aLessonThatUsesAnotherFileIsComparedBesideIt() throws Exception {
    setup();
    Files.createDirectories(repository.resolve("week one"));
    write("week one/class.tabor", "pattern mine : RlrrLrll\n");
    String lesson = "use \"class.tabor\"\ngroove a\n  hands play mine in sixteenths\n";
    write("week one/uses.tabor", lesson);
    commit("A lesson and what it uses");
    write("week one/uses.tabor", lesson + "  ghost left at 2\n");
    assertThat(done("diff", "--", "week one"))
        .isEqualTo("week one/uses.tabor\n  groove a, bar 1: snare on 2 ghosted (was accented)\n");
    commit("A ghost");
    assertThat(done("show", "--format=%s", "--", "week one/uses.tabor"))
        .doesNotContain("+  ghost left at 2")
        .contains("@@");
  }

  @Test
  void twoPeoplesEditsAreMerged() throws Exception {
    setup();
    commit("A lesson");
    done("checkout", "-q", "-b", "theirs");
    write(
        "lesson.tabor",
        LESSON.replace("tempo  60", "tempo  66") + "\nstep loud\n  accent kick at 1\n");
    commit("Theirs");
    done("checkout", "-q", "trunk");
    write("lesson.tabor", LESSON.replace("Low taps", "Lower taps") + "\nstep quick\n  tempo 80\n");
    commit("Ours");
    String said = done("merge", "-q", "-m", "Both", "theirs");
    assertThat(said).contains("step loud now says from feet, as it was made");
    assertThat(read("lesson.tabor"))
        .isEqualTo(
            LESSON.replace("tempo  60", "tempo  66").replace("Low taps", "Lower taps")
                + "\nstep quick\n  tempo 80\n\nstep loud from feet\n  accent kick at 1\n");
  }

  @Test
  void aRebaseMergesTooAndStopsWhereBothChangedOneStatement() throws Exception {
    setup();
    commit("A lesson");
    done("checkout", "-q", "-b", "topic");
    write("lesson.tabor", LESSON.replace("at 1\n", "at 1\n  accent kick at 1\n"));
    commit("An accent");
    write("lesson.tabor", read("lesson.tabor").replace("tempo  60", "tempo  72"));
    commit("Quicker");
    done("checkout", "-q", "trunk");
    write("lesson.tabor", LESSON.replace("tempo  60", "tempo  66"));
    commit("Faster");
    done("checkout", "-q", "topic");
    Said stopped = git("rebase", "trunk");
    assertThat(stopped.code()).isNotZero();
    assertThat(stopped.text())
        .contains("lesson.tabor: conflict: the header: both sides changed this line: tempo  66");
    assertThat(read("lesson.tabor"))
        .contains("<<<<<<< ours\ntempo  66\n=======\ntempo  72\n>>>>>>> theirs\n")
        .contains("accent kick at 1");
    assertThat(done("diff")).contains("++<<<<<<< ours");
    assertThat(done("diff", "--cached")).contains("lesson.tabor: not merged yet\n");
    write(
        "lesson.tabor",
        read("lesson.tabor").replaceAll("(?s)<<<<<<<.*>>>>>>> theirs", "tempo  69"));
    done("add", "-A");
    done("rebase", "--continue");
    assertThat(read("lesson.tabor")).contains("tempo  69").contains("accent kick at 1");
  }

  @Test
  void whatFitsAsTextButNotAsMusicIsAConflict() throws Exception {
    setup();
    commit("A lesson");
    done("checkout", "-q", "-b", "theirs");
    write("lesson.tabor", LESSON + "\nstep tall\n  accent kick at 1\n");
    commit("An accent on the kick");
    done("checkout", "-q", "trunk");
    write("lesson.tabor", LESSON.replace("add kick at 1", "add kick at 2"));
    commit("The kick moves");
    Said merge = git("merge", "-m", "Both", "theirs");
    assertThat(merge.code()).isNotZero();
    assertThat(merge.text())
        .contains("lesson.tabor: conflict: line 13: ")
        .contains("[nothing-there], which neither side has");
    assertThat(done("status", "--porcelain")).startsWith("UU lesson.tabor");
  }
}
