package tabor.ide;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import tabor.compile.Compiled;
import tabor.ide.Outline.Symbol;
import tabor.source.Span;

/** Sections and their parts, what can be folded, how a selection grows. */
class OutlineTest {
  private static final String TEXT =
      "title \"T\"\n\n"
          + "groove pads \"On the snare\"\n"
          + "  hands : rl rl | r r\n"
          + "  kick : x . x . # low\n\n"
          + "step \"No name\"\n"
          + "  text \"\"\"\n"
          + "    two\n"
          + "    lines\n"
          + "  \"\"\"\n"
          + "kit k\n"
          + "pattern p : rl\n"
          + "chart c\n";

  @Test
  void symbolsAreSectionsWithTheirParts() {
    Compiled compiled = MemoryFiles.alone(TEXT);
    List<Symbol> symbols = Outline.symbols(compiled);
    assertThat(symbols).extracting(Symbol::name).containsExactly("pads", "No name", "k", "p", "c");
    assertThat(symbols.get(0).detail()).isEqualTo("On the snare");
    assertThat(symbols.get(0).parts()).extracting(Symbol::name).containsExactly("hands", "kick");
    assertThat(symbols.get(0).whole().in(TEXT)).startsWith("groove pads").endsWith("x . x .");
    assertThat(symbols.get(0).nameSpan().in(TEXT)).isEqualTo("pads");
    assertThat(symbols)
        .extracting(Symbol::sort)
        .containsExactly(
            Outline.Sort.GROOVE,
            Outline.Sort.STEP,
            Outline.Sort.KIT,
            Outline.Sort.PATTERN,
            Outline.Sort.CHART);
  }

  @Test
  void sectionsAndLongTextsFold() {
    assertThat(Outline.folds(MemoryFiles.alone(TEXT)))
        .extracting(span -> span.in(TEXT).lines().findFirst().orElse(""))
        .containsExactly("groove pads \"On the snare\"", "step \"No name\"", "text \"\"\"");
  }

  @Test
  void aSelectionGrowsFromTheStrokeToTheFile() {
    int offset = TEXT.indexOf("rl | r") + 1;
    assertThat(Outline.selection(MemoryFiles.alone(TEXT), offset))
        .extracting((Span span) -> span.in(TEXT))
        .startsWith("l", "rl", "rl rl", "hands : rl rl | r r")
        .endsWith(TEXT);
  }
}
