package tabor.emit.html;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.support.ui.WebDriverWait;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.kit.Limb;
import tabor.rhythm.Feel;
import tabor.rhythm.Time;

/** The page in a browser: it opens from disk, plays what is written, and asks for nothing. */
class PagePlaysTest {
  private static final double RATE = 44100;
  private static final Groove FEET = Samples.basic();
  private static final Groove ANSWER = Samples.full(FEET);
  private static final Groove FLAM = Samples.groove("flam", null, null, "LEFT_HAND snare x 'x x .");

  @TempDir static Path folder;
  private static Browser browser;
  private static Path file;

  @BeforeAll
  static void open() throws IOException {
    browser = Browser.open();
    file = folder.resolve("lesson.html");
    Page page =
        Pages.of(
            Samples.lesson(
                "Six-eight workshop",
                FEET,
                ANSWER,
                FLAM,
                Samples.climb("practice", "Practice", FEET, ANSWER),
                Samples.groove("open", null, null, "RIGHT_HAND hihat.open x . . ."),
                Samples.groove(
                    "shut",
                    null,
                    null,
                    "RIGHT_HAND hihat.open x . . .",
                    "LEFT_FOOT hihat.foot . x . ."),
                Samples.groove("choked", null, null, "RIGHT_HAND crash ! . . ."),
                Samples.groove("crash", null, null, "RIGHT_HAND crash x . . ."),
                Samples.swung(FEET, "swung", new Feel(Feel.Unit.EIGHTHS, Time.of(62, 100)))),
            Samples.pictures(),
            "Drums are loud.");
    Files.writeString(file, PageWriter.write(page));
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
  void everyLimbSoundsWhereItIsWritten() {
    for (Limb limb : Limb.values()) {
      List<Double> expected = expected(ANSWER, limb, 1);
      List<Double> heard = heard(1, 1, limb);
      // Small strokes are checked on their own; here each written stroke must be met.
      for (double time : expected) {
        assertThat(heard)
            .as("%s at %s in %s", limb.words(), time, heard)
            .anySatisfy(onset -> assertThat(onset).isCloseTo(time, within(0.001)));
      }
      if (limb != Limb.RIGHT_HAND) {
        assertThat(heard).as(limb.words()).hasSameSizeAs(expected);
      }
    }
  }

  @Test
  void allLimbsTogetherSoundAtEveryPlaceAndNowhereElse() {
    TreeSet<Double> places = new TreeSet<>();
    Stream.of(Limb.values()).forEach(limb -> places.addAll(expected(FEET, limb, 1)));
    List<Double> heard = heard(0, 1, Limb.values());
    assertClose(heard, List.copyOf(places));
  }

  @Test
  void halfTheTempoDoublesEveryDistance() {
    assertClose(heard(0, 0.5, Limb.RIGHT_HAND), expected(FEET, Limb.RIGHT_HAND, 0.5));
    assertClose(heard(0, 1.5, Limb.LEFT_HAND), expected(FEET, Limb.LEFT_HAND, 1.5));
  }

  @Test
  void swingIsHeard() {
    List<Double> expected = new ArrayList<>();
    for (int beat = 0; beat < 4; beat++) {
      expected.add(beat * 60 / 96.0);
      expected.add((beat + 0.62) * 60 / 96.0);
    }
    assertClose(heard(8, 1, Limb.RIGHT_HAND), expected);
  }

  @Test
  void aMutedLimbIsSilentAndTheOthersAreNot() {
    for (Limb limb : List.of(Limb.RIGHT_HAND, Limb.LEFT_HAND, Limb.RIGHT_FOOT)) {
      Limb[] others = Stream.of(Limb.values()).filter(l -> l != limb).toArray(Limb[]::new);
      TreeSet<Double> places = new TreeSet<>();
      Stream.of(others).forEach(other -> places.addAll(expected(FEET, other, 1)));
      assertClose(heard(0, 1, others), List.copyOf(places));
    }
    assertThat(heard(0, 1, Limb.LEFT_FOOT)).as("a limb that does not play").isEmpty();
  }

  @Test
  void aSmallStrokeComesJustBeforeItsMainStrokeAtAnyTempo() {
    for (double rate : new double[] {0.5, 1, 1.5}) {
      double main = expected(FLAM, Limb.LEFT_HAND, rate).get(1);
      List<Double> small = heard(2, rate, Limb.RIGHT_HAND);
      assertThat(small).hasSize(1);
      assertThat(main - small.get(0)).isBetween(0.025, 0.030);
    }
  }

  @Test
  void countInAndClickAreHeardOnTheBeats() {
    List<Double> heard =
        onsets("{limbs: [0, 0, 0, 0], click: true, countIn: true, sampleRate: 44100}", 0);
    List<Double> beats = new ArrayList<>();
    for (int i = -4; i < 4; i++) {
      beats.add(i * 60 / 96.0);
    }
    assertClose(heard, beats);
  }

  @Test
  void nothingClipsWhenAllLimbsAccent() {
    Object peak =
        browser.driver.executeAsyncScript(
            "const done = arguments[0]; Page.render(1, {click: true, countIn: true}).then((r) =>"
                + " done(Math.max(...r.samples.map((c) => c.reduce((m, x) =>"
                + " Math.max(m, Math.abs(x)), 0)))));");
    assertThat(((Number) peak).doubleValue()).isBetween(0.2, 0.999);
  }

  @Test
  void everySoundBeginsAtOnceEndsInSilenceAndIsLikeNoOther() {
    Object findings =
        browser.run(
            "const found = []; const all = Sounds.names.concat(['key:39', 'key:54', 'key:81',"
                + " 'key:3']).map((n) => [n, Sounds.compute(n, 44100, 1, 0)]);const dot = (a, b) =>"
                + " { let s = 0; for (let i = 0; i < Math.min(a.length, b.length); i++) s += a[i] *"
                + " b[i]; return s; };for (const [n, a] of all) { const top = a.reduce((m, x) =>"
                + " Math.max(m, Math.abs(x)), 0); if (!(top > 0.25 && top < 0.8)) found.push(n + '"
                + " peak ' + top); if (a[0] !== 0 || a[a.length - 1] !== 0) found.push(n + ' has a"
                + " sharp edge'); if (a.findIndex((x) => Math.abs(x) > top * 0.1) > 11)"
                + " found.push(n + ' is late'); for (const [m, b] of all) { const like = dot(a, b)"
                + " / Math.sqrt(dot(a, a) * dot(b, b));  if (n < m && !(Math.abs(like) < 0.7))"
                + " found.push(n + ' is like ' + m + ' ' + like); } }return found;");
    assertThat((List<?>) findings).isEmpty();
  }

  @Test
  void theFootEndsAnOpenHiHatAndAHandAChokedCymbal() {
    // Energy of the hand alone, from a tenth of a second after the second beat to the third.
    String energy =
        "const done = arguments[1]; Page.render(arguments[0], {limbs: [1, 0, 0, 0]}).then((r) => {"
            + " const at = (s) => Math.round((r.start + s) * 44100);"
            + " done(r.samples[0].slice(at(0.725), at(1.25)).reduce((s, x) => s + x * x, 0)); });";
    double open = ((Number) browser.driver.executeAsyncScript(energy, 4)).doubleValue();
    double closed = ((Number) browser.driver.executeAsyncScript(energy, 5)).doubleValue();
    double choked = ((Number) browser.driver.executeAsyncScript(energy, 6)).doubleValue();
    double crash = ((Number) browser.driver.executeAsyncScript(energy, 7)).doubleValue();
    assertThat(closed).isLessThan(open / 1000);
    assertThat(choked).isLessThan(crash / 1000);
  }

  @Test
  void tenMinutesOfLoopDoNotDrift() {
    // Turn 239 of a one-bar section at 96 begins at 239 * 2.5 s; the last hi-hat of it 7/8 later.
    Object times =
        browser.run(
            "const data = JSON.parse(document.querySelector('#tabor-data').textContent);const plan"
                + " = Timeline.programme(data.parts[0].legs, data.parts[0].legs, data.takes);const"
                + " cursor = new Timeline.Cursor(plan, 0, []); cursor.loop = true;const clock = new"
                + " Timeline.Clock(0.1, 0, 1); const found = [];while (cursor.turn < 240) { const e"
                + " = cursor.peek(); if (cursor.turn === 239 && e.kind === 'stroke' && e.limb ==="
                + " 0) found.push(clock.audio(e.time)); cursor.advance(); } return found;");
    List<Double> expected = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      expected.add(0.1 + 239 * 2.5 + i * 2.5 / 8);
    }
    List<Double> found = ((List<?>) times).stream().map(t -> ((Number) t).doubleValue()).toList();
    assertThat(found).hasSize(8);
    for (int i = 0; i < 8; i++) {
      assertThat(found.get(i)).isCloseTo(expected.get(i), within(1e-6));
    }
  }

