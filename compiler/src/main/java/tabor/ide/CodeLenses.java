package tabor.ide;

import java.util.ArrayList;
import java.util.List;
import tabor.compile.Compiled;
import tabor.groove.Groove;
import tabor.groove.Section;
import tabor.source.Span;

/** What can be done with a section, above its heading. */
public final class CodeLenses {
  private CodeLenses() {}

  /**
   * The row above a section.
   *
   * @param heading the section's heading in the file
   * @param section its name
   * @param pictured true if it has a grid and a page: a groove or a step
   * @param step true if it can say what it changed
   */
  public record Lens(Span heading, String section, boolean pictured, boolean step) {}

  /** The rows above the sections whose headings lie in a range; nothing is worked out for them. */
  public static List<Lens> in(Compiled compiled, Span range) {
    List<Lens> found = new ArrayList<>();
    for (Section section : compiled.lesson().sections()) {
      if (compiled.file().equals(compiled.fileOf(section.heading()))) {
        Span heading = compiled.span(section.heading());
        if (heading.start() <= range.end() && range.start() <= heading.end()) {
          boolean groove = section instanceof Groove;
          boolean step = section instanceof Groove made && made.isStep();
          found.add(new Lens(heading, section.name(), groove, step));
        }
      }
    }
    return found;
  }

  /**
   * The row above a player.
   *
   * @param heading the player's heading in the file
   * @param player the name
   */
  public record PlayerLens(Span heading, String player) {}

  /** The rows above the players whose headings stand in the file itself. */
  public static List<PlayerLens> players(Compiled compiled) {
    return compiled.lesson().extras().players().stream()
        .filter(player -> compiled.file().equals(compiled.fileOf(player.heading())))
        .map(player -> new PlayerLens(compiled.span(player.heading()), player.name()))
        .toList();
  }
}
