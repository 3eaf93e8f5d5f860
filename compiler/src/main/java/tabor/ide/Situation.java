package tabor.ide;

import java.util.Optional;
import tabor.compile.Compiled;
import tabor.groove.Groove;
import tabor.ide.Phrase.Room;
import tabor.kit.Kit;
import tabor.rhythm.Meter;
import tabor.syntax.Heading;
import tabor.syntax.SectionSyntax;

/**
 * What a line may rest on: the strokes above it in its section, whatever is wrong in it and below.
 *
 * @param cursor where
 * @param library other files
 * @param lineStart where the line starts in the file
 * @param above the section as it is before the line; empty outside a groove or step, and where what
 *     is above has errors
 */
record Situation(Cursor cursor, Library library, int lineStart, Optional<Groove> above) {
  /** What the line of an offset rests on. */
  static Situation at(Compiled compiled, int offset, Library library) {
    Cursor cursor = Cursor.at(compiled, offset);
    String text = compiled.text();
    int lineStart = offset;
    while (lineStart > 0 && !isLineEnd(text.charAt(lineStart - 1))) {
      lineStart--;
    }
    lineStart = Math.max(lineStart, cursor.start());
    return new Situation(cursor, library, lineStart, above(cursor, lineStart, library));
  }

  private static Optional<Groove> above(Cursor cursor, int lineStart, Library library) {
    Room room = room(cursor.section());
    if (room != Room.GROOVE && room != Room.STEP) {
      return Optional.empty();
    }
    String text = cursor.compiled().text();
    int end = cursor.start() + cursor.section().passage().text().length();
    if (lineStart >= end || text.substring(lineStart, end).isBlank()) {
      return cursor.groove();
    }
    Compiled shorter =
        library.trial(cursor.compiled().file(), text.substring(0, lineStart) + text.substring(end));
    return Cursor.at(shorter, Math.min(cursor.start(), shorter.text().length())).groove();
  }

  /** What kind of passage this is. */
  static Room room(SectionSyntax section) {
    if (section.heading() == null || !(section.heading().statement() instanceof Heading heading)) {
      return Room.HEADER;
    }
    if (heading instanceof Heading.Faulty faulty) {
      return switch (faulty.keyword().text()) {
        case "pattern" -> Room.PATTERN;
        case "kit" -> Room.KIT;
        case "step" -> Room.STEP;
        case "chart" -> Room.CHART;
        default -> Room.GROOVE;
      };
    }
    return heading instanceof Heading.Pattern
        ? Room.PATTERN
        : heading instanceof Heading.Kit
            ? Room.KIT
            : heading instanceof Heading.Groove
                ? Room.GROOVE
                : heading instanceof Heading.Step ? Room.STEP : Room.CHART;
  }

  /** The kit in force. */
  Kit kit() {
    return above.map(groove -> groove.setting().kit()).orElseGet(() -> header().kit());
  }

  /** The meter in force. */
  Meter meter() {
    return above.map(Groove::meter).orElseGet(() -> header().meter());
  }

  private Groove.Setting header() {
    return cursor.compiled().lesson().setting();
  }

  /** The line as far as the cursor. */
  String typed() {
    return cursor.compiled().text().substring(lineStart, cursor.offset());
  }

  static boolean isLineEnd(char c) {
    return c == '\n' || c == '\r';
  }
}
