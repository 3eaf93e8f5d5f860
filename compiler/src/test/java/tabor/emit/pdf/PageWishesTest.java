package tabor.emit.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.emit.font.OpenFont;
import tabor.resolve.Options;

/** What a lesson wishes for its page, found on the printed page by where its letters stand. */
class PageWishesTest {
  /** A letter on a page: the page's number, and its place from the upper left corner in points. */
  private record Letter(int page, long x, long y) {}

  private static final class Letters extends PDFTextStripper {
    private final String wanted;
    private final List<Letter> found = new ArrayList<>();

    Letters(String wanted) {
      this.wanted = wanted;
    }

    @Override
    protected void processTextPosition(TextPosition text) {
      // Below stands the number of the page.
      if (text.getUnicode().equals(wanted) && text.getYDirAdj() < 780) {
        found.add(
            new Letter(
                getCurrentPageNo(), Math.round(text.getXDirAdj()), Math.round(text.getYDirAdj())));
      }
      super.processTextPosition(text);
    }
  }

  private static List<Letter> letters(String letter, String source) throws IOException {
    Compiled compiled =
        new Compiler(tabor.compile.Loader.NONE)
            .compile(Path.of("page.tabor"), source, Options.NONE);
    assertThat(compiled.hasErrors()).as(source).isFalse();
    byte[] pdf =
        PdfWriter.write(HandoutMaker.make(compiled.lesson(), HandoutLook.PLAIN, OpenFont.get()));
    try (PDDocument document = Loader.loadPDF(pdf)) {
      Letters letters = new Letters(letter);
      letters.getText(document);
      return letters.found;
    }
  }

  /** How many bars each line has: a bar has one count 1, and bar numbers up to 8 have none. */
  private static List<Integer> bars(String source) throws IOException {
    Map<Long, Integer> lines = new TreeMap<>();
    for (Letter letter : letters("1", source)) {
      lines.merge(letter.page() * 10_000L + letter.y(), 1, Integer::sum);
    }
    // One alone is the number of a section.
    return lines.values().stream().filter(count -> count > 1).toList();
  }

  private static String eightBars(String header, String statement) {
    return header
        + "title \"Page\"\ntempo 90\ngroove g \"Eight\"\n  snare : "
        + "x x x x | ".repeat(7)
        + "x x x x\n"
        + statement;
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {"2|2 2 2 2", "3|3 3 2", "4|4 4", "8|8"})
  void soManyBarsStandOnALine(int wanted, String lines) throws IOException {
    List<Integer> expected =
        java.util.Arrays.stream(lines.split(" ", -1)).map(Integer::valueOf).toList();
    String statement = "page " + wanted + " bars a line\n";
    assertThat(bars(eightBars(statement, ""))).isEqualTo(expected);
    assertThat(bars(eightBars("", "  " + statement))).isEqualTo(expected);
  }

  @Test
  void aSectionsOwnWishWins() throws IOException {
    assertThat(bars(eightBars("page 2 bars a line\n", "  page 4 bars a line\n")))
        .containsExactly(4, 4);
  }

  @Test
  void linesBrokenByTheWriterStayUnlessBarsAreCounted() throws IOException {
    String source =
        "title \"Page\"\ngroove g\n  snare : x x x x | x x x x | x x x x\n  next\n"
            + "  snare : x x x x | x x x x | x x x x\n";
    assertThat(bars(source)).containsExactly(3, 3);
    assertThat(bars("page 2 bars a line\n" + source)).containsExactly(2, 2, 2);
  }

  private static String sections(int count, String last) {
    StringBuilder text = new StringBuilder("title \"Page\"\ntempo 90\n");
    for (int i = 0; i < count; i++) {
      text.append("groove g").append(i).append(" \"Quiet\"\n  snare : x x x x\n");
    }
    return text + last;
  }

  @ParameterizedTest
  @CsvSource({"1", "2", "3"})
  void sectionsStandInSoManyColumns(int columns) throws IOException {
    List<Letter> titles = letters("Q", "page " + columns + " columns\n" + sections(6, ""));
    assertThat(titles).hasSize(6);
    assertThat(titles.stream().map(Letter::x).distinct()).hasSize(columns);
    assertThat(titles.stream().map(Letter::y).distinct()).hasSize(6 / columns);
  }

  @Test
  void aSectionStartsAPage() throws IOException {
    assertThat(letters("Q", sections(4, "")).stream().map(Letter::page)).containsOnly(1);
    assertThat(letters("Q", sections(4, "  page new\n")).stream().map(Letter::page))
        .containsExactly(1, 1, 1, 2);
  }

  @ParameterizedTest
  @CsvSource({"2", "4", "7"})
  void emptyBarsHaveTheirCounts(int count) throws IOException {
    String source = "title \"Page\"\ntempo 90\ngroove g \"Write\"\n  blank " + count + " bars\n";
    assertThat(bars(source).stream().mapToInt(Integer::intValue).sum()).isEqualTo(count);
  }
}
