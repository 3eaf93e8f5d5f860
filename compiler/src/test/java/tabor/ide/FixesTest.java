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

/** Broken lessons, and what the editor offers for them. */
class FixesTest {
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
              "fill the bar with rests",
              "groove a\n  hands : rl rl rl .\n"),
          c(
              "bar-length",
              "groove a\n  kick : x . x . .\n",
              "cut the surplus",
              "groove a\n  kick : x . x .\n"),
          c(
              "bar-length",
              "groove a\n  hands : rl rl rl rl | rl rl rl\n",
              "repeat the bar before",
              "groove a\n  hands : rl rl rl rl | %\n"),
          c(
              "bar-length",
              "groove a\n  hands : rl rl rl rlr:2\n",
              "let the last word be one beat",
              "groove a\n  hands : rl rl rl rlr\n"),
          c(
              "bar-count",
              "groove a\n  hands : r r r r | l l l l\n  kick : x . x .\n",
              "repeat the last bar",
              "groove a\n  hands : r r r r | l l l l\n  kick : x . x . | %\n"),
          c(
              "bar-count",
              "groove a\n  hands : r r r r\n  kick : x . x . | x . . .\n",
              "cut the last bar",
              "groove a\n  hands : r r r r\n  kick : x . x .\n"),
          c(
              "limb-conflict",
              "groove a\n  right : d d d d\n  snare : . r . l\n",
              "give it to the other limb",
              "groove a\n  right : d d d d\n  snare : . l . l\n"),
          c(
              "limb-conflict",
              "groove a\n  right : d d d d\n  snare : . r . l\n",
              "leave this stroke out",
              "groove a\n  right : d d d d\n  snare : . . . l\n"),
          c(
              "limb-conflict",
              "groove a\n  hihat : r r r r\nstep b \"B\"\n  add cowbell with right at 1\n",
              "give it to the left hand",
              "groove a\n  hihat : r r r r\nstep b \"B\"\n  add cowbell with left at 1\n"),
          c(
              "three-hands",
              "groove a\n  hihat : x . . .\n  snare : x . . .\n  tom1 : x . . .\n",
              "leave this stroke out",
              "groove a\n  hihat : x . . .\n  snare : x . . .\n  tom1 : . . . .\n"),
          c(
              "no-free-hand",
              "groove a\n  ride : r . . .\n  snare : 'l . . .\n",
              "without the small strokes",
              "groove a\n  ride : r . . .\n  snare : l . . .\n"),
          c(
              "unknown-name",
              "groove a\n  snar : . x . x\n",
              "write “snare”",
              "groove a\n  snare : . x . x\n"),
          c(
              "unknown-name",
              "groove a\n  hands play paradidle in triplets\n",
              "write “paradiddle”",
              "groove a\n  hands play paradiddle in triplets\n"),
          c(
              "duplicate-name",
              HANDS + "groove a\n  hands : r r r r\n",
              "name it “a-2”",
              HANDS + "groove a-2\n  hands : r r r r\n"),
          c(
              "nothing-there",
              "groove a\n  kick : x . x .\nstep b \"B\"\n  drop kick at 2\n",
              "write 3",
              "groove a\n  kick : x . x .\nstep b \"B\"\n  drop kick at 3\n"),
          c(
              "nothing-there",
              "groove a\n  hands : % | rl rl rl rl\n",
              "write silence",
              "groove a\n  hands : . . . . | rl rl rl rl\n"),
          c(
              "nothing-there",
              "groove a\n  hands : .- rl rl rl\n",
              "write a rest",
              "groove a\n  hands : .. rl rl rl\n"),
          c(
              "count-outside-bar",
              HANDS + "step b \"B\"\n  add kick at 5\n",
              "write 4",
              HANDS + "step b \"B\"\n  add kick at 4\n"),
          c(
              "ambiguous-count",
              "groove a\n"
                  + "  hands : rlr r r r\n"
                  + "  kick : x..x . . .\n"
                  + "step b \"B\"\n"
                  + "  add crash at 1a\n",
              "write 1a/3",
              "groove a\n"
                  + "  hands : rlr r r r\n"
                  + "  kick : x..x . . .\n"
                  + "step b \"B\"\n"
                  + "  add crash at 1a/3\n"),
          c(
              "missing-surface",
              "on small\nkit small\n  without tom2\ngroove a\n  right : m . . .\n",
              "play the first tom",
              "on small\nkit small\n  without tom2\ngroove a\n  right : t . . .\n"),
          c(
              "accent-in-ghost",
              "groove a\n  hands : (rL) r r r\n",
              "make it a ghost stroke",
              "groove a\n  hands : (rl) r r r\n"),
          c(
              "syntax",
              "groove a\n  hands : rl r{l rl rl\n",
              "Close it at the end of the word",
              "groove a\n  hands : rl r{l} rl rl\n"),
          c(
              "all-accents",
              "groove a\n  hands : RL RL RL RL\n",
              "write small letters: plain strokes",
              "groove a\n  hands : rl rl rl rl\n"),
          c(
              "odd-beat",
              "groove a\n  hands : rlr rlr rlrl rlr\n",
              "say that it is meant",
              "groove a\n  hands : rlr rlr rlrl:1 rlr\n"),
          c(
              "held-drum",
              "groove a\n  snare : r- l r l\n",
              "write a rest",
              "groove a\n  snare : r. l r l\n"),
          c(
              "already-there",
              "groove a\n  kick : x . x .\nstep b \"B\"\n  add kick at 1\n",
              "take this line out",
              "groove a\n  kick : x . x .\nstep b \"B\"\n"),
          c(
              "unused-name",
              "pattern six : rlrrll\ngroove a\n  hands : r r r r\n",
              "take it out",
              "groove a\n  hands : r r r r\n"),
          c(
              "hihat-contradiction",
              "groove a\n  right : o . . .\n  hihat.foot : x . . .\n",
              "leave this stroke out",
              "groove a\n  right : o . . .\n  hihat.foot : . . . .\n"));

  @TestFactory
  Stream<DynamicTest> everyFixMendsItsDiagnostic() {
    return CASES.stream()
        .map(one -> DynamicTest.dynamicTest(one.code + ": " + one.title, () -> check(one)));
  }

  private static void check(Case one) {
    Shelf shelf = new Shelf().put("a.tabor", one.text);
    Compiled compiled = shelf.compiled("a.tabor");
    Code code = Code.of(one.code).orElseThrow();
    List<Diagnostic> meant = compiled.diagnostics().stream().filter(d -> d.code() == code).toList();
    assertThat(meant).as("%s in%n%s", one.code, one.text).isNotEmpty();
    List<String> titles = new ArrayList<>();
    for (Mend mend : Fixes.of(compiled, meant.get(0), shelf)) {
      titles.add(mend.title());
      String after = mend.apply(one.text);
      long left = Shelf.alone(after).diagnostics().stream().filter(d -> d.code() == code).count();
      assertThat(left).as("%s leaves%n%s", mend.title(), after).isLessThan(meant.size());
      if (mend.title().equals(one.title)) {
        assertThat(after).isEqualTo(one.fixed);
      }
    }
    assertThat(titles).contains(one.title);
  }

  @Test
  void allOfAKindAreMendedAtOnce() {
    String text = "groove a\n  hands : rl rl rl\n  kick : x .\ngroove b\n  hands : r r r\n";
    Shelf shelf = new Shelf().put("a.tabor", text);
    Mend all = Fixes.all(shelf.compiled("a.tabor"), Code.BAR_LENGTH, shelf).orElseThrow();
    assertThat(all.apply(text))
        .isEqualTo(
            "groove a\n  hands : rl rl rl .\n  kick : x . . .\ngroove b\n  hands : r r r .\n");
  }
}
