package tabor.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.resolve.Options;

class ReportTest {
  private static final String CLASH = "groove beat\n  right : h h h h\n  snare : . r . .\n";

  private static Compiled compiled(String text) {
    return new Compiler(Loader.NONE).compile(Path.of("my lessons/bé.tabor"), text, Options.NONE);
  }

  private static String text(String source) {
    return new TextReport(false).of(compiled(source), true);
  }

  @Test
  void textShowsBothPlacesOfAClash() {
    assertThat(text(CLASH))
        .startsWith("my lessons/bé.tabor:3:13: error: ")
        .contains(
            "\n  in:   beat, bar 1, count 2\n"
                + "     2 |   right : h h h h\n"
                + "       |             - the right hand on the hi-hat\n"
                + "     3 |   snare : . r . .\n"
                + "       |             ^\n");
  }

  /** A bar that is repeated stands where it was written, in an earlier system too. */
  @Test
  void aRepeatedBarPointsIntoTheFile() {
    String source = "groove g\n  right : h h h h\n  next\n\n\n  right : %\n  snare : . r . .\n";
    assertThat(text(source))
        .startsWith("my lessons/bé.tabor:7:13: error: ")
        .contains(
            "     2 |   right : h h h h\n       |             - the right hand on the hi-hat");
    String json = JsonReport.of(List.of(compiled(source)), true);
    assertThat(json.lines().filter(line -> line.contains("\"line\"")).map(String::strip))
        .containsOnly("\"line\": 7,", "\"line\": 2,");
  }

  @Test
  void marksStandBelowWideCharactersAndTabs() {
    // A wide character takes two columns, a tab goes to the next multiple of four.
    assertThat(text("groove a \"太鼓\"\n\tkick\t: x . x\n"))
        .contains("     2 |     kick    : x . x\n       |               ^^^^^\n");
    assertThat(text("text \"太鼓𝄞\" oops\n"))
        .contains("     1 | text \"太鼓𝄞\"")
        .contains("[syntax]");
  }

  @Test
  void hiddenCharactersAreShown() {
    assertThat(text("groove a\n  hands : rl \u202E rl rl \u0007rl\n"))
        .doesNotContain("\u202E")
        .doesNotContain("\u0007");
  }

  @Test
  void summaryCounts() {
    TextReport report = new TextReport(false);
    Compiled wrong = compiled(CLASH);
    assertThat(report.summary(List.of(wrong, compiled("")), false))
        .isEqualTo("1 error in 2 files; tabor explain limb-conflict says more\n");
    assertThat(report.summary(List.of(compiled("")), false)).isEqualTo("1 file, no problems\n");
  }

  @Test
  void jsonHasPlacesFromOne() {
    JsonObject file =
        JsonParser.parseString(JsonReport.of(List.of(compiled(CLASH)), false))
            .getAsJsonObject()
            .getAsJsonArray("files")
            .get(0)
            .getAsJsonObject();
    JsonObject found = file.getAsJsonArray("diagnostics").get(0).getAsJsonObject();
    assertThat(found.get("code").getAsString()).isEqualTo("limb-conflict");
    assertThat(found.getAsJsonObject("start")).hasToString("{\"line\":3,\"column\":13}");
    assertThat(found.getAsJsonObject("end")).hasToString("{\"line\":3,\"column\":14}");
    assertThat(found.getAsJsonObject("music"))
        .hasToString("{\"section\":\"beat\",\"bar\":1,\"count\":\"2\"}");
    assertThat(found.getAsJsonArray("labels")).hasSize(1);
  }

  /**
   * The properties that SARIF 2.1.0 requires, sections 3.13 to 3.30, and what hosting sites read.
   */
  @Test
  void sarifHasTheShapeOfTheStandard() {
    JsonObject log =
        JsonParser.parseString(
                SarifReport.of(List.of(compiled(CLASH)), false, "https://example.org/docs"))
            .getAsJsonObject();
    assertThat(log.get("version").getAsString()).isEqualTo("2.1.0");
    JsonObject run = only(log.getAsJsonArray("runs"));
    assertThat(run.get("columnKind").getAsString()).isEqualTo("utf16CodeUnits");
    JsonObject driver = run.getAsJsonObject("tool").getAsJsonObject("driver");
    assertThat(driver.get("name").getAsString()).isEqualTo("Tabor");
    JsonObject rule = only(driver.getAsJsonArray("rules"));
    JsonObject result = only(run.getAsJsonArray("results"));
    assertThat(rule.get("id")).isEqualTo(result.get("ruleId"));
    assertThat(result.get("ruleIndex").getAsInt()).isZero();
    assertThat(rule.get("helpUri").getAsString())
        .isEqualTo("https://example.org/docs/limb-conflict.md");
    assertThat(result.get("level").getAsString()).isEqualTo("error");
    assertThat(result.getAsJsonObject("message").get("text").getAsString()).endsWith(".");
    JsonObject place = only(result.getAsJsonArray("locations")).getAsJsonObject("physicalLocation");
    assertThat(place.getAsJsonObject("artifactLocation"))
        .hasToString("{\"uri\":\"my%20lessons/b%C3%A9.tabor\",\"uriBaseId\":\"ROOT\"}");
    assertThat(place.getAsJsonObject("region"))
        .hasToString("{\"startLine\":3,\"startColumn\":13,\"endLine\":3,\"endColumn\":14}");
    assertThat(run.getAsJsonObject("originalUriBaseIds").has("ROOT")).isTrue();
    JsonObject related = only(result.getAsJsonArray("relatedLocations"));
    assertThat(related.getAsJsonObject("message").get("text").getAsString()).isNotEmpty();
  }

  @Test
  void sarifOfNothingIsAnEmptyRun() {
    JsonObject run =
        only(
            JsonParser.parseString(SarifReport.of(List.of(compiled("")), true, null))
                .getAsJsonObject()
                .getAsJsonArray("runs"));
    assertThat(run.getAsJsonArray("results")).isEmpty();
  }

  @Test
  void versionIsThatOfThePom() throws IOException {
    assertThat(Files.readString(Path.of("../pom.xml")))
        .contains("<artifactId>tabor</artifactId>\n  <version>" + Version.TEXT + "</version>");
  }

  private static JsonObject only(JsonArray array) {
    assertThat(array).hasSize(1);
    JsonElement one = array.get(0);
    return one.getAsJsonObject();
  }
}
