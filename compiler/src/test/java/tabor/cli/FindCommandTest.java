package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FindCommandTest {
  @TempDir Path folder;

  @BeforeEach
  void write() throws IOException {
    lesson(
        "week-2.tabor",
        """
        title "Second <week>"
        tempo 70
        goal "Even ghosts"
        groove beat "The beat"
          hihat : xx xx xx xx
          snare : .  x  .  x
          kick  : x  .  x  .
        step open "Open it"
          tempo 100
          open hihat at 4&
        """);
    lesson(
        "week-10.tabor",
        """
        tempo 60
        teacher "zebra"
        groove pad "On the pad"
          hands play paradiddle in sixteenths
        groove seven
          time 7/8 in 2+2+3
          ride : xx xx xxx
          kick : x. .. ...
        groove late "Late kick"
          hihat : xx xx xx xx
          snare : .  x  .  x
          kick  : x  .  .x .
        """);
    lesson("class.tabor", "player mia \"Mia\"\n");
  }

  private void lesson(String name, String text) throws IOException {
    Files.writeString(folder.resolve(name), text);
  }

  private Ran find(String... more) {
    return Ran.of(
        Stream.concat(Stream.of("find", folder.toString()), Stream.of(more))
            .toArray(String[]::new));
  }

  /** The names of what was found, in order. */
  private List<String> names(String... more) {
    Ran ran = find(more);
    assertThat(ran.code()).as(ran.err()).isZero();
    List<String> lines = ran.out().lines().toList();
    if (lines.isEmpty()) {
      return List.of();
    }
    int column = List.of(lines.get(0).split(" {2,}", -1)).indexOf("section");
    return lines.stream().skip(1).map(line -> line.split(" {2,}", -1)[column]).toList();
  }

  @Test
  void withoutAQuestionAllInTheOrderOfTheWeeks() {
    assertThat(names()).containsExactly("beat", "open", "pad", "seven", "late");
  }

  @Test
  void everyFilterAloneAndTogether() {
    assertThat(names("--plays", "single-paradiddle")).containsExactly("pad");
    assertThat(names("--plays", "paradiddle")).containsExactly("pad");
    assertThat(names("--uses", "hihat")).containsExactly("beat", "open", "late");
    assertThat(names("--uses", "hihat.open")).containsExactly("open");
    assertThat(names("--uses", "hihat", "--uses", "kick", "--tempo", "60")).containsExactly("late");
    assertThat(names("--tempo", "70-100")).containsExactly("beat", "open");
    assertThat(names("--tempo", "70.5-99.9")).isEmpty();
    assertThat(names("--meter", "7/8")).containsExactly("seven");
    assertThat(names("--text", "GHOSTS even")).containsExactly("beat", "open");
    assertThat(names("--text", "ghosts open")).containsExactly("open");
    assertThat(names("--text", "zebra")).as("what is for the teacher").isEmpty();
    assertThat(names("--harder-than", "0")).hasSize(5);
    assertThat(names("--harder-than", "0", "--meter", "4/4", "--tempo", "60", "--uses", "snare"))
        .containsExactly("late", "pad");
  }

  @Test
  void difficultyIsThatOfSteps() {
    String[] steps =
        Ran.of("steps", "--as", "tsv", folder.resolve("week-2.tabor").toString())
            .out()
            .lines()
            .filter(line -> line.contains("\topen\t"))
            .findFirst()
            .orElseThrow()
            .split("\t", -1);
    int percent = Integer.parseInt(steps[6]);
    assertThat(names("--harder-than", Integer.toString(percent))).doesNotContain("open");
    assertThat(names("--harder-than", Integer.toString(percent - 1))).contains("open");
  }

  @Test
  void likeASectionNearestFirstAndItselfLeftOut() {
    String file = folder.resolve("week-2.tabor").toString();
    assertThat(names("--like", file, "beat")).containsExactly("open", "late");
    assertThat(find("--like", file, "beat").out())
        .contains("kick the same, hands the same", "kick 1 stroke off, hands the same");
    assertThat(find("--like", file, "beat", "--uses", "ride").out()).isEmpty();
    assertThat(names("--up-to", "30", "--like", file, "beat")).contains("late", "open", "pad");
    JsonArray all = json("--like", file, "beat");
    assertThat(all.get(1).getAsJsonObject().get("kickStrokesOff").getAsInt()).isEqualTo(1);
    assertThat(all.get(1).getAsJsonObject().get("handStrokesOff").getAsInt()).isZero();
  }

  private JsonArray json(String... more) {
    String[] words =
        Stream.concat(Stream.of(more), Stream.of("--as", "json")).toArray(String[]::new);
    return JsonParser.parseString(find(words).out()).getAsJsonObject().getAsJsonArray("found");
  }

  @Test
  void asData() {
    JsonArray all = json("--plays", "paradiddle");
    assertThat(all).hasSize(1);
    assertThat(all.get(0).getAsJsonObject().get("section").getAsString()).isEqualTo("pad");
    assertThat(all.get(0).getAsJsonObject().get("file").getAsString())
        .isEqualTo(folder.resolve("week-10.tabor").toString());
    assertThat(all.get(0).getAsJsonObject().get("rudiments").getAsJsonArray().get(0).getAsString())
        .isEqualTo("paradiddle");
    assertThat(all.get(0).getAsJsonObject().has("kickStrokesOff")).isFalse();
    assertThat(json("--meter", "5/4")).isEmpty();
  }

  @Test
  void asAPageWithAPictureEach() throws IOException {
    Path page = folder.resolve("found.html");
    Ran ran = find("--as", "html", "-o", page.toString());
    assertThat(ran.code()).isZero();
    String html = Files.readString(page);
    assertThat(html.split("<article ", -1)).hasSize(6);
    assertThat(html.split("<div class=\"drawn", -1).length).isGreaterThan(5);
    assertThat(html)
        .startsWith("<!DOCTYPE html>")
        .contains("Second &lt;week&gt;", "5 sections of 2 lessons", "hardest limb: right hand")
        .doesNotContain("<script", "<week>", "http://", "https://", "zebra", "url(");
    assertThat(find("--as", "html", "--meter", "5/4").out()).contains("nothing found");
  }

  @Test
  void thePageHasALanguage() {
    String german = find("--as", "html", "--language", "de", "--uses", "hihat.open").out();
    assertThat(german)
        .contains("<html lang=\"de\">", "angeschlagen: offene Hi-Hat", "Die Noten in Worten")
        .doesNotContain("What was found", "hardest limb");
    assertThat(find("--as", "html", "--language", "fr", "--meter", "5/4").out())
        .contains("<html lang=\"fr\">", "rien trouvé", "à 5/4");
    assertThat(find("--as", "html").out()).contains("<html lang=\"en\">", "What was found");
    Ran table = find("--language", "de");
    assertThat(table.code()).isEqualTo(ExitCode.USAGE);
    assertThat(table.err()).contains("--language is for the page: --as html");
  }

  /** The page may be shown to students: what they are to write stays empty on it. */
  @Test
  void whatIsLeftBlankStaysBlankOnThePage() throws IOException {
    lesson(
        "blank.tabor",
        "title \"Unique\"\ngroove a\n  blank sticking\n  blank kick\n"
            + "  hands play paradiddle in eighths\n  kick : x . x .\n");
    String html = find("--as", "html", "--text", "unique").out();
    assertThat(html).contains("1 section of 1 lesson");
    assertThat(html.replaceAll("(?s)<style>.*</style>", ""))
        .doesNotContain("paradiddle", "kick", ">R<", ">L<", "right hand on");
    assertThat(find("--text", "unique").out()).contains("paradiddle");
  }

  @Test
  void columnsStayInLineBehindLongMetersAndNames() throws IOException {
    lesson(
        "week-20.tabor",
        """
        groove uneven-bars-and-much-more
          time 7/8 in 2+2+3
          hands play paradiddle in sixteenths
        groove round
          time 12/8
          hands play paradiddle in eighths
        """);
    List<String> lines = find().out().lines().toList();
    String head = lines.get(0);
    for (String line : lines.subList(1, lines.size())) {
      for (String start : List.of("4/4", "quarter", "dotted quarter", "right hand")) {
        String column = start.equals("4/4") ? "meter" : start.contains("q") ? "tempo" : "hardest";
        if (line.contains("  " + start)) {
          assertThat(line.indexOf("  " + start)).isEqualTo(head.indexOf(column) - 2);
        }
      }
    }
    assertThat(find().out())
        .contains("uneven-bars-and-much-more  7/8 in 2+2+3  ")
        .contains("  12/8  ", "  dotted quarter = ");
  }

  @Test
  void nothingFoundIsNoError() {
    Ran ran = find("--meter", "5/4");
    assertThat(ran).isEqualTo(new Ran(0, "", "tabor: nothing found\n"));
  }

  @Test
  void aLessonWithErrorsIsToldAndPassedOver() throws IOException {
    lesson("week-3.tabor", "groove wrong\n  snare : x\n  kick : x\n");
    Files.write(folder.resolve("week-4.tabor"), new byte[] {(byte) 0xff, (byte) 0xfe, 0});
    Ran ran = find("--meter", "7/8");
    assertThat(ran.code()).isEqualTo(ExitCode.ERRORS);
    assertThat(ran.out()).contains("seven");
    assertThat(ran.err().lines())
        .hasSize(2)
        .anyMatch(line -> line.contains("week-3.tabor is passed over: ") && line.contains("more"))
        .anyMatch(line -> line.contains("week-4.tabor is passed over: "));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "--plays paradidle|did you mean paradiddle",
        "--plays tango|there is no rudiment tango",
        "--uses hihatt|did you mean hihat",
        "--tempo 90-60|the lower number first",
        "--tempo fast|--tempo takes",
        "--tempo 0-60|--tempo takes",
        "--tempo 60-|--tempo takes",
        "--meter 7/9|--meter takes",
        "--meter waltz|--meter takes",
        "--harder-than -1|--harder-than takes",
        "--harder-than much|--harder-than takes",
        "--up-to x|--up-to takes",
        "--as xml|--as takes",
        "--text=|--text takes",
        "--like FILE nowhere|there is no section nowhere in this file; it has",
        "--like FILE bea|did you mean beat",
        "--like - beat|not standard input",
        "--like FILE|--like",
      })
  void whatMakesNoSense(String words, String says) {
    String file = folder.resolve("week-2.tabor").toString();
    Ran ran =
        Ran.of(
            Stream.concat(
                    Stream.of("find", folder.toString()),
                    Stream.of(words.replace("FILE", file).split(" ")))
                .toArray(String[]::new));
    assertThat(ran.code()).as(ran.err()).isEqualTo(ExitCode.USAGE);
    assertThat(ran.err()).contains(says);
    assertThat(ran.out()).isEmpty();
  }

  @Test
  void aChartIsNoPattern() throws IOException {
    lesson("along.tabor", "groove a\n  snare : x . x .\nchart c\n  play a\n");
    Ran ran = find("--like", folder.resolve("along.tabor").toString(), "c");
    assertThat(ran.code()).isEqualTo(ExitCode.USAGE);
    assertThat(ran.err()).contains("takes a groove, a step or a variation");
  }

  @Test
  void placesWithoutLessons() throws IOException {
    assertThat(Ran.of("find").code()).isEqualTo(ExitCode.USAGE);
    Ran missing = Ran.of("find", folder.resolve("nowhere").toString());
    assertThat(missing.code()).isEqualTo(ExitCode.ERRORS);
    assertThat(missing.err()).contains("there is no folder or file ");
    Path empty = Files.createDirectory(folder.resolve("empty"));
    assertThat(Ran.of("find", empty.toString()).err()).contains("there is no .tabor file");
    assertThat(find("--like", folder.resolve("nowhere.tabor").toString(), "a").code())
        .isEqualTo(ExitCode.ERRORS);
  }

  @Test
  void aKitsOwnSurface() throws IOException {
    lesson(
        "gong.tabor",
        """
        kit hall like five-piece
          surface gong letter g key 52 staff b5 head circle-x
        groove a
          on hall
          gong : x . . .
        """);
    assertThat(names("--uses", "gong")).containsExactly("a");
  }
}
