package tabor.emit.html;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.logging.Level;
import java.util.stream.Stream;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;

/**
 * A headless Chromium for one test class. Where there is none, the tests say so and are skipped.
 */
public final class Browser implements AutoCloseable {
  public final ChromeDriver driver;
  private final Path profile;

  private Browser(ChromeDriver driver, Path profile) {
    this.driver = driver;
    this.profile = profile;
  }

  public static Browser open() throws IOException {
    Optional<File> chromium = find("chromium", "chromium-browser", "google-chrome");
    Optional<File> chromedriver = find("chromedriver");
    assumeTrue(
        chromium.isPresent() && chromedriver.isPresent(),
        "skipped: no chromium with its chromedriver on the PATH, so no page was opened");
    Path profile = Files.createTempDirectory("tabor-page");
    ChromeOptions options = new ChromeOptions();
    options.setBinary(chromium.orElseThrow());
    options.addArguments(
        "--headless",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--mute-audio",
        "--window-size=1200,900",
        "--user-data-dir=" + profile);
    LoggingPreferences logs = new LoggingPreferences();
    logs.enable(LogType.BROWSER, Level.ALL);
    logs.enable(LogType.PERFORMANCE, Level.ALL);
    options.setCapability("goog:loggingPrefs", logs);
    ChromeDriverService service =
        new ChromeDriverService.Builder()
            .usingDriverExecutable(chromedriver.orElseThrow())
            .usingAnyFreePort()
            .withSilent(true)
            .build();
    return new Browser(new ChromeDriver(service, options), profile);
  }

  static Optional<File> find(String... names) {
    String path = System.getenv().getOrDefault("PATH", "");
    return Stream.of(names)
        .flatMap(name -> Stream.of(path.split(File.pathSeparator)).map(dir -> new File(dir, name)))
        .filter(File::canExecute)
        .findFirst();
  }

  /** What the page has complained about since the last call: errors, broken policies, warnings. */
  public List<String> complaints() {
    List<String> found = new ArrayList<>();
    for (LogEntry entry : driver.manage().logs().get(LogType.BROWSER)) {
      found.add(entry.getMessage());
    }
    return found;
  }

  /** The addresses asked for since the last call. */
  public List<String> requests() {
    List<String> found = new ArrayList<>();
    for (LogEntry entry : driver.manage().logs().get(LogType.PERFORMANCE)) {
      String message = entry.getMessage();
      if (message.contains("\"Network.requestWillBeSent\"")) {
        found.add(message.replaceAll("(?s).*\"request\":\\{.*?\"url\":\"([^\"]*)\".*", "$1"));
      }
    }
    return found;
  }

  public Object run(String script, Object... arguments) {
    return driver.executeScript(script, arguments);
  }

  @Override
  public void close() throws IOException {
    driver.quit();
    try (Stream<Path> files = Files.walk(profile)) {
      files.sorted(java.util.Comparator.reverseOrder()).forEach(file -> file.toFile().delete());
    }
  }
}
