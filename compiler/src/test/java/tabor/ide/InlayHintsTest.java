package tabor.ide;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import tabor.compile.Compiled;
import tabor.ide.InlayHints.Kind;
import tabor.source.Span;

/** The notes at the ends of lines. */
class InlayHintsTest {
  private static List<String> hints(String text, Set<Kind> kinds) {
    Compiled compiled = MemoryFiles.alone(text);
    return InlayHints.in(compiled, new Span(0, text.length()), kinds).stream()
        .map(
            hint ->
                text.substring(LineEnds.start(text, hint.offset()), hint.offset()).strip()
                    + " → "
                    + hint.text())
        .toList();
  }

  @Test
  void limbsThatTaborChoseStandOncePerLine() {
    assertThat(
            hints(
                "groove a # first\n"
                    + "  hands : xx xx xx xx\n"
                    + "  kick : x . x .\n"
                    + "  hihat.foot : l l l l\n",
                EnumSet.of(Kind.HANDS)))
        // The kick is the right foot's: no choice.
        .containsExactly("hands : xx xx xx xx → RLRLRLRL from Tabor");
  }

  @Test
  void barsStandWhereAPartBeginsLater() {
    assertThat(
            hints(
                "groove a\n  kick : x . x . | x . x .\n  next\n  kick : x . . . | x . . .\n",
                EnumSet.of(Kind.BARS)))
        .containsExactly("kick : x . . . | x . . . → bars 3 to 4");
  }

  @Test
  void everyTellsItsCounts() {
    assertThat(
            hints(
                "groove a\n  snare : rr rr rr rr\nstep b \"B\"\n  add kick at every &\n",
                EnumSet.of(Kind.COUNTS)))
        .containsExactly("add kick at every & → at 1& 2& 3& 4&");
    assertThat(
            hints(
                "groove a\n  snare : rr r rr r\nstep b \"B\"\n  accent snare at every &\n",
                EnumSet.of(Kind.COUNTS)))
        .containsExactly("accent snare at every & → at 1& 3&");
  }

  @Test
  void onlyTheKindsAskedForCome() {
    assertThat(hints("groove a\n  kick : x . x .\n", EnumSet.noneOf(Kind.class))).isEmpty();
  }
}
