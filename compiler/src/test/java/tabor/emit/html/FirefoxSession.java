package tabor.emit.html;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.WebSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * A headless Firefox, spoken to in WebDriver BiDi (W3C), which it understands without a driver of
 * its own. Where there is none, the tests say so and are skipped.
 */
public final class FirefoxSession implements AutoCloseable {
  private static final Pattern ADDRESS = Pattern.compile("ws://[^\\s]+");

  private final Process process;
  private final Path profile;
  private final WebSocket socket;
  private final BlockingQueue<String> answers = new LinkedBlockingQueue<>();
  private String context = "";
  private int number;

  private FirefoxSession(Process process, Path profile, String address) {
    this.process = process;
    this.profile = profile;
    this.socket =
        HttpClient.newHttpClient()
            .newWebSocketBuilder()
            .buildAsync(URI.create(address + "/session"), new Collector())
            .join();
  }

  private final class Collector implements WebSocket.Listener {
    private final StringBuilder text = new StringBuilder();

    @Override
    public CompletionStage<?> onText(WebSocket from, CharSequence data, boolean last) {
      text.append(data);
      if (last) {
        answers.add(text.toString());
        text.setLength(0);
      }
      from.request(1);
      return null;
    }
  }

  /** Starts one; where there is none, the test is skipped. */
  public static FirefoxSession open() throws IOException, InterruptedException {
    String binary = Browser.find("firefox-esr", "firefox").map(Object::toString).orElse("");
    assumeTrue(!binary.isEmpty(), "skipped: no firefox on the PATH, so no page was opened in it");
    Path profile = Files.createTempDirectory("tabor-firefox");
    // Headless machines have no loudspeaker; whether Firefox waits for a click is its own business.
    Files.writeString(profile.resolve("user.js"), "user_pref(\"media.autoplay.default\", 0);\n");
    Process process =
        new ProcessBuilder(
                binary,
                "--headless",
                "--no-remote",
                "--profile",
                profile.toString(),
                "--remote-debugging-port",
                "0")
            .redirectErrorStream(true)
            .start();
    BufferedReader out =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    String line = out.readLine();
    while (line != null) {
      Matcher address = ADDRESS.matcher(line);
      if (line.contains("WebDriver BiDi") && address.find()) {
        Thread drain = new Thread(() -> drain(out), "firefox output");
        drain.setDaemon(true);
        drain.start();
        FirefoxSession session = new FirefoxSession(process, profile, address.group());
        session.begin();
        return session;
      }
      line = out.readLine();
    }
    process.destroy();
    throw new IOException("firefox ended before it listened");
  }

  private static void drain(BufferedReader out) {
    try {
      while (out.readLine() != null) {}
    } catch (IOException e) {
      // Firefox has been closed.
      return;
    }
  }

  private void begin() throws InterruptedException {
    send("session.new", "{\"capabilities\": {}}");
    JsonObject tree = send("browsingContext.getTree", "{}");
    context = tree.getAsJsonArray("contexts").get(0).getAsJsonObject().get("context").getAsString();
  }

  /** Sends a command and waits for its result. */
  private JsonObject send(String method, String parameters) throws InterruptedException {
    int id = ++number;
    socket
        .sendText(
            "{\"id\":" + id + ",\"method\":\"" + method + "\",\"params\":" + parameters + "}", true)
        .join();
    while (true) {
      String text = answers.poll(60, TimeUnit.SECONDS);
      if (text == null) {
        throw new IllegalStateException("no answer to " + method);
      }
      JsonObject answer = JsonParser.parseString(text).getAsJsonObject();
      if (answer.has("id") && !answer.get("id").isJsonNull() && answer.get("id").getAsInt() == id) {
        if (!answer.has("result")) {
          throw new IllegalStateException(method + ": " + text);
        }
        return answer.getAsJsonObject("result");
      }
    }
  }

  private static String quoted(String text) {
    return new com.google.gson.JsonPrimitive(text).toString();
  }

  /** Loads a page. */
  public void get(String address) throws InterruptedException {
    send(
        "browsingContext.navigate",
        "{\"context\":"
            + quoted(context)
            + ",\"url\":"
            + quoted(address)
            + ",\"wait\":\"complete\"}");
  }

  /** The value of an expression, or of the promise that it is, as text. */
  String run(String expression) throws InterruptedException {
    JsonObject result =
        send(
            "script.evaluate",
            "{\"expression\":"
                + quoted("(async () => String(await (" + expression + ")))()")
                + ",\"awaitPromise\":true,\"userActivation\":true,\"target\":{\"context\":"
                + quoted(context)
                + "}}");
    JsonObject value = result.getAsJsonObject("result");
    if (value == null) {
      throw new IllegalStateException(result.toString());
    }
    return value.get("value").getAsString();
  }

  /** The page on paper, A4, as a PDF. */
  public byte[] print() throws InterruptedException {
    JsonObject result =
        send(
            "browsingContext.print",
            "{\"context\":"
                + quoted(context)
                + ",\"background\":false,\"page\":{\"width\":21,\"height\":29.7},\"margin\":"
                + "{\"top\":1.6,\"bottom\":1.6,\"left\":1.5,\"right\":1.5}}");
    return Base64.getDecoder().decode(result.get("data").getAsString());
  }

  /** Presses the pointer on the middle of an element and lets it go. */
  void click(String selector) throws InterruptedException {
    String place =
        run(
            "(() => { const e = document.querySelector("
                + quoted(selector).replace('"', '\'')
                + "); e.scrollIntoView({block: 'center', behavior: 'instant'}); const b ="
                + " e.getBoundingClientRect(); return Math.round(b.x + b.width / 2) + ' ' +"
                + " Math.round(b.y + b.height / 2); })()");
    String[] at = place.split(" ", -1);
    send(
        "input.performActions",
        "{\"context\":"
            + quoted(context)
            + ",\"actions\":[{\"type\":\"pointer\",\"id\":\"mouse\",\"actions\":["
            + "{\"type\":\"pointerMove\",\"x\":"
            + at[0]
            + ",\"y\":"
            + at[1]
            + "},{\"type\":\"pointerDown\",\"button\":0},{\"type\":\"pointerUp\",\"button\":0}]}]}");
  }

  @Override
  public void close() throws IOException {
    socket.abort();
    process.destroy();
    process.onExit().join();
    try (Stream<Path> files = Files.walk(profile)) {
      files.sorted(java.util.Comparator.reverseOrder()).forEach(file -> file.toFile().delete());
    }
  }
}
