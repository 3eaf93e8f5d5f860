package tabor.ide;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import tabor.compile.Compiled;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.groove.Stroke;

/** Fixes that give strokes to other limbs, or slow them down. */
class LimbFixesTest {
  private static List<Stroke> strokes(String text, String section) {
    return MemoryFiles.alone(text).lesson().grooves().stream()
        .filter(groove -> groove.name().equals(section))
        .findFirst()
        .orElseThrow()
        .written();
  }

  private static QuickFix fix(String text, Code code, String title) {
    Compiled compiled = MemoryFiles.alone(text);
    return compiled.diagnostics().stream()
        .filter(d -> d.code() == code)
        .flatMap(d -> QuickFixes.of(compiled, d).stream())
        .filter(one -> one.title().startsWith(title))
        .findFirst()
        .orElseThrow();
  }

  /** In a section of several bars a stroke that is given away stays in its bar. */
  @Test
  void aStrokeGivenToAnotherLimbStaysInItsBar() {
    String text = "groove a\n  right : h h h h | h h h h\n  snare : . . . . | r . . .\n";
    String other = "groove a\n  snare : r . . . | r . . .\n  right : . . . . | h h h h\n";
    QuickFix letter = fix(text, Code.LIMB_CONFLICT, "Give it to the other");
    assertThat(strokes(TextEdit.apply(letter.edits(), text), "a"))
        .filteredOn(s -> s.surface().name().equals("snare"))
        .extracting(Stroke::bar)
        .containsExactly(2);
    QuickFix below = fix(other, Code.LIMB_CONFLICT, "Give it to the left hand");
    String fixed = TextEdit.apply(below.edits(), other);
    assertThat(MemoryFiles.alone(fixed).hasErrors()).as(fixed).isFalse();
    assertThat(strokes(fixed, "a"))
        .filteredOn(s -> s.surface().name().equals("hihat"))
        .extracting(Stroke::bar)
        .containsOnly(2)
        .hasSize(4);
  }

  /** The other limb takes over where it is free; the tempo is that of the figures in force. */
  @Test
  void whatIsTooFastIsSharedOrSlowed() {
    String hands = "tempo 200\ngroove a\n  hands : rrrr rrRr rrrr rrrr\n";
    assertThat(fixed(hands, Code.TOO_FAST, "Give every other stroke to the left hand"))
        .isEqualTo(hands.replace("rrrr rrRr rrrr rrrr", "rlrl rlRl rlrl rlrl"));
    assertThat(fixed(hands, Code.TOO_FAST, "Slow this section down"))
        .isEqualTo(hands.replace("groove a\n", "groove a\n  tempo 150\n"));
    String right = "groove a\n  tempo 200\n  right : hhhh hhhh hhhh hhhh # all of it\n";
    assertThat(fixed(right, Code.TOO_FAST, "Give every other stroke to the left hand"))
        .isEqualTo(
            "groove a\n  tempo 200\n  right : h.h. h.h. h.h. h.h. # all of it\n"
                + "  left  : .h.h .h.h .h.h .h.h\n");
    assertThat(fixed(right, Code.TOO_FAST, "Slow this section down"))
        .isEqualTo(right.replace("tempo 200", "tempo 150"));
    String far = "tempo 150\ngroove a\n  left : h.hf ...f h.hf ...f\n";
    assertThat(fixed(far, Code.FAR_REACH, "Give the floor tom to the right hand"))
        .isEqualTo(
            "tempo 150\ngroove a\n  left : h.h. .... h.h. ....\n"
                + "  right : ...f ...f ...f ...f\n");
    String eight = "time 6/8\ntempo 140\ngroove a\n  hands : rrrrrr rrrrrr\n";
    assertThat(fixed(eight, Code.TOO_FAST, "Slow this section down")).contains("  tempo dotted");
  }

  @Test
  void noStrokeIsGivenToALimbThatIsBusy() {
    String text =
        "tempo 200\ngroove a\n  hihat : rrrr rrrr rrrr rrrr\n  snare : .... .l.. .... .l..\n";
    Compiled compiled = MemoryFiles.alone(text);
    assertThat(compiled.diagnostics())
        .filteredOn(d -> d.code() == Code.TOO_FAST)
        .isNotEmpty()
        .allSatisfy(
            d ->
                assertThat(QuickFixes.of(compiled, d))
                    .extracting(QuickFix::title)
                    .noneMatch(title -> title.startsWith("Give")));
    String three = "groove a\n  hihat : b . . .\n  snare : l . . .\n";
    Compiled clash = MemoryFiles.alone(three);
    assertThat(clash.diagnostics())
        .isNotEmpty()
        .allSatisfy(
            d ->
                assertThat(QuickFixes.of(clash, d))
                    .extracting(QuickFix::title)
                    .doesNotContain("Give it to the other limb"));
  }

  /** The text after a fix that works. */
  private static String fixed(String text, Code code, String title) {
    MemoryFiles files = new MemoryFiles().put("a.tabor", text);
    Compiled compiled = files.compiled("a.tabor");
    Diagnostic diagnostic =
        compiled.diagnostics().stream().filter(d -> d.code() == code).findFirst().orElseThrow();
    QuickFix fix = fix(text, code, title);
    assertThat(QuickFixes.obstacle(compiled, diagnostic, fix, files).isEmpty())
        .as(fix.title())
        .isTrue();
    return TextEdit.apply(fix.edits(), text);
  }

  @Test
  void aKickInAHandsPartGoesToAFoot() {
    String text = "groove a\n  right : h k h h\n";
    QuickFix fix = fix(text, Code.WRONG_LIMB, "Give the kick to a foot");
    assertThat(TextEdit.apply(fix.edits(), text))
        .isEqualTo("groove a\n  right : h . h h\n  add kick at 2 in bar 1\n");
  }

  @Test
  void aChokeThatCannotBeGoesAndTheStrokeStays() {
    String text = "groove a\n  snare : r! . l .\n";
    QuickFix fix = fix(text, Code.MISSING_SURFACE, "Leave the “!” out");
    assertThat(TextEdit.apply(fix.edits(), text)).isEqualTo("groove a\n  snare : r . l .\n");
  }
}
