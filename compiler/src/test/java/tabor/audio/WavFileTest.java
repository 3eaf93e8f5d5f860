package tabor.audio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.UnsupportedAudioFileException;
import org.junit.jupiter.api.Test;
import tabor.groove.Chart;
import tabor.groove.Groove;
import tabor.groove.PageNotes;
import tabor.kit.Limb;
import tabor.rhythm.Feel;
import tabor.testing.Sketch;

class WavFileTest {
  /** The two grooves whose level was measured before the sounds were made louder. */
  private static final Groove BEAT =
      Sketch.groove("beat")
          .tempo(96)
          .part(Limb.RIGHT_HAND, "hihat", "xx xx xx xx")
          .part(Limb.LEFT_HAND, "snare", ".ggg X..g .g.. X..g")
          .part(Limb.RIGHT_FOOT, "kick", "x. .x xx ..")
          .done();

  private static byte[] pcm(byte[] file) throws IOException, UnsupportedAudioFileException {
    try (AudioInputStream in = AudioSystem.getAudioInputStream(new ByteArrayInputStream(file))) {
      assertThat(in.getFormat().toString())
          .contains("PCM_SIGNED 44100.0 Hz, 16 bit, stereo, 4 bytes/frame, little-endian");
      return in.readAllBytes();
    }
  }

  private static double[][] channels(byte[] pcm) {
    ByteBuffer bytes = ByteBuffer.wrap(pcm).order(ByteOrder.LITTLE_ENDIAN);
    double[][] channels = new double[2][pcm.length / 4];
    for (int i = 0; i < channels[0].length; i++) {
      channels[0][i] = bytes.getShort(4 * i) / 32767.0;
      channels[1][i] = bytes.getShort(4 * i + 2) / 32767.0;
    }
    return channels;
  }

  /**
   * Once through at 96, from a tenth of a second before the first stroke, both channels together:
   * the page of the version before had -22.8 dB and a peak of 0.54.
   */
  @Test
  void itIsSixDecibelsLouderThanItWasAndDoesNotClip()
      throws IOException, UnsupportedAudioFileException {
    double[][] sound = channels(pcm(WavFile.bytes(BEAT, false)));
    double sum = 0;
    double peak = 0;
    int frames = (int) (2.5 * 44100);
    for (int i = 0; i < frames; i++) {
      double middle = (sound[0][i] + sound[1][i]) / 2;
      sum += middle * middle;
      peak = Math.max(peak, Math.max(Math.abs(sound[0][i]), Math.abs(sound[1][i])));
    }
    double level = 10 * Math.log10(sum / (frames + 4410));
    assertThat(level).isGreaterThan(-22.8 + 6);
    assertThat(peak).isLessThan(0.999);
  }

  @Test
  void aGrooveIsALoopWithItsCountIn() throws IOException, UnsupportedAudioFileException {
    byte[] file = WavFile.bytes(BEAT, true);
    double seconds = pcm(file).length / 4.0 / 44100.0;
    assertThat(seconds).as("half a minute, a bar of count-in, a tail").isBetween(32.4, 40.0);
    // The loop of the smpl chunk is one bar of 2.5 seconds, the second after the count-in.
    int at = new String(file, StandardCharsets.ISO_8859_1).lastIndexOf("smpl");
    ByteBuffer chunk = ByteBuffer.wrap(file).order(ByteOrder.LITTLE_ENDIAN);
    assertThat(chunk.getInt(at + 4)).isEqualTo(60);
    assertThat(chunk.getInt(at + 8 + 28)).as("loops").isEqualTo(1);
    int from = chunk.getInt(at + 8 + 36 + 8);
    int to = chunk.getInt(at + 8 + 36 + 12);
    assertThat(from / 44100.0).isCloseTo(5.0, within(1e-4));
    assertThat((to + 1 - from) / 44100.0).isCloseTo(2.5, within(1e-4));
    assertThat(chunk.getInt(4)).as("RIFF's own length").isEqualTo(file.length - 8);
  }

  @Test
  void theLoopHasNoSeam() throws IOException, UnsupportedAudioFileException {
    double[][] sound = channels(pcm(WavFile.bytes(BEAT, true)));
    int from = (int) Math.round(5.0 * 44100);
    int length = (int) Math.round(2.5 * 44100);
    // What rings on at the start of the loop rings on at its end too, but for the one per cent by
    // which strokes differ.
    for (double[] channel : sound) {
      double start = rms(channel, from, 2000);
      double end = rms(channel, from + length, 2000);
      assertThat(20 * Math.log10(end / start)).isCloseTo(0, within(1.0));
    }
  }

  private static double rms(double[] samples, int from, int length) {
    double sum = 0;
    for (int i = from; i < from + length; i++) {
      sum += samples[i] * samples[i];
    }
    return Math.sqrt(sum / length);
  }

  @Test
  void theSameSectionGivesTheSameBytes() {
    assertThat(WavFile.bytes(BEAT, true)).isEqualTo(WavFile.bytes(BEAT, true));
  }

  /** The length is said before a sample is made, so it has to be what playing comes to. */
  @Test
  void asManyBlocksAreCountedAsArePlayed() {
    for (PracticeTrack track :
        List.of(
            PracticeTrack.once(BEAT, true, sound -> true),
            PracticeTrack.repeated(BEAT, false, 3, sound -> true))) {
      long counted = track.blocks(1000);
      long played = 0;
      while (!track.isOver()) {
        track.next(new float[1000], new float[1000]);
        played++;
      }
      assertThat(counted).isEqualTo(played).isPositive();
    }
  }

  @Test
  void aChartIsAsLongAsItIsAndOneThatIsTooLongIsRefused()
      throws IOException, UnsupportedAudioFileException {
    Chart.Turn turn = new Chart.Turn(BEAT, BEAT.setting().tempo(), Feel.STRAIGHT);
    Chart three = chart(new Chart.Play(List.of(turn), 3));
    double seconds = pcm(WavFile.bytes(three, true)).length / 4.0 / 44100.0;
    assertThat(seconds).isBetween(7.5, 9.5);
    Chart hour = chart(new Chart.Play(List.of(turn), 1440));
    assertThat(WavFile.seconds(hour)).isEqualTo(3600);
    assertThatThrownBy(() -> WavFile.bytes(hour, true))
        .isInstanceOf(IllegalArgumentException.class);
  }

  private static Chart chart(Chart.Item item) {
    return new Chart("c", null, BEAT.heading(), List.of(item), List.of(), PageNotes.NONE);
  }
}
