package tabor.emit.html;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.Keys;
import org.openqa.selenium.support.ui.Select;
import org.openqa.selenium.support.ui.WebDriverWait;

/** Ways to practise: chosen bars, a tempo that climbs, the click, links, the end of a loop. */
class PagePracticeTest extends PageInBrowser {
  /** Times and kinds of what a part plays from now on, without a clock: walked through by hand. */
  private static final String WALK =
      """
      const data = JSON.parse(document.getElementById('Data').textContent);
      data.takes.sounds = data.sounds;
      const { plan } = Practice.programme(arguments[0], data.parts[arguments[0]], data);
      const cursor = new Timeline.Cursor(plan, 0, []);
      """;

  @Test
  void chosenBarsAreALoopOfTheirOwn() {
    press(Keys.ARROW_RIGHT);
    byId("More").click();
    new Select(byId("From")).selectByVisibleText("2");
    assertThat(byId("Status").getText()).isEqualTo("Bars 2 to 2");
    Object found =
        browser.run(
            WALK
                + """
                const kicks = plan.legs[0].events.filter((e) => e.sound === 'kick').map((e) => e.at);
                return [plan.length, plan.legs[0].from, ...kicks];
                """,
            1);
    // Bar 2 of "x. .x xx .." at 96: kicks on 1, 2&, 3 and 3&.
    assertThat(found.toString()).isEqualTo("[2.5, 1, 0, 0.9375, 1.25, 1.5625]");
    byId("CountIn").sendKeys(Keys.SPACE);
    byId("Play").click();
    await("playing", true);
    await("leg", 0L);
    assertThat(((Number) state("at")).doubleValue()).as("the bead is in bar 2").isBetween(1.0, 2.0);
    new Select(byId("From")).selectByVisibleText("1");
    assertThat(browser.run(WALK + "return plan.length", 1)).as("all bars again").isEqualTo(5L);
  }

  @Test
  void theSpeedTrainerClimbsAndStaysAtTheTop() {
    byId("More").click();
    set("ClimbFrom", 60);
    set("ClimbTo", 80);
    set("ClimbBy", 8);
    set("ClimbTimes", 2);
    browser.run("document.getElementById('Climb').checked = true");
    Object tempi =
        browser.run(
            "const s = Practice.speeds(100); return [0,1,2,3,4,5,6,7,99].map((r) => Math.round(s(r)"
                + " * 100));");
    assertThat(tempi.toString()).isEqualTo("[60, 60, 68, 68, 76, 76, 80, 80, 80]");
    set("ClimbTo", 50);
    Object down =
        browser.run(
            "const s = Practice.speeds(100); return [0,2,4].map((r) => Math.round(s(r) * 100));");
    assertThat(down.toString()).isEqualTo("[60, 52, 50]");
    set("ClimbBy", 0);
    assertThat(browser.run("return Practice.speeds(100)")).isNull();
    assertThat(byId("Status").getText()).contains("needs four numbers");
    // Played: the first round at 72 of 96, each further one faster.
    set("ClimbFrom", 180);
    set("ClimbTo", 192);
    set("ClimbBy", 6);
    set("ClimbTimes", 1);
    byId("CountIn").sendKeys(Keys.SPACE);
    browser.run("document.getElementById('Climb').click()");
    byId("Play").click();
    await("rate", 2L);
    assertThat(((Number) state("round")).intValue()).isEqualTo(2);
    press(Keys.ESCAPE, Keys.ESCAPE);
  }

  @Test
  void switchingTheLoopOffFinishesTheRound() {
    Object found =
        browser.run(
            WALK
                + """
                cursor.loop = true;
                for (let i = 0; i < 30; i++) { cursor.peek(); cursor.advance(); }
                const round = cursor.peek().round;
                cursor.loop = false;
                let last = null;
                for (let e = cursor.peek(); e; e = cursor.peek()) { last = e; cursor.advance(); }
                return [round, last.round, cursor.end / plan.length, last.time < cursor.end];
                """,
            0);
    List<?> values = (List<?>) found;
    assertThat(((Number) values.get(0)).intValue()).isGreaterThan(0);
    assertThat(values.get(1)).isEqualTo(values.get(0));
    assertThat(((Number) values.get(2)).doubleValue())
        .isCloseTo(((Number) values.get(0)).doubleValue() + 1, within(1e-9));
    assertThat(values.get(3)).isEqualTo(true);
  }

