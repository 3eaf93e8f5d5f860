package tabor.emit.html;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.support.ui.WebDriverWait;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.rhythm.Feel;
import tabor.rhythm.Time;

/** A page in a browser, opened from disk; after each test it has complained of nothing. */
abstract class PageInBrowser {
  static final double RATE = 44100;
  static final Groove FEET = Samples.basic();
  static final Groove ANSWER = Samples.full(FEET);
  static final Groove FLAM = Samples.groove("flam", null, null, "LEFT_HAND snare x 'x x .");

  @TempDir static Path folder;
  static Browser browser;
  static Path file;

  @BeforeAll
  static void open() throws IOException {
    browser = Browser.open();
    file = folder.resolve("lesson.html");
    Page page = PageMaker.of(sample(), Samples.pictures(), true, "Drums are loud.");
    Files.writeString(file, PageWriter.write(page));
  }

  /** The lesson of the page. */
  static Lesson sample() {
    return Samples.lesson(
        "Six-eight workshop",
        FEET,
        ANSWER,
        FLAM,
        Samples.climb("practice", "Practice", FEET, ANSWER),
        Samples.groove("open", null, null, "RIGHT_HAND hihat.open x . . ."),
        Samples.groove(
            "shut", null, null, "RIGHT_HAND hihat.open x . . .", "LEFT_FOOT hihat.foot . x . ."),
        Samples.groove("choked", null, null, "RIGHT_HAND crash x! . . ."),
        Samples.groove("crash", null, null, "RIGHT_HAND crash x . . ."),
        Samples.swung(FEET, "swung", new Feel(Feel.Unit.EIGHTHS, Time.of(62, 100))));
  }

  @AfterAll
  static void close() throws IOException {
    if (browser != null) {
      browser.close();
    }
  }

  @BeforeEach
  void load() {
    browser.driver.get(file.toUri().toString());
    browser.complaints();
    browser.requests();
    browser.driver.navigate().refresh();
  }

  /** No error, no broken policy, and the file itself is all that was ever asked for. */
  @AfterEach
  void quiet() {
    assertThat(browser.complaints()).isEmpty();
    assertThat(browser.requests())
        .allMatch(address -> address.startsWith(folder.toUri().toString()));
  }

  static WebElement byId(String id) {
    return browser.driver.findElement(By.id(id));
  }

  /** Moves a slider as a pointer would. */
  static void slide(WebElement slider, int value) {
    browser.run(
        "arguments[0].value = arguments[1]; arguments[0].dispatchEvent(new Event('input'))",
        slider,
        value);
  }

  static WebElement tempo() {
    return browser.driver.findElement(By.id("Tempo"));
  }

  static Object state(String name) {
    return ((Map<?, ?>) browser.run("return Page.state()")).get(name);
  }

  static void await(String name, Object value) {
    new WebDriverWait(browser.driver, Duration.ofSeconds(20))
        .withMessage(() -> name + " stays " + state(name))
        .until(d -> value.equals(state(name)));
  }

  static void click(WebElement element) {
    browser.run("arguments[0].scrollIntoView({block: 'center'})", element);
    element.click();
  }

  static void press(CharSequence... keys) {
    Actions actions = new Actions(browser.driver);
    browser.run("document.activeElement.blur()");
    for (CharSequence key : keys) {
      actions.sendKeys(key);
    }
    actions.perform();
  }
}
