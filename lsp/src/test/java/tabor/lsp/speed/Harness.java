package tabor.lsp.speed;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Measures what an editor's user waits for: start to {@code initialize} answered, opening a file, a
 * keystroke to the diagnostics that answer it. The server runs as a process of its own; every
 * number stands beside the floor's, measured in the same minute.
 *
 * <p>Arguments: edits for each file, milliseconds between edits, then the number of lines of each
 * file. {@code -Dserver=COMMAND} measures that command in place of the server on the class path.
 */
public final class Harness {
  private static final String SECTIONS =
      """
      groove g%1$d "Number %1$d"
        hands : rlrl rlrl rlrl rlrl
        kick  : x . x .
      step s%1$d "Step %1$d"
        right plays ride
        add hihat.foot at 2 4
        accent left at 2e
      """;

  private Harness() {}

  public static void main(String[] args) throws Exception {
    int edits = args.length > 0 ? Integer.parseInt(args[0]) : 300;
    long gap = args.length > 1 ? Long.parseLong(args[1]) : 20;
    List<Integer> sizes = new ArrayList<>();
    for (int i = 2; i < args.length; i++) {
      sizes.add(Integer.parseInt(args[i]));
    }
    if (sizes.isEmpty()) {
      sizes.addAll(List.of(100, 1000, 10_000));
    }
    System.out.println(
        "server lines | start open first | p50 p95 settled-p50 ms | CPU ms/edit | peak MB");
    for (int lines : sizes) {
      run("floor", command("tabor.lsp.speed.FloorServer"), lines, edits, gap);
      String own = System.getProperty("server");
      run("tabor", own == null ? command("tabor.lsp.ServerMain") : List.of(own), lines, edits, gap);
    }
  }

  private static List<String> command(String main) {
    List<String> words = new ArrayList<>();
    words.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    words.addAll(List.of("-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-Xshare:auto"));
    words.addAll(List.of("-cp", System.getProperty("java.class.path"), main));
    return words;
  }

  private static String text(int lines) {
    StringBuilder built = new StringBuilder("title \"Class\"\ntime 4/4\n");
    for (int i = 1; built.chars().filter(c -> c == '\n').count() < lines && i < 1500; i++) {
      built.append(SECTIONS.formatted(i));
    }
    return built.toString();
  }

