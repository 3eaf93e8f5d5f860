package tabor.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.util.Arrays;

/**
 * Writes outputs. A file appears whole or not at all: its bytes go to a neighbour first, which then
 * takes its name in one move. An output that already has these bytes is left alone with its time
 * stamp, and one that cannot be replaced stays as it was.
 */
public final class OutputFiles {
  private static final int PIECE = 1 << 16;

  private OutputFiles() {}

  /** What became of an output. */
  enum Outcome {
    /** It was not there. */
    NEW,
    /** It was there with other bytes. */
    CHANGED,
    /** It was there with these bytes. */
    UNCHANGED
  }

  /** Makes a folder and those above it; fails with a sentence for the person who named it. */
  static void makeFolder(Path folder) {
    try {
      Files.createDirectories(folder);
      PartFiles.sweep(folder);
    } catch (FileAlreadyExistsException e) {
      throw Failure.outside("cannot write into " + folder + ": it is a file, not a folder");
    } catch (IOException e) {
      throw Failure.outside("cannot make the folder " + folder + ": " + SourceReader.reason(e));
    }
  }

  /** Writes one output; fails with a sentence that names it, and leaves nothing half done. */
  static Outcome write(Path file, byte[] bytes) {
    try {
      return put(file, bytes);
    } catch (IOException e) {
      throw Failure.outside("cannot write " + file + ": " + SourceReader.reason(e));
    }
  }

  /** {@linkplain #write(Path, byte[]) Writes} a text in UTF-8. */
  static Outcome write(Path file, String text) {
    return write(file, text.getBytes(StandardCharsets.UTF_8));
  }

  private static Outcome put(Path file, byte[] bytes) throws IOException {
    if (Files.isDirectory(file)) {
      throw new IOException("a folder has this name");
    }
    boolean there = Files.exists(file);
    if (there && !Files.isRegularFile(file)) {
      throw new IOException("it is a device or a pipe, not a file");
    }
    if (!there && Files.isSymbolicLink(file)) {
      throw new IOException("it is a link that leads nowhere");
    }
    if (there && holds(file, bytes)) {
      return Outcome.UNCHANGED;
    }
    // Behind a link the file itself is replaced, and the link stays.
    Path real = there ? file.toRealPath() : file;
    if (there && !Files.isWritable(real)) {
      throw new AccessDeniedException(file.toString());
    }
    Path beside = PartFiles.beside(real);
    try {
      replace(real, beside, bytes);
    } finally {
      PartFiles.remove(beside);
    }
    return there ? Outcome.CHANGED : Outcome.NEW;
  }

  /** True if a file has just these bytes; throws an exception if it cannot be read. */
  public static boolean holds(Path file, byte[] bytes) throws IOException {
    if (Files.size(file) != bytes.length) {
      return false;
    }
    // Piece by piece: a sound file is 200 MB.
    try (InputStream there = Files.newInputStream(file)) {
      for (int at = 0; at < bytes.length; ) {
        byte[] piece = there.readNBytes(Math.min(PIECE, bytes.length - at));
        int end = at + piece.length;
        if (piece.length == 0 || !Arrays.equals(piece, 0, piece.length, bytes, at, end)) {
          return false;
        }
        at = end;
      }
      return true;
    }
  }

  /**
   * Writes a file by way of a neighbour, which takes its name in one move, and its permissions if
   * it was there; throws an exception if that cannot be done.
   */
  public static void replace(Path file, Path beside, byte[] bytes) throws IOException {
    Files.write(beside, bytes);
    PosixFileAttributeView view = Files.getFileAttributeView(beside, PosixFileAttributeView.class);
    if (view != null && Files.exists(file)) {
      view.setPermissions(Files.getPosixFilePermissions(file));
    }
    try {
      Files.move(beside, file, StandardCopyOption.ATOMIC_MOVE);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(beside, file, StandardCopyOption.REPLACE_EXISTING);
    }
  }
}
