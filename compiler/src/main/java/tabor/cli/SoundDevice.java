package tabor.cli;

import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.SourceDataLine;
import tabor.audio.PracticeTrack;

/** Something that can be played on. */
interface SoundDevice {
  /** Two channels of 16-bit samples, little-endian. */
  AudioFormat FORMAT = new AudioFormat(PracticeTrack.RATE, 16, 2, true, false);

  /**
   * An open line that sounds what is written to it.
   *
   * @throws LineUnavailableException if there is none or it is taken
   * @throws IllegalArgumentException if no mixer knows the format
   */
  Line open() throws LineUnavailableException;

  /** An open line. */
  interface Line {
    /** Hands over samples; waits while more than a little is still to be heard. */
    void write(byte[] samples);

    /** How many frames have been heard. */
    long heard();

    /** Waits until everything handed over has been heard. */
    void drain();

    /** Falls silent at once and gives the line back. */
    void close();
  }

  /** The system's usual loudspeaker. */
  static SoundDevice ofSystem() {
    return () -> {
      SourceDataLine line = AudioSystem.getSourceDataLine(FORMAT);
      line.open(FORMAT, PracticeTrack.RATE / 5 * FORMAT.getFrameSize());
      line.start();
      return new SystemLine(line);
    };
  }

  /** A line of the JDK's sound system. */
  record SystemLine(SourceDataLine line) implements Line {
    @Override
    public void write(byte[] samples) {
      line.write(samples, 0, samples.length);
    }

    @Override
    public long heard() {
      return line.getLongFramePosition();
    }

    @Override
    public void drain() {
      line.drain();
    }

    @Override
    public void close() {
      line.stop();
      line.flush();
      line.close();
    }
  }
}
