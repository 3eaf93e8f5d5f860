package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tabor.watch.LiveServer;

class WatchTest {
  private static final String BEAT = "groove beat\n  snare : x . x .\n";

  @TempDir Path work;

  private Watch watch() throws IOException {
    Files.createDirectories(work.resolve("in"));
    Files.createDirectories(work.resolve("out"));
    return new Watch(
        Io.of(
            java.io.InputStream.nullInputStream(),
            OutputStream.nullOutputStream(),
            OutputStream.nullOutputStream(),
            false,
            false,
            java.util.Map.of()),
        work.resolve("in"),
        work.resolve("out"));
  }

  private void write(String name, String text) throws IOException {
    Path file = work.resolve("in").resolve(name);
    Files.createDirectories(file.getParent());
    Files.writeString(file, text);
  }

  /** One request as it goes over the line; the whole answer. */
  private static String ask(LiveServer server, String... lines) throws IOException {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), server.port())) {
      String request = String.join("\r\n", lines) + "\r\nConnection: close\r\n\r\n";
      socket.getOutputStream().write(request.getBytes(StandardCharsets.UTF_8));
      return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  private static String get(LiveServer server, String path) throws IOException {
    return ask(server, "GET " + path + " HTTP/1.1", "Host: 127.0.0.1:" + server.port());
  }

  /** Waits as long as it takes; a test that waits in vain is ended from outside. */
  private static void until(BooleanSupplier done) throws InterruptedException {
    while (!done.getAsBoolean()) {
      Thread.sleep(5);
    }
  }

  @Test
  void aFileInTheMiddleOfBeingSavedIsWaitedFor() throws IOException {
    Watch watch = watch();
    write("a.md", "# A\n\n```tabor file=b.tabor section=beat\n```\n");
    write("b.tabor", BEAT);
    watch.look();
    write("b.tabor", "");
    assertThat(watch.look()).isNull();
    write("b.tabor", BEAT.replace('x', 'X'));
    assertThat(watch.look()).containsExactlyInAnyOrder("a.html", "b.tabor.html");
    assertThat(watch.problems()).isEmpty();
    // A file that stays empty is told of all the same.
    write("b.tabor", "");
    for (int i = 0; i < 3; i++) {
      assertThat(watch.look()).isNull();
    }
    assertThat(watch.look()).contains("a.html");
    assertThat(watch.problems()).isNotEmpty();
  }

  @Test
  void lessonsAndDocumentsAreServedAndListed() throws IOException {
    Watch watch = watch();
    write("a.md", "# A\n\n```tabor as=player\n" + BEAT + "```\n");
    write("sub/b c.tabor", BEAT);
    assertThat(watch.look()).containsExactlyInAnyOrder("a.html", "sub/b c.tabor.html");
    try (LiveServer server = LiveServer.start(0, watch)) {
      assertThat(get(server, "/")).contains("href=\"/a.html\"").contains("/sub/b%20c.tabor.html");
      assertThat(get(server, "/a.html")).contains("200 OK").contains("/.tabor/live.js");
      String lesson = get(server, "/sub/b%20c.tabor.html");
      assertThat(lesson).contains("connect-src 'self'; script-src 'self' 'sha256-");
      assertThat(get(server, "/.tabor/live.js")).contains("EventSource");
    }
  }

  @Test
  void problemsAreToldUntilTheyAreFixed() throws IOException {
    Watch watch = watch();
    write("a.tabor", BEAT);
    watch.look();
    write("a.tabor", "groove beat\n  snare : x . x\n");
    assertThat(watch.look()).as("the last good page stays").isEmpty();
    assertThat(watch.problems()).hasSize(1);
    assertThat(watch.problems().get(0)).contains("a.tabor:2:11: error: ");
    write("b.md", "```tabor\n");
    watch.look();
    assertThat(watch.problems()).hasSize(2);
    write("a.tabor", BEAT + "step two\n  add kick at 1\n");
    write("b.md", "fine\n");
    assertThat(watch.look()).contains("a.tabor.html", "b.html");
    assertThat(watch.problems()).isEmpty();
  }

  @Test
  void whatALessonUsesTouchesIt() throws IOException {
    Watch watch = watch();
    write("a.tabor", "use \"part.tabor\"\ngroove g\n  hands play row in quarters\n");
    watch.look();
    assertThat(watch.problems()).as("not there yet").isNotEmpty();
    write("part.tabor", "pattern row : rlrl\n");
    assertThat(watch.look()).contains("a.tabor.html");
    assertThat(watch.problems()).isEmpty();
    write("part.tabor", "pattern row : rrll\n");
    assertThat(watch.look()).contains("a.tabor.html");
    Files.delete(work.resolve("in/a.tabor"));
    assertThat(watch.look()).contains("a.tabor.html");
    assertThat(watch.find("a.tabor.html")).isNull();
  }

  @Test
  void aSecondSaveWithinTheSameTickIsSeen() throws IOException {
    Watch watch = watch();
    write("a.md", "one\n");
    watch.look();
    Path file = work.resolve("in/a.md");
    var time = Files.getLastModifiedTime(file);
    write("a.md", "two\n");
    Files.setLastModifiedTime(file, time);
    assertThat(watch.look()).containsExactly("a.html");
    assertThat(Files.readString(work.resolve("out/a.html"))).contains("<p>two</p>");
  }

  @Test
  void onlyPagesOfItsOwnAreAnsweredAndNothingOutside() throws IOException {
    Watch watch = watch();
    write("a.md", "a\n");
    Files.writeString(work.resolve("secret.txt"), "secret");
    watch.look();
    Files.createSymbolicLink(work.resolve("out/link.txt"), work.resolve("secret.txt"));
    try (LiveServer server = LiveServer.start(0, watch)) {
      String host = "Host: 127.0.0.1:" + server.port();
      String get = "GET /a.html HTTP/1.1";
      assertThat(ask(server, get, "Host: localhost:" + server.port())).contains(" 200 ");
      assertThat(ask(server, get, "Host: evil.example")).contains(" 403 ");
      assertThat(ask(server, get, "Host: 127.0.0.1")).contains(" 403 ");
      assertThat(ask(server, get, host, "Origin: http://evil.example")).contains(" 403 ");
      assertThat(ask(server, get, host, "Origin: null")).contains(" 403 ");
      assertThat(ask(server, get, host, "Origin: http://127.0.0.1:" + server.port()))
          .contains(" 200 ");
      assertThat(ask(server, "POST /a.html HTTP/1.1", host, "Content-Length: 0")).contains(" 405 ");
      for (String path :
          List.of(
              "/../secret.txt",
              "/%2e%2e/secret.txt",
              "/..%2fsecret.txt",
              "/x/../../secret.txt",
              "/..%5csecret.txt",
              "/link.txt",
              "/%00",
              "//etc/passwd",
              "/.tabor-weave")) {
        assertThat(get(server, path)).as(path).doesNotContain(" 200 ").doesNotContain("secret\n");
      }
    }
  }

  @Test
  void aBusyPortIsPassedOver() throws IOException {
    Watch watch = watch();
    try (LiveServer first = LiveServer.start(0, watch);
        LiveServer second = LiveServer.start(first.port(), watch)) {
      assertThat(second.port()).isGreaterThan(first.port());
    }
  }

  /** Listens as a page does, and keeps what it hears. */
  private static Thread listen(LiveServer server, List<String> heard) {
    Thread thread =
        new Thread(
            () -> {
              try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), server.port())) {
                String request =
                    "GET /.tabor/events?since=999999999999999999 HTTP/1.1\r\nHost: 127.0.0.1:"
                        + server.port()
                        + "\r\n\r\n";
                socket.getOutputStream().write(request.getBytes(StandardCharsets.UTF_8));
                BufferedReader in =
                    new BufferedReader(
                        new InputStreamReader(socket.getInputStream(), StandardCharsets.UTF_8));
                for (String line = in.readLine(); line != null; line = in.readLine()) {
                  if (line.startsWith("data: ")) {
                    synchronized (heard) {
                      heard.add(line);
                    }
                  }
                }
              } catch (IOException ended) {
                return;
              }
            });
    thread.setDaemon(true);
    thread.start();
    return thread;
  }

  @Test
  void manySavesAreAllFollowed() throws IOException, InterruptedException {
    saves(watch(), work, 150);
  }

  /**
   * Saves a document many times in a row while a page listens: after each look the page shows the
   * last save, the page that listens hears of each, and nothing is left over.
   */
  static void saves(Watch watch, Path work, int count) throws IOException, InterruptedException {
    Path file = work.resolve("in/a.md");
    Files.writeString(file, "start\n");
    watch.look();
    List<String> heard = new ArrayList<>();
    try (LiveServer server = LiveServer.start(0, watch)) {
      Thread listener = listen(server, heard);
      until(() -> server.listening() == 1);
      int threads = 0;
      for (int i = 1; i <= count; i++) {
        Files.writeString(file, "save " + i + "\n");
        Set<String> changed = watch.look();
        assertThat(changed).as("save " + i).containsExactly("a.html");
        assertThat(Files.readString(work.resolve("out/a.html"))).contains("<p>save " + i + "</p>");
        synchronized (heard) {
          heard.clear();
        }
        server.changed(changed, List.of());
        until(
            () -> {
              synchronized (heard) {
                return heard.stream().anyMatch(line -> line.contains("\"a.html\""));
              }
            });
        if (i == count / 2) {
          threads = Thread.activeCount();
        }
      }
      assertThat(Thread.activeCount()).isLessThanOrEqualTo(threads + 2);
      assertThat(server.listening()).isEqualTo(1);
      server.close();
      listener.join();
      until(() -> server.listening() == 0);
    }
    try (var left = Files.list(work.resolve("out"))) {
      assertThat(left.map(path -> path.getFileName().toString()).toList())
          .containsExactlyInAnyOrder("a.html", Weave.INDEX);
    }
  }

  /** The same ten thousand times, by hand. */
  static final class Marathon {
    private Marathon() {}

    public static void main(String[] words) throws IOException, InterruptedException {
      WatchTest test = new WatchTest();
      test.work = Files.createTempDirectory("tabor-marathon-");
      long before = open();
      saves(test.watch(), test.work, words.length == 0 ? 10_000 : Integer.parseInt(words[0]));
      System.out.println("open files before " + before + ", after " + open());
    }

    /** Open files of this process, where the system tells; else -1. */
    private static long open() throws IOException {
      Path list = Path.of("/proc/self/fd");
      if (!Files.isDirectory(list)) {
        return -1;
      }
      try (var files = Files.list(list)) {
        return files.count();
      }
    }
  }
}
