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
import tabor.groove.PageNotes;
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
            Set.of(),
            PageNotes.NONE);
    Path hostile = folder.resolve("hostile.html");
    Page page =
        PageMaker.of(
            Samples.lesson(title, wordy, Samples.climb("c", title, wordy, wordy)),
            Samples.pictures(),
            true,
            prose);
    Files.writeString(hostile, PageWriter.write(page));
    browser.driver.get(hostile.toUri().toString());
    assertThat(browser.driver.getTitle()).isEqualTo(title);
    assertThat(browser.run("return document.querySelector('h1').textContent")).isEqualTo(title);
    assertThat(browser.run("return document.querySelector('#Jump option').textContent"))
        .isEqualTo("1. " + groove.title());
    String shown = prose.replace('\u0007', '\u2407').replace('\u0000', '\u2400');
    assertThat(browser.run("return document.querySelector('.prose').textContent")).isEqualTo(shown);
    assertThat(browser.run("return document.querySelector('.caution').textContent"))
        .isEqualTo(shown);
    assertThat(browser.run("return typeof evil")).isEqualTo("undefined");
    assertThat(browser.run("return document.querySelectorAll('script').length")).isEqualTo(2L);
    assertThat(browser.run("return document.querySelectorAll('img, b[onclick]').length"))
        .isEqualTo(0L);
    byId("Play0").click();
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
  void whoWantsLessMotionSeesTheBeadJumpFromPlaceToPlace() {
    browser.driver.executeCdpCommand(
        "Emulation.setEmulatedMedia",
        Map.of("features", List.of(Map.of("name", "prefers-reduced-motion", "value", "reduce"))));
    byId("CountIn").sendKeys(Keys.SPACE);
    click(byId("Play0"));
    Object off =
        browser.driver.executeAsyncScript(
            """
            const done = arguments[0];
            const seen = new Set();
            const look = () => {
              const bead = document.querySelector('.bead');
              if (bead) seen.add(Number(bead.getAttribute('cx')));
              if (seen.size < 4) requestAnimationFrame(look);
              else done([...seen].filter((x) => Math.abs(((x - 50) / 40) % 1) > 0.01));
            };
            look();
            """);
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
    List<WebElement> rungs = browser.driver.findElements(By.cssSelector("article .rung"));
    assertThat(rungs).hasSize(10);
    byId("CountIn").sendKeys(Keys.SPACE);
    for (int i : new int[] {9, 5}) {
      click(rungs.get(i));
      await("leg", (long) (2 + i));
      assertThat(rungs.get(i).getDomAttribute("aria-current")).isEqualTo("step");
      assertThat(rungs.get(i).getAccessibleName()).matches("\\d+, 1 of 2");
    }
    assertThat(browser.driver.findElements(By.cssSelector("#Ladder .rung")))
        .as("the ladder stands over the player too")
        .hasSize(9);
    assertThat(byId("Bpm").getDomProperty("value")).isEqualTo("80");
    byId("Faster").click();
    assertThat(byId("Bpm").getDomProperty("value")).isEqualTo("81");
    byId("Slower").click();
    byId("Slower").click();
    assertThat(byId("Bpm").getDomProperty("value")).isEqualTo("79");
    byId("Play").click();
    assertThat(state("playing")).isEqualTo(false);
    byId("More").click();
    byId("Written").click();
    assertThat(state("rate")).isEqualTo(1L);
    byId("More").click();
    assertThat(byId("Drawer").isDisplayed()).isFalse();
    assertThat(browser.driver.findElements(By.cssSelector("button")))
        .as("these, tap, print and the big view, which have tests of their own, are all there are")
        .hasSize(9 + 10 + 3 + 2 + 3);
  }

  @Test
  void everySwitchWorks() {
    for (WebElement box : browser.driver.findElements(By.cssSelector("[data-limb]"))) {
      int limb = Integer.parseInt(String.valueOf(box.getDomAttribute("data-limb")));
      box.findElement(By.xpath("./following-sibling::span")).click();
      assertThat(((List<?>) state("sounding")).get(limb)).isEqualTo(false);
    }
    byId("Play").click();
    await("levels", List.of(0L, 0L, 0L, 0L, 0L));
    browser.driver.findElement(By.xpath("//input[@data-limb='2']/following-sibling::span")).click();
    browser.driver.findElement(By.xpath("//input[@id='Click']/following-sibling::span")).click();
    await("levels", List.of(0L, 0L, 1L, 0L, 1L));
    browser.driver.findElement(By.xpath("//input[@id='Loop']/following-sibling::span")).click();
    assertThat(state("loop")).isEqualTo(false);
    // Without the loop a section at its fastest comes to its end by itself.
    slide(tempo(), 150);
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
    assertThat(byId("Bpm").getDomProperty("value")).isEqualTo("98");
    press("0");
    assertThat(state("rate")).isEqualTo(1L);
    press("l", "c", "n");
    assertThat(
            browser.run(
                "return ['Loop', 'Click', 'CountIn'].map((i) =>"
                    + " document.getElementById(i).checked)"))
        .isEqualTo(List.of(false, true, false));
    byId("More").click();
    tempo().sendKeys(Keys.ARROW_LEFT, Keys.ARROW_LEFT);
    byId("More").click();
    assertThat(state("rate")).isEqualTo(0.98);
    press(" ");
    await("playing", true);
    press(Keys.ESCAPE);
    assertThat(state("playing")).isEqualTo(false);
    browser.run("document.getElementById('KeysOn').checked = false");
    press("1");
    assertThat(state("sounding")).isEqualTo(List.of(false, true, false, false));
  }

  @Test
  void theBeadGoesWhereTheSoundIs() {
    byId("CountIn").sendKeys(Keys.SPACE);
    click(byId("Play1"));
    new WebDriverWait(browser.driver, Duration.ofSeconds(20))
        .until(d -> !d.findElements(By.cssSelector("[data-part='1'] .bead")).isEmpty());
    Object far =
        browser.run(
            """
            const bead = document.querySelector('.bead');
            return Number(bead.getAttribute('cx')) - (50 + 320 * Page.state().at);
            """);
    // One frame at this tempo is about 3 of the drawing's 700 units.
    assertThat(Math.abs(((Number) far).doubleValue())).isLessThan(20);
    assertThat(browser.run("return document.querySelector('.bead').getAttribute('cy')"))
        .as("on the row of counts, as the drawing says")
        .isEqualTo("20");
    press(Keys.ESCAPE);
    assertThat(browser.driver.findElements(By.cssSelector(".bead"))).isEmpty();
  }

  @Test
  void everythingHasANameForAScreenReader() {
    byId("More").click();
    for (WebElement element :
        browser.driver.findElements(By.cssSelector("button, input, select, a"))) {
      if (element.isDisplayed()) {
        // What is out of sight is laid out when it comes into view.
        browser.driver.executeScript("arguments[0].scrollIntoView({block: 'center'})", element);
        assertThat(element.getAccessibleName()).as(element.getDomProperty("id")).isNotBlank();
      }
    }
    byId("More").click();
    assertThat(byId("Play1").getAccessibleName()).isEqualTo("Play 2. The last double moves");
    assertThat(browser.driver.findElement(By.cssSelector("[data-limb='3']")).getAccessibleName())
        .isEqualTo("left foot");
    assertThat(browser.run("return document.querySelector('.score ol').textContent.trim()"))
        .isEqualTo(
            "Bar 1: 1, right hi-hat and kick; 1 and, right hi-hat; 2, right hi-hat and left snare"
                + " accented; 2 and, right hi-hat; 3, right hi-hat and kick; 3 and, right hi-hat"
                + " and kick; 4, right hi-hat and left snare accented; 4 and, right hi-hat.");
  }

  @Test
  void ourWordsAreEnglishAndTheLessonsAreNot() {
    Object languages =
        browser.run(
            """
            const of = (css) => document.querySelector(css).closest('[lang]').lang;
            return ['.facts', '.news li', '.row', '.score li', '.word', '.key', '#Status', 'h1',
              'h2 bdi', '.prose', '.row bdi'].map((css) => [css, document.querySelector(css) ? of(css) : '-']);
            """);
    assertThat(languages.toString())
        .isEqualTo(
            "[[.facts, en], [.news li, en], [.row, en], [.score li, en], [.word, en], [.key, -],"
                + " [#Status, en], [h1, ], [h2 bdi, ], [.prose, ], [.row bdi, ]]");
  }

  @Test
  void everyKeyIsAnswered() {
    for (String[] pair :
        new String[][] {
          {"1", "left hand off"},
          {"1", "left hand on"},
          {"l", "Loop off"},
          {"c", "Click on"},
          {"n", "Count-in off"},
          {"+", "Tempo 97"},
          {"-", "Tempo 96"},
          {"0", "Written tempo, 96"},
          {"t", "Tap on in time"},
          {"f", "Big view; Escape leaves it"},
          {"f", "Page view"},
        }) {
      press(pair[0]);
      assertThat(status()).as(pair[0]).isEqualTo(pair[1]);
      assertThat(byId("Status").isDisplayed()).isTrue();
    }
    press(Keys.ARROW_LEFT);
    assertThat(status()).isEqualTo("This is the first section");
    press(Keys.ARROW_RIGHT);
    assertThat(status()).isEqualTo("2 of 9: The last double moves");
    press(" ");
    await("playing", true);
    press(" ");
    assertThat(status()).isEqualTo("Stopped");
  }

  /** What WebKit forgives least: the text under the pressed pointer must not be replaced. */
  @Test
  void noLabelIsTouchedWhileItIsPressed() {
    browser.run(
        """
        window.touched = 0;
        const target = document.querySelector('#Play3 .word');
        const watch = new MutationObserver((list) => { touched += list.length; });
        watch.observe(document.getElementById('Play3'),
          { subtree: true, childList: true, characterData: true });
        window.addEventListener('click', () => { touched += watch.takeRecords().length; watch.disconnect(); }, true);
        """);
    click(browser.driver.findElement(By.cssSelector("#Play3 .word")));
    await("playing", true);
    assertThat(browser.run("return window.touched")).isEqualTo(0L);
    assertThat(state("chosen")).isEqualTo(3L);
  }

  private static String status() {
    return byId("Status").getText();
  }
}
