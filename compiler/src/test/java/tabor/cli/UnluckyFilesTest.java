package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import tabor.build.BuildOptions;
import tabor.build.Form;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.groove.Lesson;
import tabor.resolve.Options;

/** Names, links, pipes and failures that nobody asks for and everybody meets. */
@Timeout(60)
class UnluckyFilesTest {
  private static final String LESSON = "groove beat\n  hihat : rr rr rr rr\n";

  @TempDir private Path folder;

  private Path lesson(String name) throws IOException {
    return Files.writeString(folder.resolve(name), LESSON);
  }

  private static List<String> names(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  private static void run(String... words) throws IOException, InterruptedException {
    Process process = new ProcessBuilder(words).inheritIO().start();
    assumeThat(process.waitFor(10, TimeUnit.SECONDS) && process.exitValue() == 0).isTrue();
  }

  @Test
  void withoutFormsASheetAndAPracticePageAreMadeToo() throws IOException {
    lesson("week.tabor");
    Path out = folder.resolve("out");
    assertThat(Ran.of("build", folder.toString(), "-o", out.toString()).code()).isEqualTo(0);
    assertThat(names(out)).containsExactly("week.beat.mid", "week.html", "week.pdf", "week.txt");
  }

  @Test
  void aFailureInsideIsOneSentenceAndTheOtherLessonsAreBuilt() throws IOException {
    Path out = folder.resolve("out");
    Path bad = lesson("bad.tabor");
    Path good = lesson("good.tabor");
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Io io =
        Io.of(
            InputStream.nullInputStream(),
            new ByteArrayOutputStream(),
            err,
            false,
            false,
            Map.of());
    Toolchain toolchain = new Toolchain(io, Options.NONE);
    Function<Path, List<Student>> compiling =
        path -> {
          if (path.equals(bad)) {
            throw new StackOverflowError();
          }
          return toolchain.students(path, List.of());
        };
    Build build =
        new Build(
            io,
            out,
            List.of(Form.GRID),
            BuildOptions.ALL,
            compiling,
            student -> BuildOptions.ALL,
            Build.Extent.ALL);
    assertThat(build.run(List.of(bad, good))).isEqualTo(1);
    io.err().flush();
    assertThat(names(out)).containsExactly("good.txt");
    assertThat(err.toString(StandardCharsets.UTF_8))
        .contains("bad.tabor: this went wrong inside Tabor, not in your file")
        .doesNotContain("\tat ")
        .hasLineCount(2);
  }

  @Test
  void aTraceComesOnlyOnRequest() {
    assertThat(fault(Map.of())).contains("IllegalStateException").doesNotContain("\tat ");
    assertThat(fault(Map.of("TABOR_TRACE", "1"))).contains("\tat ");
  }

  private static String fault(Map<String, String> env) {
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    OutputStream broken =
        new OutputStream() {
          @Override
          public void write(int b) {
            throw new IllegalStateException("broken");
          }
        };
    Io io = Io.of(InputStream.nullInputStream(), broken, err, false, false, env);
    assertThat(
            Faults.catching(
                io,
                "a.tabor",
                () -> {
                  throw new IllegalStateException("inside");
                }))
        .isFalse();
    io.err().flush();
    return err.toString(StandardCharsets.UTF_8);
  }

  @Test
  void oneLessonThatCannotBeWrittenLeavesTheOthers() throws IOException {
    lesson("a.tabor");
    lesson("b.tabor");
    Path out = folder.resolve("out");
    Files.createDirectories(out.resolve("a.txt"));
    Ran ran = Ran.of("build", folder.toString(), "-o", out.toString(), "--as", "grid");
    assertThat(ran.code()).isEqualTo(1);
    assertThat(ran.err()).contains("a.txt: a folder has this name");
    assertThat(names(out))
        .filteredOn(name -> !name.startsWith("."))
        .containsExactly("a.txt", "b.txt");
  }

  @Test
  void anOutputThatCannotBeWrittenLeavesTheOthersOfItsLesson() throws IOException {
    Path source = lesson("a.tabor");
    Path out = folder.resolve("out");
    Files.createDirectories(out.resolve("a.beat.mid"));
    Ran ran = Ran.of("build", source.toString(), "-o", out.toString());
    assertThat(ran.code()).isEqualTo(1);
    assertThat(ran.err()).contains("a.beat.mid: a folder has this name").doesNotContain("more");
    assertThat(out.resolve("a.html")).isNotEmptyFile();
    assertThat(out.resolve("a.txt")).isNotEmptyFile();
    Files.delete(out.resolve("a.html"));
    Files.createDirectories(out.resolve("a.html"));
    ran = Ran.of("build", source.toString(), "-o", out.toString());
    assertThat(ran.err()).contains("a.beat.mid: a folder has this name; and 1 more file\n");
  }

  @Test
  void aFolderThatCannotBeLookedIntoLeavesTheOthers() throws IOException {
    lesson("a.tabor");
    Path closed = Files.createDirectories(folder.resolve("lost"));
    List<String> words = List.of(folder.toString());
    SourceFiles.Lister lister =
        path -> {
          if (path.equals(closed)) {
            throw new AccessDeniedException(path.toString());
          }
          try (Stream<Path> files = Files.list(path)) {
            return files.toList();
          }
        };
    assertThat(SourceFiles.find(words, lister)).containsExactly(folder.resolve("a.tabor"), closed);
    // The folder is then told about where it is read.
    assertThat(Ran.of("check", closed.toString(), folder.resolve("a.tabor").toString()).err())
        .contains("there is no .tabor file in the folder");
    assertThat(SourceReader.read(closed, InputStream.nullInputStream()).problem().message())
        .isEqualTo("this is a folder, not a file");
  }

  @Test
  void whatIsNotAPlainFileIsNeverReplaced() throws IOException, InterruptedException {
    Path source = lesson("a.tabor");
    Path out = Files.createDirectories(folder.resolve("out"));
    Path target = out.resolve("a.txt");
    run("mkfifo", target.toString());
    Ran ran = Ran.of("build", source.toString(), "-o", out.toString(), "--as", "grid");
    assertThat(ran.code()).isEqualTo(1);
    assertThat(ran.err()).contains("a.txt: it is a device or a pipe, not a file");
    assertThat(Files.readAttributes(target, "isOther").get("isOther")).isEqualTo(true);
    // Never a real device here: if this went wrong, the machine would have lost it.
    Path pipe = Files.move(target, folder.resolve("pipe"));
    Files.createSymbolicLink(target, pipe);
    ran = Ran.of("build", source.toString(), "-o", out.toString(), "--as", "grid");
    assertThat(ran.err()).contains("it is a device or a pipe, not a file");
    Files.delete(target);
    Files.createSymbolicLink(target, folder.resolve("nowhere/at-all"));
    ran = Ran.of("build", source.toString(), "-o", out.toString(), "--as", "grid");
    assertThat(ran.code()).isEqualTo(1);
    assertThat(ran.err()).contains("it is a link that leads nowhere");
    assertThat(target).isSymbolicLink();
    ran = Ran.of("handout", source.toString(), "-o", pipe.toString());
    assertThat(ran.code()).isEqualTo(1);
    assertThat(Files.readAttributes(pipe, "isOther").get("isOther")).isEqualTo(true);
    assertThat(names(out)).containsExactly("a.txt");
  }

  @Test
  void aPipeInAFolderIsPassedOverAndNotFormatted() throws IOException, InterruptedException {
    lesson("a.tabor");
    Path pipe = folder.resolve("x.tabor");
    run("mkfifo", pipe.toString());
    assertThat(Ran.of("check", folder.toString()).out()).isEqualTo("1 file, no problems\n");
    Ran ran = Ran.of("format", pipe.toString());
    assertThat(ran.code()).isEqualTo(1);
    assertThat(ran.err()).contains("this is a device or a pipe");
    Files.createSymbolicLink(folder.resolve("gone.tabor"), folder.resolve("nowhere"));
    assertThat(Ran.of("check", folder.toString()).out()).contains("gone.tabor: error");
    Files.writeString(folder.resolve("u.tabor"), "use \"x.tabor\"\n" + LESSON);
    assertThat(Ran.of("check", folder.resolve("u.tabor").toString()).out())
        .contains("[unreadable]");
  }

  @Test
  void anEmptyNameIsAWrongCommandLine() throws IOException {
    String source = lesson("a.tabor").toString();
    for (Ran ran :
        List.of(
            Ran.of("build", source, "-o", ""),
            Ran.of("handout", source, "-o", ""),
            Ran.of("grid", ""),
            Ran.of("check", ""))) {
      assertThat(ran.code()).isEqualTo(2);
      assertThat(ran.err()).contains("an empty word names no file");
    }
  }

  @Test
  void aLeftoverOfTheSameProcessIsInNobodysWay() throws IOException {
    Path source = lesson("a.tabor");
    Path out = Files.createDirectories(folder.resolve("out"));
    long process = ProcessHandle.current().pid();
    Path young = Files.writeString(out.resolve(".a.txt." + process + "-0.part"), "half");
    Path old = Files.writeString(out.resolve(".b.txt." + process + "-7.part"), "half");
    Path mine = Files.writeString(out.resolve(".notes.part"), "mine");
    FileTime yesterday = FileTime.from(Instant.now().minusSeconds(86_400));
    Files.setLastModifiedTime(old, yesterday);
    Files.setLastModifiedTime(mine, yesterday);
    Ran ran = Ran.of("build", source.toString(), "-o", out.toString(), "--as", "grid");
    assertThat(ran.code()).isEqualTo(0);
    assertThat(out.resolve("a.txt")).content().contains("bar 1");
    assertThat(young).hasContent("half");
    assertThat(old).doesNotExist();
    assertThat(mine).exists();
  }

  @Test
  void aNameWithEscapeCharactersSteersNoTerminal() throws IOException {
    String name = "a\u001B[31m\u009B31m\u0007b";
    Path source = lesson(name + ".tabor");
    Path out = folder.resolve("out");
    Ran built = Ran.of("build", source.toString(), "-o", out.toString(), "--as", "midi");
    plain(built.out());
    byte[] midi = Files.readAllBytes(out.resolve(name + ".beat.mid"));
    String texts = new String(midi, StandardCharsets.UTF_8);
    assertThat(texts).contains("a[31m31mb: beat");
    Files.writeString(source, "groove beat\n  hihat : rr\n");
    plain(Ran.of("check", source.toString()).out());
    plain(Ran.of("grid", source.toString()).err());
    plain(Ran.of("build", source.toString(), "-o", out.toString()).err());
    plain(Ran.of("check", "--report", "sarif", source.toString()).out());
    String json = Ran.of("check", "--report", "json", source.toString()).out();
    plain(json);
    assertThat(json).contains("a\\u001b[31m\\u009b31m\\u0007b.tabor");
    plain(Ran.of("check", folder + "/none\u001B[2J.tabor").out());
    plain(Ran.of("build", "none\u001B[2J.tabor", "-o", "x", "--as", "\u001B[2J").err());
    plain(Ran.of("format", "none\u001B[2J.tabor").err());
  }

  private static void plain(String printed) {
    assertThat(printed.codePoints().filter(c -> c != '\n' && Character.isISOControl(c))).isEmpty();
  }

  @Test
  void aLinkToAFileIsFollowedAndStays() throws IOException {
    Path source = lesson("a.tabor");
    Path out = Files.createDirectories(folder.resolve("out"));
    Path real = Files.writeString(folder.resolve("real"), "old");
    Files.createSymbolicLink(out.resolve("a.txt"), real);
    Ran.of("build", source.toString(), "-o", out.toString(), "--as", "grid");
    assertThat(Files.isSymbolicLink(out.resolve("a.txt"))).isTrue();
    assertThat(Files.isRegularFile(real, LinkOption.NOFOLLOW_LINKS)).isTrue();
    assertThat(real).content().contains("bar 1");
  }

  /** Two dozen files of half a minute are 127 MB. */
  @Test
  void soundFilesAreWrittenAsSoonAsTheyAreMade() throws IOException, InterruptedException {
    StringBuilder many = new StringBuilder("tempo 120\n");
    for (int i = 0; i < 24; i++) {
      many.append("groove g").append(i).append("\n  kick : x x x x\n");
    }
    Path lesson = Files.writeString(folder.resolve("many.tabor"), many);
    Path out = folder.resolve("out");
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx80m",
                "-cp",
                System.getProperty("java.class.path"),
                "tabor.cli.Main",
                "build",
                "--as",
                "wav",
                "-o",
                out.toString(),
                lesson.toString())
            .redirectErrorStream(true)
            .redirectOutput(folder.resolve("said").toFile())
            .start();
    assertThat(process.waitFor()).as(folder.resolve("said").toString()).isZero();
    assertThat(names(out)).filteredOn(name -> name.endsWith(".wav")).hasSize(24);
  }

  @Test
  void soundFilesOfManyHoursAreRefusedAndTheOtherOutputsMade() throws IOException {
    StringBuilder long16 = new StringBuilder("tempo 40\ngroove g\n  kick : x x x x\n");
    for (int i = 0; i < 16; i++) {
      long16.append("step s").append(i).append(" from g\n  bars 64\n");
    }
    Path lesson = Files.writeString(folder.resolve("long.tabor"), long16);
    Path out = folder.resolve("out");
    Ran ran = Ran.of("build", "--as", "wav,grid", "-o", out.toString(), lesson.toString());
    assertThat(ran.err())
        .contains("no wav of", "its sound files would last more than 5 hours together; choose");
    // Each lasts three times 64 bars of six seconds: fifteen are 4.8 hours.
    assertThat(names(out)).contains("long.txt").noneMatch(name -> name.endsWith(".wav"));
    String fifteen = long16.substring(0, long16.indexOf("step s15"));
    Lesson lasting = new Compiler(Loader.NONE).compile(lesson, fifteen, Options.NONE).lesson();
    assertThat(Form.WAV.refusal(lasting, BuildOptions.ALL)).isEmpty();
  }
}
