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
import tabor.source.Span;
import tabor.syntax.Edit;
import tabor.syntax.Line;

/** Fixes of errors put into the examples at random. */
class QuickFixProperties {
  private static final int ERRORS_PER_FILE = Integer.getInteger("tabor.fixes", 60);

  /** What a line on other strokes is told. */
  private static final Set<Code> UNSEEN =
      Set.of(Code.NOTHING_THERE, Code.COUNT_OUTSIDE_BAR, Code.ALREADY_THERE);

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
    List<Path> found = new ArrayList<>(CompletionProperties.examples().toList());
    for (String folder : List.of("main/resources/tabor/cli/new", "test/resources/tabor/body")) {
      try (Stream<Path> files = Files.walk(Path.of("src").resolve(folder))) {
        files.filter(file -> file.toString().endsWith(".tabor")).sorted().forEach(found::add);
      }
    }
    return found;
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
    int working = 0;
    int hidden = 0;
    List<String> failed = new ArrayList<>();
    for (int i = 0; i < ERRORS_PER_FILE; i++) {
      String bad = spoiled(good, dice);
      Compiled compiled = files.trial(MemoryFiles.path("a.tabor"), bad);
      for (Diagnostic diagnostic : compiled.diagnostics()) {
        for (QuickFix fix : QuickFixes.of(compiled, diagnostic)) {
          if (QuickFixes.obstacle(compiled, diagnostic, fix, files).isEmpty()) {
            working++;
            holds(files, before, compiled, diagnostic, fix);
          } else if (bringsUp(files, compiled, diagnostic, fix)) {
            hidden++;
          } else {
            failed.add(told(files, compiled, diagnostic, fix));
          }
        }
      }
    }
    assertThat(failed).isEmpty();
    assertThat(working).isGreaterThan(0);
    assertThat(hidden)
        .as("of %s only to be found out by trying", working)
        .isLessThanOrEqualTo(working / 10);
  }

  /**
   * True if the fix does all it says, and what is wrong after it the faulty bar kept from being
   * seen: a line on the strokes of that part that finds nothing there. Only trying shows that,
   * which is why a fix is tried before the text is changed.
   */
  private static boolean bringsUp(
      MemoryFiles files, Compiled bad, Diagnostic diagnostic, QuickFix fix) {
    Compiled after =
        files.trial(MemoryFiles.path("a.tabor"), TextEdit.apply(fix.edits(), bad.text()));
    List<String> before = bad.diagnostics().stream().map(Diagnostic::message).toList();
    List<Diagnostic> more =
        after.diagnostics().stream().filter(d -> !before.contains(d.message())).toList();
    return diagnostic.code() == Code.BAR_LENGTH
        && !more.isEmpty()
        && more.stream().allMatch(d -> UNSEEN.contains(d.code()))
        && more.stream().noneMatch(d -> line(after, d).equals(line(bad, diagnostic)));
  }

  /** What a fix that does not hold was to do, and what is wrong after it. */
  private static String told(MemoryFiles files, Compiled bad, Diagnostic diagnostic, QuickFix fix) {
    String text = TextEdit.apply(fix.edits(), bad.text());
    Compiled after = files.trial(MemoryFiles.path("a.tabor"), text);
    StringBuilder told = new StringBuilder("##" + diagnostic.code() + ": " + fix.title());
    told.append(" of “").append(diagnostic.message()).append("”\n").append(line(bad, diagnostic));
    for (Diagnostic left : after.diagnostics()) {
      told.append("\n  ").append(left.code()).append(' ').append(left.message());
      told.append(": ").append(line(after, left));
    }
    return told.toString();
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
