package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.support.ui.WebDriverWait;
import tabor.emit.html.Browser;
import tabor.watch.LiveServer;

/** The site of the course as a reader sees it, and a page of it while it is written. */
class CourseInBrowserTest {
  private static final Path COURSE = Path.of("../examples/course");

  /** As wide as a phone, and as a desk. */
  private static final List<Integer> WIDTHS = List.of(390, 1280);

  @TempDir private static Path temp;
  private static Browser browser;

  @BeforeAll
  static void open() throws IOException {
    browser = Browser.open();
  }

  @AfterAll
  static void close() throws IOException {
    if (browser != null) {
      browser.close();
    }
  }

  @Test
  void fitsPhoneAndDeskAndAsksForNothingElse() {
    Path site = temp.resolve("site");
    String course = COURSE.toString();
    Ran ran = Ran.of("weave", course + "/site", "--lessons", course, "-o", site.toString());
    assertThat(ran.code()).as(ran.err()).isZero();
    browser.complaints();
    browser.requests();
    for (int width : WIDTHS) {
      browser.driver.manage().window().setSize(new Dimension(width, 844));
      for (String page : List.of("index", "week-1", "week-2", "week-3", "week-4")) {
        browser.driver.get(site.resolve(page + ".html").toUri().toString());
        assertThat(
                browser.run(
                    "return document.documentElement.scrollWidth -"
                        + " document.documentElement.clientWidth"))
            .as(page + " at " + width)
            .isEqualTo(0L);
        assertThat(browser.requests()).containsExactly(browser.driver.getCurrentUrl());
        boolean plays = browser.run("return typeof Page === 'object'").equals(true);
        assertThat(plays).isEqualTo(!page.equals("index"));
      }
    }
    browser.driver.get(site.resolve("index.html").toUri().toString());
    browser.driver.findElement(By.linkText("Four")).click();
    assertThat(browser.driver.getTitle()).isEqualTo("Week four: the Saturday concert");
    assertThat(browser.run("return document.querySelectorAll('.tabor-player article').length"))
        .isEqualTo(6L);
    assertThat(browser.complaints()).isEmpty();
  }

  private static void untilTitles(String wanted) {
    new WebDriverWait(browser.driver, Duration.ofSeconds(60))
        .withMessage(() -> "the page shows " + titles())
        .until(d -> titles().contains(wanted));
  }

  private static String titles() {
    return String.valueOf(
        browser.run(
            "return [...document.querySelectorAll('h2, #TaborProblems')].map(e => e.innerText)"
                + ".join('; ')"));
  }

  /** What is on the page follows from what is saved, whenever the browser comes to it. */
  @Test
  void anEditIsSeenOnTheOpenPage() throws IOException {
    Path work = temp.resolve("work");
    Path pages = Files.createDirectories(temp.resolve("pages"));
    CourseTest.copy(COURSE, work);
    Watch watch = new Watch(Io.ofProcess(), work, pages);
    watch.look();
    Path lesson = work.resolve("saturday-4.tabor");
    String text = Files.readString(lesson);
    try (LiveServer server = LiveServer.start(0, watch)) {
      browser.driver.get(server.address() + "site/week-4.html");
      untilTitles("Verse");
      Files.writeString(lesson, text.replace("\"Verse\"", "\"Verse of the hall\""));
      Set<String> changed = watch.look();
      assertThat(changed).containsExactlyInAnyOrder("saturday-4.tabor.html", "site/week-4.html");
      server.changed(changed, watch.problems());
      untilTitles("Verse of the hall");
      Files.writeString(lesson, text.replace("play lead", "play leed"));
      server.changed(watch.look(), watch.problems());
      untilTitles("saturday-4.tabor:37:8: error");
      Files.writeString(lesson, text);
      server.changed(watch.look(), watch.problems());
      untilTitles("Verse;");
      assertThat(titles()).doesNotContain("error");
      browser.driver.get("about:blank");
    }
  }
}
