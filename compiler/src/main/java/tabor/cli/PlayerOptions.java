package tabor.cli;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import tabor.groove.Player;
import tabor.resolve.Options;
import tabor.rhythm.Time;

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
  String words() {
    return words(options());
  }

  /** The same for a student of the lesson. */
  String words(@Nullable Player student) {
    return words(student == null ? options() : options().of(student));
  }

  private static String words(Options options) {
    List<String> words = new ArrayList<>();
    if (options.leftHanded()) {
      words.add("for a left-handed player");
    }
    if (options.openHanded()) {
      words.add("open-handed");
    }
    if (options.on() != null) {
      words.add("on the " + options.on() + " kit");
    }
    Player.Speed speed = options.view().speed();
    if (options.tempo() != null) {
      words.add("at " + options.tempo().decimal());
    } else if (speed != null && speed.share() != null) {
      words.add("at " + speed.share().times(100).decimal() + " %");
    } else if (speed != null && speed.perMinute() != null) {
      words.add("at " + speed.perMinute().decimal());
    }
    String text = String.join(", ", words);
    return text.isEmpty() ? "" : Character.toUpperCase(text.charAt(0)) + text.substring(1) + ".";
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