  @Test
  void theLastCrashRingsOutAndThenTheContextRests() {
    browser.run(
        "document.getElementById('Loop').click(); document.getElementById('CountIn').click()");
    browser.run("Player.setRate(2)");
    click(byId("Play7"));
    await("playing", true);
    await("playing", false);
    assertThat(byId("Status").getText()).isEqualTo("Finished");
    assertThat(state("voices")).as("the crash still sounds").isNotEqualTo(0L);
    assertThat(byId("Play7").getText()).isEqualTo("Play");
    await("context", "suspended");
    assertThat(state("voices")).isEqualTo(0L);
  }

  @Test
  void theClickHasItsKinds() {
    // What sounds of three bars' clicks, counted for each kind by the player's own rule.
    for (String[] kind :
        new String[][] {{"eighths", "24"}, {"gaps", "8"}, {"written", "0"}, {"beats", "12"}}) {
      byId("More").click();
      new Select(byId("ClickAs")).selectByValue(kind[0]);
      byId("More").click();
      assertThat(browser.run("return document.getElementById('Click').checked")).isEqualTo(true);
      Object heard =
          browser.run(
              WALK
                  + """
                  cursor.loop = true;
                  const run = { bar: 0 };
                  let heard = 0;
                  for (let e = cursor.peek(); e.round < 3; e = cursor.peek()) {
                    if (e.kind === 'click' && Player.isHeard(run, e)) heard++;
                    cursor.advance();
                  }
                  return heard;
                  """,
              0);
      assertThat(heard.toString()).as(kind[0]).isEqualTo(kind[1]);
    }
    byId("More").click();
    browser.run("document.getElementById('Alone').click()");
    byId("Play").click();
    await("levels", List.of(0L, 0L, 0L, 0L, 1L));
    press(Keys.ESCAPE, Keys.ESCAPE);
  }

  @Test
  void volumesOfKitAndClick() {
    byId("More").click();
    slide(byId("KitLevel"), 50);
    slide(byId("ClickLevel"), 0);
    byId("Play").click();
    await("playing", true);
    Object[] levels = {0.25, 0.0};
    new WebDriverWait(browser.driver, Duration.ofSeconds(20))
        .until(
            d ->
                List.of(levels)
                    .equals(
                        ((List<?>)
                                browser.run(
                                    "const d = Player.desk(); return [d.kit, d.clicks].map((g) =>"
                                        + " 0.5 + Math.round(g.gain.value * 1000) / 1000)"))
                            .stream().map(x -> ((Number) x).doubleValue() - 0.5).toList()));
    press(Keys.ESCAPE, Keys.ESCAPE);
  }

  @Test
  void aTempoIsTypedTappedAndLinked() {
    byId("Bpm").sendKeys(Keys.chord(Keys.CONTROL, "a"), "48", Keys.ENTER);
    assertThat(state("rate")).isEqualTo(0.5);
    byId("Bpm").sendKeys(Keys.chord(Keys.CONTROL, "a"), "5", Keys.ENTER);
    assertThat(state("rate")).as("not below 30 %").isEqualTo(0.3);
    Object tapped =
        browser.run(
            "Practice.tap(1000); Practice.tap(1500); const a = Practice.tap(2000); return [a,"
                + " Practice.tap(9000), Practice.tap(9600)];");
    assertThat(tapped.toString()).isEqualTo("[120, 0, 100]");
    browser.run("location.hash = '#answer&tempo=72'");
    await("chosen", 1L);
    assertThat(state("rate")).isEqualTo(0.75);
    assertThat(byId("Link").getDomAttribute("href")).isEqualTo("#answer&tempo=72");
    browser.run("location.hash = '#nobody&tempo=x'");
    assertThat(state("chosen")).isEqualTo(1L);
    new Select(byId("Jump")).selectByIndex(3);
    assertThat(state("chosen")).isEqualTo(3L);
    assertThat(new Select(byId("Jump")).getOptions())
        .extracting(option -> option.getText())
        .startsWith("1. Feet on the floor", "2. The last double moves", "3. flam", "Practice");
    browser.run(
        "window.printed = 0; window.print = () => printed++;"
            + " document.getElementById('Print').click()");
    assertThat(browser.run("return printed")).isEqualTo(1L);
  }

