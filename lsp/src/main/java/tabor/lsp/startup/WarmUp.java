package tabor.lsp.startup;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.function.BooleanSupplier;

/**
 * Does after {@code initialized} what the first keystrokes would otherwise wait for: a second
 * server goes through a small session of its own, read from a script and answered into nothing,
 * until the machine has loaded and compiled the code that every keystroke runs. It steps aside
 * while the real client has something to say.
 */
public final class WarmUp {
  static final int CHANGES = 1000;

  private static final int FIRST_CHANGE = 12;

  /** What answers for a whole file, and how many messages there are from one such to its next. */
  private static final String[] WHOLE = {"semanticTokens/full", "formatting", "codeLens"};

  private static final int ROUND = 11;
  private static final long LOOK_AGAIN_MILLIS = 4;

  /** A line for the edits to break and fix, at the end of each section. */
  private static final String LESSON =
      """
      title "Warm-up"
      time 4/4
      groove beat "A beat"
        hihat : rr rr rrrr rr=
        snare : . l {ll}. 'L
        kick : x . .x .
      step up "Up"
        right plays ride
        ghost left at 2
        add kick at 2& 3a
      groove roll
        hands play paradiddle in sixteenths
        feet : r l r l
      step down
        split right between tom1 and floor at 3 4
        accent hands at every &
      """;

  private static final String LINE =
      "{\"start\":{\"line\":3,\"character\":0},\"end\":{\"line\":4,\"character\":0}}";

  private static final String URI = "tabor-warm-up:lesson.tabor";

  private WarmUp() {}

  /** One message of the session: up to {@link #CHANGES} it goes on, then it comes to its end. */
  static String message(int number) {
    return Script.json(number);
  }

  static String request(int id, String method, String params) {
    return "{\"jsonrpc\":\"2.0\",\"id\":%d,\"method\":\"%s\",\"params\":%s}"
        .formatted(id, method, params);
  }

  static String told(String method, String params) {
    return "{\"jsonrpc\":\"2.0\",\"method\":\"%s\",\"params\":%s}".formatted(method, params);
  }

  static String at(int line, int character) {
    return "{\"textDocument\":{\"uri\":\"%s\"},\"position\":{\"line\":%d,\"character\":%d}}"
        .formatted(URI, line, character);
  }

  static byte[] framed(String json) {
    int length = json.getBytes(StandardCharsets.UTF_8).length;
    return ("Content-Length: " + length + "\r\n\r\n" + json).getBytes(StandardCharsets.UTF_8);
  }

  /** The messages of a session, to be served as if a client had sent them. */
  public static InputStream script(BooleanSupplier clientIsBusy) {
    return new Script(clientIsBusy);
  }

  /** Begins a session on a thread of its own; what it is answered is thrown away. */
  @SuppressWarnings("ThreadPriorityCheck") // a hint that spares the client; nothing rests on it
  public static void start(Runnable session) {
    Thread thread = new Thread(session, "tabor-warm-up");
    thread.setDaemon(true);
    thread.setPriority(Thread.MIN_PRIORITY);
    thread.start();
  }

  /** The messages of the session, made as they are asked for. */
  private static final class Script extends InputStream {
    private final BooleanSupplier clientIsBusy;
    private byte[] message = new byte[0];
    private int at;
    private int number;

    Script(BooleanSupplier clientIsBusy) {
      this.clientIsBusy = clientIsBusy;
    }

    @Override
    public int read() {
      byte[] one = new byte[1];
      return read(one, 0, 1) < 0 ? -1 : one[0];
    }

    @Override
    public int read(byte[] into, int offset, int length) {
      if (at == message.length && !next()) {
        return -1;
      }
      int count = Math.min(length, message.length - at);
      System.arraycopy(message, at, into, offset, count);
      at += count;
      return count;
    }

    private boolean next() {
      try {
        while (clientIsBusy.getAsBoolean()) {
          Thread.sleep(LOOK_AGAIN_MILLIS);
        }
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        return false;
      }
      String json = json(number++);
      message = framed(json);
      at = 0;
      return !json.isEmpty();
    }

    private static String json(int number) {
      return switch (number) {
        case 0 -> request(1, "initialize", "{\"capabilities\":{}}");
        case 1 ->
            told(
                "textDocument/didOpen",
                "{\"textDocument\":{\"uri\":\"%s\",\"languageId\":\"tabor\",\"version\":1,\"text\":\"%s\"}}"
                    .formatted(URI, LESSON.replace("\"", "\\\"").replace("\n", "\\n")));
        case 2 -> request(2, "textDocument/hover", at(3, 11));
        case 3 -> request(3, "textDocument/completion", at(9, 14));
        case 4 -> request(4, "textDocument/documentSymbol", at(0, 0));
        case 5 -> request(5, "textDocument/semanticTokens/full", at(0, 0));
        case 6 -> request(6, "textDocument/formatting", at(0, 0));
        case 7 -> request(7, "textDocument/codeLens", at(0, 0));
        case 8 -> request(8, "textDocument/documentHighlight", at(3, 11));
        case 9 ->
            request(
                9,
                "textDocument/codeAction",
                "{\"textDocument\":{\"uri\":\"%s\"},\"range\":%s,\"context\":{\"diagnostics\":[]}}"
                    .formatted(URI, LINE));
        case 10 ->
            request(
                10,
                "textDocument/inlayHint",
                "{\"textDocument\":{\"uri\":\"%s\"},\"range\":%s}".formatted(URI, LINE));
        case 11 -> request(11, "textDocument/signatureHelp", at(9, 14));
        case CHANGES -> request(99, "shutdown", "{}");
        case CHANGES + 1 -> told("exit", "{}");
        default -> number < CHANGES ? again(number) : "";
      };
    }

    /**
     * A change, or now and then what goes through a whole file: in a long one that is asked for
     * once, and should not meet code that ran once before.
     */
    private static String again(int number) {
      int at = (number - FIRST_CHANGE) % ROUND - WHOLE.length;
      return at < 0
          ? request(number, "textDocument/" + WHOLE[at + WHOLE.length], at(0, 0))
          : change(number, at);
    }

    /** Breaks a line, and with the next number fixes it. */
    private static String change(int number, int at) {
      int line = new int[] {5, 9, 12, 15}[at / 2];
      boolean breaks = at % 2 == 0;
      int length = LESSON.lines().toList().get(line).length();
      return told(
          "textDocument/didChange",
          ("{\"textDocument\":{\"uri\":\"%s\",\"version\":%d},\"contentChanges\":[{\"range\":{"
                  + "\"start\":{\"line\":%d,\"character\":%d},\"end\":{\"line\":%d,\"character\":%d}},"
                  + "\"text\":\"%s\"}]}")
              .formatted(
                  URI, number, line, length, line, length + (breaks ? 0 : 3), breaks ? " 7}" : ""));
    }
  }
}
