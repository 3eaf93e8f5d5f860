package tabor.format;

import java.util.stream.Collectors;
import tabor.syntax.PlayerStatement;

/** Lines of players to text. */
final class PlayerPrinter implements PlayerStatement.Cases<String> {
  @Override
  public String openHanded(PlayerStatement.OpenHanded line) {
    return "open-handed";
  }

  @Override
  public String tempoShare(PlayerStatement.TempoShare line) {
    return "tempo " + Printer.number(line.percent()) + "%";
  }

  @Override
  public String sections(PlayerStatement.Sections line) {
    return "sections "
        + line.ranges().stream().map(PlayerPrinter::range).collect(Collectors.joining(" "));
  }

  private static String range(PlayerStatement.Range range) {
    return range.first() != null
        ? "first " + Printer.number(range.first())
        : Printer.optional("", range.from()) + Printer.optional(" to ", range.to());
  }
}
