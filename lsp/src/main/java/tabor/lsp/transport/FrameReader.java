package tabor.lsp.transport;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.Charset;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.StandardCharsets;
import java.nio.charset.UnsupportedCharsetException;
import java.util.Arrays;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Cuts a stream into the bodies of messages. What is no message is passed over up to the next
 * header, whatever it is and however long: a JSON text cannot hold a header line, since in its
 * strings line ends are escaped.
 */
public final class FrameReader {
  /** In bytes; a text of 4 MiB takes 24 MiB if every character is escaped. */
  static final int LONGEST_BODY = 64 << 20;

  /** Of a line that is longer, only the end is kept: a header may stand there. */
  private static final int LONGEST_LINE = 8192;

  private static final int KEPT = 256;

  private static final Pattern LENGTH =
      Pattern.compile("content-length[ \t]*:[ \t]*([0-9]+)[ \t]*$", Pattern.CASE_INSENSITIVE);

  private static final Pattern HEADER = Pattern.compile("[A-Za-z][A-Za-z-]*[ \t]*:.*");
  private static final Pattern CHARSET =
      Pattern.compile("charset[ \t]*=[ \t]*\"?([^\";\\s]+)", Pattern.CASE_INSENSITIVE);

  /** Headers in what was taken for a body; made when first needed. */
  private static final class Swallowed {
    /** As it stands in a body that swallowed the next message. */
    private static final Pattern INSIDE =
        Pattern.compile("content-length[ \t]*:[ \t]*[0-9]+[ \t]*\r?\n", Pattern.CASE_INSENSITIVE);

    /** The first letters of one at the end of such a body. */
    private static final Pattern BEGUN = Pattern.compile(begun(), Pattern.CASE_INSENSITIVE);

    private Swallowed() {}

    private static String begun() {
      StringBuilder pattern = new StringBuilder();
      String head = "content-length";
      for (int i = 0; i < head.length(); i++) {
        pattern.append(i == 0 ? "" : "(?:").append(head.charAt(i));
      }
      pattern.append("(?:[ \t]*:[ \t]*[0-9]*\r?)?");
      return pattern.append(")?".repeat(head.length() - 1)).append("$").toString();
    }
  }

  private final InputStream in;
  private byte[] buffer = new byte[1 << 16];
  private int at;
  private int limit;

  /** True after something broken, whose rest is passed over without another word. */
  private boolean skipping;

  private long length = -1;
  private boolean anyHeader;
  private String charset = "utf-8";

  /** Reads from a stream. */
  public FrameReader(InputStream in) {
    this.in = in;
  }

  /**
   * A body, or why there is none.
   *
   * @param body the text; empty if there is a problem
   * @param bytes the same as it came
   * @param problem in words; null for a body
   */
  @SuppressWarnings("ArrayRecordComponent") // never compared
  public record Frame(String body, byte[] bytes, @Nullable String problem) {}

  /** True if more has come than was read. Asked by the thread that reads. */
  public boolean hasMore() {
    try {
      return at < limit || in.available() > 0;
    } catch (IOException e) {
      return false;
    }
  }

  /**
   * The next frame; null at the end of the stream.
   *
   * @throws IOException if the stream breaks
   */
  public @Nullable Frame next() throws IOException {
    while (true) {
      String line = line();
      if (line == null) {
        return null;
      }
      if (line.isEmpty()) {
        if (!anyHeader) {
          continue;
        }
        Frame frame = length < 0 ? problemOnce("a header without a Content-Length") : body();
        boolean ended = frame == null && length >= 0;
        if (frame != null && frame.problem() == null) {
          skipping = false;
        }
        resetHeader();
        if (frame != null || ended) {
          return frame;
        }
        continue;
      }
      Frame problem = header(line);
      if (problem != null) {
        return problem;
      }
    }
  }

