package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What comes from outside may be anything: the answer is a sentence and an exit code. */
class BadInputTest {
  private static final String FINE = "groove a\n  hands : rl rl rl rl\n";

  @TempDir private Path folder;

  private Ran check(byte[] bytes) throws IOException {
    Path file = Files.write(folder.resolve("a.tabor"), bytes);
    return Ran.of("check", file.toString());
  }

  private static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  @Test
  void notThereAndAFolder() {
    Ran ran = Ran.of("check", folder.resolve("none.tabor").toString());
    assertThat(ran.code()).isEqualTo(1);
    assertThat(ran.out()).contains("[unreadable]").contains("it is not there");
    assertThat(Ran.of("check", folder.toString()).code()).isEqualTo(2);
    assertThat(Ran.of("check", "a\0b").code()).isEqualTo(2);
  }

  @Test
  void notUtf8NamesTheByte() throws IOException {
    Ran ran = check(new byte[] {'g', 'r', '\n', 'x', (byte) 0xE9, 'y', '\n'});
    assertThat(ran.code()).isEqualTo(1);
    assertThat(ran.out()).contains("a.tabor:2:2: error: byte 5 of this file, E9, is not UTF-8");
    Ran cut = check(new byte[] {'a', (byte) 0xE2, (byte) 0x82});
    assertThat(cut.out()).contains("byte 2 of this file, E2");
    Ran wide = check("groove a".getBytes(StandardCharsets.UTF_16));
    assertThat(wide.out()).contains("byte 1 ").contains("UTF-16");
  }

  @Test
  void overFourMebibytes() throws IOException {
    byte[] most = new byte[4 << 20];
    java.util.Arrays.fill(most, (byte) '\n');
    assertThat(check(most).code()).isEqualTo(0);
    byte[] more = java.util.Arrays.copyOf(most, most.length + 1);
    assertThat(check(more).out()).contains("[too-long]");
    assertThat(Ran.on(more, Map.of(), false, "check", "-").out()).contains("[too-long]");
  }

  @Test
  void oddButFine() throws IOException {
    assertThat(check(new byte[0]).code()).isEqualTo(0);
    assertThat(check(utf8("groove a\n  hands : rl rl rl rl")).code()).isEqualTo(0);
    assertThat(check(utf8("\uFEFFgroove a\r\n\thands : rl rl rl rl\r")).code()).isEqualTo(0);
  }

  @Test
  void zeroBytesAreOneWrongLine() throws IOException {
    Ran ran = check(utf8("groove a\n  hands : rl rl rl rl\n  \0\0\n"));
    assertThat(ran.code()).isEqualTo(1);
    assertThat(ran.out()).contains("a.tabor:3:3: error").contains("1 error in 1 file");
    assertThat(ran.out()).doesNotContain("\0");
  }

  @Test
  void aLineOfAMillionCharactersIsCutInTheReport() throws IOException {
    Ran ran = check(utf8("groove a\n  hands : " + "rl ".repeat(300_000) + "\n"));
    assertThat(ran.code()).isEqualTo(1);
    assertThat(ran.out().lines().mapToInt(String::length).max().orElse(0)).isLessThan(2000);
  }

  @Test
  void foldersAreWalkedInOrderAndLinksToFoldersAreNot() throws IOException {
    Files.createDirectories(folder.resolve("b/.hidden"));
    for (String name : new String[] {"z.tabor", "a.tabor", "b/m.tabor", "b/.hidden/x.tabor"}) {
      Files.writeString(folder.resolve(name), FINE);
    }
    Files.createSymbolicLink(folder.resolve("b/round"), folder);
    assertThat(SourceFiles.find(java.util.List.of(folder.toString())))
        .containsExactly(
            folder.resolve("a.tabor"), folder.resolve("b/m.tabor"), folder.resolve("z.tabor"));
  }

  @Test
  void useStaysInTheFolderTreeAlsoBehindLinks() throws IOException {
    Path inside = Files.createDirectories(folder.resolve("in"));
    Files.writeString(folder.resolve("secret.tabor"), "pattern p : rl\n");
    Files.createSymbolicLink(inside.resolve("link.tabor"), folder.resolve("secret.tabor"));
    Files.createDirectories(inside.resolve("below"));
    Files.writeString(inside.resolve("below/fine.tabor"), "pattern p : rl\n");
    assertThat(using(inside, "../secret.tabor")).contains("[use-outside]");
    assertThat(using(inside, folder.resolve("secret.tabor").toString())).contains("[use-outside]");
    assertThat(using(inside, "link.tabor")).contains("[use-outside]");
    assertThat(using(inside, "below/../../secret.tabor")).contains("[use-outside]");
    assertThat(using(inside, "none.tabor")).contains("[unreadable]");
    assertThat(using(inside, "below/fine.tabor")).doesNotContain("error");
    assertThat(using(inside, "below/./fine.tabor")).doesNotContain("error");
  }

  private static String using(Path inside, String file) throws IOException {
    Path lesson = inside.resolve("lesson.tabor");
    Files.writeString(lesson, "use \"" + file + "\"\n" + FINE);
    return Ran.of("check", lesson.toString()).out();
  }

  @Test
  void filesThatUseEachOtherEndInADiagnostic() throws IOException {
    Files.writeString(folder.resolve("a.tabor"), "use \"b.tabor\"\n" + FINE);
    Files.writeString(folder.resolve("b.tabor"), "use \"a.tabor\"\n" + FINE);
    Files.createSymbolicLink(folder.resolve("me.tabor"), folder.resolve("self.tabor"));
    Files.writeString(folder.resolve("self.tabor"), "use \"me.tabor\"\n" + FINE);
    assertThat(Ran.of("check", folder.resolve("a.tabor").toString()).out()).contains("[use-cycle]");
    assertThat(Ran.of("check", folder.resolve("self.tabor").toString()).out())
        .contains("[use-cycle]");
  }

  @Test
  void aReaderThatLeavesIsNoErrorButAFullDiskIs() {
    assertThat(printingTo("Broken pipe")).isEqualTo(0);
    assertThat(printingTo("No space left on device")).isEqualTo(1);
  }

  private static int printingTo(String failure) {
    OutputStream out =
        new OutputStream() {
          @Override
          public void write(int b) throws IOException {
            throw new IOException(failure);
          }
        };
    Io io =
        Io.of(
            new ByteArrayInputStream(utf8(FINE)),
            out,
            new ByteArrayOutputStream(),
            false,
            false,
            Map.of());
    return Main.run(new String[] {"grid", "-"}, io);
  }

  @Property(tries = 100)
  void anyBytesEndInAnExitCode(@ForAll @Size(max = 400) byte[] bytes) {
    Ran ran = Ran.on(bytes, Map.of(), false, "check", "-");
    assertThat(ran.code()).isBetween(0, 1);
    assertThat(ran.err()).isEmpty();
  }
}
