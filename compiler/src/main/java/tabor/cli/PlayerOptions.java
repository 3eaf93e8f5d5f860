package tabor.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import tabor.groove.Player;
import tabor.resolve.Options;
import tabor.rhythm.Time;
import tabor.words.Words;

/**
 * The options that say who plays, on what and how fast: a mix-in of every command that compiles.
 */
final class PlayerOptions {
  @Option(
      names = "--tempo",
      paramLabel = "N",
      description = "Beats per minute in place of every tempo written, 1 to 1000.")
  private @Nullable String tempo;

  @Option(names = "--on", paramLabel = "KIT", description = "Play everything on this kit.")
  private @Nullable String on;

  @Option(names = "--left-handed", description = "Mirror the player.")
  private boolean leftHanded;

  @Option(
      names = "--open-handed",
      description = "The left hand takes the hi-hat; the other strokes are dealt again.")
  private boolean openHanded;

  @Option(
      names = "--player",
      paramLabel = "NAME",
      description = "Check by the limits of this name instead of everybody's.")
  private @Nullable String player;

  @Option(
      names = "--for",
      paramLabel = "PLAYER",
      split = ",",
      description =
          "As this player of the lesson gets it; several with commas between, or all for every"
              + " player.")
  private List<String> students = List.of();

  /** The players named by {@code --for}; empty for nobody in particular. */
  List<String> students() {
    return students;
  }

  /** What they ask for. */
  Options options() {
    return new Options(on, leftHanded, openHanded, tempo == null ? null : tempo(tempo), player);
  }

  /** The same in one line, for comparing. */
  String settings() {
    return on + " " + leftHanded + " " + openHanded + " " + tempo + " " + player;
  }

  /** What is other than written, as it stands on a printed page; empty for nothing. */
  Function<Words, String> note() {
    return words -> note(options(), words);
  }

  /** The same for a student of the lesson. */
  Function<Words, String> note(@Nullable Player student) {
    Options asked = student == null ? options() : options().of(student);
    return words -> note(asked, words);
  }

  private static String note(Options options, Words words) {
    List<String> said = new ArrayList<>();
    if (options.leftHanded()) {
      said.add(words.text("player.left-handed"));
    }
    if (options.openHanded()) {
      said.add(words.text("player.open-handed"));
    }
    if (options.on() != null) {
      said.add(words.text("change.kit", words.kit(options.on())));
    }
    Player.Speed speed = options.view().speed();
    if (options.tempo() != null) {
      said.add(words.text("player.at", words.decimal(options.tempo())));
    } else if (speed != null && speed.share() != null) {
      said.add(words.text("player.at-share", words.decimal(speed.share().times(100))));
    } else if (speed != null && speed.perMinute() != null) {
      said.add(words.text("player.at", words.decimal(speed.perMinute())));
    }
    String text = words.list(said);
    return text.isEmpty() ? "" : words.text("sentence", Words.capital(text));
  }

  /** A tempo as typed: digits, and a point with up to three more. */
  static Time tempo(String typed) {
    int point = typed.indexOf('.');
    String whole = point < 0 ? typed : typed.substring(0, point);
    String part = point < 0 ? "" : typed.substring(point + 1);
    boolean digits =
        (whole + part).chars().allMatch(c -> c >= '0' && c <= '9')
            && !whole.isEmpty()
            && whole.length() <= 4
            && part.length() <= 3
            && (point < 0 || !part.isEmpty());
    if (digits) {
      long scale = 1;
      for (int i = 0; i < part.length(); i++) {
        scale *= 10;
      }
      Time value = Time.of(Long.parseLong(whole + part), scale);
      if (value.compareTo(Time.ONE) >= 0 && value.compareTo(Time.of(1000)) <= 0) {
        return value;
      }
    }
    throw Failure.usage("--tempo takes a number from 1 to 1000, such as 92 or 92.5, not " + typed);
  }
}
