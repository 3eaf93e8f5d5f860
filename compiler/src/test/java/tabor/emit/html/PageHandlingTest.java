package tabor.emit.html;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.WebDriverWait;
import tabor.groove.Groove;
import tabor.rhythm.Time;

/** The page in the hand: buttons, keys, texts, widths; and that it asks for nothing. */
class PageHandlingTest extends PageInBrowser {
  @Test
  void hostileTextsComeOutAsText() throws IOException {
    String title = "</title></script><script>evil = 1</script>\"'&amp;<!--";
    String prose =
        "</p></svg><img src=x onerror='evil = 2'> \u202eabc\u200f \u0007\u0000 ${evil = 3}";
    Groove groove =
        Samples.groove("a", "<b onclick=evil=4>" + title, null, "RIGHT_HAND snare x x x x");
    Groove wordy =
        new Groove(
            groove.name(),
            groove.title(),
            groove.heading(),
            null,
            groove.setting(),
            1,
            Time.ZERO,
            groove.strokes(),
            groove.written(),
            groove.plays(),
            List.of(),
            List.of(),
            List.of(prose),
            Set.of());
    Path hostile = folder.resolve("hostile.html");
    Page page =
        Pages.of(
            Samples.lesson(title, wordy, Samples.climb("c", title, wordy, wordy)),
            Samples.pictures(),
            true,
            prose);
    Files.writeString(hostile, PageWriter.write(page));
    browser.driver.get(hostile.toUri().toString());
    assertThat(browser.driver.getTitle()).isEqualTo(title);
    assertThat(browser.run("return document.querySelector('h1').textContent")).isEqualTo(title);
    assertThat(browser.run("return document.querySelector('#now').textContent"))
        .isEqualTo(groove.title());
    String shown = prose.replace('\u0007', '\u2407').replace('\u0000', '\u2400');
    assertThat(browser.run("return document.querySelector('.prose').textContent")).isEqualTo(shown);
    assertThat(browser.run("return document.querySelector('.caution').textContent"))
        .isEqualTo(shown);
    assertThat(browser.run("return typeof evil")).isEqualTo("undefined");
    assertThat(browser.run("return document.querySelectorAll('script').length")).isEqualTo(2L);
    assertThat(browser.run("return document.querySelectorAll('img, b[onclick]').length"))
        .isEqualTo(0L);
    browser.driver.findElement(By.id("play-0")).click();
    await("playing", true);
    press(Keys.ESCAPE);
  }

  @Test
  void thePolicyLetsNothingInAndNothingOut() {
    Object answer =
        browser.driver.executeAsyncScript(
            "const done = arguments[0]; const s = document.createElement('script');s.textContent ="
                + " 'window.evil = 1'; document.body.append(s);const st ="
                + " document.createElement('style'); st.textContent = 'h1 { color: red"
                + " }';document.head.append(st); const i = new Image();const red ="
                + " getComputedStyle(document.querySelector('h1')).color;i.onerror = () =>"
                + " fetch('lesson.html').then(() => done('let through'), () => done([typeof"
                + " window.evil, red !== 'rgb(255, 0, 0)', document.cookie, history.length >"
                + " 0]));i.src = 'x.png';");
    assertThat(((List<?>) answer).subList(0, 3)).isEqualTo(List.of("undefined", true, ""));
    List<String> complaints = browser.complaints();
    for (String kept : List.of("inline script", "inline style", "x.png", "Connecting to")) {
      assertThat(complaints)
          .anyMatch(c -> c.contains(kept) && c.contains("Content Security Policy"));
    }
  }

  @Test
  void nothingIsRemembered() {
    press("1", "l", "+");
    browser.driver.navigate().refresh();
    assertThat(state("sounding")).isEqualTo(List.of(true, true, true, true));
    assertThat(state("rate")).isEqualTo(1L);
    assertThat(state("loop")).isEqualTo(true);
  }

