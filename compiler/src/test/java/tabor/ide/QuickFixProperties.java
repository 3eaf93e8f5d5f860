package tabor.ide;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import tabor.compile.Compiled;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Severity;
import tabor.groove.Groove;
import tabor.groove.Stroke;
import tabor.source.Span;
import tabor.syntax.Edit;
import tabor.syntax.Line;

/** Fixes of errors put into the examples at random. */
class QuickFixProperties {
  private static final int ERRORS_PER_FILE = 60;

  /** A way to spoil a text at an offset; null where it does not apply. */
  private interface Spoiler {
    @org.jspecify.annotations.Nullable
    String spoil(String text, int at, Random dice);
  }

  private static final List<Spoiler> SPOILERS =
      List.of(
          // A letter too few, too many or another one.
          (text, at, dice) -> isLetter(text, at) ? cut(text, at, at + 1) : null,
          (text, at, dice) -> isLetter(text, at) ? put(text, at, text.substring(at, at + 1)) : null,
          (text, at, dice) ->
              isLetter(text, at)
                  ? put(cut(text, at, at + 1), at, String.valueOf((char) ('a' + dice.nextInt(26))))
                  : null,
          // A sign lost.
          (text, at, dice) ->
              "\"|(){}:&".indexOf(text.charAt(at)) >= 0 ? cut(text, at, at + 1) : null,
          // A sign too many.
          (text, at, dice) ->
              isLetter(text, at)
                  ? put(text, at + 1, String.valueOf("!^=/|&.".charAt(dice.nextInt(7))))
                  : null,
          // Another count or number.
          (text, at, dice) ->
              Character.isDigit(text.charAt(at))
                  ? put(cut(text, at, at + 1), at, String.valueOf(1 + dice.nextInt(9)))
                  : null,
          // A beat lost or doubled.
          (text, at, dice) -> {
            int end = text.indexOf(' ', at + 1);
            return text.charAt(at) == ' ' && end > 0 ? cut(text, at, end) : null;
          },
          (text, at, dice) -> {
            int end = text.indexOf(' ', at + 1);
            return text.charAt(at) == ' ' && end > 0 && end - at < 8
                ? put(text, at, text.substring(at, end))
                : null;
          },
          // The other hand.
          (text, at, dice) ->
              text.charAt(at) == 'r'
                  ? put(cut(text, at, at + 1), at, "l")
                  : text.charAt(at) == 'l' ? put(cut(text, at, at + 1), at, "r") : null);

  private static boolean isLetter(String text, int at) {
    return Character.isLetter(text.charAt(at));
  }

  private static String cut(String text, int from, int to) {
    return text.substring(0, from) + text.substring(to);
  }

  private static String put(String text, int at, String more) {
    return text.substring(0, at) + more + text.substring(at);
  }

  private static List<Path> corpus() throws IOException {
    return CompletionProperties.examples().toList();
  }

  @TestFactory
  Stream<DynamicTest> everyFixRemovesItsDiagnosticAndMakesNone() throws IOException {
    return corpus().stream()
        .map(
            file ->
                DynamicTest.dynamicTest(
                    file.getFileName().toString(),
                    () -> check(MemoryFiles.beside(file), Files.readString(file))));
  }

  private static void check(MemoryFiles files, String good) {
    Random dice = new Random(good.length());
    Compiled before = files.trial(MemoryFiles.path("a.tabor"), good);
    int listed = 0;
    int working = 0;
    List<String> failed = new ArrayList<>();
    for (int i = 0; i < ERRORS_PER_FILE; i++) {
      String bad = spoiled(good, dice);
      Compiled compiled = files.trial(MemoryFiles.path("a.tabor"), bad);
      for (Diagnostic diagnostic : compiled.diagnostics()) {
        for (QuickFix fix : QuickFixes.of(compiled, diagnostic)) {
          listed++;
          if (QuickFixes.works(compiled, diagnostic, fix, files)) {
            working++;
            holds(files, before, compiled, diagnostic, fix);
          } else {
            failed.add(diagnostic.code() + ": " + fix.title() + "\n" + line(compiled, diagnostic));
          }
        }
      }
    }
    // What is listed is meant to work: trying is for the few that meet something else.
    assertThat(working)
        .as("%s of %s work; not%n%s", working, listed, String.join("\n", failed))
        .isGreaterThanOrEqualTo(listed * 9 / 10);
  }

  private static String line(Compiled compiled, Diagnostic diagnostic) {
    int at = compiled.span(diagnostic.spot()).start();
    return compiled
        .text()
        .substring(LineEnds.start(compiled.text(), at), LineEnds.end(compiled.text(), at));
  }

  private static String spoiled(String good, Random dice) {
    while (true) {
      int at = dice.nextInt(good.length());
      String bad = SPOILERS.get(dice.nextInt(SPOILERS.size())).spoil(good, at, dice);
      if (bad != null && !bad.equals(good)) {
        return bad;
      }
    }
  }

