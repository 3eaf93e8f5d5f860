package tabor.cli;

import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MidiUnavailableException;
import javax.sound.midi.Sequence;
import javax.sound.midi.Sequencer;
import org.jspecify.annotations.Nullable;

/**
 * Plays sequences one after another on one device. If the process is told to stop while it plays,
 * the device is silenced and closed first.
 */
final class Player implements AutoCloseable {
  private static final int LOOK_MILLIS = 10;

  private final SoundDevice.Opened device;
  private final Thread onExit;

  private Player(SoundDevice.Opened device, Runnable onStop) {
    this.device = device;
    this.onExit =
        new Thread(
            () -> {
              device.close();
              onStop.run();
            },
            "stop playing");
    Runtime.getRuntime().addShutdownHook(onExit);
  }

  /** Told now and then where the music is. */
  interface Listener {
    /** {@code tick} has been reached. */
    void at(long tick);
  }

  /** The part of a sequence that goes round for ever, in ticks. */
  record Loop(long from, long to) {}

  /**
   * Opens a device; {@code onStop} runs last if the process is told to stop.
   *
   * @throws Failure if there is none
   */
  static Player open(SoundDevice device, Runnable onStop) {
    try {
      return new Player(device.open(), onStop);
    } catch (MidiUnavailableException | IllegalArgumentException | SecurityException e) {
      throw Failure.outside(
          "there is no sound device to play on ("
              + e.getMessage()
              + "); tabor build FILE -o FOLDER --as midi writes files that any player opens");
    }
  }

  /** Plays to the end, or for ever where something is to go round. */
  void play(Sequence sequence, @Nullable Loop loop, Listener listener) {
    Sequencer sequencer = device.sequencer();
    try {
      sequencer.setSequence(sequence);
      sequencer.setTickPosition(0);
      if (loop == null) {
        sequencer.setLoopCount(0);
      } else {
        sequencer.setLoopStartPoint(loop.from());
        sequencer.setLoopEndPoint(loop.to());
        sequencer.setLoopCount(Sequencer.LOOP_CONTINUOUSLY);
      }
      sequencer.start();
      while (sequencer.isOpen() && sequencer.isRunning()) {
        listener.at(sequencer.getTickPosition());
        Thread.sleep(LOOK_MILLIS);
      }
    } catch (InvalidMidiDataException e) {
      throw new IllegalStateException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Lets the last sounds die away. */
  void fadeOut(int millis) {
    try {
      Thread.sleep(millis);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  @Override
  public void close() {
    try {
      Runtime.getRuntime().removeShutdownHook(onExit);
      device.close();
    } catch (IllegalStateException e) {
      // The process is stopping already, and the hook closes the device.
      return;
    }
  }
}
