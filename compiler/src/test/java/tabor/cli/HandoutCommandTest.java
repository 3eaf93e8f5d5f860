package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class HandoutCommandTest {
  @TempDir Path folder;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();
  private Path lesson = Path.of("");

  @BeforeEach
  void write() throws IOException {
    String text = "title \"One bar\"\ngroove beat \"The beat\"\n  hands : rl rl Rl rl\n";
    lesson = Files.writeString(folder.resolve("bar.tabor"), text);
  }

  private int run(String... args) {
    ByteArrayInputStream in = new ByteArrayInputStream(new byte[0]);
    return Main.run(args, Io.of(in, out, err, false, false, Map.of()));
  }

  private static String text(Path pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      return new PDFTextStripper().getText(document);
    }
  }

  @Test
  void aFolderTakesItByTheLessonsName() throws IOException {
    assertThat(run("handout", lesson.toString(), "-o", folder.toString())).isEqualTo(ExitCode.FINE);
    Path pdf = folder.resolve("bar.pdf");
    assertThat(out.toString(StandardCharsets.UTF_8)).isEqualTo(pdf + "\n");
    assertThat(text(pdf)).contains("One bar", "The beat", "Drums are loud");
  }

  @Test
  void theCautionMayBeOnesOwnOrLeftOut() throws IOException {
    Path own = folder.resolve("new/own.pdf");
    run(
        "handout",
        lesson.toString(),
        "-o",
        own.toString(),
        "--caution",
        "Ear plugs are at the desk.");
    assertThat(text(own)).contains("Ear plugs are at the desk.").doesNotContain("Drums are loud");
    Path none = folder.resolve("none.pdf");
    run("handout", lesson.toString(), "-o", none.toString(), "--no-caution");
    assertThat(text(none)).doesNotContain("Drums are loud");
  }

  @Test
  void buildPrintsTheSamePage() throws IOException {
    Path pdf = folder.resolve("bar.pdf");
    String[] page = {"--paper", "letter", "--large", "--clean"};
    run("handout", lesson.toString(), "-o", pdf.toString(), page[0], page[1], page[2], page[3]);
    byte[] handout = Files.readAllBytes(pdf);
    Files.delete(pdf);
    String to = folder.toString();
    run("build", lesson.toString(), "-o", to, "--as", "pdf", page[0], page[1], page[2], page[3]);
    assertThat(Files.readAllBytes(pdf)).isEqualTo(handout);
  }

  @Test
  void wrongWordsAreSaid() {
    assertThat(run("handout", lesson.toString(), "--paper", "a5")).isEqualTo(ExitCode.USAGE);
    assertThat(err.toString(StandardCharsets.UTF_8)).contains("a4 or letter, not a5");
  }

  @Test
  void nothingIsWrittenForAFileWithErrors() throws IOException {
    Path bad = Files.writeString(folder.resolve("bad.tabor"), "groove g\n  hands : q\n");
    Path pdf = folder.resolve("bad.pdf");
    assertThat(run("handout", bad.toString(), "-o", pdf.toString())).isEqualTo(ExitCode.ERRORS);
    assertThat(pdf).doesNotExist();
  }
}