  /** After a fix that works nothing is wrong that was not, and only strokes of its line differ. */
  private static void holds(
      MemoryFiles files, Compiled good, Compiled bad, Diagnostic diagnostic, QuickFix fix) {
    String text = TextEdit.apply(fix.edits(), bad.text());
    Compiled after = files.trial(MemoryFiles.path("a.tabor"), text);
    String told = fix.title() + " in " + line(bad, diagnostic) + "\n" + text;
    Set<Code> known = new HashSet<>();
    good.diagnostics().forEach(d -> known.add(d.code()));
    bad.diagnostics().forEach(d -> known.add(d.code()));
    assertThat(after.diagnostics())
        .as(told)
        .filteredOn(
            d ->
                d.severity() == Severity.ERROR
                    || (d.severity() == Severity.WARNING
                        && diagnostic.severity() == Severity.WARNING))
        .allMatch(d -> known.contains(d.code()));
    if (fix.lossless()) {
      // Spelling, quotes and signs: every letter and digit that was written is there.
      assertThat(diagnostic.severity()).isEqualTo(Severity.ERROR);
      for (TextEdit edit : fix.edits()) {
        String old = edit.span().in(bad.text());
        assertThat(edit.text().isBlank() && old.chars().anyMatch(Character::isLetterOrDigit))
            .as(told)
            .isFalse();
      }
    }
    if (diagnostic.code() == Code.SYNTAX || diagnostic.code() == Code.UNKNOWN_NAME) {
      return; // the line is read now, and does what it says
    }
    Line at = Cursor.at(bad, bad.span(diagnostic.spot()).start()).line();
    if (at != null && at.statement() instanceof Edit) {
      return; // it acts on strokes of other lines, and does so now elsewhere
    }
    // Strokes that other lines wrote are what they were.
    for (Groove old : bad.lesson().grooves()) {
      for (Groove now : after.lesson().grooves()) {
        if (old.name().equals(now.name()) && !old.isStep() && !now.isStep()) {
          List<String> there = written(now, after, span -> true);
          assertThat(written(old, bad, span -> !touches(fix, bad.text(), span)))
              .as(told)
              // A section that was made shorter has what fits into it.
              .filteredOn(s -> Integer.parseInt(s.substring(0, s.indexOf(' '))) <= now.bars())
              .allMatch(s -> there.stream().anyMatch(kept -> isSame(s, kept)));
        }
      }
    }
  }

  /** The same stroke; what one line says of its limb may come from another, which was fixed. */
  private static boolean isSame(String before, String after) {
    return before.equals(after) || before.startsWith(after + " ") || after.startsWith(before + " ");
  }

  /** What is struck where, with its limb where that is written. */
  private static List<String> written(Groove groove, Compiled file, Predicate<Span> lines) {
    return groove.written().stream()
        .filter(s -> lines.test(file.span(s.spot())))
        .map(
            s ->
                s.bar()
                    + " "
                    + s.at()
                    + " "
                    + s.surface().name()
                    + " "
                    + s.level()
                    + " "
                    + s.ornaments()
                    + (s.dealt() ? "" : " " + s.limb()))
        .toList();
  }

  private static boolean touches(QuickFix fix, String text, Span span) {
    Span line = LineEnds.whole(text, span);
    return fix.edits().stream()
        .anyMatch(e -> e.span().start() < line.end() && line.start() <= e.span().end());
  }

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
    assertThat(QuickFixes.works(compiled, diagnostic, fix, files)).as(fix.title()).isTrue();
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

  @Test
  void nothingIsFixedAllOverThatLosesStrokesOrMovesHands() {
    String text =
        "groove a\n  hands : rl rl rl rl rl\n  right : h h h\nstep b \"B\n  drop snar at 9\n"
            + "groove c\n  snar : . x . x\n  hands : RL RL RL RL\n";
    MemoryFiles files = new MemoryFiles().put("a.tabor", text);
    Compiled compiled = files.compiled("a.tabor");
    QuickFix all = QuickFixes.all(compiled).orElseThrow();
    String fixed = TextEdit.apply(all.edits(), text);
    assertThat(fixed).contains("rl rl rl rl rl", "h h h\n", "RL RL RL RL", "snare : . x . x");
    assertThat(QuickFixes.all(compiled, Code.BAR_LENGTH)).isEmpty();
  }

  @Test
  void theSameFixIsNotListedTwice() throws IOException {
    for (Path file : corpus()) {
      Random dice = new Random(3);
      String good = Files.readString(file);
      for (int i = 0; i < 40; i++) {
        Compiled compiled = MemoryFiles.alone(spoiled(good, dice));
        for (Diagnostic diagnostic : compiled.diagnostics()) {
          assertThat(QuickFixes.of(compiled, diagnostic))
              .extracting(QuickFix::edits)
              .doesNotHaveDuplicates();
        }
      }
    }
  }
}
