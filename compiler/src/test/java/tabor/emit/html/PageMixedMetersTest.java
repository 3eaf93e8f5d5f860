package tabor.emit.html;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.support.ui.Select;
import tabor.groove.Groove;
import tabor.kit.Limb;
import tabor.rhythm.Meter;
import tabor.rhythm.Meters;
import tabor.testing.Sketch;

/** A groove of four and three quarters in turn on the practice page. */
class PageMixedMetersTest {
  private static final String WALK =
      """
      const data = JSON.parse(document.getElementById('Data').textContent);
      data.takes.sounds = data.sounds;
      const { plan } = Practice.programme(0, data.parts[0], data);
      """;

  @TempDir static Path folder;

  @BeforeAll
  static void open() throws IOException {
    Groove groove =
        Sketch.groove("turns")
            .meters(new Meters(List.of(Meter.COMMON, Meter.of(3, 4))))
            .tempo(60)
            .part(Limb.RIGHT_FOOT, "kick", "x . x . | x . x | x x . . | . x .")
            .done();
    Page page =
        PageMaker.of(
            Samples.lesson("In turn", groove), Samples.pictures(), true, "Drums are loud.");
    Path file = folder.resolve("lesson.html");
    Files.writeString(file, PageWriter.write(page));
    PageInBrowser.browser = Browser.open();
    PageInBrowser.browser.driver.get(file.toUri().toString());
  }

  @AfterAll
  static void close() throws IOException {
    if (PageInBrowser.browser != null) {
      PageInBrowser.browser.close();
    }
  }

  private static String run(String script) {
    return PageInBrowser.browser.run(WALK + script).toString();
  }

  @Test
  void barsAreChosenByTheirOwnBarlines() {
    PageInBrowser.byId("More").click();
    new Select(PageInBrowser.byId("From")).selectByVisibleText("2");
    new Select(PageInBrowser.byId("To")).selectByVisibleText("3");
    String kicks =
        "return [plan.length, plan.legs[0].from, ...plan.legs[0].events"
            + ".filter((e) => e.sound === 'kick').map((e) => e.at)]";
    // Seven beats of a second each; kicks on 1 and 3 of bar 2, 1 and 2 of bar 3.
    assertThat(run(kicks)).isEqualTo("[7, 1, 0, 2, 3, 4]");
    PageInBrowser.byId("CountIn").click();
    PageInBrowser.byId("Play").click();
    PageInBrowser.await("playing", true);
    PageInBrowser.await("leg", 0L);
    assertThat(((Number) PageInBrowser.state("at")).doubleValue())
        .as("the bead is in bars 2 and 3")
        .isBetween(1.0, 2.75);
    PageInBrowser.byId("Play").click();
    new Select(PageInBrowser.byId("To")).selectByVisibleText("2");
    assertThat(run("return [plan.length, plan.legs[0].from]")).isEqualTo("[3, 1]");
    new Select(PageInBrowser.byId("From")).selectByVisibleText("1");
    new Select(PageInBrowser.byId("To")).selectByVisibleText("4");
    assertThat(run("return plan.length")).isEqualTo("14");
    String first =
        "return data.takes[data.parts[0].legs[0].take].clicks"
            + ".filter((c) => c[1] % 4 === 2).map((c) => c[0])";
    assertThat(run(first)).as("the first beats").isEqualTo("[0, 1, 1.75, 2.75]");
    String countIn = "return data.takes[data.parts[0].legs[0].take].countIn.map((c) => c[0])";
    assertThat(run(countIn)).isEqualTo("[-1, -0.75, -0.5, -0.25]");
  }
}
