package tabor.emit.html;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.WebDriverWait;

/** The page on a phone, on its side, on a beamer, in the big view, in light and dark. */
class PageSizesTest extends PageInBrowser {
  private static void size(int width, int height) {
    browser.driver.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", width < 800));
    browser.driver.navigate().refresh();
  }

  @AfterEach
  void back() {
    browser.driver.executeCdpCommand("Emulation.clearDeviceMetricsOverride", Map.of());
    browser.driver.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("features", List.of()));
  }

  @Test
  void onAPhoneWhatIsPressedIsLargeEnough() {
    size(360, 740);
    byId("More").click();
    for (WebElement each :
        browser.driver.findElements(
            By.cssSelector(".desk button, .desk .switch span, .desk select, .rung"))) {
      if (each.isDisplayed()) {
        assertThat(each.getRect().height).as(each.getText()).isGreaterThanOrEqualTo(44);
      }
    }
    assertThat(browser.run("return document.documentElement.scrollWidth")).isEqualTo(360L);
  }

  @Test
  void onItsSideTheControlsAreOneRowThatStays() {
    size(740, 360);
    Object height = browser.run("return document.querySelector('.desk').offsetHeight");
    assertThat(((Number) height).intValue()).isLessThanOrEqualTo(64);
    assertThat(browser.run("return getComputedStyle(document.querySelector('.desk')).position"))
        .isEqualTo("fixed");
    for (String id : new String[] {"Play", "Jump", "Slower", "Bpm", "Faster", "More", "Big"}) {
      assertThat(byId(id).isDisplayed()).as(id).isTrue();
    }
    byId("More").click();
    assertThat(browser.driver.findElement(By.cssSelector(".limbs .switch")).isDisplayed()).isTrue();
    Object fits =
        browser.run("return document.querySelector('.desk').getBoundingClientRect().top >= 0");
    assertThat(fits).isEqualTo(true);
  }

  /** No control covers another, however wide the window is. */
  @ParameterizedTest
  @ValueSource(ints = {360, 500, 640, 700, 740, 900, 1000, 1100, 1280, 1920})
  void noControlCoversAnother(int width) {
    size(width, 900);
    Object covered =
        browser.run(
            """
            const all = [...document.querySelectorAll(
                ".console button, .console .jump, .console .switch span, #Bpm")]
              .map(e => [e.id || e.textContent, e.getBoundingClientRect()])
              .filter(([, r]) => r.width > 0);
            return all.flatMap(([a, r], i) => all.slice(i + 1)
              .filter(([, s]) => r.left < s.right - 1 && s.left < r.right - 1
                && r.top < s.bottom - 1 && s.top < r.bottom - 1)
              .map(([b]) => a + " and " + b)).join("; ");
            """);
    assertThat(covered).isEqualTo("");
  }

  @Test
  void aLongWordHidesNothing() throws IOException {
    Path file = folder.resolve("long.html");
    String word = "Paradiddlediddle".repeat(5).substring(0, 75);
    Page page =
        PageMaker.of(
            Samples.lesson(word, Samples.groove("a", word, null, "RIGHT_HAND snare x x x x")),
            Samples.pictures(),
            true,
            word);
    Files.writeString(file, PageWriter.write(page));
    size(360, 740);
    browser.driver.get(file.toUri().toString());
    assertThat(browser.run("return document.documentElement.scrollWidth")).isEqualTo(360L);
    Object out =
        browser.run(
            """
            return [...document.querySelectorAll('button, .desk select, .desk label')]
              .filter((e) => e.getClientRects().length > 0)
              .filter((e) => { const b = e.getBoundingClientRect(); return b.left < 0 || b.right > 360; })
              .map((e) => e.outerHTML);
            """);
    assertThat((List<?>) out).isEmpty();
  }

  @Test
  void theBigViewFillsTheWindow() {
    size(1280, 720);
    byId("Big").click();
    List<?> box =
        (List<?>)
            browser.run(
                "const b = document.querySelector('.fit svg').getBoundingClientRect(); return"
                    + " [b.width, b.height, b.left, b.bottom,"
                    + " document.querySelector('.desk').getBoundingClientRect().top]");
    double width = ((Number) box.get(0)).doubleValue();
    double height = ((Number) box.get(1)).doubleValue();
    // The sample is a bar of 380 by 110: the width of the window decides.
    assertThat(width).isGreaterThan(1280 * 0.9);
    assertThat(width / height).isBetween(3.4, 3.5);
    assertThat(((Number) box.get(3)).doubleValue())
        .isLessThanOrEqualTo(((Number) box.get(4)).doubleValue());
    assertThat(browser.driver.findElement(By.cssSelector(".head")).isDisplayed()).isFalse();
    press(Keys.ARROW_RIGHT);
    assertThat(byId("answer").isDisplayed()).isTrue();
    assertThat(byId("feet").isDisplayed()).isFalse();
    press(Keys.ESCAPE);
    assertThat(byId("feet").isDisplayed()).isTrue();
    press("f");
    assertThat(byId("feet").isDisplayed()).isFalse();
    press("f");
    assertThat(browser.driver.findElement(By.cssSelector(".head")).isDisplayed()).isTrue();
  }

  /** WCAG's contrast (relative luminance, Web Content Accessibility Guidelines 2.1). */
  @Test
  void theBeadAndTheChangedNotesStandOutFromPaperAndInk() {
    for (String scheme : new String[] {"light", "dark"}) {
      browser.driver.executeCdpCommand(
          "Emulation.setEmulatedMedia",
          Map.of("features", List.of(Map.of("name", "prefers-color-scheme", "value", scheme))));
      Object found =
          browser.run(
              """
              const of = (name) => {
                const probe = document.createElement('i');
                probe.className = 'changed';
                document.body.append(probe);
                probe.style.color = 'var(' + name + ')';
                const [r, g, b] = getComputedStyle(probe).color.match(/\\d+/g).map((v) => {
                  const c = v / 255;
                  return c <= 0.03928 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
                });
                probe.remove();
                return 0.2126 * r + 0.7152 * g + 0.0722 * b;
              };
              const contrast = (a, b) => (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
              return [contrast(of('--mark'), of('--paper')), contrast(of('--mark'), of('--ink'))];
              """);
      for (Object contrast : (List<?>) found) {
        assertThat(((Number) contrast).doubleValue()).as(scheme).isGreaterThanOrEqualTo(3);
      }
    }
  }

  @Test
  void theNotesComeIntoViewBeforeAnythingSounds() {
    size(740, 360);
    for (int part = 0; part < 4; part++) {
      browser.run("scrollTo(0, 0); document.getElementById('Tempo').value = 30");
      browser.run("document.getElementById('Tempo').dispatchEvent(new Event('input'))");
      byId("Play").click();
      // At this tempo a count-in takes eight seconds: as long as nothing sounds there is time.
      String seen =
          "const at = document.querySelector('.chosen .stage svg, .chosen .score svg');"
              + " const box = at && at.getBoundingClientRect();"
              + " return [Page.state().leg == null, box != null && box.top >= 0 &&"
              + " box.bottom <= document.querySelector('.desk').getBoundingClientRect().top]";
      new WebDriverWait(browser.driver, Duration.ofSeconds(20))
          .withMessage("part " + part)
          .until(d -> browser.run(seen).equals(List.of(true, true)));
      press(Keys.ESCAPE);
      press(Keys.ARROW_RIGHT);
    }
  }

  @Test
  void followingCanBeSwitchedOff() {
    size(740, 360);
    browser.run("scrollTo(0, 0); document.getElementById('CountIn').click()");
    byId("More").click();
    browser.run("document.getElementById('Follow').click()");
    byId("More").click();
    browser.run("Page.state(); document.getElementById('Play').click()");
    await("leg", 0L);
    assertThat(browser.run("return scrollY")).isEqualTo(0L);
    browser.run("document.getElementById('Follow').click()");
    Object seen =
        browser.run(
            "const b = document.querySelector('.bead').getBoundingClientRect(); return b.top >= 0"
                + " && b.bottom <= innerHeight");
    assertThat(seen).isEqualTo(true);
    press(Keys.ESCAPE, Keys.ESCAPE);
  }
}
