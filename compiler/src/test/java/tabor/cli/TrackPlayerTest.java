package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import javax.sound.sampled.LineUnavailableException;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import tabor.audio.PracticeTrack;
import tabor.groove.Groove;
import tabor.kit.Limb;
import tabor.testing.Onsets;
import tabor.testing.Sketch;

/** On a line that keeps what it gets in place of a loudspeaker. */
class TrackPlayerTest {
  private static final class Kept implements SoundDevice.Line {
    final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    final List<String> calls = new ArrayList<>();
    Runnable onWrite = () -> {};

    @Override
    public void write(byte[] samples) {
      bytes.writeBytes(samples);
      onWrite.run();
    }

    @Override
    public long heard() {
      return bytes.size() / 4;
    }

    @Override
    public void drain() {
      calls.add("drained");
    }

    @Override
    public void close() {
      calls.add("closed");
    }

    /** Seconds at which something begins. */
    List<Double> onsets() {
      ByteBuffer all = ByteBuffer.wrap(bytes.toByteArray()).order(ByteOrder.LITTLE_ENDIAN);
      // The detector compares with what was before: a tenth of a second of silence.
      int silence = PracticeTrack.RATE / 10;
      float[] mono = new float[silence + all.remaining() / 4];
      for (int i = silence; i < mono.length; i++) {
        int at = 4 * (i - silence);
        mono[i] = (all.getShort(at) + all.getShort(at + 2)) / 65536f;
      }
      return Onsets.of(mono, PracticeTrack.RATE, 0.02).stream().map(s -> s - 0.1).toList();
    }
  }

  private static final String TEXT =
      """
      tempo 120
      time 2/4
      groove beat "On the drums"
        snare : . l
        kick  : x .
      step foot
        drop snare
      """;

  private static int play(Kept kept, ByteArrayOutputStream out, String... words) {
    Io io =
        Io.of(
            new ByteArrayInputStream(TEXT.getBytes(StandardCharsets.UTF_8)),
            out,
            OutputStream.nullOutputStream(),
            false,
            false,
            Map.of());
    int code = new CommandLine(new PlayCommand(io, () -> kept)).execute(words);
    io.out().flush();
    return code;
  }

  @Test
  void theCommandPlaysEverySectionAfterItsCountIn() {
    Kept kept = new Kept();
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    assertThat(play(kept, out, "-", "beat")).isZero();
    assertThat(kept.calls).containsExactly("drained", "closed");
    assertThat(out.toString(StandardCharsets.UTF_8)).isEqualTo("On the drums\n");
    assertNear(kept.onsets(), 0, 0.5, 1, 1.5);
    Kept both = new Kept();
    play(both, new ByteArrayOutputStream(), "-");
    assertThat(both.onsets()).hasSize(4 + 3);
  }

  @Test
  void aLimbLeftOutIsNotHeard() {
    Kept kept = new Kept();
    play(kept, new ByteArrayOutputStream(), "-", "beat", "--without", "right foot");
    assertNear(kept.onsets(), 0, 0.5, 1.5);
    Kept bare = new Kept();
    play(bare, new ByteArrayOutputStream(), "-", "beat", "--no-count-in", "--without", "hands");
    assertNear(bare.onsets(), 0);
  }

  @Test
  void aLoopIsRepeatedUntilItIsStopped() {
    Groove groove = Sketch.groove("g").tempo(120).word(1, 0, Limb.LEFT_HAND, "snare", "x").done();
    Kept kept = new Kept();
    try (TrackPlayer player = TrackPlayer.open(() -> kept, () -> {})) {
      PracticeTrack track = PracticeTrack.repeated(groove, true, Long.MAX_VALUE, s -> true);
      kept.onWrite =
          () -> {
            if (kept.heard() > 9 * PracticeTrack.RATE) {
              player.stop();
            }
          };
      player.play(track, seconds -> {});
    }
    assertNear(kept.onsets(), 0, 0.5, 1, 1.5, 2, 4, 6, 8);
    assertThat(kept.calls).as("what was stopped does not play on").containsExactly("closed");
  }

  @Test
  void theCountGoesRoundWithTheLoop() {
    Groove groove = Sketch.groove("g").tempo(120).word(1, 0, Limb.LEFT_HAND, "snare", "x").done();
    PracticeTrack track = PracticeTrack.repeated(groove, true, Long.MAX_VALUE, s -> true);
    // A bar of count-in, then bars of one whole note; the second of them is what is repeated.
    assertThat(track.place(1).toString()).isEqualTo("1/2");
    assertThat(track.place(3).toString()).isEqualTo("3/2");
    assertThat(track.place(5).toString()).isEqualTo("5/2");
    assertThat(track.place(7).toString()).isEqualTo("5/2");
    assertThat(track.place(2003).toString()).isEqualTo("5/2");
  }

  @Test
  void saysSoWhereThereIsNoSoundDevice() {
    SoundDevice none =
        () -> {
          throw new LineUnavailableException("no line");
        };
    assertThatThrownBy(() -> TrackPlayer.open(none, () -> {}))
        .isInstanceOf(Failure.class)
        .hasMessageContaining("no sound device")
        .hasMessageContaining("tabor build FILE -o FOLDER --as wav")
        .matches(e -> ((Failure) e).code() == ExitCode.ERRORS);
  }

  private static void assertNear(List<Double> found, double... expected) {
    assertThat(found).as("%s", found).hasSize(expected.length);
    for (int i = 0; i < expected.length; i++) {
      assertThat(found.get(i)).isCloseTo(expected[i], within(0.001));
    }
  }
}
