package tabor.watch;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.OutputStream;
import java.net.BindException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import tabor.source.ResourceText;

/**
 * Serves pages on 127.0.0.1 and nowhere else. A page of another site that a browser has open can
 * ask too, so a request must name this very host, and an origin, where one is named, must be this
 * server: nothing else is answered.
 */
public final class LiveServer implements AutoCloseable {
  /** Where the server's own things are; no file of a site begins so. */
  static final String OWN = "/.tabor/";

  /** How many ports are tried, one after the other. */
  private static final int TRIES = 50;

  private final HttpServer server;
  private final ExecutorService threads;
  private final Site site;
  private final LiveClients clients = new LiveClients();
  private final byte[] script =
      ResourceText.of(LiveServer.class, "live.js").getBytes(StandardCharsets.UTF_8);

  /** What is served. Asked by several threads at once. */
  public interface Site {
    /**
     * The file of a path; null if there is none.
     *
     * @param path decoded, without the leading slash; empty for the first page
     */
    @Nullable Content find(String path);
  }

  /**
   * A file.
   *
   * @param type its media type
   * @param bytes its content
   */
  public record Content(String type, byte[] bytes) {}

  private LiveServer(HttpServer server, Site site) {
    this.server = server;
    this.site = site;
    this.threads =
        Executors.newCachedThreadPool(
            work -> {
              Thread thread = new Thread(work, "tabor-watch");
              thread.setDaemon(true);
              return thread;
            });
    server.setExecutor(threads);
    server.createContext("/", this::answer);
    server.start();
  }

  /**
   * Starts a server on this port or the next that is free.
   *
   * @param port 1 to 65535, or 0 for any
   * @throws IOException if none of the ports tried is free
   */
  public static LiveServer start(int port, Site site) throws IOException {
    InetAddress here = InetAddress.getByAddress("127.0.0.1", new byte[] {127, 0, 0, 1});
    for (int tried = port; ; tried++) {
      try {
        return new LiveServer(HttpServer.create(new InetSocketAddress(here, tried), 0), site);
      } catch (BindException e) {
        if (port == 0 || tried - port >= TRIES || tried >= 65535) {
          throw e;
        }
      }
    }
  }

  /** The port it is on. */
  public int port() {
    return server.getAddress().getPort();
  }

  /** Where a browser finds it. */
  public String address() {
    return "http://127.0.0.1:" + port() + "/";
  }

  /**
   * Tells open pages what is new.
   *
   * @param paths of pages that changed
   * @param problems what is wrong now, each in a few lines
   */
  public void changed(Collection<String> paths, List<String> problems) {
    clients.changed(paths, problems);
  }

  /** How many pages are listening. */
  public int listening() {
    return clients.count();
  }

  private void answer(HttpExchange exchange) throws IOException {
    try (exchange) {
      if (!isOurs(exchange.getRequestHeaders())) {
        send(exchange, 403, text("this server answers pages of its own alone"));
        return;
      }
      String method = exchange.getRequestMethod();
      if (!method.equals("GET") && !method.equals("HEAD")) {
        exchange.getResponseHeaders().set("Allow", "GET, HEAD");
        send(exchange, 405, text("pages can be read, and nothing else"));
        return;
      }
      String path = exchange.getRequestURI().getPath();
      if (path == null || !path.startsWith("/") || path.contains("\0")) {
        send(exchange, 404, text("there is no such page"));
      } else if (path.equals(OWN + "events")) {
        clients.serve(exchange, since(exchange.getRequestURI().getQuery()));
      } else if (path.equals(OWN + "live.js")) {
        send(exchange, 200, new Content("text/javascript; charset=utf-8", script));
      } else {
        // Before the page is read: what changes from here on it does not show.
        long version = clients.version();
        Content found = site.find(path.substring(1));
        if (found == null) {
          send(exchange, 404, live(text("there is no such page; it may come"), version));
        } else {
          send(exchange, 200, live(found, version));
        }
      }
    }
  }

  private boolean isOurs(Headers headers) {
    List<String> hosts = headers.getOrDefault("Host", List.of());
    List<String> names = List.of("127.0.0.1:" + port(), "localhost:" + port());
    if (hosts.size() != 1 || !names.contains(hosts.get(0))) {
      return false;
    }
    for (String origin : headers.getOrDefault("Origin", List.of())) {
      if (!origin.equals("http://" + hosts.get(0))) {
        return false;
      }
    }
    return true;
  }

  private static long since(@Nullable String query) {
    String digits = query != null && query.startsWith("since=") ? query.substring(6) : "";
    return digits.matches("[0-9]{1,18}") ? Long.parseLong(digits) : 0;
  }

  private static Content text(String words) {
    String page =
        "<!DOCTYPE html>\n<html lang=\"en\"><meta charset=\"utf-8\"><title>Tabor</title>\n<p>"
            + words
            + ".</p>\n</html>\n";
    return new Content("text/html; charset=utf-8", page.getBytes(StandardCharsets.UTF_8));
  }

  /** A page with the script that listens; its own policy is opened for that and nothing else. */
  private static Content live(Content content, long version) {
    if (!content.type().startsWith("text/html")) {
      return content;
    }
    String page =
        new String(content.bytes(), StandardCharsets.UTF_8)
            .replaceFirst(
                "(<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; )"
                    + "script-src ",
                "$1connect-src 'self'; script-src 'self' ");
    int end = page.lastIndexOf("</body>");
    int at = end < 0 ? page.length() : end;
    String tag =
        "<script src=\""
            + OWN
            + "live.js\" id=\"TaborLive\" data-version=\""
            + version
            + "\"></script>\n";
    String with = page.substring(0, at) + tag + page.substring(at);
    return new Content(content.type(), with.getBytes(StandardCharsets.UTF_8));
  }

  private static void send(HttpExchange exchange, int code, Content content) throws IOException {
    Headers headers = exchange.getResponseHeaders();
    headers.set("Content-Type", content.type());
    headers.set("Cache-Control", "no-store");
    headers.set("X-Content-Type-Options", "nosniff");
    boolean head = exchange.getRequestMethod().equals("HEAD");
    exchange.sendResponseHeaders(code, head ? -1 : content.bytes().length);
    if (!head) {
      try (OutputStream out = exchange.getResponseBody()) {
        out.write(content.bytes());
      }
    }
  }

  /** Ends all connections; pages that are open try again and find nobody. */
  @Override
  public void close() {
    clients.close();
    server.stop(0);
    threads.shutdownNow();
    try {
      threads.awaitTermination(2, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
