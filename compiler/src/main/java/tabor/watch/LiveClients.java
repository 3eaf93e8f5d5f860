package tabor.watch;

import com.google.gson.Gson;
import com.sun.net.httpserver.HttpExchange;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/**
 * The pages that listen, each on a connection of its own, as server-sent events. What happens while
 * a page is slow is put together: it hears of every changed path, in fewer messages.
 */
final class LiveClients {
  /** More than any person has open; the next one is turned away. */
  private static final int MOST = 64;

  /** After so long without news a sign of life is sent, which also shows who has gone. */
  private static final long SIGN_MILLIS = 5000;

  private final Set<Client> clients = new LinkedHashSet<>();
  private final Map<String, Long> changes = new HashMap<>();
  private final long start = System.currentTimeMillis();
  private long version = start;
  private List<String> problems = List.of();
  private boolean closed;

  /** What one page has not heard yet; guarded by the whole. */
  private static final class Client {
    private final Set<String> paths = new LinkedHashSet<>();
    private boolean news = true;
    private boolean all;
  }

  /** A number that grows with each change, also from one server to the next. */
  synchronized long version() {
    return version;
  }

  synchronized int count() {
    return clients.size();
  }

  synchronized void changed(Collection<String> paths, List<String> now) {
    boolean other = !now.equals(problems);
    problems = List.copyOf(now);
    version++;
    paths.forEach(path -> changes.put(path, version));
    for (Client client : clients) {
      client.paths.addAll(paths);
      client.news |= other || !paths.isEmpty();
    }
    notifyAll();
  }

  /**
   * Serves a page until it goes away.
   *
   * @param since the version of what it shows: it hears of everything later
   */
  void serve(HttpExchange exchange, long since) throws IOException {
    Client client = new Client();
    synchronized (this) {
      if (closed || clients.size() >= MOST) {
        exchange.sendResponseHeaders(503, -1);
        return;
      }
      clients.add(client);
      client.all = since < start;
      changes.forEach(
          (path, when) -> {
            if (when > since) {
              client.paths.add(path);
            }
          });
    }
    try {
      exchange.getResponseHeaders().set("Content-Type", "text/event-stream; charset=utf-8");
      exchange.getResponseHeaders().set("Cache-Control", "no-store");
      exchange.sendResponseHeaders(200, 0);
      OutputStream out = exchange.getResponseBody();
      for (String message = next(client); message != null; message = next(client)) {
        out.write(message.getBytes(StandardCharsets.UTF_8));
        out.flush();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } finally {
      synchronized (this) {
        clients.remove(client);
      }
    }
  }

  /** The next message for a page; null at the end. */
  private synchronized @Nullable String next(Client client) throws InterruptedException {
    long until = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(SIGN_MILLIS);
    long left = SIGN_MILLIS;
    while (!client.news && !closed && left > 0) {
      wait(left);
      left = TimeUnit.NANOSECONDS.toMillis(until - System.nanoTime());
    }
    if (closed) {
      return null;
    }
    if (!client.news) {
      return ": here\n\n";
    }
    client.news = false;
    String data =
        new Gson()
            .toJson(
                Map.of(
                    "all", client.all, "paths", List.copyOf(client.paths), "problems", problems));
    client.paths.clear();
    client.all = false;
    return "data: " + data + "\n\n";
  }

  synchronized void close() {
    closed = true;
    notifyAll();
  }
}
