package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tabor.build.BuildOptions;
import tabor.build.Form;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.resolve.Options;

/**
 * A lesson that would be drawn for minutes: what can be made of it is made, the rest is refused.
 */
class TooMuchToDrawTest {
  @TempDir private Path folder;
  private Path lesson;
  private Path out;

  /** Seven steps like the groove: 65,536 strokes, as many as so long a text may ask for. */
  @BeforeEach
  void write() throws IOException {
    String text =
        "groove g\n  tempo 60\n  bars 512\n  ostinato hands : rlrl rlrl rlrl rlrl\n"
            + "step \"more\"\n  accent right at 1\n".repeat(7)
            + ("# " + "padding ".repeat(100) + "\n").repeat(40);
    lesson = Files.writeString(folder.resolve("long.tabor"), text);
    out = folder.resolve("out");
  }

  private List<String> made() throws IOException {
    try (Stream<Path> files = Files.list(out)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  @Test
  void theFormsThatCannotBeDrawnAreRefusedAndTheOthersMade() throws IOException {
    assertThat(Ran.of("check", lesson.toString()).code()).isZero();
    Ran ran =
        Ran.of("build", lesson.toString(), "-o", out.toString(), "--as", "midi,svg,png,pdf,html");
    assertThat(ran.code()).isEqualTo(1);
    for (String form : List.of("svg", "png", "pdf", "html")) {
      assertThat(ran.err())
          .contains("no " + form + " of " + lesson + ": 65536 strokes in 8 sections")
          .contains("--only");
    }
    assertThat(made()).hasSize(8).allMatch(name -> name.endsWith(".mid"));
  }

  @Test
  void oneOfItsSectionsIsDrawn() throws IOException {
    Ran ran = Ran.of("build", lesson.toString(), "-o", out.toString(), "--as=svg", "--only=g");
    assertThat(ran.err()).isEmpty();
    assertThat(made()).containsExactly("long.g.svg");
  }

  @Test
  void aSectionThatIsTooLongIsNamed() throws IOException {
    Path file =
        Files.writeString(
            folder.resolve("one.tabor"),
            "groove short\n  kick : x . . .\ngroove endless\n  tempo 40\n  bars 376\n"
                + "  ostinato hihat : xxxx xxxx xxxx xxxx\n  ostinato kick : xxxx xxxx xxxx"
                + " xxxx\n");
    for (String form : List.of("svg", "png", "pdf", "html")) {
      Ran ran = Ran.of("build", file.toString(), "-o", out.toString(), "--as=" + form);
      assertThat(ran.code()).as(form).isEqualTo(1);
      assertThat(ran.err())
          .contains("12032 strokes in section “endless” are too much to draw at once; name some");
    }
    Ran ran = Ran.of("build", file.toString(), "-o", out.toString(), "--as=svg", "--only=short");
    assertThat(ran.code()).isZero();
    assertThat(ran.err()).isEmpty();
  }

  @Test
  void nothingIsLeftOfAHandoutThatIsRefused() {
    Path page = folder.resolve("page.pdf");
    Ran ran = Ran.of("handout", lesson.toString(), "-o", page.toString());
    assertThat(ran.code()).isEqualTo(1);
    assertThat(ran.err()).contains("too much to draw at once; name some sections with --only");
    assertThat(page).doesNotExist();
  }

  /** Bars without a stroke are drawn as well: 64 KB of them took a minute. */
  @Test
  void emptyStavesCountToo() throws IOException {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < 300; i++) {
      text.append("groove g").append(i).append("\n  blank 64 bars\n");
      // A longer text may ask for more bars.
      text.append("  # ").append("-".repeat(80)).append("\n");
    }
    Path file = Files.writeString(folder.resolve("empty.tabor"), text);
    for (String form : List.of("svg", "png", "pdf", "html")) {
      Ran ran = Ran.of("build", file.toString(), "-o", out.toString(), "--as=" + form);
      assertThat(ran.code()).as(form).isEqualTo(1);
      assertThat(ran.err()).contains("19200 bars in 300 sections are too much to draw");
    }
  }

  /** A printed page cuts texts and goals into lines; the other forms take them as they are. */
  @Test
  void textsCountOnPaper() throws IOException {
    String goals = "  goal \"Even eighths\"\n".repeat(2_000) + "  text \"Count\"\n".repeat(1_000);
    Path file =
        Files.writeString(folder.resolve("goals.tabor"), "groove g\n  kick : x . x .\n" + goals);
    Ran ran = Ran.of("build", file.toString(), "-o", out.toString(), "--as=pdf,html");
    assertThat(ran.code()).isEqualTo(1);
    assertThat(ran.err())
        .contains("3000 texts and goals in one section are too much to draw at once; name some");
    assertThat(made()).containsExactly("goals.html");
    ran = Ran.of("handout", file.toString(), "-o", folder.resolve("goals.pdf").toString());
    assertThat(ran.err()).contains("3000 texts and goals in one section");
  }

  /** A picture of dots is as large as its staff, whatever is in it. */
  @Test
  void aThousandShortSectionsAreTooMuchInDots() {
    StringBuilder many = new StringBuilder();
    for (int i = 0; i < 700; i++) {
      many.append("groove g").append(i).append("\n  kick : x . x .\n");
    }
    Compiled whole =
        new Compiler(Loader.NONE).compile(Path.of("many.tabor"), many.toString(), Options.NONE);
    assertThat(Form.SVG.refusal(whole.lesson(), BuildOptions.ALL)).isEmpty();
    assertThat(Form.PNG.refusal(whole.lesson(), BuildOptions.ALL))
        .hasValueSatisfying(
            why -> assertThat(why).startsWith("700 sections are too much to draw at once"));
    // A title takes lines of its own.
    for (int letters : new int[] {20, 600}) {
      String titled = many.substring(0, many.indexOf("groove g100\n"));
      String title = " \"" + "long ".repeat(letters / 5) + "\"\n";
      Compiled some =
          new Compiler(Loader.NONE)
              .compile(
                  Path.of("titled.tabor"),
                  titled.replaceAll("(groove g\\d+)\n", "$1" + title),
                  Options.NONE);
      assertThat(some.hasErrors()).isFalse();
      assertThat(Form.PNG.refusal(some.lesson(), BuildOptions.ALL).isPresent())
          .isEqualTo(letters == 600);
      assertThat(Form.SVG.refusal(some.lesson(), BuildOptions.ALL)).isEmpty();
    }
  }

  @Test
  void aTermInOneFileIsDrawn() {
    StringBuilder term = new StringBuilder();
    for (int i = 1; i <= 60; i++) {
      term.append("groove g").append(i).append("\n  tempo 60\n  bars 16\n");
      term.append("  ostinato hihat : xxxx xxxx xxxx xxxx\n  ostinato snare : . x . x\n");
      term.append("  ostinato kick : xx . xx xx\n");
    }
    Compiled whole =
        new Compiler(Loader.NONE).compile(Path.of("term.tabor"), term.toString(), Options.NONE);
    assertThat(whole.hasErrors()).isFalse();
    for (Form form : List.of(Form.SVG, Form.PNG, Form.PDF, Form.HTML)) {
      assertThat(form.refusal(whole.lesson(), BuildOptions.ALL)).as(form.toString()).isEmpty();
    }
  }

  @Test
  void changesThatAreTooMuchAreToldInWords() throws IOException {
    Path other = folder.resolve("other.tabor");
    Files.writeString(other, Files.readString(lesson).replace("rlrl rlrl rlrl", "rlrl rlrl rrll"));
    Path page = folder.resolve("changes.pdf");
    Ran ran =
        Ran.of("diff", "--as=pdf", "-o", page.toString(), lesson.toString(), other.toString());
    assertThat(ran.code()).isEqualTo(1);
    assertThat(ran.err())
        .contains("65536 strokes in 8 sections are too much to draw at once; without --as");
    assertThat(page).doesNotExist();
    // Whichever side has more.
    Path little = Files.writeString(folder.resolve("little.tabor"), "groove g\n  kick : x . . .\n");
    for (List<Path> sides : List.of(List.of(lesson, little), List.of(little, lesson))) {
      assertThat(
              Ran.of(
                      "diff",
                      "--as=pdf",
                      "-o",
                      page.toString(),
                      sides.get(0).toString(),
                      sides.get(1).toString())
                  .err())
          .contains("are too much to draw at once");
      assertThat(page).doesNotExist();
    }
    assertThat(Ran.of("diff", lesson.toString(), other.toString()).out())
        .contains("goes from the left hand to the right hand");
  }

  @Test
  void aDocumentSaysWhichBlockIsTooMuch() throws IOException {
    Path page =
        Files.writeString(folder.resolve("page.md"), "# Long\n\n```tabor file=long.tabor\n```\n");
    Ran ran = Ran.of("weave", page.toString(), "-o", out.toString());
    assertThat(ran.code()).isEqualTo(1);
    assertThat(ran.err()).contains("page.md:3").contains("section=");
  }

  @Test
  void aPageOfWhatWasFoundSaysThatItDoesNotDrawAll() throws IOException {
    Path page = folder.resolve("found.html");
    Ran ran = Ran.of("find", folder.toString(), "--as=html", "-o", page.toString());
    assertThat(ran.err()).isEmpty();
    String text = Files.readString(page);
    assertThat(text).contains("notes for the first 6 only: the rest is too much to draw");
    assertThat(text.split("<figure", -1)).hasSize(7);
    assertThat(text.split("<article", -1)).hasSize(9);
  }
}
