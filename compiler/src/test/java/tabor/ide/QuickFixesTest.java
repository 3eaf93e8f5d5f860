package tabor.ide;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import tabor.compile.Compiled;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.source.Span;

/** Broken lessons, and what the editor offers for them. */
class QuickFixesTest {
  /**
   * A broken text.
   *
   * @param code what is wrong with it
   * @param text the text
   * @param fixed what the named fix makes of it
   */
  private record Case(String code, String text, String title, String fixed) {}

  private static Case c(String code, String text, String title, String fixed) {
    return new Case(code, text, title, fixed);
  }

  private static final String HANDS = "groove a\n  hands : rlrl rlrl rlrl rlrl\n";

  private static final List<Case> CASES =
      List.of(
          c(
              "bar-length",
              "groove a\n  hands : rl rl rl\n",
              "Fill the bar with rests",
              "groove a\n  hands : rl rl rl .\n"),
          c(
              "bar-length",
              "groove a\n"
                  + "  pickup 1 beat\n"
                  + "  hands : r l r l r | r l r l\n"
                  + "  kick : . | x . x . | x . x .\n",
              "Set the bar line",
              "groove a\n"
                  + "  pickup 1 beat\n"
                  + "  hands : r | l r l r | r l r l\n"
                  + "  kick : . | x . x . | x . x .\n"),
          c(
              "bar-length",
              "groove a\n  hands : r l r l r l r l\n  kick : x . x . x . x .\n",
              "Set the bar lines of all these parts",
              "groove a\n  hands : r l r l | r l r l\n  kick : x . x . | x . x .\n"),
          c(
              "syntax",
              HANDS + "step b \"Second from a\n  accent right at 1\n",
              "Close the text before “from”",
              HANDS + "step b \"Second\" from a\n  accent right at 1\n"),
          c(
              "syntax",
              HANDS + "step b \"Second from the top\n  accent right at 1\n",
              "Close the text",
              HANDS + "step b \"Second from the top\"\n  accent right at 1\n"),
          c(
              "syntax",
              "groove a\n  snare : r (lL r l\n",
              "Close it before the accent",
              "groove a\n  snare : r (l)L r l\n"),
          c(
              "already-there",
              HANDS + "sheet b \"Kicks\" from a\n  each add kick at 2& 3 3 4&\n",
              "Take 3 out",
              HANDS + "sheet b \"Kicks\" from a\n  each add kick at 2& 3 4&\n"),
          c(
              "bar-length",
              "groove a\n  kick : x . x . .\n",
              "Cut the surplus",
              "groove a\n  kick : x . x .\n"),
          c(
              "bar-length",
              "groove a\n  hands : rl rl rl rl | rl rl rl\n",
              "Replace this bar with the bar before",
              "groove a\n  hands : rl rl rl rl | %\n"),
          c(
              "bar-length",
              "groove a\n  hands : rl rl rl rlr:2\n",
              "Let the last word be one beat",
              "groove a\n  hands : rl rl rl rlr\n"),
          c(
              "bar-count",
              "groove a\n  hands : r r r r | l l l l\n  kick : x . x .\n",
              "Repeat the last bar",
              "groove a\n  hands : r r r r | l l l l\n  kick : x . x . | %\n"),
          c(
              "bar-count",
              "groove a\n  hands : r r r r\n  kick : x . x . | x . . .\n",
              "Cut the last bar",
              "groove a\n  hands : r r r r\n  kick : x . x .\n"),
          c(
              "limb-conflict",
              "groove a\n  right : d d d d\n  snare : . r . l\n",
              "Give it to the other limb",
              "groove a\n  right : d d d d\n  snare : . l . l\n"),
          c(
              "limb-conflict",
              "groove a\n  right : d d d d\n  snare : . r . l\n",
              "Leave this stroke out",
              "groove a\n  right : d d d d\n  snare : . . . l\n"),
          c(
              "limb-conflict",
              "groove a\n  hihat : r r r r\nstep b \"B\"\n  add cowbell with right at 1\n",
              "Give it to the left hand",
              "groove a\n  hihat : r r r r\nstep b \"B\"\n  add cowbell with left at 1\n"),
          c(
              "three-hands",
              "groove a\n  hihat : x . . .\n  snare : x . . .\n  tom1 : x . . .\n",
              "Leave this stroke out",
              "groove a\n  hihat : x . . .\n  snare : x . . .\n  tom1 : . . . .\n"),
          c(
              "no-free-hand",
              "groove a\n  ride : r . . .\n  snare : 'l . . .\n",
              "Leave the grace notes out",
              "groove a\n  ride : r . . .\n  snare : l . . .\n"),
          c(
              "unknown-name",
              "groove a\n  snar : . x . x\n",
              "Write “snare”",
              "groove a\n  snare : . x . x\n"),
          c(
              "unknown-name",
              "groove a\n  hands play paradidle in triplets\n",
              "Write “paradiddle”",
              "groove a\n  hands play paradiddle in triplets\n"),
          c(
              "duplicate-name",
              HANDS + "groove a\n  hands : r r r r\n",
              "Name it “a-2”",
              HANDS + "groove a-2\n  hands : r r r r\n"),
          c(
              "nothing-there",
              "groove a\n  kick : x . x .\nstep b \"B\"\n  drop kick at 2\n",
              "Write 3",
              "groove a\n  kick : x . x .\nstep b \"B\"\n  drop kick at 3\n"),
          c(
              "nothing-there",
              "groove a\n  hands : % | rl rl rl rl\n",
              "Write silence",
              "groove a\n  hands : . . . . | rl rl rl rl\n"),
          c(
              "nothing-there",
              "groove a\n  hands : .- rl rl rl\n",
              "Write a dot: silence",
              "groove a\n  hands : .. rl rl rl\n"),
          c(
              "count-outside-bar",
              HANDS + "step b \"B\"\n  add kick at 5\n",
              "Write 4",
              HANDS + "step b \"B\"\n  add kick at 4\n"),
          c(
              "count-outside-bar",
              "groove a\n  kick : x . x .\nstep b \"B\"\n  drop kick at 9\n",
              "Write 3",
              "groove a\n  kick : x . x .\nstep b \"B\"\n  drop kick at 3\n"),
          c(
              "count-outside-bar",
              "groove a\n  kick : x . x . | x . x . | . . . .\n  drop kick at 1 in bar 9\n",
              "Write 2",
              "groove a\n  kick : x . x . | x . x . | . . . .\n  drop kick at 1 in bar 2\n"),
          c(
              "ambiguous-count",
              "groove a\n"
                  + "  hands : rlr r r r\n"
                  + "  kick : x..x . . .\n"
                  + "step b \"B\"\n"
                  + "  add crash at 1a\n",
              "Write 1a/3",
              "groove a\n"
                  + "  hands : rlr r r r\n"
                  + "  kick : x..x . . .\n"
                  + "step b \"B\"\n"
                  + "  add crash at 1a/3\n"),
          c(
              "missing-surface",
              "on small\nkit small\n  without tom2\ngroove a\n  right : m . . .\n",
              "Play the first tom",
              "on small\nkit small\n  without tom2\ngroove a\n  right : t . . .\n"),
          c(
              "accent-in-ghost",
              "groove a\n  hands : (rL) r r r\n",
              "Make it a ghost stroke",
              "groove a\n  hands : (rl) r r r\n"),
          c(
              "syntax",
              "groove a\n  hands : rl r{l rl rl\n",
              "Close it at the end of the word",
              "groove a\n  hands : rl r{l} rl rl\n"),
          c(
              "all-accents",
              "groove a\n  hands : RL RL RL RL\n",
              "Write small letters: plain strokes",
              "groove a\n  hands : rl rl rl rl\n"),
          c(
              "odd-beat",
              "groove a\n  hands : rlr rlr rlrl rlr\n",
              "Say that it is meant",
              "groove a\n  hands : rlr rlr rlrl:1 rlr\n"),
          c(
              "held-drum",
              "groove a\n  snare : r- l r l\n",
              "Write a dot: silence",
              "groove a\n  snare : r. l r l\n"),
          c(
              "already-there",
              "groove a\n  kick : x . x .\nstep b \"B\"\n  add kick at 1\n",
              "Take this line out",
              "groove a\n  kick : x . x .\nstep b \"B\"\n"),
          c(
              "unused-name",
              "pattern six : rlrrll\ngroove a\n  hands : r r r r\n",
              "Take it out",
              "groove a\n  hands : r r r r\n"),
          c(
              "syntax",
              "groove a\n  text: \"\"\"\n    Say \"one\"\n    aloud.\n    \"\"\"\n  kick : x . . .\n",
              "Write text \"\"\" …",
              "groove a\n  text \"\"\"\n    Say \"one\"\n    aloud.\n    \"\"\"\n  kick : x . . .\n"),
          c(
              "hihat-contradiction",
              "groove a\n  right : o . . .\n  hihat.foot : x . . .\n",
              "Leave this stroke out",
              "groove a\n  right : o . . .\n  hihat.foot : . . . .\n"),
          c(
              "hihat-contradiction",
              "groove a\n  right : o . o ..o.\n  hihat.foot : x (x) x Xxxx\n",
              "Leave these strokes out",
              "groove a\n  right : o . o ..o.\n  hihat.foot : . (x) . Xx.x\n"),
          c(
              "hihat-contradiction",
              "groove a\n  hihat : x x x x\n  kick : l r l r\n",
              "Leave these strokes out",
              "groove a\n  hihat : x x x x\n  kick : . r . r\n"),
          c(
              "hihat-contradiction",
              "groove a\n  kick : l r l r\n  hihat : x x x x\n",
              "Leave these strokes out",
              "groove a\n  kick : l r l r\n  hihat : . x . x\n"),
          c(
              "foot-on-closed-hihat",
              "groove a\n  hihat.foot : . x . x\n  hihat : xx xx xx x\n",
              "Leave these strokes out",
              "groove a\n  hihat.foot : . x . x\n  hihat : xx .x xx .\n"));

