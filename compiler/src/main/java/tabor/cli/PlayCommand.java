package tabor.cli;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tabor.emit.midi.MidiLesson;
import tabor.emit.midi.SmfWriter;
import tabor.groove.Groove;
import tabor.groove.Lesson;
import tabor.groove.Section;
import tabor.kit.Limb;
import tabor.perform.Performance;
import tabor.perform.Performer;
import tabor.rhythm.Time;

/** {@code tabor play}: through the loudspeaker, with a count that moves along. */
@Command(
    name = "play",
    description = "Plays a lesson, or one section of it, with a count that moves along.",
    mixinStandardHelpOptions = true,
    footer = {
      "",
      "Without SECTION all sections are played in order. Ctrl-C stops. Mind your ears: turn the",
      "sound down before you start."
    })
final class PlayCommand extends LessonCommand {
  private static final int FADE_MILLIS = 800;

  private final SoundDevice device;

  @Parameters(
      index = "1",
      arity = "0..1",
      paramLabel = "SECTION",
      description = "The groove, step or chart.")
  private @Nullable String section;

  @Option(names = "--loop", description = "Go round until stopped.")
  private boolean loop;

  @Option(
      names = "--without",
      paramLabel = "LIMB",
      description =
          "Leave a limb to the player: right, left, \"right foot\", \"left foot\", hands or feet;"
              + " may be given again.")
  private List<String> without = List.of();

  @Option(names = "--no-count-in", description = "Begin at once.")
  private boolean noCountIn;

  PlayCommand(Io io) {
    this(io, SoundDevice.ofJdk());
  }

  PlayCommand(Io io, SoundDevice device) {
    super(io);
    this.device = device;
  }

  @Override
  public Integer call() {
    Set<Limb> silent = limbs(without);
    Lesson lesson = lesson();
    Section named = ReadyLesson.section(lesson, section);
    List<Section> sections = named == null ? lesson.sections() : List.of(named);
    if (sections.isEmpty()) {
      throw Failure.outside("there is nothing to play in " + file());
    }
    if (loop && sections.size() > 1) {
      throw Failure.usage(
          "--loop takes one section: "
              + sections.stream().map(Section::name).collect(Collectors.joining(", ")));
    }
    MidiLesson midi = MidiLesson.of(lesson);
    try (Player playing = Player.open(device, this::leave)) {
      for (Section one : sections) {
        play(playing, midi, one, silent);
      }
      playing.fadeOut(FADE_MILLIS);
    }
    return ExitCode.FINE;
  }

  private void play(Player playing, MidiLesson midi, Section one, Set<Limb> silent) {
    Performance performance =
        loop && one instanceof Groove groove
            ? Performer.twice(groove, noCountIn ? 0 : 1)
            : MidiLesson.performance(one, !noCountIn);
    io().out().print(one.caption() + "\n");
    io().out().flush();
    MovingCount count = new MovingCount(performance, io().out());
    long whole = 4L * midi.ticks().division();
    playing.play(
        SmfWriter.sequence(
            midi.smf(performance, one, s -> s.limb() == null || !silent.contains(s.limb()))),
        loop ? round(one, performance, midi) : null,
        tick -> {
          if (io().outTerminal()) {
            count.show(Time.of(tick, whole));
          }
        });
    count.end();
  }

  /** What goes round: the first time through of a groove, all of a chart. */
  private static Player.Loop round(Section one, Performance performance, MidiLesson midi) {
    Time from = Time.ZERO;
    Time to = performance.length();
    if (one instanceof Groove) {
      int last = performance.segments().size() - 1;
      from = performance.segments().get(last - 1).barline(1);
      to = performance.segments().get(last).start();
    }
    return new Player.Loop(midi.ticks().at(from), midi.ticks().at(to));
  }

  private void leave() {
    if (io().outTerminal()) {
      io().out().print("\n");
      io().out().flush();
    }
  }

  private static Set<Limb> limbs(List<String> words) {
    Set<Limb> found = EnumSet.noneOf(Limb.class);
    for (String word : words) {
      switch (word.replace('-', ' ')) {
        case "right", "right hand" -> found.add(Limb.RIGHT_HAND);
        case "left", "left hand" -> found.add(Limb.LEFT_HAND);
        case "right foot" -> found.add(Limb.RIGHT_FOOT);
        case "left foot" -> found.add(Limb.LEFT_FOOT);
        case "hands" -> found.addAll(EnumSet.of(Limb.RIGHT_HAND, Limb.LEFT_HAND));
        case "feet" -> found.addAll(EnumSet.of(Limb.RIGHT_FOOT, Limb.LEFT_FOOT));
        default ->
            throw Failure.usage(
                "--without takes right, left, \"right foot\", \"left foot\", hands or feet, not "
                    + word);
      }
    }
    return found;
  }
}
