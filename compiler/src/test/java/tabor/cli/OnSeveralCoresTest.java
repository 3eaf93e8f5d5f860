package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tabor.cores.SpareCores;

/** Commands that draw say and write the same on one core and on several. */
class OnSeveralCoresTest {
  private static final int CORES = 3;

  @TempDir Path work;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "build ../examples/hands-to-groove.tabor -o OUT",
        "build ../examples/hands-to-groove.tabor -o OUT --as=svg,png,musicxml",
        "build ../examples/course -o OUT",
        "build ../examples/kick-worksheet.tabor -o OUT --as=pdf --only=none",
        "handout ../examples/hands-to-groove.tabor ../examples/six-eight.tabor -o OUT/h.pdf",
        "find ../examples --plays=paradiddle --as=html -o OUT/found.html",
        "diff ../examples/six-eight.tabor ../examples/twelve-eight.tabor --as=pdf -o OUT/diff.pdf",
        "diff ../examples/six-eight.tabor ../examples/hands-to-groove.tabor",
        "merge ../examples/six-eight.tabor ../examples/six-eight.tabor"
            + " ../examples/twelve-eight.tabor",
        "weave ../docs/notation.md -o OUT",
      })
  void saysAndWritesTheSame(String command) throws IOException {
    sameOnSeveral(command);
  }

  /** Within one section bars are measured, and systems drawn, side by side. */
  @ParameterizedTest
  @ValueSource(strings = {"svg", "png", "pdf", "html"})
  void aLongSectionToo(String form) throws IOException {
    List<String> hats = List.of("x.x. xxxx {xxx}x xx.x", "X(x)x. x=.x. xxxx X.x.", "{x.x} x x. xx");
    List<String> snares = List.of(". l . {lll}", "(l)(l)L. . l L^");
    StringBuilder hihat = new StringBuilder("  hihat : ");
    StringBuilder snare = new StringBuilder("  snare : ");
    for (int bar = 0; bar < 90; bar++) {
      hihat.append(bar == 0 ? "" : " | ").append(hats.get(bar % 3));
      snare
          .append(bar == 0 ? "" : " | ")
          .append(bar % 2 == 0 ? ". l . l" : snares.get(bar / 7 % 2));
    }
    Path file = work.resolve("long.tabor");
    Files.writeString(
        file, "groove long \"Long\"\n" + hihat + "\n" + snare + "\n  ostinato kick : x . x .x\n");
    assertThat(sameOnSeveral("build " + file + " -o OUT --as=" + form)).isZero();
  }

  /** The exit code on both. */
  private int sameOnSeveral(String command) throws IOException {
    Ran alone = run(command, "a");
    SpareCores.share(CORES);
    Ran together;
    try {
      together = run(command, "b");
      assertThat(SpareCores.borrow(CORES)).as("cores given back").isEqualTo(CORES);
    } finally {
      SpareCores.borrow(CORES);
    }
    assertThat(together.code()).isEqualTo(alone.code());
    assertThat(together.out().replace(out("b"), "OUT"))
        .isEqualTo(alone.out().replace(out("a"), "OUT"));
    assertThat(together.err().replace(out("b"), "OUT"))
        .isEqualTo(alone.err().replace(out("a"), "OUT"));
    Map<String, byte[]> expected = files("a");
    Map<String, byte[]> made = files("b");
    assertThat(made.keySet()).isEqualTo(expected.keySet());
    expected.forEach((name, bytes) -> assertThat(made.get(name)).as(name).isEqualTo(bytes));
    return alone.code();
  }

  private String out(String folder) {
    return work.resolve(folder).toString();
  }

  private Ran run(String command, String folder) throws IOException {
    Files.createDirectories(work.resolve(folder));
    return Ran.of(command.replace("OUT", out(folder)).split(" ", -1));
  }

  private Map<String, byte[]> files(String folder) throws IOException {
    Map<String, byte[]> files = new TreeMap<>();
    try (Stream<Path> all = Files.walk(work.resolve(folder))) {
      List<Path> written = all.filter(Files::isRegularFile).toList();
      for (Path file : written) {
        String name = work.resolve(folder).relativize(file).toString();
        // The index tells when.
        if (!name.startsWith(".")) {
          files.put(name, Files.readAllBytes(file));
        }
      }
    }
    return files;
  }
}
