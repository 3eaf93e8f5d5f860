package tabor.emit.html;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.UnsupportedAudioFileException;
import org.junit.jupiter.api.Test;
import tabor.audio.WavFile;
import tabor.groove.Section;
import tabor.testing.Onsets;

/**
 * The page and the sound file sound alike: the page as Chromium renders it without a loudspeaker,
 * the file as the JDK reads it.
 */
class PageAndSoundFileTest extends PageInBrowser {
  private static final double SECONDS = 12;

  @Test
  void onsetsAndLevelsAgree() throws IOException, UnsupportedAudioFileException {
    List<Section> sections = sample().sections();
    for (int part : new int[] {0, 1, 2, 5, 6, 8}) {
      compare(part, sections.get(part), "{countIn: true, rounds: 4, most: 12}");
    }
    // The chart's click is on the beats; its first sound is its own count-in.
    compare(3, sections.get(3), "{click: true, most: 12}");
  }

  private static void compare(int part, Section section, String options)
      throws IOException, UnsupportedAudioFileException {
    float[][] page = page(part, options);
    float[][] file = file(section);
    List<Double> there = Onsets.of(mono(page), RATE, 0.02);
    List<Double> here = Onsets.of(mono(file), RATE, 0.02);
    assertThat(here).as(section.name()).hasSameSizeAs(there).isNotEmpty();
    for (int i = 0; i < here.size(); i++) {
      assertThat(here.get(i)).as(section.name()).isCloseTo(there.get(i), within(0.001));
    }
    for (int channel = 0; channel < 2; channel++) {
      for (double onset : here) {
        int from = (int) (onset * RATE);
        double level = decibels(page[channel], from);
        assertThat(decibels(file[channel], from))
            .as("%s, channel %d at %f", section.name(), channel, onset)
            .isCloseTo(level, within(0.2));
      }
    }
  }

  /** Mean level of the tenth of a second from a frame on. */
  private static double decibels(float[] samples, int from) {
    double sum = 1e-12;
    int to = Math.min(samples.length, from + (int) (RATE / 10));
    for (int i = from; i < to; i++) {
      sum += (double) samples[i] * samples[i];
    }
    return 10 * Math.log10(sum / (to - from));
  }

  private static float[] mono(float[][] channels) {
    float[] mono = new float[channels[0].length];
    for (int i = 0; i < mono.length; i++) {
      mono[i] = (channels[0][i] + channels[1][i]) / 2;
    }
    return mono;
  }

  /** The file's first seconds, after a tenth of a second of silence, as the page renders it. */
  private static float[][] file(Section section) throws IOException, UnsupportedAudioFileException {
    byte[] bytes = WavFile.bytes(section, true);
    try (AudioInputStream in = AudioSystem.getAudioInputStream(new ByteArrayInputStream(bytes))) {
      assertThat(in.getFormat().getSampleRate()).isEqualTo(44100f);
      assertThat(in.getFormat().getSampleSizeInBits()).isEqualTo(16);
      assertThat(in.getFormat().getChannels()).isEqualTo(2);
      byte[] pcm = in.readAllBytes();
      float[][] channels = new float[2][(int) (SECONDS * RATE)];
      int silence = (int) (0.1 * RATE);
      for (int i = silence; i < channels[0].length; i++) {
        for (int channel = 0; channel < 2; channel++) {
          int at = 4 * (i - silence) + 2 * channel;
          if (at + 1 < pcm.length) {
            channels[channel][i] = (pcm[at + 1] << 8 | (pcm[at] & 0xff)) / 32767f;
          }
        }
      }
      return channels;
    }
  }

  private static float[][] page(int part, String options) {
    Object answer =
        browser.driver.executeAsyncScript(
            """
            const done = arguments[1];
            Page.render(arguments[0], OPTIONS).then(({ samples }) => {
              done(samples.map((channel) => {
                const bytes = new Uint8Array(channel.slice(0, 12 * 44100).buffer);
                let text = '';
                for (let i = 0; i < bytes.length; i += 32768) {
                  text += String.fromCharCode(...bytes.subarray(i, i + 32768));
                }
                return btoa(text);
              }));
            });
            """
                .replace("OPTIONS", options),
            part);
    List<float[]> channels = new ArrayList<>();
    for (Object each : (List<?>) answer) {
      float[] found = Onsets.samples((String) each);
      channels.add(java.util.Arrays.copyOf(found, (int) (SECONDS * RATE)));
    }
    return channels.toArray(new float[0][]);
  }
}
