package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The pages of the examples, as {@code tabor build} writes them. */
class ExamplePagesTest {
  private static final Path EXAMPLES = Path.of("../examples");
  private static final Pattern ID = Pattern.compile(" id=\"([^\"]*)\"");

  @TempDir static Path folder;
  private static final Map<Path, String> PAGES = new HashMap<>();

  @BeforeAll
  static void build() throws IOException {
    String said = run("build", "-o", folder.toString(), "--as", "html", EXAMPLES.toString());
    try (Stream<Path> sources = Files.walk(EXAMPLES)) {
      for (Path source : sources.filter(file -> file.toString().endsWith(".tabor")).toList()) {
        String name = source.getFileName().toString().replace(".tabor", ".html");
        assertThat(folder.resolve(name)).as(said).exists();
        PAGES.put(source, Files.readString(folder.resolve(name)));
      }
    }
    assertThat(PAGES).hasSizeGreaterThanOrEqualTo(8);
  }

  private static String run(String... words) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Io io = Io.of(new ByteArrayInputStream(new byte[0]), out, err, false, false, Map.of());
    assertThat(Main.run(words, io)).as(err.toString(StandardCharsets.UTF_8)).isZero();
    return out.toString(StandardCharsets.UTF_8);
  }

  @Test
  void thePolicyNamesExactlyTheScriptAndTheStyleOfThePage() throws GeneralSecurityException {
    for (String page : PAGES.values()) {
      String policy = between(page, "Content-Security-Policy\" content=\"", "\"");
      assertThat(policy)
          .isEqualTo(
              "default-src 'none'; script-src '%s'; style-src '%s'; base-uri 'none'; form-action"
                  + " 'none'",
              hash(between(page, "</script>\n<script>", "</script>")),
              hash(between(page, "<style>", "</style>")));
    }
  }

  @Test
  void nothingPointsOutOfThePage() {
    Pattern out =
        Pattern.compile(
            "<[^>]* (?:src|href=(?!\"#)|xlink:href|style|srcset|action|on\\w+)(?:=|(?<==))");
    for (String page : PAGES.values()) {
      String body = page.substring(page.indexOf("<body>"), page.indexOf("<script "));
      assertThat(out.matcher(body).find()).isFalse();
      assertThat(body).doesNotContain("://");
    }
  }

  @Test
  void theWholeCautionStandsAboveTheFirstSection() {
    String caution =
        "Drums are loud, and practice repeats itself. Play softly where you can, protect your ears,"
            + " take breaks. Stop if something hurts, tingles or rings. Local rules and the advice"
            + " of a doctor, audiologist or other licensed professional come first.";
    String german =
        "Schlagzeug ist laut, und Üben heißt Wiederholen. Spiel leise, wo es geht, schütze dein"
            + " Gehör, mach Pausen. Hör auf, wenn etwas schmerzt, kribbelt oder in den Ohren"
            + " klingt. Örtliche Vorschriften und der Rat von Ärztinnen, Ärzten, Fachleuten für"
            + " Hörakustik und anderen zugelassenen Fachkräften gehen vor.";
    for (String page : PAGES.values()) {
      int first = page.indexOf("<article");
      String above = first < 0 ? page : page.substring(0, first);
      String said = page.contains("<html lang=\"de\">") ? german : caution;
      assertThat(above).contains("<p class=\"caution\" dir=\"auto\" lang=\"\">" + said + "</p>");
    }
  }

  /**
   * What a reader sees of a sheet is its title, not the names that variations have in the source.
   */
  @Test
  void variationsAreCalledByTheirSheetsTitle() {
    String page = PAGES.get(EXAMPLES.resolve("kick-worksheet.tabor"));
    assertThat(page)
        .contains("<bdi lang=\"\">Sixteen kicks: 3</bdi></h2>")
        .contains("<bdi lang=\"\">Sixteen kicks: 16</bdi>, ")
        .doesNotContain(">kicks-", "\"title\":\"kicks-");
  }

  @Test
  void thirteenPartsNeedLessThanAQuarterOfAMegabyte() {
    assertThat(PAGES.values()).allMatch(page -> page.length() < 250_000);
  }

  @Test
  void noTwoElementsShareAnId() {
    for (Map.Entry<Path, String> page : PAGES.entrySet()) {
      List<String> ids = new ArrayList<>();
      Matcher matcher = ID.matcher(page.getValue());
      while (matcher.find()) {
        ids.add(matcher.group(1));
      }
      assertThat(ids).as(page.getKey().toString()).doesNotHaveDuplicates();
    }
  }

  /** The list of strokes is made by another room; its last column is the time in milliseconds. */
  @Test
  void everyListedStrokeIsPlayedAtItsListedTime() {
    for (Map.Entry<Path, String> page : PAGES.entrySet()) {
      JsonObject data = data(page.getValue());
      List<String> names = names(page.getValue());
      Map<String, List<String[]>> listed = new HashMap<>();
      run("list", page.getKey().toString())
          .lines()
          .skip(1)
          .map(line -> line.split("\t", -1))
          .forEach(row -> listed.computeIfAbsent(row[0], name -> new ArrayList<>()).add(row));
      listed.forEach(
          (name, rows) -> {
            int part = names.indexOf(name);
            assertThat(part).as(name).isNotNegative();
            List<double[]> played = played(data, part);
            for (String[] row : rows) {
              double ms = Double.parseDouble(row[9]);
              int limb =
                  List.of("right hand", "left hand", "right foot", "left foot").indexOf(row[4]);
              assertThat(played)
                  .as("%s %s", page.getKey(), String.join(" ", row))
                  .anyMatch(p -> Math.abs(p[0] - ms) < 0.01 && p[1] == limb);
            }
            assertThat(played).hasSizeGreaterThanOrEqualTo(rows.size());
          });
    }
  }

  @Test
  void theSameLessonGivesTheSameBytes() throws IOException {
    String first = PAGES.get(EXAMPLES.resolve("six-eight.tabor"));
    run(
        "build",
        "-o",
        folder.resolve("again").toString(),
        "--as",
        "html",
        "../examples/six-eight.tabor");
    assertThat(Files.readString(folder.resolve("again/six-eight.html"))).isEqualTo(first);
  }

  // ---- help
  // ---------------------------------------------------------------------------------------

  private static JsonObject data(String page) {
    String text = between(page, "<script type=\"application/json\" id=\"Data\">", "</script>");
    return JsonParser.parseString(text).getAsJsonObject();
  }

  /** The names of the sections in the order of their parts. */
  private static List<String> names(String page) {
    List<String> names = new ArrayList<>();
    Matcher matcher = Pattern.compile("<article class=\"[\\w ]+\" id=\"([^\"]*)\"").matcher(page);
    while (matcher.find()) {
      names.add(matcher.group(1));
    }
    return names;
  }

  /** Milliseconds and limb of each sound that stands at its own place. */
  private static List<double[]> played(JsonObject data, int part) {
    JsonObject leg =
        data.getAsJsonArray("parts")
            .get(part)
            .getAsJsonObject()
            .getAsJsonArray("legs")
            .get(0)
            .getAsJsonObject();
    JsonObject take =
        data.getAsJsonArray("takes").get(leg.get("take").getAsInt()).getAsJsonObject();
    List<double[]> played = new ArrayList<>();
    for (JsonElement each : take.getAsJsonArray("strokes")) {
      JsonArray stroke = each.getAsJsonArray();
      boolean small = stroke.size() > 4 && stroke.get(4).getAsDouble() != 0;
      if (!small) {
        double seconds = stroke.get(0).getAsDouble() * leg.get("whole").getAsDouble();
        played.add(new double[] {seconds * 1000, stroke.get(3).getAsInt()});
      }
    }
    return played;
  }

  private static String hash(String text) throws GeneralSecurityException {
    byte[] sum = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
    return "sha256-" + Base64.getEncoder().encodeToString(sum);
  }

  private static String between(String text, String before, String after) {
    int start = text.indexOf(before) + before.length();
    return text.substring(start, text.indexOf(after, start));
  }
}
