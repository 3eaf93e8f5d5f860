package tabor.weave;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.build.PlayerLesson;
import tabor.compile.Compiled;
import tabor.diagnostic.Near;
import tabor.groove.Lesson;
import tabor.groove.Player;
import tabor.resolve.Options;

/** The player of a lesson whom a block is for. */
record BlockReader(Player player) {
  /**
   * The one that a block names.
   *
   * @param plain the lesson as written
   * @return null if it names nobody, or if the lesson has errors, which come first
   */
  static @Nullable BlockReader of(Wish wish, Compiled plain) throws Trouble {
    String name = wish.player();
    if (name == null || plain.hasErrors()) {
      return null;
    }
    List<Player> players = plain.lesson().extras().players();
    for (Player player : players) {
      if (player.name().equals(name)) {
        return new BlockReader(player);
      }
    }
    List<String> known = players.stream().map(Player::name).toList();
    List<String> near = Near.names(name, known);
    throw new Trouble(
        "there is no player " + name + " here",
        known.isEmpty()
            ? "Write one below the header, or in a file that is used: player mia \"Mia\"."
            : near.isEmpty()
                ? "There is " + String.join(", ", known) + "."
                : "Did you mean " + near.get(0) + "?");
  }

  /** What the lesson is to be worked out with. */
  Options options() {
    return Options.NONE.of(player);
  }

  /** What this player gets of a lesson that was worked out so. */
  Lesson lesson(Lesson whole) throws Trouble {
    Lesson own = PlayerLesson.of(whole, player).orElse(null);
    if (own == null) {
      throw new Trouble("nothing of it is left for " + player.name());
    }
    return own.named(whole.file(), own.title());
  }
}
