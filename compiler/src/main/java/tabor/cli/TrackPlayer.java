package tabor.cli;

import java.util.function.DoubleConsumer;
import javax.sound.sampled.LineUnavailableException;
import tabor.audio.PracticeTrack;
import tabor.audio.WavFile;

/**
 * Plays tracks one after another on one device. If the process is told to stop while it plays, the
 * device is silenced and closed first.
 */
final class TrackPlayer implements AutoCloseable {
  /** Frames handed over at a time: a fortieth of a second. */
  private static final int BLOCK = 1024;

  private final SoundDevice.Line line;
  private final Thread onExit;
  private volatile boolean stopped;
  private long before;

  private TrackPlayer(SoundDevice.Line line, Runnable onStop) {
    this.line = line;
    this.onExit =
        new Thread(
            () -> {
              stopped = true;
              line.close();
              onStop.run();
            },
            "stop playing");
    Runtime.getRuntime().addShutdownHook(onExit);
  }

  /**
   * Opens a device; {@code onStop} runs last if the process is told to stop.
   *
   * @throws Failure if there is none
   */
  static TrackPlayer open(SoundDevice device, Runnable onStop) {
    try {
      return new TrackPlayer(device.open(), onStop);
    } catch (LineUnavailableException | IllegalArgumentException | SecurityException e) {
      throw Failure.outside(
          "there is no sound device to play on ("
              + e.getMessage()
              + "); tabor build FILE -o FOLDER --as wav writes files that any player opens");
    }
  }

  /**
   * Plays a track to its end, or until it is stopped.
   *
   * @param listener told now and then how many seconds of the track have been heard
   */
  void play(PracticeTrack track, DoubleConsumer listener) {
    float[] left = new float[BLOCK];
    float[] right = new float[BLOCK];
    long frames = 0;
    while (!stopped && !track.isOver()) {
      track.next(left, right);
      line.write(WavFile.pcm(left, right));
      frames += BLOCK;
      listener.accept((line.heard() - before) / (double) PracticeTrack.RATE);
    }
    before += frames;
  }

  /** Stops what plays; no more is handed over. */
  void stop() {
    stopped = true;
  }

  @Override
  public void close() {
    try {
      Runtime.getRuntime().removeShutdownHook(onExit);
    } catch (IllegalStateException e) {
      // The process is stopping already, and the hook closes the device.
      return;
    }
    if (!stopped) {
      line.drain();
    }
    line.close();
  }
}
