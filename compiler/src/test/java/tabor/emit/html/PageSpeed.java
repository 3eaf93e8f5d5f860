package tabor.emit.html;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import org.openqa.selenium.By;

/**
 * How quick a practice page is in Chromium on a slow machine: the time from a click on the first
 * “Play” to the first sound handed over, with the processor slowed four times; how long a page
 * takes to load with the processor slowed six times; and what loading costs in processor time of
 * the page's thread, nothing slowed. No test depends on it: it prints what it measured, shortest
 * first.
 */
public final class PageSpeed {
  private final Browser browser;
  private final String page;
  private int visits;

  private PageSpeed(Browser browser, Path page) {
    this.browser = browser;
    this.page = page.toUri().toString();
  }

  /**
   * Measures.
   *
   * @param args a page to play, a page to load, and how often (5)
   */
  public static void main(String[] args) throws IOException, InterruptedException {
    int times = args.length > 2 ? Integer.parseInt(args[2]) : 5;
    try (Browser browser = Browser.open()) {
      new PageSpeed(browser, Path.of(args[0])).play(times);
      new PageSpeed(browser, Path.of(args[1])).loadSlowed(times);
      new PageSpeed(browser, Path.of(args[1])).load(times);
    }
  }

  private void play(int times) throws InterruptedException {
    slowed(4);
    for (boolean rested : new boolean[] {false, true}) {
      for (boolean counted : new boolean[] {true, false}) {
        List<Long> waits = new ArrayList<>();
        for (int i = 0; i < times; i++) {
          visit();
          if (rested) {
            Thread.sleep(5000);
          }
          if (!counted) {
            browser.run("document.getElementById('CountIn').click()");
          }
          browser.driver.findElement(By.cssSelector("#Play0 .word")).click();
          Object wait = null;
          while (wait == null) {
            Thread.sleep(50);
            wait = browser.run("return Page.state().wait");
          }
          waits.add(Math.round(((Number) wait).doubleValue()));
        }
        Collections.sort(waits);
        System.out.printf(
            "first Play %s, %s: %s ms%n",
            rested ? "after 5 s" : "at once", counted ? "with a count-in" : "without one", waits);
      }
    }
  }

  /** From the call of the address to the end of the load event, and to the first picture. */
  private void loadSlowed(int times) {
    slowed(6);
    List<Long> loads = new ArrayList<>();
    List<Long> pictures = new ArrayList<>();
    for (int i = 0; i < times; i++) {
      browser.driver.get("about:blank");
      visit();
      loads.add(
          milliseconds(
              "return performance.getEntriesByType('navigation')[0].loadEventEnd || null"));
      pictures.add(
          milliseconds(
              "const [first] = performance.getEntriesByName('first-contentful-paint');"
                  + "return first ? first.startTime : null"));
    }
    Collections.sort(loads);
    Collections.sort(pictures);
    System.out.println("slowed six times, loaded after " + loads + " ms");
    System.out.println("slowed six times, first picture after " + pictures + " ms");
  }

  /** Asks until there is an answer. */
  private long milliseconds(String script) {
    Object found = null;
    while (found == null) {
      found = browser.run(script);
    }
    return Math.round(((Number) found).doubleValue());
  }

  private void load(int times) {
    slowed(1);
    browser.driver.executeCdpCommand("Performance.enable", Map.of("timeDomain", "threadTicks"));
    List<Long> costs = new ArrayList<>();
    for (int i = 0; i < times; i++) {
      browser.driver.get("about:blank");
      double before = ticks();
      visit();
      costs.add(Math.round((ticks() - before) * 1000));
    }
    Collections.sort(costs);
    System.out.println(
        "processor time of the page's thread to load, nothing slowed: " + costs + " ms");
  }

  private void slowed(int rate) {
    browser.driver.executeCdpCommand("Emulation.setCPUThrottlingRate", Map.of("rate", rate));
  }

  private void visit() {
    browser.driver.get(page + "?" + visits++);
  }

  private double ticks() {
    Map<String, Object> found =
        browser.driver.executeCdpCommand("Performance.getMetrics", Map.of());
    for (Object metric : (List<?>) found.get("metrics")) {
      if (metric instanceof Map<?, ?> one && "TaskDuration".equals(one.get("name"))) {
        return ((Number) one.get("value")).doubleValue();
      }
    }
    throw new IllegalStateException("the browser tells no TaskDuration");
  }
}
