package tabor.weave;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The filter between Pandoc's own reader and writers. */
class PandocFilterTest {
  private static final String BEAT = "groove beat\n  snare : x . x .\n";
  private static final String PAGE =
      "---\n"
          + "title: T\n"
          + "---\n\n"
          + "A `tabor: RlrrLrll` b.\n\n"
          + "> ```{.tabor .counts caption=\"The end\"}\n"
          + "> "
          + BEAT.strip().replace("\n", "\n> ")
          + "\n> ```\n\n```python\nx = 1e400\n```\n";

  @TempDir Path folder;

  @BeforeAll
  static void pandocIsThere() {
    boolean there;
    try {
      there = new ProcessBuilder("pandoc", "--version").start().waitFor() == 0;
    } catch (IOException missing) {
      there = false;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      there = false;
    }
    assumeTrue(there, "pandoc is not installed");
  }

  private byte[] pandoc(byte[] in, String... words) throws IOException {
    List<String> command = new ArrayList<>(List.of("pandoc"));
    command.addAll(List.of(words));
    Path out = folder.resolve("pandoc.out");
    Path err = folder.resolve("pandoc.err");
    Process process =
        new ProcessBuilder(command)
            .directory(folder.toFile())
            .redirectOutput(out.toFile())
            .redirectError(err.toFile())
            .start();
    try (OutputStream to = process.getOutputStream()) {
      to.write(in);
    }
    try {
      assertThat(process.waitFor()).as(Files.readString(err)).isZero();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    return Files.readAllBytes(out);
  }

  private Woven filter(String markdown, String format) throws IOException {
    byte[] json = pandoc(markdown.getBytes(StandardCharsets.UTF_8), "-t", "json");
    Woven woven =
        PandocFilter.filter(
            new String(json, StandardCharsets.UTF_8), format, Lessons.NONE, "pictures/");
    Path pictures = Files.createDirectories(folder.resolve("pictures"));
    for (Woven.Shown shown : woven.files()) {
      Files.write(pictures.resolve(shown.name()), shown.bytes());
    }
    return woven;
  }

  private byte[] convert(String markdown, String format) throws IOException {
    Woven woven = filter(markdown, format);
    assertThat(woven.problems()).isEmpty();
    byte[] json = woven.text().getBytes(StandardCharsets.UTF_8);
    return pandoc(json, "-f", "json", "-t", format, "-s", "-o", "-");
  }

  @Test
  void webPagesGetDrawings() throws IOException {
    String html = new String(convert(PAGE, "html"), StandardCharsets.UTF_8);
    assertThat(html)
        .containsPattern("<p>A <img src=\"pictures/staff-[0-9a-f]{16}\\.svg\" width=\"[0-9.]+\"")
        .containsPattern("<blockquote>\\s*<p><img src=\"pictures/beat-[0-9a-f]{16}\\.svg\"")
        .contains("alt=\"beat: 1 bar of 4/4")
        .contains("<em>The end</em>")
        .contains("1e400");
  }

  @Test
  void latexGetsPages() throws IOException {
    String latex = new String(convert(PAGE, "latex"), StandardCharsets.UTF_8);
    assertThat(latex).containsPattern("\\\\includegraphics\\[width=[0-9.]+in.*pictures/beat-.*pdf");
    try (var files = Files.list(folder.resolve("pictures"))) {
      for (Path file : files.toList()) {
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
          assertThat(document.getNumberOfPages()).isEqualTo(1);
          assertThat(document.getPage(0).getMediaBox().getHeight()).isLessThan(150);
        }
      }
    }
  }

  @Test
  void textProcessorsAndBooksHoldTheirPictures() throws IOException {
    assertThat(endings(convert(PAGE, "docx"))).contains("png");
    assertThat(endings(convert(PAGE, "epub"))).contains("svg");
  }

  /** The endings of the picture files in an archive. */
  private List<String> endings(byte[] archive) throws IOException {
    Path file = Files.write(folder.resolve("archive.zip"), archive);
    try (ZipFile zip = new ZipFile(file.toFile())) {
      return zip.stream()
          .map(ZipEntry::getName)
          .filter(name -> name.contains("media/"))
          .map(name -> name.substring(name.lastIndexOf('.') + 1))
          .toList();
    }
  }

  @Test
  void documentsWithoutNotationStayAsTheyAre() throws IOException {
    String page = "# A\n\nText *b* `code` [l](u) $x^2$\n\n| a | b |\n|---|---|\n| 1 | 2 |\n\n- x\n";
    byte[] json = pandoc(page.getBytes(StandardCharsets.UTF_8), "-t", "json");
    String text = new String(json, StandardCharsets.UTF_8);
    Woven woven = PandocFilter.filter(text, "html", Lessons.NONE, "p/");
    assertThat(woven.text().strip()).isEqualTo(text.strip());
    assertThat(woven.files()).isEmpty();
  }

  @Test
  void problemsNameTheBlock() throws IOException {
    Woven woven = filter("```{.tabor}\n" + BEAT.replace(" .\n", "\n") + "```\n", "html");
    assertThat(woven.hasErrors()).isTrue();
    assertThat(woven.problems().get(0).report()).startsWith("notation 1:2:11: error: ");
    assertThat(filter("```{.tabor wide=3}\nx\n```\n", "html").problems().get(0).message())
        .contains("no attribute wide");
  }

  /** Drawn once, shown each time; what comes after is numbered on. */
  @Test
  void theSameStaffAgainIsTheSamePicture() throws IOException {
    String staff = "`tabor: rlrr lrll`";
    Woven woven = filter(staff + " and " + staff + " `tabor: rlrz` " + staff + "\n", "html");
    assertThat(woven.files()).hasSize(1);
    assertThat(woven.text().split("\"Image\"", -1)).hasSize(4);
    assertThat(woven.problems()).hasSize(1);
    assertThat(woven.problems().get(0).report()).startsWith("notation 3: error: ");
  }

  @Test
  void otherInputIsRefused() {
    for (String text : List.of("", "{", "[1]", "{}", "text")) {
      assertThatThrownBy(() -> PandocFilter.filter(text, "html", Lessons.NONE, "p/"))
          .isInstanceOf(IllegalArgumentException.class);
    }
  }
}