  @TestFactory
  Stream<DynamicTest> everyFixRemovesItsDiagnostic() {
    return CASES.stream()
        .map(one -> DynamicTest.dynamicTest(one.code + ": " + one.title, () -> check(one)));
  }

  private static void check(Case one) {
    MemoryFiles files = new MemoryFiles().put("a.tabor", one.text);
    Compiled compiled = files.compiled("a.tabor");
    Code code = Code.of(one.code).orElseThrow();
    List<Diagnostic> meant = compiled.diagnostics().stream().filter(d -> d.code() == code).toList();
    assertThat(meant).as("%s in%n%s", one.code, one.text).isNotEmpty();
    List<String> titles = new ArrayList<>();
    for (QuickFix fix : QuickFixes.of(compiled, meant.get(0))) {
      titles.add(fix.title());
      String after = TextEdit.apply(fix.edits(), one.text);
      assertThat(QuickFixes.obstacle(compiled, meant.get(0), fix, files).isEmpty())
          .as("%s works%n%s%s", fix.title(), after, MemoryFiles.alone(after).diagnostics())
          .isTrue();
      if (fix.title().equals(one.title)) {
        assertThat(after).isEqualTo(one.fixed);
      }
    }
    assertThat(titles).contains(one.title).doesNotHaveDuplicates();
  }

  @Test
  void aFixThatLeavesItsProblemOrMakesAnotherDoesNotWork() {
    String text = "groove a\n  hands : rl rl rl\n  kick : x . x .\n";
    MemoryFiles files = new MemoryFiles().put("a.tabor", text);
    Compiled compiled = files.compiled("a.tabor");
    Diagnostic diagnostic = compiled.diagnostics().get(0);
    int hands = text.indexOf("rl rl rl");
    QuickFix useless = QuickFix.of("Swap the last", new Span(hands + 6, hands + 8), "lr");
    QuickFix harmful = QuickFix.of("Double it", new Span(hands + 8, hands + 8), " rl | rl");
    QuickFix good = QuickFix.of("Add a beat", new Span(hands + 8, hands + 8), " rl");
    assertThat(QuickFixes.obstacle(compiled, diagnostic, useless, files).isEmpty()).isFalse();
    assertThat(QuickFixes.obstacle(compiled, diagnostic, harmful, files).isEmpty()).isFalse();
    assertThat(QuickFixes.obstacle(compiled, diagnostic, good, files).isEmpty()).isTrue();
  }
}
