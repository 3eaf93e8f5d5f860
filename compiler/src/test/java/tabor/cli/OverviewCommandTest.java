package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OverviewCommandTest {
  @TempDir Path folder;

  private void term() throws IOException {
    Files.writeString(
        folder.resolve("week-10.tabor"),
        "title \"Tenth\"\n"
            + "tempo 60\n"
            + "groove a \"Flams\"\n"
            + "  hands : 'r l 'r l\n"
            + "  goal \"Clean flams\"\n");
    Files.writeString(
        folder.resolve("week-2.tabor"),
        "title \"Second & more\"\ntempo 60\nteacher \"zebra\"\ngroove a\n  hands : r l r l\n");
    Files.writeString(folder.resolve("class.tabor"), "player mia \"Mia\"\n");
  }

  private Ran overview(String... more) {
    String[] words = new String[more.length + 4];
    words[0] = "overview";
    words[1] = folder.toString();
    words[2] = "-o";
    words[3] = folder.resolve("term/page.html").toString();
    System.arraycopy(more, 0, words, 4, more.length);
    return Ran.of(words);
  }

  @Test
  void everyLessonInOrderAndWhatIsNew() throws IOException {
    term();
    Ran ran = overview("--title", "Term <two>");
    assertThat(ran.code()).as(ran.err()).isZero();
    assertThat(ran.out()).endsWith("page.html: 2 lessons\n");
    String html = Files.readString(folder.resolve("term/page.html"));
    assertThat(html)
        .contains("<h1><bdi lang=\"\">Term &lt;two&gt;</bdi></h1>", "2 lessons", "2 sections")
        .containsSubsequence(
            "Second &amp; more", "<li>quarters</li>", "Tenth", "<li>flam</li>", "id=\"N1\"")
        .containsSubsequence("id=\"N2\"", "Clean flams", "Flams", "<li class=\"first\">flam")
        .doesNotContain("zebra", "Mia", "<script", "http://", "https://");
    String table = html.substring(html.indexOf("<table"), html.indexOf("</table>"));
    assertThat(table.split("<li>4/4</li>", -1)).as("new once").hasSize(2);
  }

  /** The lessons' own language where they agree; what is asked for wins. */
  @Test
  void thePageHasALanguage() throws IOException {
    term();
    for (String week : new String[] {"week-2", "week-10"}) {
      Path file = folder.resolve(week + ".tabor");
      Files.writeString(file, "language de\n" + Files.readString(file));
    }
    assertThat(overview().code()).isZero();
    String german = Files.readString(folder.resolve("term/page.html"));
    assertThat(german)
        .contains("<html lang=\"de\">", "2 Lektionen", "Was in jeder Lektion neu ist")
        .contains("<li>Viertel</li>", "<dt>Taktarten</dt>", "Viertel = 60", "aria-label=\"Ziele\"")
        .doesNotContain("2 lessons", "For the first time", "Goals", "quarters");
    assertThat(overview("--language", "es").code()).isZero();
    assertThat(Files.readString(folder.resolve("term/page.html")))
        .contains("<html lang=\"es\">", "2 lecciones", "<li>negras</li>");
    Path second = folder.resolve("week-2.tabor");
    Files.writeString(second, Files.readString(second).replace("language de", "language fr"));
    assertThat(overview().code()).isZero();
    assertThat(Files.readString(folder.resolve("term/page.html")))
        .contains("<html lang=\"en\">", "2 lessons");
    Ran wrong = overview("--language", "it");
    assertThat(wrong.code()).isEqualTo(ExitCode.USAGE);
    assertThat(wrong.err()).contains("--language takes de, en, es or fr, not it");
  }

  @Test
  void aLessonWithErrorsIsLeftOut() throws IOException {
    term();
    Files.writeString(folder.resolve("week-3.tabor"), "groove a\n  snare : x\n");
    Ran ran = overview();
    assertThat(ran.code()).isEqualTo(ExitCode.ERRORS);
    assertThat(ran.err()).contains("week-3.tabor is passed over: ");
    assertThat(ran.out()).endsWith("page.html: 2 lessons\n");
  }

  @Test
  void withoutALessonNothingIsWritten() throws IOException {
    Files.writeString(folder.resolve("class.tabor"), "player mia \"Mia\"\n");
    Ran ran = overview();
    assertThat(ran.code()).isEqualTo(ExitCode.ERRORS);
    assertThat(ran.err()).contains("there is no lesson to show; nothing is written");
    assertThat(folder.resolve("term")).doesNotExist();
    assertThat(Ran.of("overview", folder.toString()).code()).isEqualTo(ExitCode.USAGE);
  }
}
