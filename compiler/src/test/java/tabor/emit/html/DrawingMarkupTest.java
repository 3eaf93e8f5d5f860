package tabor.emit.html;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.w3c.dom.Document;
import org.xml.sax.InputSource;
import tabor.emit.engrave.Contour;
import tabor.emit.engrave.Drawing;
import tabor.emit.engrave.Engraver;
import tabor.emit.engrave.Engraving;
import tabor.emit.engrave.Look;
import tabor.emit.engrave.Mark;
import tabor.emit.engrave.Sign;
import tabor.emit.font.OpenFont;
import tabor.groove.Groove;
import tabor.notation.Speller;

/** Whatever is drawn reaches the page: staff lines and heads as much as beams and words. */
class DrawingMarkupTest {
  private static String markup(Drawing drawing) {
    SymbolTable symbols = new SymbolTable();
    Outlines outlines = symbols.outlines(drawing);
    symbols.count(outlines);
    return symbols.markup() + DrawingMarkup.of(outlines, symbols);
  }

  static List<Mark> kinds() {
    return List.of(
        new Mark.Ink(Contour.band(1, 1.5, 2, 1.5, 1)),
        new Mark.Glyph(Sign.of("noteheadBlack"), 1, 1, 1),
        Mark.Line.rule(0, 1, 9, 1, 0.1),
        new Mark.Words("R", 1, 1, 1, Mark.Align.LEFT, 0.6),
        Mark.Group.of("changed", List.of(Mark.Line.rule(0, 1, 9, 1, 0.1))));
  }

  @ParameterizedTest
  @MethodSource("kinds")
  void everyKindOfMarkIsShown(Mark mark) throws Exception {
    Document page = read(markup(new Drawing(10, 4, "", "", List.of(mark))));
    int shown = 0;
    for (String name : new String[] {"path", "use", "text"}) {
      shown += page.getElementsByTagName(name).getLength();
    }
    assertThat(shown).isPositive();
  }

  /** A figure of the page has as many heads as the section has strokes, on five lines. */
  @Test
  void aFigureHasItsHeadsAndItsStaff() throws Exception {
    Groove groove = Samples.groove("a", "A", null, "RIGHT_HAND hihat xx xx xx xx");
    Engraving engraving =
        Engraver.engrave(Speller.spell(groove, Set.of()), Look.FULL, OpenFont.get());
    Drawing drawing = engraving.systems().get(0).drawing();
    Document page = read(markup(drawing));
    assertThat(page.getElementsByTagName("use").getLength()).isGreaterThanOrEqualTo(8);
    String staff = "h" + LocalPath.tenths(drawing.width() * LocalPath.UNIT);
    String all = markup(drawing);
    assertThat(all.split(Pattern.quote(staff), -1)).as(staff + " in " + all).hasSizeGreaterThan(5);
  }

  private static Document read(String markup) throws Exception {
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new InputSource(new StringReader("<page>" + markup + "</page>")));
  }
}