  @Test
  void whoWantsLessMotionSeesTheMarkJumpFromPlaceToPlace() {
    browser.driver.executeCdpCommand(
        "Emulation.setEmulatedMedia",
        Map.of("features", List.of(Map.of("name", "prefers-reduced-motion", "value", "reduce"))));
    browser.driver.findElement(By.id("count-in")).sendKeys(Keys.SPACE);
    click(browser.driver.findElement(By.id("play-0")));
    Object off =
        browser.driver.executeAsyncScript(
            "const done = arguments[0]; const seen = new Set(); const look = () => { const m ="
                + " document.querySelector('.mark'); if (m) seen.add(Number(m.getAttribute('x')) +"
                + " Number(m.getAttribute('width')) / 2); if (seen.size < 4)"
                + " requestAnimationFrame(look); else  done([...seen].filter((x) => Math.abs(((x -"
                + " 50) / 40) % 1) > 0.01)); };look();");
    assertThat((List<?>) off).isEmpty();
    browser.driver.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("features", List.of()));
  }

  @Test
  void everyButtonWorks() {
    List<WebElement> plays = browser.driver.findElements(By.cssSelector("article > .play"));
    assertThat(plays).hasSize(9);
    for (int i = 0; i < plays.size(); i += 3) {
      click(plays.get(i));
      await("playing", true);
      assertThat(state("chosen")).isEqualTo((long) i);
      assertThat(plays.get(i).getText()).isEqualTo("Stop");
      click(plays.get(i));
      assertThat(state("playing")).isEqualTo(false);
      assertThat(plays.get(i).getText()).isEqualTo("Play");
    }
    List<WebElement> rungs = browser.driver.findElements(By.cssSelector(".rung"));
    assertThat(rungs).hasSize(10);
    browser.driver.findElement(By.id("count-in")).sendKeys(Keys.SPACE);
    for (int i : new int[] {9, 5}) {
      click(rungs.get(i));
      await("leg", (long) (2 + i));
      assertThat(rungs.get(i).getDomAttribute("aria-current")).isEqualTo("step");
    }
    assertThat(browser.driver.findElement(By.id("speed")).getText()).isEqualTo("80");
    browser.driver.findElement(By.id("faster")).click();
    assertThat(browser.driver.findElement(By.id("speed")).getText()).isEqualTo("81");
    browser.driver.findElement(By.id("slower")).click();
    browser.driver.findElement(By.id("slower")).click();
    assertThat(browser.driver.findElement(By.id("speed")).getText()).isEqualTo("79");
    browser.driver.findElement(By.id("play")).click();
    assertThat(state("playing")).isEqualTo(false);
    assertThat(browser.driver.findElements(By.cssSelector("button")))
        .as("the buttons tried above are all there are")
        .hasSize(9 + 10 + 3);
  }

  @Test
  void everySwitchWorks() {
    for (WebElement box : browser.driver.findElements(By.cssSelector("[data-limb]"))) {
      int limb = Integer.parseInt(String.valueOf(box.getDomAttribute("data-limb")));
      box.findElement(By.xpath("./following-sibling::span")).click();
      assertThat(((List<?>) state("sounding")).get(limb)).isEqualTo(false);
    }
    browser.driver.findElement(By.id("play")).click();
    await("levels", List.of(0L, 0L, 0L, 0L, 0L));
    browser.driver.findElement(By.xpath("//input[@data-limb='2']/following-sibling::span")).click();
    browser.driver.findElement(By.xpath("//input[@id='click']/following-sibling::span")).click();
    await("levels", List.of(0L, 0L, 1L, 0L, 1L));
    browser.driver.findElement(By.xpath("//input[@id='loop']/following-sibling::span")).click();
    assertThat(state("loop")).isEqualTo(false);
    // Without the loop a section at its fastest comes to its end by itself.
    browser.run(
        "arguments[0].value = 150; arguments[0].dispatchEvent(new Event('input'))", tempo());
    assertThat(state("rate")).isEqualTo(1.5);
    await("playing", false);
  }

  @Test
  void theKeyboardDoesEverything() {
    press(" ");
    await("playing", true);
    press(" ");
    assertThat(state("playing")).isEqualTo(false);
    press(Keys.ARROW_RIGHT, Keys.ARROW_RIGHT, Keys.ARROW_RIGHT);
    assertThat(state("chosen")).isEqualTo(3L);
    press(Keys.ARROW_LEFT, Keys.ARROW_LEFT, Keys.ARROW_LEFT, Keys.ARROW_LEFT);
    assertThat(state("chosen")).as("there is nothing before the first").isEqualTo(0L);
    press("1", "3");
    assertThat(state("sounding")).isEqualTo(List.of(true, false, true, false));
    press("2", "4", "1");
    assertThat(state("sounding")).isEqualTo(List.of(false, true, false, false));
    press("+", "+", "-", "+");
    assertThat(browser.driver.findElement(By.id("speed")).getText()).isEqualTo("98");
    press("0");
    assertThat(state("rate")).isEqualTo(1L);
    press("l", "c", "n");
    assertThat(
            browser.run(
                "return ['loop', 'click', 'count-in'].map((i) =>"
                    + " document.getElementById(i).checked)"))
        .isEqualTo(List.of(false, true, false));
    tempo().sendKeys(Keys.ARROW_LEFT, Keys.ARROW_LEFT);
    assertThat(state("rate")).isEqualTo(0.98);
    press(" ");
    await("playing", true);
    press(Keys.ESCAPE);
    assertThat(state("playing")).isEqualTo(false);
    browser.run("document.getElementById('keys-on').checked = false");
    press("1");
    assertThat(state("sounding")).isEqualTo(List.of(false, true, false, false));
  }

  @Test
  void theMarkGoesWhereTheSoundIs() {
    browser.driver.findElement(By.id("count-in")).sendKeys(Keys.SPACE);
    click(browser.driver.findElement(By.id("play-1")));
    new WebDriverWait(browser.driver, Duration.ofSeconds(10))
        .until(d -> !d.findElements(By.cssSelector("[data-part='1'] .mark")).isEmpty());
    Object far =
        browser.run(
            "const s = Page.state(); const m = document.querySelector('.mark');"
                + "return Number(m.getAttribute('x')) + Number(m.getAttribute('width')) / 2"
                + " - (50 + 320 * s.at);");
    // One frame at this tempo is about 3 of the drawing's 700 units.
    assertThat(Math.abs(((Number) far).doubleValue())).isLessThan(20);
    press(Keys.ESCAPE);
    assertThat(browser.driver.findElements(By.cssSelector(".mark"))).isEmpty();
  }

  @Test
  void everythingHasANameForAScreenReader() {
    for (WebElement element : browser.driver.findElements(By.cssSelector("button, input"))) {
      if (element.isDisplayed()) {
        assertThat(element.getAccessibleName()).as(element.getDomProperty("id")).isNotBlank();
      }
    }
    assertThat(browser.driver.findElement(By.id("play-1")).getAccessibleName())
        .isEqualTo("Play The last double moves");
    assertThat(browser.driver.findElement(By.cssSelector("[data-limb='3']")).getAccessibleName())
        .isEqualTo("left foot");
  }

  @Test
  void aPhoneShowsItWithoutScrollingSidewaysAndPaperShowsNoPlayer() {
    browser.driver.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", 360, "height", 740, "deviceScaleFactor", 1, "mobile", true));
    assertThat(browser.run("return document.documentElement.scrollWidth")).isEqualTo(360L);
    assertThat(browser.run("return document.querySelector('.desk').scrollWidth")).isEqualTo(360L);
    browser.driver.executeCdpCommand("Emulation.clearDeviceMetricsOverride", Map.of());
    browser.driver.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", "print"));
    assertThat(browser.driver.findElement(By.cssSelector(".desk")).isDisplayed()).isFalse();
    assertThat(browser.driver.findElement(By.cssSelector(".given")).isDisplayed()).isTrue();
    assertThat(browser.driver.findElement(By.cssSelector(".caution")).isDisplayed()).isTrue();
    browser.driver.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", ""));
  }
}
