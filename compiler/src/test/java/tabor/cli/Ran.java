package tabor.cli;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;

/**
 * A command that was run in this process.
 *
 * @param code its exit code
 * @param out what it printed
 * @param err what it complained about
 */
record Ran(int code, String out, String err) {
  /** Runs with nothing on standard input and no terminal. */
  static Ran of(String... words) {
    return on(new byte[0], Map.of(), false, words);
  }

  /** Runs with a text on standard input. */
  static Ran reading(String text, String... words) {
    return on(text.getBytes(StandardCharsets.UTF_8), Map.of(), false, words);
  }

  static Ran on(byte[] in, Map<String, String> env, boolean terminal, String... words) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Io io = Io.of(new ByteArrayInputStream(in), out, err, terminal, terminal, env);
    int code = Main.run(words, io);
    return new Ran(
        code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }
}
