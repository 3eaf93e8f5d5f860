package tabor.format;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import tabor.syntax.Beat;
import tabor.syntax.LaneBar;
import tabor.syntax.PartStatement;

/** Bars, words and strokes to text. */
final class BeatPrinter {
  private BeatPrinter() {}

  /** What stands before a lane's colon. */
  static String label(PartStatement.Lane lane) {
    return (lane.ostinato() ? "ostinato " : "") + Printer.subject(lane.subject());
  }

  static String bar(LaneBar bar) {
    return bar.repeat()
        ? "%"
        : bar.beats().stream().map(BeatPrinter::beat).collect(Collectors.joining(" "));
  }

  static String beat(Beat beat) {
    return elements(beat.elements())
        + (beat.beats() == null ? "" : ":" + Printer.number(beat.beats()));
  }

  static String elements(List<Beat.Element> elements) {
    StringBuilder text = new StringBuilder();
    for (Beat.Element element : elements) {
      text.append(element(element));
    }
    return text.toString();
  }

  static String element(Beat.Element element) {
    return element.match(Elements.PRINTER);
  }

  private static final class Elements implements Beat.Cases<String> {
    static final Elements PRINTER = new Elements();

    @Override
    public String hit(Beat.Hit hit) {
      return "'".repeat(hit.grace()) + letter(hit) + suffixes(hit);
    }

    private static String letter(Beat.Hit hit) {
      String letter = String.valueOf(hit.letter());
      return hit.accent() ? letter.toUpperCase(Locale.ROOT) : letter;
    }

    private static String suffixes(Beat.Hit hit) {
      return hit.suffixes().isEmpty()
          ? ""
          : hit.suffixes().stream().map(Beat.Suffix::sign).collect(Collectors.joining());
    }

    @Override
    public String rest(Beat.Rest rest) {
      return ".";
    }

    @Override
    public String hold(Beat.Hold hold) {
      return "-";
    }

    @Override
    public String group(Beat.Group group) {
      return "{" + elements(group.elements()) + "}";
    }

    @Override
    public String ghosts(Beat.Ghosts ghosts) {
      if (ghosts.elements().size() == 1 && ghosts.elements().get(0) instanceof Beat.Hit hit) {
        return "'".repeat(hit.grace()) + "(" + letter(hit) + ")" + suffixes(hit);
      }
      return "(" + elements(ghosts.elements()) + ")";
    }
  }
}