  /** Takes a line in; what is none of a header is a problem, once. */
  private @Nullable Frame header(String line) {
    Matcher number = LENGTH.matcher(line);
    if (number.find()) {
      // In front of it may stand the rest of a message that was longer than it said.
      boolean clean = number.start() == 0;
      if (!clean) {
        resetHeader();
      }
      anyHeader = true;
      length = number.group(1).length() > 18 ? Long.MAX_VALUE : Long.parseLong(number.group(1));
      return clean ? null : problemOnce("text between two messages");
    }
    if (!HEADER.matcher(line).matches()) {
      resetHeader();
      return problemOnce("text between two messages");
    }
    if (line.toLowerCase(Locale.ROOT).startsWith("content-type")) {
      Matcher name = CHARSET.matcher(line);
      charset = name.find() ? name.group(1) : charset;
    }
    anyHeader = true;
    return null;
  }

  private void resetHeader() {
    length = -1;
    anyHeader = false;
    charset = "utf-8";
  }

  private @Nullable Frame problemOnce(String words) {
    return skipping ? null : problem(words);
  }

  private Frame problem(String words) {
    skipping = true;
    return new Frame("", new byte[0], words);
  }

  private @Nullable Frame body() throws IOException {
    if (length > LONGEST_BODY) {
      return problem("a message of more than " + (LONGEST_BODY >> 20) + " MiB");
    }
    byte[] bytes = bytes((int) length);
    if (bytes == null) {
      return null;
    }
    Charset encoding = encoding(charset);
    return encoding == null
        ? new Frame("", bytes, "the charset " + charset + ", which is not known here; use utf-8")
        : new Frame(new String(bytes, encoding), bytes, null);
  }

  private static @Nullable Charset encoding(String name) {
    if (name.equalsIgnoreCase("utf8")) {
      return StandardCharsets.UTF_8;
    }
    try {
      return Charset.forName(name);
    } catch (IllegalCharsetNameException | UnsupportedCharsetException e) {
      return null;
    }
  }

  /** A body could not be read: if it has swallowed a header, reading goes on there. */
  public void broken(Frame frame) {
    skipping = true;
    String text = new String(frame.bytes(), StandardCharsets.ISO_8859_1);
    Matcher swallowed = Swallowed.INSIDE.matcher(text);
    Matcher begun =
        Swallowed.BEGUN.matcher(text).region(Math.max(0, text.length() - KEPT), text.length());
    int start = swallowed.find() ? swallowed.start() : begun.find() ? begun.start() : -1;
    if (start >= 0) {
      byte[] again = Arrays.copyOfRange(frame.bytes(), start, frame.bytes().length);
      byte[] joined = Arrays.copyOf(again, again.length + limit - at);
      System.arraycopy(buffer, at, joined, again.length, limit - at);
      buffer = joined;
      at = 0;
      limit = joined.length;
    }
  }

  /** A line without its end, of a very long one the last characters; null at the end. */
  private @Nullable String line() throws IOException {
    byte[] line = new byte[KEPT];
    int count = 0;
    while (true) {
      int next = read();
      if (next < 0) {
        return null;
      }
      if (next == '\n') {
        int end = count > 0 && line[count - 1] == '\r' ? count - 1 : count;
        return new String(line, 0, end, StandardCharsets.ISO_8859_1);
      }
      if (count == LONGEST_LINE) {
        System.arraycopy(line, count - KEPT, line, 0, KEPT);
        count = KEPT;
        line[0] = 0; // no header starts here any more
      }
      if (count == line.length) {
        line = Arrays.copyOf(line, count * 2);
      }
      line[count++] = (byte) next;
    }
  }

  private int read() throws IOException {
    if (at == limit && !fill()) {
      return -1;
    }
    return buffer[at++];
  }

  private boolean fill() throws IOException {
    if (buffer.length != 1 << 16) {
      buffer = new byte[1 << 16];
    }
    at = 0;
    limit = Math.max(0, in.read(buffer, 0, buffer.length));
    return limit > 0;
  }

  /** So many bytes; null if the stream ends before. Little more is set aside than has come. */
  private byte @Nullable [] bytes(int count) throws IOException {
    byte[] found = new byte[Math.min(count, 1 << 20)];
    int have = Math.min(count, limit - at);
    found = have > found.length ? new byte[have] : found;
    System.arraycopy(buffer, at, found, 0, have);
    at += have;
    while (have < count) {
      if (have == found.length) {
        found = Arrays.copyOf(found, (int) Math.min(count, have * 2L));
      }
      int more = in.read(found, have, found.length - have);
      if (more < 0) {
        return null;
      }
      have += more;
    }
    return found;
  }
}
