package tabor.cli;

import java.util.logging.Level;
import java.util.logging.Logger;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.MidiUnavailableException;
import javax.sound.midi.Sequencer;
import javax.sound.midi.Synthesizer;

/** Something that can be played on. */
interface SoundDevice {
  /** An open sequencer that sounds; closing the result closes everything. */
  Opened open() throws MidiUnavailableException;

  /** An open sequencer and what has to be closed after it. */
  record Opened(Sequencer sequencer, Runnable after) {
    void close() {
      if (sequencer.isOpen()) {
        sequencer.stop();
        sequencer.close();
      }
      after.run();
    }
  }

  /** Where the JDK's synthesiser keeps its settings; held here, or it would be forgotten. */
  Logger SETTINGS = Logger.getLogger("java.util.prefs");

  /** The JDK's own synthesiser. */
  static SoundDevice ofJdk() {
    return () -> {
      // It tells of a settings folder that it makes, which is nobody's business here.
      SETTINGS.setLevel(Level.OFF);
      Synthesizer synthesizer = MidiSystem.getSynthesizer();
      synthesizer.open();
      Sequencer sequencer = MidiSystem.getSequencer(false);
      sequencer.open();
      sequencer.getTransmitter().setReceiver(synthesizer.getReceiver());
      return new Opened(sequencer, synthesizer::close);
    };
  }
}