  private static void run(String name, List<String> command, int lines, int edits, long gap)
      throws Exception {
    String text = text(lines);
    long start = System.nanoTime();
    Process process =
        new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.DISCARD).start();
    try (Wire wire = new Wire(process)) {
      wire.send(
          "{\"jsonrpc\":\"2.0\",\"id\":1,\"method\":\"initialize\",\"params\":{\"processId\":"
              + ProcessHandle.current().pid()
              + ",\"rootUri\":null,\"capabilities\":{\"textDocument\":{\"codeAction\":"
              + "{\"dataSupport\":true,\"resolveSupport\":{\"properties\":[\"edit\"]},"
              + "\"codeActionLiteralSupport\":{\"codeActionKind\":{\"valueSet\":[]}}}}}}}");
      wire.await("\"id\":1");
      double started = since(start);
      wire.send("{\"jsonrpc\":\"2.0\",\"method\":\"initialized\",\"params\":{}}");
      long open = System.nanoTime();
      wire.send(opening("a", text));
      wire.await("publishDiagnostics");
      double opened = since(open);
      Thread.sleep(500);
      int line = lines / 2 / 7 * 7 + 3;
      String row = text.lines().toList().get(line);
      Duration before = cpu(process);
      double[] took = new double[edits];
      for (int i = 0; i < edits; i++) {
        boolean breaks = i % 2 == 0;
        int end = row.length() + (breaks ? 0 : 3);
        String change =
            "{\"jsonrpc\":\"2.0\",\"method\":\"textDocument/didChange\",\"params\":{\"textDocument\":"
                + "{\"uri\":\"file:///none/a.tabor\",\"version\":"
                + (i + 2)
                + "},\"contentChanges\":[{\"range\":{\"start\":{\"line\":"
                + line
                + ",\"character\":"
                + row.length()
                + "},\"end\":{\"line\":"
                + line
                + ",\"character\":"
                + end
                + "}},\"text\":\""
                + (breaks ? " }}" : "")
                + "\"}]}}";
        long at = System.nanoTime();
        wire.send(change);
        wire.await("publishDiagnostics");
        took[i] = since(at);
        Thread.sleep(gap);
      }
      double cpu = cpu(process).minus(before).toMillis() / (double) edits;
      report(name, lines, started, opened, took, cpu, peak(process));
      if (name.equals("tabor")) {
        later(wire, text);
        requests(wire, line);
      }
      wire.send("{\"jsonrpc\":\"2.0\",\"id\":2,\"method\":\"shutdown\"}");
      wire.await("\"id\":2");
      wire.send("{\"jsonrpc\":\"2.0\",\"method\":\"exit\"}");
      process.waitFor();
    }
  }

  /** The same text once more, as a second file: the code is warm now. */
  private static void later(Wire wire, String text) throws IOException {
    long at = System.nanoTime();
    wire.send(opening("b", text));
    wire.await("publishDiagnostics");
    System.out.printf("  a second file: %.1f%n", since(at));
  }

  private static String opening(String name, String text) {
    return "{\"jsonrpc\":\"2.0\",\"method\":\"textDocument/didOpen\",\"params\":{\"textDocument\":"
        + "{\"uri\":\"file:///none/"
        + name
        + ".tabor\",\"languageId\":\"tabor\",\"version\":1,\"text\":\""
        + text.replace("\"", "\\\"").replace("\n", "\\n")
        + "\"}}}";
  }

  /** Requests about the file, each ten times: the first, and the median of the others. */
  private static void requests(Wire wire, int line) throws IOException {
    String here = "\"position\":{\"line\":" + line + ",\"character\":8}";
    String range =
        "\"range\":{\"start\":{\"line\":%d,\"character\":0},\"end\":{\"line\":%d,\"character\":0}}";
    String seen = range.formatted(line, line + 50);
    String cursor = range.formatted(line, line) + ",\"context\":{\"diagnostics\":[]}";
    String options = "\"options\":{\"tabSize\":2,\"insertSpaces\":true}";
    Map<String, String> asked = new LinkedHashMap<>();
    asked.put("semanticTokens/full", "");
    asked.put("semanticTokens/range", "," + seen);
    asked.put("codeLens", "");
    asked.put("documentSymbol", "");
    asked.put("formatting", "," + options);
    asked.put("rangeFormatting", "," + seen + "," + options);
    asked.put("onTypeFormatting", "," + here + ",\"ch\":\"\\n\"," + options);
    asked.put("codeAction", "," + cursor);
    asked.put("completion", "," + here);
    asked.put("hover", "," + here);
    int id = 100;
    for (Map.Entry<String, String> one : asked.entrySet()) {
      double[] took = new double[10];
      for (int i = 0; i < took.length; i++) {
        long at = System.nanoTime();
        wire.send(
            "{\"jsonrpc\":\"2.0\",\"id\":"
                + ++id
                + ",\"method\":\"textDocument/"
                + one.getKey()
                + "\",\"params\":{\"textDocument\":{\"uri\":\"file:///none/a.tabor\"}"
                + one.getValue()
                + "}}");
        wire.await("\"id\":" + id);
        took[i] = since(at);
      }
      double first = took[0];
      Arrays.sort(took, 1, took.length);
      System.out.printf("  %-22s first %6.1f, later %6.1f%n", one.getKey(), first, took[5]);
    }
  }

  private static void report(
      String name, int lines, double started, double opened, double[] took, double cpu, long peak) {
    double[] settled = Arrays.copyOfRange(took, took.length / 2, took.length);
    double first = took[0];
    Arrays.sort(took);
    Arrays.sort(settled);
    System.out.printf(
        "%s %6d | %6.0f %6.1f %6.1f | %6.2f %6.2f %6.2f | %6.2f | %4d%n",
        name,
        lines,
        started,
        opened,
        first,
        took[took.length / 2],
        took[took.length * 95 / 100],
        settled[settled.length / 2],
        cpu,
        peak);
  }

  private static double since(long nanos) {
    return (System.nanoTime() - nanos) / 1e6;
  }

  private static Duration cpu(Process process) {
    return process.info().totalCpuDuration().orElse(Duration.ZERO);
  }

  /** Peak resident memory in MB, where the system tells. */
  private static long peak(Process process) throws IOException {
    Path status = Path.of("/proc", Long.toString(process.pid()), "status");
    if (!Files.exists(status)) {
      return 0;
    }
    for (String line : Files.readAllLines(status)) {
      if (line.startsWith("VmHWM:")) {
        return Long.parseLong(line.replaceAll("\\D", "")) / 1024;
      }
    }
    return 0;
  }

  /** Framed messages to and from the server. */
  private static final class Wire implements AutoCloseable {
    private final Process process;
    private final InputStream in;
    private final OutputStream out;

    Wire(Process process) {
      this.process = process;
      this.in = new BufferedInputStream(process.getInputStream(), 1 << 16);
      this.out = process.getOutputStream();
    }

    void send(String json) throws IOException {
      byte[] body = json.getBytes(StandardCharsets.UTF_8);
      byte[] head =
          ("Content-Length: " + body.length + "\r\n\r\n").getBytes(StandardCharsets.US_ASCII);
      byte[] all = Arrays.copyOf(head, head.length + body.length);
      System.arraycopy(body, 0, all, head.length, body.length);
      out.write(all);
      out.flush();
    }

    /** Reads messages up to one that contains this text. */
    void await(String wanted) throws IOException {
      while (!read().contains(wanted)) {
        // Something else that the server had to say.
      }
    }

    private String read() throws IOException {
      int length = -1;
      StringBuilder line = new StringBuilder();
      while (true) {
        int c = in.read();
        if (c < 0) {
          throw new IOException("the server has left");
        }
        if (c == '\n') {
          String header = line.toString().strip();
          if (header.isEmpty()) {
            return new String(in.readNBytes(length), StandardCharsets.UTF_8);
          }
          if (header.startsWith("Content-Length:")) {
            length = Integer.parseInt(header.substring(15).strip());
          }
          line.setLength(0);
        } else {
          line.append((char) c);
        }
      }
    }

    @Override
    public void close() {
      process.destroy();
    }
  }
}
