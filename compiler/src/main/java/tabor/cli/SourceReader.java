package tabor.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.DirectoryStream;
import java.nio.file.FileSystemLoopException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.source.Passage;
import tabor.source.Span;
import tabor.source.Spot;

/** Reads a source: at most 4 MiB of UTF-8, or a diagnostic that says what is in the way. */
final class SourceReader {
  private SourceReader() {}

  /** The largest source in bytes. */
  static final int MOST = 4 << 20;

  /** The name that a source from standard input goes by. */
  static final String STDIN = "-";

  /**
   * What was read.
   *
   * @param text the text; where it could not be read whole, the part that {@code problem} shows
   * @param problem why it cannot be compiled; null if it can
   */
  record Read(String text, @Nullable Diagnostic problem) {}

  /** Reads a file, or {@code in} where the path is {@code -}. */
  static Read read(Path file, InputStream in) {
    if (file.toString().equals(STDIN)) {
      return read(in);
    }
    if (Files.isDirectory(file)) {
      return folder(file);
    }
    try (InputStream from = Files.newInputStream(file)) {
      return read(from);
    } catch (IOException e) {
      return unreadable("this file cannot be read: " + reason(e));
    }
  }

  /** The text of a file, or of {@code in}; fails with a sentence that names it. */
  static String text(Path file, InputStream in) {
    Read read = read(file, in);
    if (read.problem() != null) {
      throw Failure.outside(file + ": " + read.problem().message());
    }
    return read.text();
  }

  private static Read folder(Path folder) {
    try (DirectoryStream<Path> unused = Files.newDirectoryStream(folder)) {
      return unreadable("this is a folder, not a file");
    } catch (IOException e) {
      return unreadable("this folder cannot be read: " + reason(e));
    }
  }

  private static Read read(InputStream from) {
    byte[] bytes;
    try {
      bytes = from.readNBytes(MOST + 1);
    } catch (IOException e) {
      return unreadable("this file cannot be read: " + reason(e));
    }
    if (bytes.length > MOST) {
      return problem(
          Code.TOO_LONG,
          "this file is larger than 4 MiB",
          "Split it into several files, and join them with use \"other.tabor\".");
    }
    return decode(bytes);
  }

  /** Decodes UTF-8 strictly. */
  static Read decode(byte[] bytes) {
    CharsetDecoder decoder =
        StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
    ByteBuffer in = ByteBuffer.wrap(bytes);
    try {
      return new Read(decoder.decode(in).toString(), null);
    } catch (CharacterCodingException e) {
      return notUtf8(bytes);
    }
  }

  private static Read notUtf8(byte[] bytes) {
    CharsetDecoder decoder = StandardCharsets.UTF_8.newDecoder();
    ByteBuffer in = ByteBuffer.wrap(bytes);
    CharBuffer out = CharBuffer.allocate(bytes.length);
    CoderResult result = decoder.decode(in, out, true);
    int at = in.position();
    out.flip();
    int start = out.length();
    int bad = Math.max(1, result.isError() ? result.length() : 1);
    String rest =
        new String(
            bytes,
            Math.min(bytes.length, at + bad),
            bytes.length - Math.min(bytes.length, at + bad),
            StandardCharsets.UTF_8);
    String text = out + "\uFFFD" + rest;
    boolean wide =
        bytes.length > 1
            && ((bytes[0] == (byte) 0xFF && bytes[1] == (byte) 0xFE)
                || (bytes[0] == (byte) 0xFE && bytes[1] == (byte) 0xFF));
    Passage passage = new Passage(text);
    return new Read(
        text,
        Diagnostic.of(
                Code.NOT_UTF8,
                new Spot(passage, new Span(start, start + 1)),
                String.format("byte %d of this file, %02X, is not UTF-8", at + 1, bytes[at] & 0xFF))
            .help(
                wide
                    ? "The file is UTF-16. Save it again with the encoding UTF-8."
                    : "Save the file again with the encoding UTF-8."));
  }

  /** What could not be read at all. */
  static Read unreadable(String why) {
    return problem(Code.UNREADABLE, why, null);
  }

  private static Read problem(Code code, String why, @Nullable String help) {
    Spot start = new Spot(new Passage(""), new Span(0, 0));
    return new Read("", Diagnostic.of(code, start, why).help(help));
  }

  /** A failure of the file system in a few words, without the path. */
  static String reason(IOException e) {
    if (e instanceof NoSuchFileException) {
      return "it is not there";
    }
    if (e instanceof AccessDeniedException) {
      return "permission is missing";
    }
    if (e instanceof FileSystemLoopException) {
      return "its links go round in a circle";
    }
    String message = e.getMessage();
    if (e instanceof java.nio.file.FileSystemException fs && fs.getReason() != null) {
      message = fs.getReason();
    }
    return message == null ? e.getClass().getSimpleName() : message;
  }
}
