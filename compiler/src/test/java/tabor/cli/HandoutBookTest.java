package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class HandoutBookTest {
  @TempDir Path folder;

  private String one = "";
  private String two = "";

  @BeforeEach
  void write() throws IOException {
    Files.writeString(
        folder.resolve("class.tabor"),
        "player mia \"Mia\"\n  sections pad wave\n\nplayer ben \"Ben\"\n  sections wave\n");
    one = lesson("one", "First week", "log 3 days", "pad", "Pads");
    two = lesson("two", "Second week", "log 9 days\npage letter", "wave", "Waves");
  }

  private String lesson(String name, String title, String header, String section, String caption)
      throws IOException {
    String text =
        "title \"%s\"\n%s\nuse \"class.tabor\"\ngroove %s \"%s\"\n  goal \"Goal of %s\"\n"
            .formatted(title, header, section, caption, name);
    Path file = folder.resolve(name + ".tabor");
    return Files.writeString(file, text + "  snare : x x x x\n").toString();
  }

  private static String page(Path pdf, int number) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      PDFTextStripper stripper = new PDFTextStripper();
      stripper.setStartPage(number);
      stripper.setEndPage(number);
      return stripper.getText(document);
    }
  }

  private static int pages(Path pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      return document.getNumberOfPages();
    }
  }

  @Test
  void severalLessonsAreOneDocument() throws IOException {
    Path pdf = folder.resolve("term.pdf");
    Ran ran = Ran.of("handout", one, two, "--cover", "Term two", "-o", pdf.toString());
    assertThat(ran.code()).isEqualTo(ExitCode.FINE);
    assertThat(pages(pdf)).isEqualTo(4);
    assertThat(page(pdf, 1))
        .contains("Term two", "First week 2", "Second week 3", "snare", "1 / 4");
    assertThat(page(pdf, 2)).contains("First week", "Pads", "2 / 4").doesNotContain("Practice log");
    assertThat(page(pdf, 3)).contains("Second week", "Waves", "3 / 4").doesNotContain("snare");
    // One log, the longest, for the goals of both.
    assertThat(page(pdf, 4)).contains("Practice log", "Goal of one", "Goal of two", "\n9", "4 / 4");
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      assertThat(document.getDocumentInformation().getTitle()).isEqualTo("Term two");
      // The second lesson's wish for another paper cannot hold in one document.
      assertThat(document.getPage(2).getMediaBox().getHeight())
          .isEqualTo(document.getPage(0).getMediaBox().getHeight());
    }
  }

  @Test
  void everyPlayerHasADocumentAndATableNamesThem() throws IOException {
    Ran ran = Ran.of("handout", one, two, "--for", "all", "-o", folder.toString());
    // Nothing of the first week is Ben's.
    assertThat(ran.code()).isEqualTo(ExitCode.ERRORS);
    assertThat(ran.err()).contains("one.tabor: nothing of it is left for ben");
    Path mia = folder.resolve("handout.mia.pdf");
    Path ben = folder.resolve("handout.ben.pdf");
    assertThat(ran.out()).isEqualTo("Mia  " + mia + "  4 pages\nBen  " + ben + "  3 pages\n");
    assertThat(page(mia, 1)).contains("Mia", "First week 2", "Second week 3");
    assertThat(page(ben, 1)).contains("Ben", "Second week 2").doesNotContain("First week");
  }

  @Test
  void onlyChoosesSections() throws IOException {
    Path pdf = folder.resolve("some.pdf");
    Ran ran = Ran.of("handout", one, two, "--only", "wave", "-o", pdf.toString());
    assertThat(ran.code()).isEqualTo(ExitCode.FINE);
    assertThat(page(pdf, 1)).contains("Second week 2").doesNotContain("First week");
    Ran unknown = Ran.of("handout", one, "--only", "wawe", "-o", pdf.toString());
    assertThat(unknown.code()).isEqualTo(ExitCode.USAGE);
    assertThat(unknown.err()).contains("there is no section wawe; to choose from: pad");
  }
}
