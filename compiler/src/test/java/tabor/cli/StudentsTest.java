package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StudentsTest {
  private static final String CLASS =
      """
      player mia "Mia"
        on        junior
        tempo     80%
        sections  pad to quiet
        page      large
        text      "Lead with the [right] hand. [loud]"

      player ben "Ben"
        left-handed
        limits    hands sixteenths at 75 to 110
        text      "Look to the [right]."

      player zoe "Zoe"
        sections  elsewhere
      """;

  private static final String LESSON =
      """
      title "Week three"
      tempo 92
      use "class.tabor"
      goal "Even eighths at 92"
      teacher "zebra in the header"
      log 7 days

      groove pad "On the pad"
        goal "Relaxed shoulders"
        teacher "zebra in a groove"
        snare : xxxx xxxx xxxx xxxx
        text "Begin with the [left]."

      groove beat "The beat"
        tempo 100
        ride  : xx xx xx xx
        snare : .  x  .  x
        kick  : x  .  .  .

      step quiet "Quieter"
        drop ride at 1&
        teacher "zebra in a step"

      groove write "Your own"
        blank 4 bars

      groove last "The last one"
        tom1 : x x x x

      sheet kicks "Kicks" from beat
        teacher "zebra in a sheet"
        each add kick at 2& 3

      chart along "Along"
        teacher "zebra in a chart"
        count-in 1 bar
        play pad 4 times
        climb beat from 60 to 100 by 10 every 2 times
        play last 2 times
      """;

  @TempDir Path folder;

  private Path lesson = Path.of("");

  @BeforeEach
  void write() throws IOException {
    Files.writeString(folder.resolve("class.tabor"), CLASS);
    lesson = Files.writeString(folder.resolve("week.tabor"), LESSON);
  }

  private static String text(Path pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      return new PDFTextStripper().getText(document);
    }
  }

  private Ran ran(String command, String... more) {
    return Ran.of(
        Stream.concat(Stream.of(command, lesson.toString()), Stream.of(more))
            .toArray(String[]::new));
  }

  private List<String> built(Path out) throws IOException {
    try (Stream<Path> files = Files.list(out)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  @Test
  void aStudentsListIsThatOfTheSameOptions() {
    assertThat(ran("list", "pad", "--for", "mia").out())
        .isEqualTo(ran("list", "pad", "--on", "junior", "--tempo", "73.6").out())
        .isNotEqualTo(ran("list", "pad").out());
    assertThat(ran("list", "beat", "--for", "mia").out())
        .isEqualTo(ran("list", "beat", "--on", "junior", "--tempo", "80").out())
        .isNotEqualTo(ran("list", "beat").out());
    assertThat(ran("list", "--for", "ben").out())
        .isEqualTo(ran("list", "--left-handed").out())
        .isNotEqualTo(ran("list").out());
    assertThat(ran("list", "beat", "--for", "mia", "--tempo", "50", "--on", "five-piece").out())
        .isEqualTo(ran("list", "beat", "--tempo", "50").out());
  }

  @Test
  void limitsOfAStudentAreTheOnesInForce() {
    // Hands alternate in sixteenths at 92: each strikes 3.07 times a second. Sixteenths of one hand
    // at 75 are 5 strokes a second; the usual limit is 7.
    assertThat(ran("steps", "--as", "tsv", "--for", "ben").out()).contains("61");
    assertThat(ran("steps", "--as", "tsv").out()).contains("44").doesNotContain("\t61");
  }

  @Test
  void everyStudentHasAPageAndTheRestIsTold() throws IOException {
    Path out = folder.resolve("out");
    Ran built = ran("build", "-o", out.toString(), "--as", "pdf", "--for", "all");
    assertThat(built.code()).isEqualTo(ExitCode.ERRORS);
    assertThat(built.err()).contains("nothing of it is left for zoe");
    assertThat(built(out)).containsExactly("week.ben.pdf", "week.mia.pdf");
    assertThat(text(out.resolve("week.mia.pdf")))
        .contains(
            "Mia",
            "On the junior kit, at 80 %.",
            "Lead with the right hand. [loud]",
            "Begin with the left.",
            "Even eighths at 92",
            "Relaxed shoulders",
            "Practice log",
            "On the pad",
            "48",
            "Along")
        .doesNotContain("The last one", "Your own", "Kicks");
    assertThat(text(out.resolve("week.ben.pdf")))
        .contains("Ben", "For a left-handed player.", "Look to the left.", "Begin with the right.")
        .contains("The last one", "Even eighths at 92", "Practice log", "Kicks");
  }

  @Test
  void whatIsForTheTeacherIsInNoOutput() throws IOException {
    Path out = folder.resolve("out");
    String[] forms = {"midi", "grid", "musicxml", "svg", "png", "pdf", "html", "wav"};
    ran("build", "-o", out.toString(), "--as", String.join(",", forms));
    ran("build", "-o", out.toString(), "--as", String.join(",", forms), "--for", "mia,ben");
    assertThat(built(out)).hasSizeGreaterThan(60);
    for (String name : built(out)) {
      byte[] bytes = Files.readAllBytes(out.resolve(name));
      assertThat(new String(bytes, StandardCharsets.ISO_8859_1)).as(name).doesNotContain("zebra");
      if (name.endsWith(".pdf")) {
        assertThat(text(out.resolve(name))).as(name).doesNotContain("zebra", "teacher");
      }
    }
    for (String command : List.of("list", "grid", "steps", "fastest", "sticking")) {
      assertThat(ran(command).out()).as(command).isNotEmpty().doesNotContain("zebra");
      assertThat(ran(command, "--for", "ben").out()).as(command).doesNotContain("zebra");
    }
  }

  @Test
  void theTeachersCopyHasIt() throws IOException {
    Path pdf = folder.resolve("teacher.pdf");
    ran("handout", "--teacher", "-o", pdf.toString());
    assertThat(text(pdf))
        .contains("zebra in the header", "zebra in a groove", "zebra in a step")
        .contains("zebra in a sheet", "zebra in a chart");
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      assertThat(document.getDocumentInformation().getCOSObject().toString())
          .doesNotContain("zebra");
    }
  }

  @Test
  void anUnknownStudentIsAnErrorWithNearNames() {
    Ran ran = ran("list", "--for", "bem");
    assertThat(ran.code()).isEqualTo(ExitCode.USAGE);
    assertThat(ran.err()).contains("there is no player bem; did you mean ben?");
    assertThat(ran.out()).isEmpty();
  }

  @Test
  void aLessonWithoutPlayersSaysHowToWriteOne() {
    Ran ran = Ran.reading("groove a\n  snare : x x x x\n", "list", "-", "--for", "all");
    assertThat(ran.code()).isEqualTo(ExitCode.USAGE);
    assertThat(ran.err()).contains("player mia \"Mia\"");
  }

  @Test
  void twoPagesWithOneFileNameAreToldBeforeAnythingIsWritten() throws IOException {
    Path other = Files.createDirectory(folder.resolve("other"));
    Files.writeString(other.resolve("class.tabor"), CLASS);
    Files.writeString(other.resolve("week.tabor"), LESSON);
    Path out = folder.resolve("out");
    Ran built =
        Ran.of("build", folder.toString(), "-o", out.toString(), "--as", "pdf", "--for", "ben");
    assertThat(built.code()).isEqualTo(ExitCode.ERRORS);
    assertThat(built.err()).contains("week.tabor for ben and ", "would both be written to");
    assertThat(out).doesNotExist();
  }

  @Test
  void severalPagesNeedAFolder() {
    Ran printed = ran("handout", "-o", folder.resolve("one.pdf").toString(), "--for", "mia,ben");
    assertThat(printed.code()).isEqualTo(ExitCode.USAGE);
    assertThat(folder.resolve("one.pdf")).doesNotExist();
  }

  @Test
  void whatTheLessonSaysOfAStudentWinsAndAddsTo() throws IOException {
    Files.writeString(lesson, LESSON + "\nplayer ben\n  tempo 50\n  sections first 1\n");
    assertThat(ran("list", "--for", "ben").out())
        .isEqualTo(ran("list", "pad", "--left-handed", "--tempo", "50").out());
  }

  @Test
  void severalStudentsFollowEachOtherUnderTheirNames() {
    Ran ran = ran("grid", "--for", "ben,mia,ben");
    assertThat(ran.out()).containsSubsequence("# For Ben (ben):", "# For Mia (mia):");
    assertThat(ran.out().split("# For", -1)).hasSize(3);
    assertThat(ran("check", "--for", "mia,ben").code()).isEqualTo(ExitCode.FINE);
  }

  @Test
  void aClassFileInTheFolderIsPassedOver() throws IOException {
    Path out = folder.resolve("out");
    Ran built =
        Ran.of("build", folder.toString(), "-o", out.toString(), "--as", "pdf", "--for", "ben");
    assertThat(built.code()).isEqualTo(ExitCode.FINE);
    assertThat(built(out)).containsExactly("week.ben.pdf");
  }
}
