package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
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
      return files
          .map(file -> file.getFileName().toString())
          .filter(name -> !name.equals(Build.INDEX))
          .sorted()
          .toList();
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
    // Of no lesson there is nothing to sum up.
    assertThat(ran("check", "--for", "bem").out()).isEmpty();
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

  private Ran builtForAll(Path out, String... more) {
    return Ran.of(
        Stream.concat(
                Stream.of("build", folder.toString(), "-o", out.toString(), "--as", "pdf,grid"),
                Stream.concat(Stream.of("--for", "all"), Stream.of(more)))
            .toArray(String[]::new));
  }

  private void quiet() throws IOException {
    Files.writeString(folder.resolve("class.tabor"), CLASS.replace("elsewhere", "beat"));
  }

  @Test
  void whatDependsOnWhatIsSaidForEveryStudent() throws IOException {
    quiet();
    Path out = folder.resolve("out");
    Path deps = folder.resolve("week.d");
    assertThat(builtForAll(out, "--deps", deps.toString()).code()).isEqualTo(ExitCode.FINE);
    List<String> rules = Files.readAllLines(deps);
    assertThat(rules.get(0))
        .contains("week.mia.pdf", "week.mia.txt", "week.ben.pdf", "week.zoe.txt")
        .contains(": ")
        .endsWith(folder.resolve("class.tabor") + " " + lesson);
    assertThat(rules)
        .contains(folder.resolve("class.tabor") + ":", lesson + ":")
        .noneMatch(line -> line.startsWith(":") || line.startsWith(" "));
  }

  @Test
  void aSecondRunMakesWhatAChangeOfTheClassFileTouches() throws IOException {
    quiet();
    Path out = folder.resolve("out");
    String[] only = {
      "build", lesson.toString(), "-o", out.toString(), "--as", "pdf,grid", "--for", "all"
    };
    Ran first = Ran.of(only);
    assertThat(first.code()).isEqualTo(ExitCode.FINE);
    assertThat(first.out().lines())
        .containsExactly(
            lesson + " for mia: 2 files in " + out,
            lesson + " for ben: 2 files in " + out,
            lesson + " for zoe: 2 files in " + out);
    assertThat(Ran.of(only).out()).isEqualTo(first.out().replace("\n", ", nothing changed\n"));
    assertThat(Files.readString(out.resolve(Build.INDEX))).contains("unit\t" + lesson);

    Files.delete(out.resolve("week.zoe.txt"));
    assertThat(Ran.of(only).out().lines().filter(line -> !line.endsWith(", nothing changed")))
        .containsExactly(lesson + " for zoe: 2 files in " + out + ", 1 unchanged");
    Files.writeString(
        folder.resolve("class.tabor"),
        CLASS.replace("elsewhere", "beat").replace("tempo     80%", "tempo     70%"));
    assertThat(Ran.of(only).out().lines().filter(line -> !line.endsWith(", nothing changed")))
        .containsExactly(lesson + " for mia: 2 files in " + out);
    assertThat(Files.readString(out.resolve("week.mia.txt"))).contains("64.4");
    Path fresh = folder.resolve("fresh");
    only[3] = fresh.toString();
    Ran.of(only);
    for (String name : built(fresh)) {
      assertThat(out.resolve(name)).as(name).hasSameBinaryContentAs(fresh.resolve(name));
    }
    only[3] = out.toString();
    assertThat(Ran.of(only).out()).isEqualTo(first.out().replace("\n", ", nothing changed\n"));
    only[7] = "mia";
    assertThat(Ran.of(only).out())
        .isEqualTo(lesson + " for mia: 2 files in " + out + ", nothing changed\n");
  }

  @Test
  void whatIsToldOfAStudentIsToldEachTime() {
    Path out = folder.resolve("out");
    Ran first = builtForAll(out);
    Ran second = builtForAll(out);
    assertThat(first.code()).isEqualTo(ExitCode.ERRORS);
    assertThat(first.err()).contains("nothing of it is left for zoe");
    assertThat(second.err()).isEqualTo(first.err());
    assertThat(second.out()).isEqualTo(first.out().replace("\n", ", nothing changed\n"));
  }

  @Test
  void partsOfTheLessonsForStudentsAreTheWholeTogether() throws IOException {
    quiet();
    for (int i = 0; i < 6; i++) {
      Files.writeString(folder.resolve("week-" + i + ".tabor"), LESSON);
    }
    Path whole = folder.resolve("whole");
    assertThat(builtForAll(whole).code()).isEqualTo(ExitCode.FINE);
    List<String> together = new ArrayList<>();
    for (int k = 1; k <= 3; k++) {
      Path part = folder.resolve("part" + k);
      builtForAll(part, "--shard", k + "/3");
      if (Files.exists(part)) {
        together.addAll(built(part));
      }
    }
    assertThat(together).hasSize(42).containsExactlyInAnyOrderElementsOf(built(whole));
  }

  @Test
  void aFaultInOneLessonLeavesTheStudentsOfTheOthers() throws IOException {
    quiet();
    Files.writeString(folder.resolve("bad.tabor"), "use \"class.tabor\"\ngroove a\n  snare : x\n");
    Path out = folder.resolve("out");
    Files.createDirectories(out.resolve("week.ben.txt"));
    Ran built = builtForAll(out);
    assertThat(built.code()).isEqualTo(ExitCode.ERRORS);
    assertThat(built.err()).contains("bad.tabor:3:", "week.ben.txt: a folder has this name");
    assertThat(built(out))
        .contains("week.mia.pdf", "week.zoe.txt")
        .noneMatch(n -> n.contains("part"));
  }

  @Test
  void nameAndTextsStandAtTheHeadOfPracticePageAndGrid() throws IOException {
    Path out = folder.resolve("out");
    ran("build", "-o", out.toString(), "--as", "html,grid", "--for", "mia,ben");
    String mia = Files.readString(out.resolve("week.mia.html"));
    assertThat(mia.substring(0, mia.indexOf("<main>")))
        .contains(">Mia</p>", "On the junior kit, at 80 %.", "Lead with the right hand. [loud]")
        .doesNotContain("Look to the");
    assertThat(Files.readString(out.resolve("week.mia.txt")))
        .startsWith("Week three\nMia\nLead with the right hand. [loud]\n");
    assertThat(Files.readString(out.resolve("week.ben.txt")))
        .startsWith("Week three\nBen\nLook to the left.\n");
    assertThat(ran("grid", "pad", "--for", "ben").out()).startsWith("Week three\nBen\n");
    ran("build", "-o", out.toString(), "--as", "html,grid");
    assertThat(Files.readString(out.resolve("week.html"))).doesNotContain("class=\"reader\"");
    assertThat(Files.readString(out.resolve("week.txt"))).doesNotContain("Mia");
  }
}
