package tabor.cli;

import java.io.BufferedInputStream;
import java.io.FileDescriptor;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * What a command speaks to: streams, environment and whether a person sits at them. Text is UTF-8
 * whatever the locale says, so that a redirected grid is the same everywhere.
 *
 * @param in standard input
 * @param out standard output, for what was asked for
 * @param err standard error, for what went wrong and for progress
 * @param outTerminal true if a person reads {@code out}
 * @param errTerminal true if a person reads {@code err}
 * @param env environment variables
 * @param outTrouble what last went wrong while writing to {@code out}
 */
public record Io(
    InputStream in,
    PrintStream out,
    PrintStream err,
    boolean outTerminal,
    boolean errTerminal,
    Map<String, String> env,
    Trouble outTrouble) {

  /** Remembers the first failure of a stream, which {@link PrintStream} would swallow. */
  static final class Trouble {
    private @Nullable IOException first;

    /** The first failure; null if there was none. */
    @Nullable IOException first() {
      return first;
    }

    /** True if the reader has gone away, as {@code head} does: nobody needs to be told. */
    boolean readerGone() {
      String message = first == null ? null : first.getMessage();
      return message != null && message.contains("roken pipe");
    }
  }

  private static final class Watched extends OutputStream {
    private final OutputStream to;
    private final Trouble trouble;

    Watched(OutputStream to, Trouble trouble) {
      this.to = to;
      this.trouble = trouble;
    }

    @Override
    public void write(int b) throws IOException {
      write(new byte[] {(byte) b}, 0, 1);
    }

    @Override
    public void write(byte[] bytes, int from, int length) throws IOException {
      try {
        to.write(bytes, from, length);
      } catch (IOException e) {
        if (trouble.first == null) {
          trouble.first = e;
        }
        throw e;
      }
    }

    @Override
    public void flush() throws IOException {
      to.flush();
    }
  }

  /** Standard input that whoever started the process has closed. */
  private static final class Closed extends InputStream {
    @Override
    public int read() throws IOException {
      throw new IOException(CLOSED);
    }

    @Override
    public int read(byte[] into, int from, int length) throws IOException {
      throw new IOException(CLOSED);
    }
  }

  /** Standard output that whoever started the process has closed. */
  private static final class Nowhere extends OutputStream {
    @Override
    public void write(int b) throws IOException {
      throw new IOException(CLOSED);
    }
  }

  private static final String CLOSED = "it is closed";

  private static boolean isClosed(String property) {
    return "closed".equals(System.getProperty(property));
  }

  /** The process's own streams. The launcher says which of them is a terminal. */
  public static Io ofProcess() {
    return of(
        // Buffered, because a bare FileInputStream asks a pipe for its position and fails.
        isClosed("tabor.in")
            ? new Closed()
            : new BufferedInputStream(new FileInputStream(FileDescriptor.in)),
        isClosed("tabor.out") ? new Nowhere() : new FileOutputStream(FileDescriptor.out),
        new FileOutputStream(FileDescriptor.err),
        isTerminal("tabor.out"),
        isTerminal("tabor.err"),
        System.getenv());
  }

  /** Streams of a caller's own. */
  static Io of(
      InputStream in,
      OutputStream out,
      OutputStream err,
      boolean outTerminal,
      boolean errTerminal,
      Map<String, String> env) {
    Trouble trouble = new Trouble();
    return new Io(
        in,
        printer(new Watched(out, trouble)),
        printer(err),
        outTerminal,
        errTerminal,
        env,
        trouble);
  }

  /** The same with another standard error. */
  Io withErr(OutputStream other) {
    return new Io(in, out, printer(other), outTerminal, errTerminal, env, outTrouble);
  }

  private static PrintStream printer(OutputStream to) {
    return new PrintStream(
        new java.io.BufferedOutputStream(to, 1 << 13), false, StandardCharsets.UTF_8);
  }

  private static boolean isTerminal(String property) {
    String said = System.getProperty(property);
    return said == null ? System.console() != null : said.equals("terminal");
  }

  /** True if colour is welcome on standard output. */
  boolean colourOut() {
    return outTerminal && wantsColour();
  }

  /** True if colour is welcome on standard error. */
  boolean colourErr() {
    return errTerminal && wantsColour();
  }

  /** NO_COLOR as no-color.org has it: set and not empty. */
  private boolean wantsColour() {
    return env.getOrDefault("NO_COLOR", "").isEmpty() && !"dumb".equals(env.get("TERM"));
  }
}
