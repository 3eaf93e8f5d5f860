package tabor.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.From;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import org.eclipse.lsp4j.Position;
import org.junit.jupiter.api.Test;
import tabor.source.LineIndex;

class TextLinesTest {
  @Provide
  Arbitrary<String> texts() {
    return Arbitraries.strings().withChars("\r\n\r\na😀é".toCharArray()).ofMaxLength(40);
  }

  @Property(tries = 2000)
  void linesCarriedOverAreLinesReadAfresh(
      @ForAll @From("texts") String text,
      @ForAll @From("texts") String with,
      @ForAll @IntRange(max = 40) int a,
      @ForAll @IntRange(max = 40) int b) {
    int start = Math.min(Math.min(a, b), text.length());
    int end = Math.min(Math.max(a, b), text.length());
    TextLines after = TextLines.of(text).replace(start, end, with);
    String expected = text.substring(0, start) + with + text.substring(end);
    LineIndex fresh = new LineIndex(expected);
    assertThat(after.text()).isEqualTo(expected);
    assertThat(after.lineCount()).isEqualTo(fresh.lineCount());
    for (int line = 0; line < fresh.lineCount(); line++) {
      assertThat(after.lineStart(line)).isEqualTo(fresh.lineStart(line));
      assertThat(after.lineEnd(line)).isEqualTo(fresh.lineEnd(line));
    }
  }

  @Property(tries = 500)
  void offsetsGoToPositionsAndBackInEveryEncoding(
      @ForAll @From("texts") String text,
      @ForAll PositionEncoding encoding,
      @ForAll @IntRange(max = 40) int offset) {
    TextLines lines = TextLines.of(text);
    int at = Math.min(offset, text.length());
    boolean insidePair =
        at > 0
            && at < text.length()
            && Character.isLowSurrogate(text.charAt(at))
            && Character.isHighSurrogate(text.charAt(at - 1));
    boolean insideLineEnd = at > lines.lineEnd(lines.lineOf(at));
    if (!insidePair && !insideLineEnd) {
      assertThat(encoding.offset(lines, encoding.position(lines, at))).isEqualTo(at);
    }
  }

  @Test
  void charactersAreCountedAsNegotiated() {
    TextLines lines = TextLines.of("a\né😀x");
    int x = lines.text().indexOf('x');
    assertThat(PositionEncoding.UTF_16.position(lines, x)).isEqualTo(new Position(1, 3));
    assertThat(PositionEncoding.UTF_8.position(lines, x)).isEqualTo(new Position(1, 6));
    assertThat(PositionEncoding.UTF_32.position(lines, x)).isEqualTo(new Position(1, 2));
  }

  @Test
  void positionsOutsideTheTextAreMovedIntoIt() {
    TextLines lines = TextLines.of("ab\r\ncd");
    for (PositionEncoding encoding : PositionEncoding.values()) {
      assertThat(encoding.offset(lines, new Position(0, 99))).isEqualTo(2);
      assertThat(encoding.offset(lines, new Position(7, 0))).isEqualTo(6);
      assertThat(encoding.offset(lines, new Position(-1, 5))).isZero();
      assertThat(encoding.offset(lines, new Position(1, -3))).isEqualTo(4);
    }
  }
}
