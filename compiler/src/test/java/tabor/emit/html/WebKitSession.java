package tabor.emit.html;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.openqa.selenium.MutableCapabilities;
import org.openqa.selenium.SessionNotCreatedException;
import org.openqa.selenium.remote.RemoteWebDriver;
import org.openqa.selenium.remote.UnreachableBrowserException;

/**
 * WebKitGTK with its driver: the engine of Safari. Where it or a display is missing, the tests say
 * so and are skipped.
 */
final class WebKitSession implements AutoCloseable {
  final RemoteWebDriver driver;
  private final Process process;

  private WebKitSession(RemoteWebDriver driver, Process process) {
    this.driver = driver;
    this.process = process;
  }

  static WebKitSession open() throws IOException, InterruptedException {
    Optional<File> webdriver = Browser.find("WebKitWebDriver");
    Optional<Path> browser = miniBrowser();
    boolean screen = System.getenv("DISPLAY") != null;
    assumeTrue(
        webdriver.isPresent()
            && browser.isPresent()
            && (screen || Browser.find("xvfb-run").isPresent()),
        "skipped: no WebKitWebDriver with a display (or xvfb-run), so no page was opened in it");
    int port;
    try (ServerSocket free = new ServerSocket(0)) {
      port = free.getLocalPort();
    }
    List<String> command = new ArrayList<>();
    if (!screen) {
      command.addAll(List.of("xvfb-run", "-a"));
    }
    command.addAll(List.of("WebKitWebDriver", "--port=" + port));
    Process process =
        new ProcessBuilder(command)
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .start();
    MutableCapabilities wanted = new MutableCapabilities();
    wanted.setCapability("browserName", "MiniBrowser");
    wanted.setCapability(
        "webkitgtk:browserOptions",
        Map.of("binary", browser.orElseThrow().toString(), "args", List.of("--automation")));
    for (int i = 0; ; i++) {
      try {
        return new WebKitSession(
            new RemoteWebDriver(URI.create("http://127.0.0.1:" + port).toURL(), wanted), process);
      } catch (UnreachableBrowserException | SessionNotCreatedException e) {
        if (i >= 40 || !process.isAlive()) {
          process.destroy();
          throw e;
        }
        Thread.sleep(250);
      }
    }
  }

  /** Debian's place of the browser that belongs to the driver. */
  private static Optional<Path> miniBrowser() throws IOException {
    Path libraries = Path.of("/usr/lib");
    if (!Files.isDirectory(libraries)) {
      return Optional.empty();
    }
    try (Stream<Path> found =
        Files.find(
            libraries,
            3,
            (path, about) ->
                path.endsWith("MiniBrowser") && path.toString().contains("webkit2gtk"))) {
      return found.findFirst();
    }
  }

  @Override
  public void close() {
    try {
      driver.quit();
    } finally {
      process.descendants().forEach(ProcessHandle::destroy);
      process.destroy();
    }
  }
}
