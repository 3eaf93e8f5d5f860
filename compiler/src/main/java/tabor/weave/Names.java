package tabor.weave;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Locale;
import java.util.regex.Pattern;

/** Names of the files that documents show: they follow from what is in the file. */
public final class Names {
  /** What {@link #of} gives, its ending left out. */
  private static final Pattern SHAPE = Pattern.compile("[a-z0-9.-]{1,40}-[0-9a-f]{16}");

  private static final int DIGITS = 16;
  private static final int MOST = 40;

  private Names() {}

  /**
   * A file's name: what it shows, then digits of the SHA-256 of its bytes, so that a picture that
   * changes gets another name and no reader sees an old one.
   *
   * @param what what it shows
   * @param bytes its content
   * @param ending without the dot
   */
  static String of(String what, byte[] bytes, String ending) {
    String clean = what.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9-]+", "-");
    String cut = clean.substring(0, Math.min(MOST, clean.length()));
    return (cut.isEmpty() ? "notation" : cut) + "-" + digest(bytes) + "." + ending;
  }

  /** True for a name that {@link #of} could have given. */
  static boolean isOurs(String file) {
    int dot = file.lastIndexOf('.');
    return dot > 0 && SHAPE.matcher(file.substring(0, dot)).matches();
  }

  private static String digest(byte[] bytes) {
    return HexFormat.of().formatHex(sha256(bytes)).substring(0, DIGITS);
  }

  /** The SHA-256 of some bytes. */
  public static byte[] sha256(byte[] bytes) {
    try {
      return MessageDigest.getInstance("SHA-256").digest(bytes);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e); // every Java has it
    }
  }
}
