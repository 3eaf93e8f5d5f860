package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import javax.sound.midi.MidiMessage;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.MidiUnavailableException;
import javax.sound.midi.Receiver;
import javax.sound.midi.Sequencer;
import javax.sound.midi.ShortMessage;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;
import tabor.emit.midi.MidiLesson;
import tabor.emit.midi.SmfWriter;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.kit.Limb;
import tabor.perform.Performer;
import tabor.testing.Sketch;

/**
 * On the JDK's sequencer, with a receiver that writes down what it gets in place of a sound card.
 */
class PlayerTest {
  private static final class Heard implements Receiver {
    final List<Integer> keys = Collections.synchronizedList(new ArrayList<>());

    @Override
    public void send(MidiMessage message, long timeStamp) {
      if (message instanceof ShortMessage note && note.getCommand() == ShortMessage.NOTE_ON) {
        keys.add(note.getData1());
      }
    }

    @Override
    public void close() {}
  }

  private static SoundDevice writingDown(Heard heard, List<String> closed) {
    return () -> {
      Sequencer sequencer = MidiSystem.getSequencer(false);
      sequencer.open();
      sequencer.getTransmitter().setReceiver(heard);
      return new SoundDevice.Opened(sequencer, () -> closed.add("closed"));
    };
  }

  @Test
  void playsEveryNoteInOrderAndClosesTheDevice() {
    Groove groove =
        Sketch.groove("g")
            .tempo(900)
            .word(1, 0, Limb.RIGHT_HAND, "hihat", "xxx")
            .word(1, 1, Limb.LEFT_HAND, "snare", "xx")
            .done();
    Lesson lesson = new Lesson("l", "L", null, groove.setting(), List.of(groove));
    Heard heard = new Heard();
    List<String> closed = new ArrayList<>();
    List<Long> ticks = new ArrayList<>();
    try (Player player = Player.open(writingDown(heard, closed), () -> {})) {
      player.play(
          SmfWriter.sequence(MidiLesson.of(lesson).smf(groove, true, s -> true)), null, ticks::add);
    }
    assertThat(heard.keys).containsExactly(76, 77, 77, 77, 42, 42, 42, 38, 38);
    assertThat(closed).containsExactly("closed");
    assertThat(ticks).isSorted();
  }

  @Test
  void theCommandPlaysEverySectionWithoutTheLimbsLeftOut() {
    String text =
        """
        tempo 600
        time 2/4
        groove beat "On the hat"
          hihat : xx xx
          snare : .  x
          kick  : x  .
        step foot
          drop snare
        """;
    Heard heard = new Heard();
    List<String> closed = new ArrayList<>();
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    Io io =
        Io.of(
            new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)),
            out,
            OutputStream.nullOutputStream(),
            false,
            false,
            Map.of());
    int code =
        new CommandLine(new PlayCommand(io, writingDown(heard, closed)))
            .execute("-", "--without", "right foot");
    io.out().flush();
    assertThat(code).isZero();
    assertThat(heard.keys).containsExactly(76, 77, 42, 42, 42, 38, 42, 76, 77, 42, 42, 42, 42);
    assertThat(closed).containsExactly("closed");
    assertThat(out.toString(StandardCharsets.UTF_8)).isEqualTo("On the hat\nfoot\n");
  }

  @Test
  void aLoopGoesRoundUntilItIsStopped() {
    Groove groove = Sketch.groove("g").tempo(600).word(1, 0, Limb.LEFT_HAND, "snare", "x").done();
    Lesson lesson = new Lesson("l", "L", null, groove.setting(), List.of(groove));
    MidiLesson midi = MidiLesson.of(lesson);
    Heard heard = new Heard();
    Sequencer[] sequencer = new Sequencer[1];
    SoundDevice device =
        () -> {
          SoundDevice.Opened opened = writingDown(heard, new ArrayList<>()).open();
          sequencer[0] = opened.sequencer();
          return opened;
        };
    long bar = 4L * midi.ticks().division();
    try (Player player = Player.open(device, () -> {})) {
      player.play(
          SmfWriter.sequence(midi.smf(Performer.twice(groove, 1), groove, s -> true)),
          new Player.Loop(bar, 2 * bar),
          tick -> {
            if (heard.keys.size() >= 4 + 3) {
              sequencer[0].stop();
            }
          });
    }
    assertThat(heard.keys).startsWith(76, 77, 77, 77, 38, 38, 38);
  }

  @Test
  void saysSoWhereThereIsNoSoundDevice() {
    SoundDevice none =
        () -> {
          throw new MidiUnavailableException("no line");
        };
    assertThatThrownBy(() -> Player.open(none, () -> {}))
        .isInstanceOf(Failure.class)
        .hasMessageContaining("no sound device")
        .hasMessageContaining("tabor build FILE -o FOLDER --as midi")
        .matches(e -> ((Failure) e).code() == ExitCode.ERRORS);
  }
}
