package tabor.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.HexFormat;
import java.util.concurrent.TimeUnit;
import java.util.zip.CRC32;
import java.util.zip.CRC32C;
import java.util.zip.Checksum;
import org.jspecify.annotations.Nullable;

/**
 * What a file was like when it was last looked at. Its content is known by two checksums, CRC-32
 * and CRC-32C, 64 bits together: they tell what changed by accident or by somebody's work, which is
 * all that is asked, and cost next to nothing, where a SHA-256 cost a fifth of the time of a build
 * of large drawings.
 *
 * @param size in bytes; -1 for a file that is not there
 * @param stamp when it was last written, in nanoseconds since 1970
 * @param digest the checksums of its content, in hexadecimal digits; empty for one that is not
 *     there
 */
record Fingerprint(long size, long stamp, String digest) {
  /** A file that is not there. */
  static final Fingerprint MISSING = new Fingerprint(-1, 0, "");

  /** Written so shortly before it was looked at, a file may have changed once more unseen. */
  private static final long RACE_MILLIS = 2000;

  /** A file with this content. */
  static Fingerprint of(Path file, byte[] content) {
    BasicFileAttributes now = attributes(file);
    return now == null ? MISSING : new Fingerprint(content.length, stamp(now), digest(content));
  }

  private static String digest(byte[] content) {
    return sum(new CRC32(), content) + sum(new CRC32C(), content);
  }

  private static String sum(Checksum checksum, byte[] content) {
    checksum.update(content, 0, content.length);
    return HexFormat.of().toHexDigits((int) checksum.getValue());
  }

  /** A file as it is now. */
  static Fingerprint of(Path file) {
    try {
      return of(file, Files.readAllBytes(file));
    } catch (IOException e) {
      return MISSING;
    }
  }

  /** True if the file was written after a moment, in milliseconds since 1970, or just before. */
  boolean isLater(long millis) {
    return TimeUnit.NANOSECONDS.toMillis(stamp) >= millis - 20;
  }

  /**
   * True if a file is still as it was: by its size and time where they tell, else by its content.
   *
   * @param seenMillis when the fingerprint was taken, in milliseconds since 1970
   */
  boolean stillHolds(Path file, long seenMillis) {
    BasicFileAttributes now = attributes(file);
    if (now == null || size < 0) {
      return now == null && size < 0;
    }
    if (now.size() != size) {
      return false;
    }
    long stampMillis = TimeUnit.NANOSECONDS.toMillis(stamp);
    boolean settled = stampMillis < seenMillis - RACE_MILLIS;
    return (settled && stamp(now) == stamp) || of(file).digest.equals(digest);
  }

  private static @Nullable BasicFileAttributes attributes(Path file) {
    try {
      BasicFileAttributes found = Files.readAttributes(file, BasicFileAttributes.class);
      return found.isRegularFile() ? found : null;
    } catch (IOException e) {
      return null;
    }
  }

  private static long stamp(BasicFileAttributes attributes) {
    return attributes.lastModifiedTime().to(TimeUnit.NANOSECONDS);
  }
}
