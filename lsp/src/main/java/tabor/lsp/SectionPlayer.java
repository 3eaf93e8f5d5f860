package tabor.lsp;

import java.util.logging.Level;
import java.util.logging.Logger;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.MidiUnavailableException;
import javax.sound.midi.Sequence;
import javax.sound.midi.Sequencer;
import javax.sound.midi.Synthesizer;
import org.jspecify.annotations.Nullable;

/** Plays one thing at a time on the JDK's synthesiser. */
final class SectionPlayer {
  private static final int END_OF_TRACK = 0x2F;

  /** Held here, or its setting would be forgotten. */
  private static final Logger SETTINGS = Logger.getLogger("java.util.prefs");

  private @Nullable Sequencer sequencer;
  private @Nullable Synthesizer synthesizer;

  /** There is nothing to play on. */
  static final class NoSound extends Exception {
    private static final long serialVersionUID = 1;

    NoSound(String message) {
      super(message);
    }
  }

  /**
   * Starts to play; what played before stops.
   *
   * @throws NoSound if there is no device
   */
  synchronized void start(Sequence music) throws NoSound {
    stop();
    SETTINGS.setLevel(Level.OFF);
    try {
      Synthesizer device = MidiSystem.getSynthesizer();
      device.open();
      synthesizer = device;
      Sequencer player = MidiSystem.getSequencer(false);
      sequencer = player;
      player.open();
      player.getTransmitter().setReceiver(device.getReceiver());
      player.setSequence(music);
      player.addMetaEventListener(this::ended);
      player.start();
    } catch (MidiUnavailableException | IllegalArgumentException | SecurityException e) {
      stop();
      throw new NoSound(
          "There is no sound device to play on ("
              + e.getMessage()
              + "). “build” writes MIDI files that any player opens.");
    } catch (InvalidMidiDataException e) {
      stop();
      throw new IllegalStateException(e);
    }
  }

  private void ended(MetaMessage message) {
    if (message.getType() == END_OF_TRACK) {
      // Not from the sequencer's own thread, which waits for itself when it is closed.
      Thread closing = new Thread(this::stop, "tabor-stop");
      closing.setDaemon(true);
      closing.start();
    }
  }

  /** Stops; does nothing if nothing plays. */
  synchronized void stop() {
    if (sequencer != null) {
      sequencer.close();
      sequencer = null;
    }
    if (synthesizer != null) {
      synthesizer.close();
      synthesizer = null;
    }
  }
}