  @Test
  void aChangeOfTempoKeepsThePlaceAndMovesWhatComesAfter() {
    Object found =
        browser.run(
            "const c = new Timeline.Clock(10, 0, 1); c.change(14, 0.5); c.change(18, 2);return"
                + " [c.position(12), c.position(16), c.position(20), c.audio(8), c.audio(10)];");
    assertThat(found.toString()).isEqualTo("[2, 5, 10, 19, 20]");
  }

  @Test
  void aLoopGoesRoundWithoutItsPickup() {
    Object found =
        browser.run(
            "const take = (from, length) => ({from, length, clicks: [], counts: [], strokes: [[0,"
                + " 'kick', 78, 2]]});const leg = (take) => ({take, whole: 2, times: 1});const plan"
                + " = Timeline.programme([leg(0)], [leg(1)], [take(-0.25, 1.25), take(0, 1)]);const"
                + " cursor = new Timeline.Cursor(plan, 0, [[-0.75, 1], [-0.5, 0], [-0.25,"
                + " 0]]);cursor.loop = true; const times = [];for (let i = 0; i < 6; i++) {"
                + " times.push(cursor.peek().time); cursor.advance(); }return"
                + " times.concat(Timeline.turnAt(plan, 2.4), Timeline.turnAt(plan, 2.6),"
                + " Timeline.turnAt(plan, 4.6), Timeline.turnOf(plan, 2).leg.from);");
    assertThat(found.toString()).isEqualTo("[-1.5, -1, -0.5, 0, 2.5, 4.5, 0, 1, 2, 0]");
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

  // ---- help
  // ---------------------------------------------------------------------------------------

  private static WebElement tempo() {
    return browser.driver.findElement(By.id("tempo"));
  }

  private static Object state(String name) {
    return ((Map<?, ?>) browser.run("return Page.state()")).get(name);
  }

  private static void await(String name, Object value) {
    new WebDriverWait(browser.driver, Duration.ofSeconds(20))
        .withMessage(() -> name + " stays " + state(name))
        .until(d -> value.equals(state(name)));
  }

  private static void click(WebElement element) {
    browser.run("arguments[0].scrollIntoView({block: 'center'})", element);
    element.click();
  }

  private static void press(CharSequence... keys) {
    Actions actions = new Actions(browser.driver);
    browser.run("document.activeElement.blur()");
    for (CharSequence key : keys) {
      actions.sendKeys(key);
    }
    actions.perform();
  }

  /** Where a limb's written strokes are due, in seconds from the start of the section. */
  private static List<Double> expected(Groove groove, Limb limb, double rate) {
    Time whole = groove.setting().tempo().secondsPerWhole();
    return groove.strokes().stream()
        .filter(stroke -> stroke.limb() == limb)
        .map((Stroke stroke) -> groove.position(stroke).times(whole))
        .map(time -> (double) time.num() / time.den() / rate)
        .toList();
  }

  private static List<Double> heard(int part, double rate, Limb... limbs) {
    List<Integer> on = new ArrayList<>(List.of(0, 0, 0, 0));
    for (Limb limb : limbs) {
      on.set(limb.ordinal(), 1);
    }
    return onsets("{limbs: " + on + ", rate: " + rate + ", sampleRate: 44100}", part);
  }

  /** Renders a part without a loudspeaker; onsets in seconds from its first barline. */
  private static List<Double> onsets(String options, int part) {
    Object answer =
        browser.driver.executeAsyncScript(
            "const done = arguments[1];"
                + "Page.render(arguments[0], "
                + options
                + ").then(({start, samples: [l, r]}) => {"
                + " const bytes = new Uint8Array(l.map((x, i) => x + r[i]).buffer); let text = '';"
                + " for (let i = 0; i < bytes.length; i += 32768)"
                + "  text += String.fromCharCode(...bytes.subarray(i, i + 32768));"
                + " done([start, btoa(text)]); });",
            part);
    List<?> pair = (List<?>) answer;
    double start = ((Number) pair.get(0)).doubleValue();
    float[] samples = Onsets.samples((String) pair.get(1));
    return Onsets.of(samples, RATE, 0.015).stream().map(onset -> onset - start).toList();
  }

  private static void assertClose(List<Double> heard, List<Double> expected) {
    assertThat(heard).as("heard %s, expected %s", heard, expected).hasSameSizeAs(expected);
    for (int i = 0; i < expected.size(); i++) {
      assertThat(heard.get(i)).isCloseTo(expected.get(i), within(0.001));
    }
  }
}
