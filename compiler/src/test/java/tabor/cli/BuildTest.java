package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BuildTest {
  private static final String LESSON =
      """
      groove beat
        hihat : rr rr rr rr
      step more
        add kick at 1 3
      chart c
        play more 2 times
      """;

  @TempDir private Path folder;
  private Path source;
  private Path out;

  @BeforeEach
  void write() throws IOException {
    source = Files.writeString(folder.resolve("week.tabor"), LESSON);
    out = folder.resolve("made/here");
  }

  private Ran build(String... more) {
    List<String> words =
        Stream.concat(Stream.of("build", source.toString(), "-o", out.toString()), Stream.of(more))
            .toList();
    return Ran.of(words.toArray(new String[0]));
  }

  private List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(out)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  @Test
  void namesFilesAfterLessonAndSection() throws IOException {
    assertThat(build("--as", "midi,grid").code()).isEqualTo(0);
    assertThat(names()).containsExactly("week.beat.mid", "week.c.mid", "week.more.mid", "week.txt");
    assertThat(Files.readString(out.resolve("week.txt"))).contains("kick: added on 1 and 3");
  }

  /** The usual words go past the command line parser; with one more they do not. */
  @Test
  void theUsualWordsDoWhatTheSpelledOutOnesDo() throws IOException {
    Path first = out;
    Ran plain = build();
    out = folder.resolve("spelled-out");
    Ran parsed = build("--as=midi,grid,pdf,html");
    assertThat(parsed.out().replace(out.toString(), first.toString())).isEqualTo(plain.out());
    assertThat(names()).hasSize(6);
    for (String name : names()) {
      assertThat(first.resolve(name)).hasSameBinaryContentAs(out.resolve(name));
    }
    for (String odd : List.of("", "midi,", "midi,,grid", ",", "waves", "midi,midi")) {
      build("--as", odd); // what is written the second time is not new
      assertThat(build("--as", odd)).as(odd).isEqualTo(build("--as=" + odd));
    }
    assertThat(build("--as", "waves").code()).isEqualTo(ExitCode.USAGE);
    assertThat(Ran.of("build", source.toString()).err()).contains("--out");
    assertThat(Ran.of("build", "-o", out.toString()).code()).isEqualTo(ExitCode.USAGE);
  }

  @Test
  void onlyOneSection() throws IOException {
    assertThat(build("--as", "midi", "--only", "more").code()).isEqualTo(0);
    assertThat(names()).containsExactly("week.more.mid");
    assertThat(build("--only", "moer").err()).contains("did you mean more?");
    assertThat(build("--only", "moer").code()).isEqualTo(2);
    assertThat(build("--as", "waves").code()).isEqualTo(2);
  }

  @Test
  void unchangedFilesKeepTheirTime() throws IOException {
    build("--as", "midi,grid");
    FileTime old = FileTime.fromMillis(1_000_000_000_000L);
    for (String name : names()) {
      Files.setLastModifiedTime(out.resolve(name), old);
    }
    assertThat(build("--as", "midi,grid").out()).contains("nothing changed");
    Files.writeString(source, LESSON.replace("1 3", "1 2"));
    build("--as", "midi,grid");
    assertThat(Files.getLastModifiedTime(out.resolve("week.beat.mid"))).isEqualTo(old);
    assertThat(Files.getLastModifiedTime(out.resolve("week.more.mid"))).isNotEqualTo(old);
  }

  @Test
  void sameBytesEveryTime() throws IOException {
    build("--as", "all");
    Path first = out;
    out = folder.resolve("again");
    build("--as", "all");
    for (String name : names()) {
      assertThat(Files.readAllBytes(out.resolve(name)))
          .as(name)
          .isEqualTo(Files.readAllBytes(first.resolve(name)));
    }
    assertThat(names()).hasSizeGreaterThan(8);
  }

  @Test
  void nothingIsWrittenForAFileWithErrorsAndTheOthersAreBuilt() throws IOException {
    Files.writeString(folder.resolve("broken.tabor"), "groove a\n  hands : rl\n");
    Ran ran = Ran.of("build", folder.toString(), "-o", out.toString(), "--as", "grid");
    assertThat(ran.code()).isEqualTo(1);
    assertThat(ran.err()).contains("[bar-length]").contains("nothing is written for");
    assertThat(names()).filteredOn(name -> !name.startsWith(".")).containsExactly("week.txt");
  }

  @Test
  void twoSourcesOfOneNameAreRefusedBeforeAnythingIsWritten() throws IOException {
    Path other = Files.createDirectories(folder.resolve("b"));
    Files.writeString(other.resolve("Week.tabor"), LESSON);
    Ran ran = Ran.of("build", folder.toString(), "-o", out.toString(), "--as", "grid");
    assertThat(ran.code()).isEqualTo(1);
    assertThat(ran.err()).contains("Week.tabor").contains("would both be written");
    assertThat(out).doesNotExist();
  }

  @Test
  void aFileInTheWayOfTheFolder() throws IOException {
    out = Files.writeString(folder.resolve("file"), "mine");
    Ran ran = build("--as", "grid");
    assertThat(ran.code()).isEqualTo(1);
    assertThat(ran.err()).contains("it is a file, not a folder").doesNotContain("Exception");
    assertThat(out).hasContent("mine");
  }

  @Test
  void aFailedOutputLeavesTheOldOneAndNothingHalfDone() throws IOException {
    Files.createDirectories(out.resolve("week.txt"));
    Ran ran = build("--as", "grid");
    assertThat(ran.code()).isEqualTo(1);
    assertThat(ran.err()).contains("cannot write").contains("a folder has this name");
    assertThat(names()).containsExactly("week.txt");
  }

  @Test
  void behindALinkTheFileItselfIsReplaced() throws IOException {
    Files.createDirectories(out);
    Path real = Files.writeString(folder.resolve("real.txt"), "old");
    Files.createSymbolicLink(out.resolve("week.txt"), real);
    assertThat(build("--as", "grid").code()).isEqualTo(0);
    assertThat(out.resolve("week.txt")).isSymbolicLink();
    assertThat(Files.readString(real)).contains("bar 1");
  }

  @Test
  void standardInputIsALessonWithoutAName() throws IOException {
    Ran ran = Ran.reading(LESSON, "build", "-", "-o", out.toString(), "--as", "grid");
    assertThat(ran.code()).isEqualTo(0);
    assertThat(names()).containsExactly("lesson.txt");
  }
}
