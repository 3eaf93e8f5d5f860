package tabor.cli;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tabor.audio.PracticeTrack;
import tabor.emit.pdf.HandoutLook;
import tabor.groove.Lesson;
import tabor.groove.Section;
import tabor.kit.Limb;
import tabor.perform.Sound;

/** {@code tabor play}: through the loudspeaker, with a count that moves along. */
@Command(
    name = "play",
    description = "Plays a lesson, or one section of it, with a count that moves along.",
    footer = {
      "",
      "Without SECTION all sections are played in order. Ctrl-C stops. Turn the sound down before"
          + " you start.",
      "",
      HandoutLook.CAUTION
    })
final class PlayCommand extends LessonCommand {
  private final SoundDevice device;

  @Parameters(
      index = "1",
      arity = "0..1",
      paramLabel = "SECTION",
      description = "The groove, step or chart.")
  private @Nullable String section;

  @Option(names = "--loop", description = "Repeat it until stopped.")
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
    this(io, SoundDevice.ofSystem());
  }

  PlayCommand(Io io, SoundDevice device) {
    super(io);
    this.device = device;
  }

  @Override
  int run() {
    Set<Limb> silent = limbs(without);
    return each(lesson -> play(lesson, silent));
  }

  private void play(Lesson lesson, Set<Limb> silent) {
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
    try (TrackPlayer playing = TrackPlayer.open(device, this::leave)) {
      for (Section one : sections) {
        play(playing, one, silent);
      }
    }
  }

  private void play(TrackPlayer playing, Section one, Set<Limb> silent) {
    Predicate<Sound> heard = sound -> sound.limb() == null || !silent.contains(sound.limb());
    PracticeTrack track =
        loop
            ? PracticeTrack.repeated(one, !noCountIn, Long.MAX_VALUE, heard)
            : PracticeTrack.once(one, !noCountIn, heard);
    io().out().print(one.caption() + "\n");
    io().out().flush();
    MovingCount count = new MovingCount(track.performance(), io().out());
    playing.play(
        track,
        seconds -> {
          if (io().outTerminal()) {
            count.show(track.place(seconds));
          }
        });
    count.end();
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
