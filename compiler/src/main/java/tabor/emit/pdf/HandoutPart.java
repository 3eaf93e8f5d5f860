package tabor.emit.pdf;

import java.util.List;
import tabor.emit.engrave.TextMetrics;
import tabor.groove.Groove;
import tabor.groove.Section;
import tabor.words.Words;

/** What all parts of a handout are set with: its look, its measures and its words. */
abstract class HandoutPart {
  /** Margins at the sides, in points: 18 mm, enough for a hole punch. */
  static final double SIDE = 51;

  final HandoutLook look;
  final TextMetrics font;
  final TextSetter type;

  /** Size of running text, in points. */
  final double size;

  /** A staff space in points: a staff of 6.9 mm, large 11.6 mm. */
  final double space;

  /** Width of the page's text, in points. */
  final double width;

  final Words words;
  final WrittenOn written;

  HandoutPart(HandoutLook look, Groove.Setting setting, TextMetrics font) {
    this.look = look;
    this.font = font;
    this.type = new TextSetter(font);
    this.size = look.large() ? 16 : 10.5;
    this.space = look.large() ? 8.2 : 4.9;
    this.width = look.paper().width() - 2 * SIDE;
    this.words = Words.of(setting.wording().language());
    this.written = new WrittenOn(type, words, size);
  }

  /** Adds what a section says in words under its heading. */
  void said(Section section, double room, List<Block> blocks) {
    blocks.addAll(written.of(section, look.reader().teacher(), room));
    texts(section.prose(), room, blocks);
  }

  /** Adds texts, one under another. */
  void texts(List<String> texts, double room, List<Block> blocks) {
    for (String text : texts) {
      if (!text.isBlank()) {
        blocks.add(type.text(text, size, room, size * 0.45, true));
      }
    }
  }
}
