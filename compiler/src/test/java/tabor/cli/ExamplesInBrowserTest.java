package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Base64;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.support.ui.WebDriverWait;
import tabor.emit.html.Browser;
import tabor.emit.html.FirefoxSession;

/** Practice pages of examples as Chromium shows and prints them. */
class ExamplesInBrowserTest {
  private static final Path EXAMPLES = Path.of("../examples");

  @TempDir static Path folder;
  private static Browser browser;

  @BeforeAll
  static void open() throws IOException {
    browser = Browser.open();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Io io =
        Io.of(
            new ByteArrayInputStream(new byte[0]),
            new ByteArrayOutputStream(),
            err,
            false,
            false,
            Map.of());
    String[] words = {"build", "-o", folder.toString(), "--as", "html", EXAMPLES.toString()};
    assertThat(Main.run(words, io)).as(err.toString(StandardCharsets.UTF_8)).isZero();
  }

  @AfterAll
  static void close() throws IOException {
    if (browser != null) {
      browser.close();
    }
  }

  private static void load(String example) {
    browser.driver.get(folder.resolve(example + ".html").toUri().toString());
  }

  /** A run of text on paper: how large, and how far down its page, 0 to 1. */
  private record Run(String text, double size, double down) {}

  private static byte[] print() {
    Map<String, Object> found =
        browser.driver.executeCdpCommand(
            "Page.printToPDF", Map.of("paperWidth", 8.27, "paperHeight", 11.69));
    return Base64.getDecoder().decode((String) found.get("data"));
  }

  private static List<List<Run>> runs(byte[] pdf) throws IOException {
    List<List<Run>> pages = new ArrayList<>();
    try (PDDocument document = Loader.loadPDF(pdf)) {
      for (int page = 1; page <= document.getNumberOfPages(); page++) {
        List<Run> runs = new ArrayList<>();
        PDFTextStripper stripper =
            new PDFTextStripper() {
              @Override
              protected void writeString(String text, List<TextPosition> letters) {
                TextPosition first = letters.get(0);
                double down = first.getYDirAdj() / first.getPageHeight();
                // The page number stands below everything.
                if (down < 0.94) {
                  runs.add(new Run(text, first.getFontSizeInPt(), down));
                }
              }
            };
        stripper.setSortByPosition(true);
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        stripper.getText(document);
        pages.add(runs);
      }
    }
    return pages;
  }

  /** No paper is wasted: whatever goes over the page goes on, and short sections share a row. */
  @ParameterizedTest
  @ValueSource(
      strings = {"gig-road-map", "ghosts-and-doubles", "hands-to-groove", "linear", "seven-eight"})
  void printedPagesAreFilledAndHeadingsStayWithTheirSections(String example) throws IOException {
    load(example);
    filled(runs(print()));
  }

  private static void filled(List<List<Run>> pages) {
    assertThat(pages).hasSizeBetween(1, 4);
    // Largest is the title of the lesson, then come the headings of its sections.
    double heading =
        pages.stream()
                .flatMap(List::stream)
                .map(Run::size)
                .distinct()
                .sorted(Comparator.reverseOrder())
                .toList()
                .get(1)
            - 0.1;
    for (int i = 0; i < pages.size(); i++) {
      List<Run> runs = pages.get(i);
      assertThat(runs).as("page %d", i + 1).hasSizeGreaterThan(1);
      Run last = runs.stream().reduce((a, b) -> a.down() > b.down() ? a : b).orElseThrow();
      if (i + 1 < pages.size()) {
        assertThat(last.down()).as("page %d ends with %s", i + 1, last.text()).isGreaterThan(0.5);
      }
      assertThat(last.size()).as(last.text()).isLessThan(heading);
    }
  }

  /** Firefox keeps nothing with what follows it unless it is made to. */
  @Test
  void pagesPrintedByFirefoxAreFilledToo() throws IOException, InterruptedException {
    try (FirefoxSession firefox = FirefoxSession.open()) {
      for (String example :
          List.of("gig-road-map", "practice-by-minutes", "hands-to-groove", "ladder", "linear")) {
        firefox.get(folder.resolve(example + ".html").toUri().toString());
        filled(runs(firefox.print()));
      }
    }
  }

  private static void size(int width, int height) {
    browser.driver.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", false));
  }

