package tabor.emit.html;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.WebDriverWait;

/** The page in the engines of Safari and Firefox: it loads, plays and stops by its buttons. */
class OtherEnginesTest {
  private static final String SOUNDS =
      "(Page.state().struck > 0 && Page.state().playing && Page.state().context === 'running')";

  /** The click was taken, but on this machine the engine has no sound or loses it at once. */
  private static final String HELD_BACK =
      "(Page.state().struck > 0 && !Page.state().playing && Page.state().context === 'suspended')";

  @TempDir static Path folder;

  private static String page() throws IOException {
    Path file = folder.resolve("lesson.html");
    Page page = PageMaker.of(PageInBrowser.sample(), Samples.pictures(), true, "Drums are loud.");
    Files.writeString(file, PageWriter.write(page));
    return file.toUri().toString();
  }

  @Test
  void webKitPlaysAtAClickOnTheWord() throws IOException, InterruptedException {
    try (WebKitSession webkit = WebKitSession.open()) {
      webkit.driver.get(page());
      for (String button : new String[] {"Play0", "Play4", "Play"}) {
        WebElement word = webkit.driver.findElement(By.cssSelector("#" + button + " .word"));
        webkit.driver.executeScript("arguments[0].scrollIntoView({block: 'center'})", word);
        word.click();
        if (isHeldBack(webkit)) {
          assertThat(word.getText()).isEqualTo("Play");
          return;
        }
        assertThat(word.getText()).isEqualTo("Stop");
        word.click();
        await(webkit, "return !Page.state().playing");
        assertThat(word.getText()).isEqualTo("Play");
      }
      // A switch beside them, by its label.
      webkit.driver.findElement(By.xpath("//input[@id='Loop']/following-sibling::span")).click();
      assertThat(webkit.driver.executeScript("return Page.state().loop")).isEqualTo(false);
      await(webkit, "return Page.state().context === 'suspended'");
      assertThat(webkit.driver.findElement(By.id("Status")).getText()).isEqualTo("Loop off");
    }
  }

  /** A machine whose sound gives out: the click was taken, and the page says what is the matter. */
  private static boolean isHeldBack(WebKitSession webkit) {
    await(webkit, "return " + SOUNDS + " || " + HELD_BACK);
    return Boolean.TRUE.equals(webkit.driver.executeScript("return " + HELD_BACK));
  }

  private static void await(WebKitSession webkit, String script) {
    new WebDriverWait(webkit.driver, Duration.ofSeconds(30))
        .withMessage(
            () ->
                script + ": " + webkit.driver.executeScript("return JSON.stringify(Page.state())"))
        .until(d -> Boolean.TRUE.equals(webkit.driver.executeScript(script)));
  }

  @Test
  void firefoxPlaysAtAClickOnTheWord() throws IOException, InterruptedException {
    try (FirefoxSession firefox = FirefoxSession.open()) {
      firefox.get(page());
      for (String button : new String[] {"Play0", "Play4", "Play"}) {
        firefox.click("#" + button + " .word");
        assertThat(firefox.run(until(SOUNDS + " || " + HELD_BACK))).isEqualTo("true");
        if (firefox.run("String(" + HELD_BACK + ")").equals("true")) {
          assertThat(firefox.run(word(button))).isEqualTo("Play");
          return;
        }
        assertThat(firefox.run(word(button))).isEqualTo("Stop");
        firefox.click("#" + button + " .word");
        assertThat(firefox.run(until("!Page.state().playing"))).isEqualTo("true");
        assertThat(firefox.run(word(button))).isEqualTo("Play");
      }
      assertThat(firefox.run(until("Page.state().context === 'suspended'"))).isEqualTo("true");
    }
  }

  private static String word(String button) {
    return "document.querySelector('#" + button + " .word').textContent";
  }

  /**
   * A promise that is kept once a condition holds; without it the page's state after a quarter of a
   * minute.
   */
  private static String until(String condition) {
    return "new Promise((done) => { let left = 300; const look = () => ("
        + condition
        + ") ? done('true') : left-- > 0 ? setTimeout(look, 50) :"
        + " done(JSON.stringify(Page.state())); look(); })";
  }
}
