package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
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
  private GitSandbox git;

  @BeforeEach
  void makeRepository() throws IOException, InterruptedException {
    git = new GitSandbox(temp);
    git.write("lesson.tabor", LESSON);
  }

  private Ran setup(String... words) {
    java.io.ByteArrayOutputStream out = new java.io.ByteArrayOutputStream();
    java.io.ByteArrayOutputStream err = new java.io.ByteArrayOutputStream();
    Io io = Io.of(java.io.InputStream.nullInputStream(), out, err, false, false, Map.of());
    GitSetup setup = new GitSetup(io, Git.around(git.folder()));
    int code = words.length == 0 ? setup.write(git.program()) : setup.remove();
    io.out().flush();
    io.err().flush();
    return new Ran(
        code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }

  @Test
  void setupSaysEveryLineAndUndoesExactlyWhatItSet() throws Exception {
    String before = git.read(".git/config");
    Ran first = setup();
    assertThat(first.code()).isZero();
    assertThat(first.out())
        .contains("set diff.tabor.command = " + git.program() + " diff\n")
        .contains("set diff.tabor.textconv = ")
        .contains("set diff.tabor.xfuncname = ")
        .contains("set merge.tabor.driver = ")
        .contains("added to .gitattributes: *.tabor diff=tabor merge=tabor\n");
    String set = git.read(".git/config");
    assertThat(setup().out()).isEqualTo("everything is set already\n");
    assertThat(git.read(".git/config")).isEqualTo(set);
    Ran removed = setup("--remove");
    assertThat(removed.out().lines()).hasSameSizeAs(first.out().lines().toList());
    assertThat(git.read(".git/config")).isEqualTo(before);
    assertThat(git.folder().resolve(".gitattributes")).doesNotExist();
    assertThat(setup("--remove").out()).isEqualTo("there is nothing of ours to remove\n");
  }

  @Test
  void setupLeavesAloneWhatIsNotItsOwn() throws Exception {
    git.write(".gitattributes", "*.png binary");
    git.done("config", "diff.tabor.command", "another");
    Ran ran = setup();
    assertThat(ran.code()).isEqualTo(1);
    assertThat(ran.err()).contains("diff.tabor.command is set to something else already");
    assertThat(git.read(".gitattributes"))
        .isEqualTo("*.png binary\n*.tabor diff=tabor merge=tabor\n");
    git.done("config", "merge.tabor.name", "mine now");
    setup("--remove");
    assertThat(git.read(".gitattributes")).isEqualTo("*.png binary");
    assertThat(git.done("config", "diff.tabor.command")).isEqualTo("another\n");
    assertThat(git.done("config", "merge.tabor.name")).isEqualTo("mine now\n");
    assertThat(git.git("config", "merge.tabor.driver").code()).isEqualTo(1);
  }

  @Test
  void setupOutsideARepositorySaysSo() {
    org.assertj.core.api.Assertions.assertThatThrownBy(() -> Git.around(temp))
        .hasMessageContaining("in no git repository");
  }

  @Test
  void diffLogShowAndAddSpeakOfMusic() throws Exception {
    setup();
    git.commit("A lesson");
    git.write(
        "lesson.tabor", LESSON.replace("tempo  60", "tempo 66").replace("at 1\n", "at 1 2\n"));
    assertThat(git.done("diff"))
        .isEqualTo("lesson.tabor\n  tempo 60 → 66\n  step feet, bar 1: kick added on 2\n");
    assertThat(git.done("diff", "--no-ext-diff"))
        .contains("@@ ")
        .contains("kick")
        .doesNotContain("add kick at 1 2");
    assertThat(git.done("diff", "--no-ext-diff", "--no-textconv", "-U0"))
        .contains("-tempo  60\n+tempo 66\n")
        .contains("@@ step feet");
    // The first hunk of two is taken, the second is not: git add works on the text itself.
    Ran chosen = git.run("s\ny\nn\n", List.of("git", "add", "-p"));
    assertThat(chosen.code()).as(chosen.out()).isZero();
    assertThat(git.done("diff", "--cached")).isEqualTo("lesson.tabor\n  tempo 60 → 66\n");
    assertThat(git.done("diff")).isEqualTo("lesson.tabor\n  step feet, bar 1: kick added on 2\n");
    git.done("commit", "-q", "-m", "Faster");
    assertThat(git.done("show", "--format=%s")).contains("Faster").contains("66").contains("@@");
    assertThat(git.done("log", "-p", "--format=%s")).contains("Faster").contains("A lesson");
    assertThat(git.done("log", "-p", "--ext-diff", "--format=%s"))
        .contains("lesson.tabor\n  tempo 60 → 66\n")
        .contains("lesson.tabor: is new\n");
  }

  @Test
  void newRenamedTakenOutAndUnreadableFilesDoNotStopTheRest() throws Exception {
    setup();
    git.write("old.tabor", LESSON);
    git.write("wrong.tabor", "groove a\n  kick : x x\n");
    git.commit("Lessons");
    git.done("mv", "old.tabor", "renamed.tabor");
    git.write("renamed.tabor", LESSON.replace("at 1\n", "at 1 2\n"));
    git.write("new.tabor", LESSON);
    git.done("rm", "-q", "lesson.tabor");
    Files.write(git.folder().resolve("wrong.tabor"), new byte[] {'t', (byte) 0xff, '\n'});
    git.done("add", "-A");
    String diff = git.done("diff", "--cached", "-M60%");
    assertThat(diff)
        .contains("wrong.tabor: ")
        .contains("cannot be read: byte 2")
        .contains("kick added on 2");
    // A version with errors has no grid: its text stands for it.
    assertThat(git.done("log", "-p", "--format=%s")).contains("+  kick : x x");
  }

  @Test
  void aLessonThatUsesAnotherFileIsComparedBesideIt() throws Exception {
    setup();
    Files.createDirectories(git.folder().resolve("week one"));
    git.write("week one/class.tabor", "pattern mine : RlrrLrll\n");
    String lesson = "use \"class.tabor\"\ngroove a\n  hands play mine in sixteenths\n";
    git.write("week one/uses.tabor", lesson);
    git.commit("A lesson and what it uses");
    git.write("week one/uses.tabor", lesson + "  ghost left at 2\n");
    assertThat(git.done("diff", "--", "week one"))
        .isEqualTo("week one/uses.tabor\n  groove a, bar 1: snare on 2 ghosted (was accented)\n");
    git.commit("A ghost");
    assertThat(git.done("show", "--format=%s", "--", "week one/uses.tabor"))
        .doesNotContain("+  ghost left at 2")
        .contains("@@");
  }

  @Test
  void twoPeoplesEditsAreMerged() throws Exception {
    setup();
    git.commit("A lesson");
    git.done("checkout", "-q", "-b", "theirs");
    git.write(
        "lesson.tabor",
        LESSON.replace("tempo  60", "tempo  66") + "\nstep loud\n  accent kick at 1\n");
    git.commit("Theirs");
    git.done("checkout", "-q", "trunk");
    git.write(
        "lesson.tabor", LESSON.replace("Low taps", "Lower taps") + "\nstep quick\n  tempo 80\n");
    git.commit("Ours");
    String said = git.done("merge", "-q", "-m", "Both", "theirs");
    assertThat(said).contains("step loud now says from feet, as it was made");
    assertThat(git.read("lesson.tabor"))
        .isEqualTo(
            LESSON.replace("tempo  60", "tempo  66").replace("Low taps", "Lower taps")
                + "\nstep quick\n  tempo 80\n\nstep loud from feet\n  accent kick at 1\n");
  }

  @Test
  void aRebaseMergesTooAndStopsWhereBothChangedOneStatement() throws Exception {
    setup();
    git.commit("A lesson");
    git.done("checkout", "-q", "-b", "topic");
    git.write("lesson.tabor", LESSON.replace("at 1\n", "at 1\n  accent kick at 1\n"));
    git.commit("An accent");
    git.write("lesson.tabor", git.read("lesson.tabor").replace("tempo  60", "tempo  72"));
    git.commit("Quicker");
    git.done("checkout", "-q", "trunk");
    git.write("lesson.tabor", LESSON.replace("tempo  60", "tempo  66"));
    git.commit("Faster");
    git.done("checkout", "-q", "topic");
    Ran stopped = git.git("rebase", "trunk");
    assertThat(stopped.code()).isNotZero();
    assertThat(stopped.out())
        .contains("lesson.tabor: conflict: the header: both sides changed this line: tempo  66");
    assertThat(git.read("lesson.tabor"))
        .contains("<<<<<<< ours\ntempo  66\n=======\ntempo  72\n>>>>>>> theirs\n")
        .contains("accent kick at 1");
    assertThat(git.done("diff")).contains("++<<<<<<< ours");
    assertThat(git.done("diff", "--cached")).contains("lesson.tabor: not merged yet\n");
    git.write(
        "lesson.tabor",
        git.read("lesson.tabor").replaceAll("(?s)<<<<<<<.*>>>>>>> theirs", "tempo  69"));
    git.done("add", "-A");
    git.done("rebase", "--continue");
    assertThat(git.read("lesson.tabor")).contains("tempo  69").contains("accent kick at 1");
  }

  @Test
  void whatFitsAsTextButNotAsMusicIsAConflict() throws Exception {
    setup();
    git.commit("A lesson");
    git.done("checkout", "-q", "-b", "theirs");
    git.write("lesson.tabor", LESSON + "\nstep tall\n  accent kick at 1\n");
    git.commit("An accent on the kick");
    git.done("checkout", "-q", "trunk");
    git.write("lesson.tabor", LESSON.replace("add kick at 1", "add kick at 2"));
    git.commit("The kick moves");
    Ran merge = git.git("merge", "-m", "Both", "theirs");
    assertThat(merge.code()).isNotZero();
    assertThat(merge.out())
        .contains("lesson.tabor: conflict: line 13: ")
        .contains("[nothing-there], which neither side has");
    assertThat(git.done("status", "--porcelain")).startsWith("UU lesson.tabor");
  }
}
