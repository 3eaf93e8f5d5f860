package tabor.lsp.startup;

import com.google.gson.JsonPrimitive;
import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.DataInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/**
 * Runs a server through a session from which the build keeps the classes: what the warm-up does,
 * then lessons such as people write, with the requests that an editor sends of an open file.
 */
public final class ArchiveSession {
  /** Requests that name a file, in the order in which an editor sends them. */
  private static final List<String> OF_A_FILE =
      List.of("semanticTokens/full", "documentSymbol", "codeLens", "foldingRange", "formatting");

  private static final List<String> AT_A_PLACE =
      List.of("hover", "completion", "definition", "documentHighlight", "signatureHelp");

  private final OutputStream out;
  private final DataInputStream in;
  private int number = WarmUp.CHANGES + 2;

  private ArchiveSession(Process server) {
    out = new BufferedOutputStream(server.getOutputStream());
    in = new DataInputStream(new BufferedInputStream(server.getInputStream()));
  }

  /** Arguments: a folder of lessons, which need not be there; then the command of the server. */
  public static void main(String[] args) throws IOException, InterruptedException {
    Process server =
        new ProcessBuilder(List.of(args).subList(1, args.length))
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    ArchiveSession session = new ArchiveSession(server);
    for (int i = 0; i < WarmUp.CHANGES; i++) {
      session.send(WarmUp.message(i));
    }
    session.ask("hover", WarmUp.at(3, 11));
    session.waitForLast();
    if (Files.isDirectory(Path.of(args[0]))) {
      session.lessons(Path.of(args[0]).toRealPath());
    }
    session.send(WarmUp.message(WarmUp.CHANGES));
    session.send(WarmUp.message(WarmUp.CHANGES + 1));
    session.out.close();
    session.in.readAllBytes();
    System.exit(server.waitFor());
  }

  private void send(String json) throws IOException {
    out.write(WarmUp.framed(json));
  }

  /** Reads answers up to the one to the request sent last. */
  private void waitForLast() throws IOException {
    out.flush();
    byte[] body;
    do {
      int length = 0;
      for (String line = header(); !line.isEmpty(); line = header()) {
        if (line.startsWith("Content-Length:")) {
          length = Integer.parseInt(line.substring(line.indexOf(':') + 1).strip());
        }
      }
      body = in.readNBytes(length);
    } while (!new String(body, StandardCharsets.UTF_8).contains("\"id\":" + (number - 1) + ","));
  }

  private String header() throws IOException {
    StringBuilder line = new StringBuilder();
    for (int c = in.readUnsignedByte(); c != '\n'; c = in.readUnsignedByte()) {
      line.append((char) c);
    }
    return line.toString().strip();
  }

  private void lessons(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".tabor")).sorted().toList()) {
        lesson(file.toUri().toString(), Files.readString(file));
        waitForLast();
      }
    }
  }

  private void lesson(String uri, String text) throws IOException {
    String name = "\"textDocument\":{\"uri\":" + new JsonPrimitive(uri);
    String opened = name + ",\"languageId\":\"tabor\",\"version\":1,\"text\":";
    String told = "{" + opened + new JsonPrimitive(text) + "}}";
    send(WarmUp.told("textDocument/didOpen", told));
    for (String method : OF_A_FILE) {
      ask(method, "{" + name + "}}");
    }
    List<String> lines = text.lines().toList();
    for (int line = 0; line < lines.size(); line += 3) {
      String place = ",\"position\":{\"line\":%d,\"character\":%d}}";
      String here = "{" + name + "}" + place.formatted(line, lines.get(line).length() / 2);
      for (String method : AT_A_PLACE) {
        ask(method, here);
      }
      String range =
          "{\"start\":{\"line\":%d,\"character\":0},\"end\":{\"line\":%d,\"character\":0}}";
      String lined = "{" + name + "},\"range\":" + range.formatted(line, line + 1);
      ask("codeAction", lined + ",\"context\":{\"diagnostics\":[]}}");
      ask("inlayHint", lined + "}");
    }
  }

  private void ask(String method, String params) throws IOException {
    send(WarmUp.request(number++, "textDocument/" + method, params));
  }
}