  /** On a phone upright and on its side and on a desk nothing leaves the window. */
  @Test
  void everyExampleFitsEveryWindow() throws IOException {
    List<String> names;
    try (Stream<Path> pages = Files.list(folder)) {
      names = pages.map(page -> page.getFileName().toString().replace(".html", "")).toList();
    }
    assertThat(names).hasSizeGreaterThan(30);
    for (String name : names) {
      load(name);
      for (int[] window : new int[][] {{360, 740}, {740, 360}, {1280, 800}}) {
        size(window[0], window[1]);
        Object outside =
            browser.run(
                """
                document.querySelectorAll('article').forEach((one) => {
                  one.style.contentVisibility = 'visible';
                });
                const width = document.documentElement.clientWidth;
                const found = document.documentElement.scrollWidth > width ? ['the page'] : [];
                for (const one of document.querySelectorAll('h1, h2, p, li, button, label, svg')) {
                  const box = one.getBoundingClientRect();
                  if (box.width > 1 && box.right > width + 1 && !one.closest('.unseen, .strip')) {
                    found.push(one.outerHTML.slice(0, 80));
                  }
                }
                return found;
                """);
        assertThat(outside).as("%s, %d wide", name, window[0]).isEqualTo(List.of());
      }
    }
    browser.driver.executeCdpCommand("Emulation.clearDeviceMetricsOverride", Map.of());
  }

  @Test
  void onAPhoneTheKeyIsFoldedAway() {
    size(360, 740);
    load("triplets");
    assertThat(browser.run("return document.getElementById('Key').open")).isEqualTo(false);
    size(1280, 800);
    load("triplets");
    assertThat(browser.run("return document.getElementById('Key').open")).isEqualTo(true);
    browser.driver.executeCdpCommand("Emulation.clearDeviceMetricsOverride", Map.of());
  }

  @Test
  void aRoadMapShowsItsMarksInBoxesAndItsCuesInItalics() {
    load("gig-road-map");
    Object rows =
        browser.run(
            "return [...document.querySelectorAll('#gig .row')].filter((row) => row.querySelector("
                + "'.mark')).map((row) => row.innerText.replace(/\\s+/g, ' '))");
    assertThat(rows)
        .isEqualTo(
            List.of(
                "A Verse, 4 bars, you: hands (bar 1, at 0:02) Bass alone, watch the singer",
                "B Verse, 8 bars, fill: Around the toms (bar 5, at 0:12) Break ahead (bar 7)",
                "C Chorus, 8 bars, fill: Around the toms (bar 13, at 0:30)",
                "D Verse, 1 bar, then 1 for you, 4 times (bar 21, at 0:48) You and the guitar, a"
                    + " bar each",
                "E Chorus, 4 bars (bar 29, at 1:07)"));
    Object styles =
        browser.run(
            "const m = getComputedStyle(document.querySelector('#gig .mark'));"
                + "const c = getComputedStyle(document.querySelector('#gig .said'));"
                + "return [m.borderTopStyle, parseFloat(m.borderTopWidth) > 0, c.fontStyle]");
    assertThat(styles).isEqualTo(List.of("solid", true, "italic"));
    Object held =
        browser.run(
            "const row = [...document.querySelectorAll('#gig .row')].find((row) => "
                + "row.innerText.includes('Hold')); const s = row.querySelector('svg')"
                + ".getBoundingClientRect(); return s.width > 8 && s.height > 4");
    assertThat(held).isEqualTo(true);
    // What is left over at the end has a row of its own; a tempo on its way says from where to
    // where.
    Object all = browser.run("return document.querySelector('#gig').innerText");
    assertThat(String.valueOf(all)).contains("Thank you and good night").doesNotContain("[");
    assertThat(String.valueOf(all)).contains("quarter = 104 to 76");
  }

  @Test
  void marksAndCuesStandOverThePlayerWhileTheyHold() {
    load("gig-road-map");
    WebElement verse = browser.driver.findElement(By.cssSelector("#gig .rung"));
    browser.run("arguments[0].scrollIntoView({block: 'center'})", verse);
    verse.click();
    new WebDriverWait(browser.driver, Duration.ofSeconds(20))
        .until(d -> "A".equals(browser.run("return document.getElementById('Mark').innerText")));
    assertThat(browser.run("return document.getElementById('Cue').innerText"))
        .isEqualTo("Bass alone, watch the singer");
    browser.run("document.getElementById('Play').click()");
    assertThat(browser.run("return document.querySelector('.desk .cue').offsetHeight"))
        .isEqualTo(0L);
  }
}