  @Test
  void aContextThatTheSystemTookAwayComesBack() {
    byId("Play").click();
    await("context", "running");
    browser.run(
        "window.said = []; new MutationObserver(() =>"
            + " said.push(document.getElementById('Status').textContent)).observe(document.getElementById('Status'),"
            + " {childList: true, characterData: true, subtree: true});"
            + " Player.context().suspend()");
    new WebDriverWait(browser.driver, Duration.ofSeconds(20))
        .until(d -> browser.run("return said.join('|')").toString().contains("The sound is back."));
    assertThat(browser.run("return said.join('|')").toString())
        .contains("The sound was interrupted.");
    assertThat(state("playing")).isEqualTo(true);
    press(Keys.ESCAPE);
  }

  @Test
  void refusedOrMissingAudioIsSaidAndNothingStaysOnStop() {
    browser.run("AudioContext.prototype.resume = () => Promise.reject(new Error('no device'))");
    byId("Play").click();
    await("playing", false);
    assertThat(byId("Status").getText()).isEqualTo("The browser refuses to play: no device");
    assertThat(byId("Status").isDisplayed()).isTrue();
    assertThat(byId("Play").getText()).isEqualTo("Play");
    browser.driver.navigate().refresh();
    browser.run("window.AudioContext = undefined");
    byId("Play").click();
    await("playing", false);
    assertThat(byId("Status").getText()).startsWith("This browser makes no sound in pages.");
    assertThat(byId("Play0").getText()).isEqualTo("Play");
  }

  @Test
  void theScreenStaysOnWhileItPlays() {
    browser.run(
        "window.locks = []; Object.defineProperty(navigator, 'wakeLock', {value: {request: (kind)"
            + " => { const lock = new EventTarget(); locks.push(kind); lock.release = () => {"
            + " locks.push('released'); return Promise.resolve(); }; return Promise.resolve(lock);"
            + " }}});");
    byId("Play").click();
    await("playing", true);
    new WebDriverWait(browser.driver, Duration.ofSeconds(20))
        .until(d -> browser.run("return locks.length").equals(1L));
    press(Keys.ESCAPE);
    assertThat(browser.run("return locks").toString()).isEqualTo("[screen, released]");
  }

  /** Whatever the processor does: nothing that a click waits for computes a sound of the kit. */
  @Test
  void theFirstPlayWaitsForTheClickSoundsOnly() {
    browser.run(
        """
        window.asked = [];
        const prepared = Shelf.prepared;
        Shelf.prepared = (names) => { asked.push(...names); return prepared(names); };
        """);
    byId("Play").click();
    await("playing", true);
    new WebDriverWait(browser.driver, Duration.ofSeconds(20))
        .until(d -> ((Number) state("struck")).intValue() > 0);
    Object found = browser.run("return [asked, Shelf.atOnce()]");
    assertThat(found.toString()).isEqualTo("[[click.strong, click], 0]");
    press(Keys.ESCAPE);
  }

  private static void set(String id, int value) {
    browser.run(
        "const e = document.getElementById(arguments[0]); e.value = arguments[1];"
            + " e.dispatchEvent(new Event('change'))",
        id,
        value);
  }
}
