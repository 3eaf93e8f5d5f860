package tabor.audio;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.Section;
import tabor.groove.Sheet;
import tabor.perform.Performer;

/**
 * Sections as WAV files: two channels of 16 bits, 44,100 frames a second. A groove or step is a
 * count-in and the section over and over for about half a minute; the file's {@code smpl} chunk
 * marks one round, so that a player that knows loops repeats it for ever without a seam. A chart is
 * played as it is written. (RIFF with {@code fmt}, {@code data} and {@code smpl}: the Multimedia
 * Programming Interface and Data Specifications 1.0 of 1991 and their 1994 additions, from memory;
 * the fields of {@code smpl} were compared with a stored description.)
 */
public final class WavFile {
  /** The longest section that becomes a file, in seconds: 20 minutes are some 200 megabytes. */
  public static final long LONGEST_SECONDS = 20 * 60;

  /** The longest that all files of a lesson may last together: 5 hours are some 3 gigabytes. */
  public static final long MOST_SECONDS = 5 * 60 * 60;

  private static final int BLOCK = 4096;

  /** Bytes of one frame: two channels of 16 bits. */
  private static final int FRAME = 4;

  private static final double LEAST_SECONDS = 30;
  private static final int LEAST_TIMES = 4;

  /** A file of so many bytes, some six minutes, is made while no other such is. */
  private static final int LONG = 1 << 26;

  private static final Object ONE_AT_A_TIME = new Object();

  private WavFile() {}

  /** How long a section lasts once through, in whole seconds, rounded up. */
  public static long seconds(Section section) {
    if (section instanceof Sheet sheet) {
      return Performer.seconds(sheet.inTurn(0, 2));
    }
    return section instanceof Chart chart
        ? Performer.seconds(chart)
        : (Performer.once((Groove) section, 0).lengthMicros() + 999_999) / 1_000_000;
  }

  /** How long the file of a section lasts without its count-in and its ring, in seconds. */
  public static double lasting(Section section) {
    if (section instanceof Groove groove) {
      double once = Performer.round(groove).lengthMicros() / 1e6;
      return once * times(once);
    }
    return seconds(section);
  }

  /** How often a section is played, for so many seconds once. */
  private static long times(double once) {
    long times = Math.max(LEAST_TIMES, (long) Math.ceil(LEAST_SECONDS / once));
    return Math.min(times, Math.max(1, (long) (LONGEST_SECONDS / once)));
  }

  /**
   * The file of a section.
   *
   * @param countIn true for a bar of clicks before a groove or step
   * @throws IllegalArgumentException if the section lasts longer than {@link #LONGEST_SECONDS}
   */
  public static byte[] bytes(Section section, boolean countIn) {
    if (seconds(section) > LONGEST_SECONDS) {
      throw new IllegalArgumentException(section.name() + " is too long for a sound file");
    }
    if (section instanceof Chart || section instanceof Sheet) {
      return bytes(PracticeTrack.once(section, countIn, s -> true));
    }
    long times = times(Performer.round((Groove) section).lengthMicros() / 1e6);
    return bytes(
        times < 2
            ? PracticeTrack.once(section, countIn, s -> true)
            : PracticeTrack.repeated(section, countIn, times, s -> true));
  }

  private static byte[] bytes(PracticeTrack track) {
    // Counted before it is filled: twenty minutes are 200 MB, and a copy would be as much again.
    int length = Math.toIntExact(track.blocks(BLOCK) * BLOCK * FRAME);
    if (length < LONG) {
      return bytes(track, length);
    }
    synchronized (ONE_AT_A_TIME) {
      return bytes(track, length);
    }
  }

  private static byte[] bytes(PracticeTrack track, int length) {
    boolean loops = track.roundLength() > 0;
    int loop = loops ? 8 + 60 : 0;
    ByteBuffer file = ByteBuffer.allocate(44 + length + loop);
    file.order(ByteOrder.LITTLE_ENDIAN);
    tag(file, "RIFF").putInt(36 + length + loop);
    tag(file, "WAVE");
    tag(file, "fmt ").putInt(16).putShort((short) 1).putShort((short) 2);
    file.putInt(PracticeTrack.RATE).putInt(PracticeTrack.RATE * FRAME);
    file.putShort((short) FRAME).putShort((short) 16);
    tag(file, "data").putInt(length);
    float[] left = new float[BLOCK];
    float[] right = new float[BLOCK];
    while (!track.isOver()) {
      track.next(left, right);
      file.put(pcm(left, right));
    }
    if (loops) {
      loop(file, track);
    }
    return file.array();
  }

  /**
   * One forward loop without end over the first repeated round: the one before it rings into it.
   */
  private static void loop(ByteBuffer file, PracticeTrack track) {
    double from = track.roundStart();
    tag(file, "smpl").putInt(60);
    file.putInt(0).putInt(0).putInt(1_000_000_000 / PracticeTrack.RATE).putInt(60);
    file.putInt(0).putInt(0).putInt(0).putInt(1).putInt(0);
    file.putInt(0).putInt(0);
    file.putInt((int) Math.round(from * PracticeTrack.RATE));
    file.putInt((int) Math.round((from + track.roundLength()) * PracticeTrack.RATE) - 1);
    file.putInt(0).putInt(0);
  }

  private static ByteBuffer tag(ByteBuffer file, String name) {
    return file.put(name.getBytes(StandardCharsets.US_ASCII));
  }

  /** Frames as 16-bit little-endian samples, left and right in turn. */
  public static byte[] pcm(float[] left, float[] right) {
    ByteBuffer bytes = ByteBuffer.allocate(left.length * 4).order(ByteOrder.LITTLE_ENDIAN);
    for (int i = 0; i < left.length; i++) {
      bytes.putShort(sample(left[i]));
      bytes.putShort(sample(right[i]));
    }
    return bytes.array();
  }

  private static short sample(float value) {
    return (short) Math.round(Math.max(-1, Math.min(1, value)) * 32767);
  }
}
