package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class NewCommandTest {
  @TempDir private Path temp;

  private Ran make(String kind, String name) {
    return Ran.of("new", kind, temp + "/" + name);
  }

  private static void fine(String... words) {
    Ran ran = Ran.of(words);
    assertThat(ran.code()).as(ran.out() + ran.err()).isZero();
    assertThat(ran.err()).isEmpty();
  }

  private List<String> files() throws IOException {
    try (Stream<Path> all = Files.walk(temp)) {
      return all.filter(Files::isRegularFile)
          .map(file -> temp.relativize(file).toString().replace('\\', '/'))
          .sorted()
          .toList();
    }
  }

  @Test
  void aLessonIsReadyToBuild() throws IOException {
    Ran ran = make("lesson", "week-3");
    String file = temp.resolve("week-3.tabor").toString();
    assertThat(ran.code()).isZero();
    assertThat(ran.out()).startsWith(file + "\nNext: tabor build " + file + " -o out");
    assertThat(Files.readString(temp.resolve("week-3.tabor"))).startsWith("title \"Week 3\"\n");
    fine("format", "--check", file);
    assertThat(Ran.of("check", "--hints", file).out()).isEqualTo("1 file, no problems\n");
    fine("build", file, "-o", temp.resolve("out").toString(), "--as", "all");
  }

  @Test
  void aLessonBesideAClassFileUsesIt() throws IOException {
    Files.writeString(temp.resolve("class.tabor"), "player a \"A.\"\n  tempo 60\n");
    assertThat(make("lesson", "Größer 2.tabor").code()).isZero();
    Path file = temp.resolve("Größer 2.tabor");
    assertThat(Files.readString(file)).contains("title \"Größer 2\"\n", "use   \"class.tabor\"\n");
    fine("format", "--check", file.toString());
    fine("check", "--for", "all", file.toString());
  }

  @Test
  void whatIsMissingIsSaid() {
    assertThat(Ran.of("new", "week-2").err())
        .startsWith("tabor: write tabor new lesson week-2, or tabor new course week-2");
    assertThat(Ran.of("new", "course").err())
        .startsWith("tabor: new needs a name: tabor new course week-3");
    assertThat(Ran.of("new", "lessen", temp + "/week-2").err()).contains("did you mean lesson?");
    assertThat(temp).isEmptyDirectory();
  }

  @Test
  void whatIsThereStays() throws IOException {
    Files.writeString(temp.resolve("mine.tabor"), "mine");
    Ran ran = make("lesson", "mine");
    assertThat(ran.code()).isEqualTo(1);
    assertThat(ran.err()).contains("mine.tabor is there already and stays as it is");
    assertThat(Files.readString(temp.resolve("mine.tabor"))).isEqualTo("mine");
    ran = Ran.of("new", "course", temp.toString());
    assertThat(ran.code()).isEqualTo(1);
    assertThat(ran.err()).contains("is not empty (it has mine.tabor), so nothing is written");
    assertThat(make("course", "mine.tabor").err()).contains("is there already and is no folder");
    assertThat(files()).containsExactly("mine.tabor");
  }

  @Test
  void aNewRepositoryIsFilledAndKeepsWhatItHas() throws IOException {
    Path folder = Files.createDirectories(temp.resolve("our_class"));
    Files.createDirectories(folder.resolve(".git"));
    Files.writeString(folder.resolve("README.md"), "ours\n");
    Files.writeString(folder.resolve("LICENSE"), "ours\n");
    Files.writeString(folder.resolve(".gitignore"), "*.bak\n");
    Ran ran = make("course", "our_class");
    assertThat(ran.code()).isZero();
    assertThat(ran.err().lines())
        .containsExactly(
            "tabor: " + folder.resolve("README.md") + " is there already and stays as it is",
            "tabor: "
                + folder.resolve(".gitignore")
                + " is there already and stays as it is; it should have these lines:",
            "lessons/class.tabor",
            "out/");
    assertThat(ran.out()).doesNotContain("README.md").contains("build.sh", "week-1.tabor");
    assertThat(Files.readString(folder.resolve("README.md"))).isEqualTo("ours\n");
    assertThat(Files.readString(folder.resolve(".gitignore"))).isEqualTo("*.bak\n");
    assertThat(Files.readString(folder.resolve("site/index.md"))).startsWith("# Our class\n");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "-o", ".hidden", "a?b", "a:b", "a\"b", "end.", "end ", "con", "LPT1", "nul.x", "a\tb",
        "a\nb"
      })
  void badNamesAreRefused(String name) throws IOException {
    for (String kind : List.of("lesson", "course")) {
      Ran ran = make(kind, name);
      assertThat(ran.code()).as(ran.out()).isEqualTo(2);
      assertThat(ran.err()).containsAnyOf("a name begins with", "keeps for a device");
    }
    assertThat(files()).isEmpty();
  }

  @Test
  void otherMistakesAreTold() throws IOException {
    assertThat(Ran.of("new").code()).isEqualTo(2);
    assertThat(Ran.of("new", "lesson").code()).isEqualTo(2);
    assertThat(Ran.of("new", "lesson", "").code()).isEqualTo(2);
    assertThat(Ran.of("new", "lesson", "..").code()).isEqualTo(2);
    assertThat(make("corse", "x"))
        .matches(ran -> ran.code() == 2 && ran.err().contains("did you mean course?"));
    assertThat(make("lesson", "x".repeat(101)).err()).contains("at most 100 letters");
    assertThat(make("lesson", "no/x"))
        .matches(ran -> ran.code() == 1 && ran.err().contains("there is no folder"));
    assertThat(make("course", "no/x"))
        .matches(ran -> ran.code() == 1 && ran.err().contains("there is no folder"));
    Files.writeString(temp.resolve("file"), "");
    assertThat(make("lesson", "file/x").err()).contains("is a file, not a folder");
    assertThat(files()).containsExactly("file");
  }

  @Test
  void allFilesOrNone() throws IOException {
    NewFiles files = new NewFiles();
    files.add(temp.resolve("a/b/one"), "1\n");
    files.add(temp.resolve("a/b/one/two"), "2\n");
    assertThatThrownBy(files::write)
        .isInstanceOf(Failure.class)
        .hasMessageContaining("two")
        .hasMessageEndingWith("; nothing is written");
    assertThat(temp).isEmptyDirectory();
    Files.writeString(temp.resolve("x"), "theirs");
    NewFiles late = new NewFiles();
    late.add(temp.resolve("x"), "ours");
    assertThatThrownBy(late::write).isInstanceOf(Failure.class);
    assertThat(temp.resolve("x")).hasContent("theirs");
  }

  @Test
  void shellsCompleteWhatCanBeNew() {
    assertThat(Ran.of("completion").out()).contains("(\"lesson\" \"course\")");
    assertThat(Ran.of("new", "--help").out())
        .startsWith("Usage: tabor new")
        .contains("tabor new course our-class");
  }

  @Test
  void aCourseClonedAfreshMakesTheSameSite() throws Exception {
    GitSandbox git = new GitSandbox(temp);
    Ran ran = git.shell("cd .. && tabor new course 'our class'");
    assertThat(ran.code()).as(ran.out()).isZero();
    ran = git.shell("tabor format --check . && tabor check --hints . && sh build.sh");
    assertThat(ran.code()).as(ran.out()).isZero();
    assertThat(git.folder().resolve("out/site"))
        .isDirectoryContaining("glob:**/index.html")
        .isDirectoryContaining("glob:**/week-2.pdf");
    assertThat(git.folder().resolve("out/students")).isDirectoryContaining("glob:**/week-1.a.pdf");
    git.commit("A course");
    assertThat(git.done("ls-files").lines())
        .contains("lessons/week-1.tabor", "class-example.tabor", ".gitattributes", "build.sh")
        .noneMatch(name -> name.startsWith("out/") || name.endsWith("/class.tabor"));
    assertThat(git.done("ls-files", "-s", "build.sh")).startsWith("100755 ");
    ran = git.shell("tabor git-setup");
    assertThat(ran.out()).contains("set merge.tabor.driver").doesNotContain("added to");
    ran = git.shell("git clone -q . ../fresh && ../fresh/build.sh ../other");
    assertThat(ran.code()).as(ran.out()).isZero();
    assertThat(ran.out()).contains("class.tabor is made from class-example.tabor");
    try (Stream<Path> made = Files.list(git.folder().resolve("out/site"))) {
      for (Path file : made.filter(one -> !one.toString().contains(".tabor-")).toList()) {
        assertThat(temp.resolve("other/site").resolve(file.getFileName()))
            .hasSameBinaryContentAs(file);
      }
    }
  }
}
