package tabor.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Spans, lines and widths. Offsets count UTF-16 units: a picture is two of them. */
class SourceTest {
  @Test
  void linesEndWithLfCrlfOrALoneCr() {
    LineIndex index = new LineIndex("a\nbc\r\n\rd\ud83e\udd41\n");
    assertThat(index.lineCount()).isEqualTo(5);
    int[][] lines = {{0, 1}, {2, 4}, {6, 6}, {7, 10}, {11, 11}};
    for (int i = 0; i < lines.length; i++) {
      assertThat(index.lineStart(i)).as("start of %d", i).isEqualTo(lines[i][0]);
      assertThat(index.lineEnd(i)).as("end of %d", i).isEqualTo(lines[i][1]);
    }
  }

  @Test
  void everyOffsetIsOnALine() {
    LineIndex index = new LineIndex("a\nbc\r\n\rd");
    int[] lines = {0, 0, 1, 1, 1, 1, 2, 3, 3};
    int[] columns = {0, 1, 0, 1, 2, 3, 0, 0, 1};
    for (int offset = 0; offset < lines.length; offset++) {
      assertThat(index.lineOf(offset)).as("line of %d", offset).isEqualTo(lines[offset]);
      assertThat(index.columnOf(offset)).as("column of %d", offset).isEqualTo(columns[offset]);
    }
  }

  @Test
  void anEmptyTextIsOneEmptyLine() {
    LineIndex index = new LineIndex("");
    assertThat(index.lineCount()).isEqualTo(1);
    assertThat(index.lineEnd(0)).isZero();
    assertThat(index.lineOf(0)).isZero();
  }

  @Test
  void moreLinesThanWereReckonedWith() {
    LineIndex index = new LineIndex("\n".repeat(100));
    assertThat(index.lineCount()).isEqualTo(101);
    assertThat(index.lineStart(100)).isEqualTo(100);
    assertThat(index.lineOf(99)).isEqualTo(99);
  }

  @Test
  void spansAreHalfOpen() {
    Span span = new Span(2, 5);
    assertThat(span.length()).isEqualTo(3);
    assertThat(span.in("abcdefg")).isEqualTo("cde");
    assertThat(span.shift(3)).isEqualTo(new Span(5, 8));
    assertThat(span.to(new Span(4, 9))).isEqualTo(new Span(2, 9));
    assertThat(span.to(new Span(0, 1))).isEqualTo(new Span(0, 5));
    assertThat(new boolean[] {span.touches(1), span.touches(2), span.touches(5), span.touches(6)})
        .containsExactly(false, true, true, false);
    assertThatThrownBy(() -> new Span(3, 2)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Span(-1, 2)).isInstanceOf(IllegalArgumentException.class);
  }

  /** Two passages with one text are two places. */
  @Test
  void spotsAreTheSameOnlyInOnePassage() {
    Passage one = new Passage("groove a\n");
    Passage other = new Passage("groove a\n");
    Spot spot = new Spot(one, new Span(7, 8));
    assertThat(spot.text()).isEqualTo("a");
    assertThat(spot)
        .isEqualTo(new Spot(one, new Span(7, 8)))
        .hasSameHashCodeAs(new Spot(one, new Span(7, 8)));
    assertThat(spot).isNotEqualTo(new Spot(other, new Span(7, 8)));
    assertThat(spot).isNotEqualTo(new Spot(one, new Span(6, 8)));
  }

  /** Unicode Standard Annex 11: wide and full-width two columns, marks none. */
  @ParameterizedTest
  @CsvSource({
    "abc, 3",
    "\u00fc, 1",
    "u\u0308, 1",
    "\u6f22\u5b57, 4",
    "\uff21, 2",
    "\ud83e\udd41, 2",
    "\uac00, 2",
    "a\u200db, 2",
    "\u03b1, 1",
    "\u2014, 1"
  })
  void widthsInColumns(String text, int columns) {
    assertThat(DisplayWidth.of(text)).isEqualTo(columns);
  }
}
