package tabor.ide;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import tabor.compile.Compiled;
import tabor.groove.Groove;
import tabor.groove.Section;

/** Other ways to write the same: what comes out, and that it is the same. */
class RefactoringsTest {
  private static String rewritten(String marked, String title) {
    int offset = marked.indexOf('§');
    String text = marked.replace("§", "");
    MemoryFiles files = new MemoryFiles().put("a.tabor", text);
    List<String> titles = new ArrayList<>();
    for (Refactoring one : Refactorings.at(files.compiled("a.tabor"), offset, files)) {
      titles.add(one.title());
      if (one.title().equals(title)) {
        return one.edits(files).map(edits -> TextEdit.apply(edits, text)).orElse("refused");
      }
    }
    return "offered only " + titles;
  }

  @Test
  void partsBySurfaceBecomePartsByLimb() {
    String text =
        "groove a\n  hihat : r§r rr rr rr\n  snare : .. l. .. l.\n  kick  : x. .. x. ..\n";
    assertThat(rewritten(text, "Write these parts by limb"))
        .isEqualTo(
            "groove a\n  right      : hh hh hh hh\n  left       : .  s. .  s.\n  right foot : k. .  k. .\n"
                .replace(".  s. .  s.", ". s. . s.")
                .replace("k. .  k. .", "k. . k. ."));
    assertThat(
            rewritten(
                "groove a\n  right : h§h hh hs hh\n  left : . (s). . s\n",
                "Write these parts by surface"))
        .isEqualTo("groove a\n  snare : . (l). .r l\n  hihat : rr rr r. rr\n");
  }

  @Test
  void aPlayedPatternIsWrittenOutAndBack() {
    String played = "groove a\n  hands pl§ay paradiddle in sixteenths\n";
    String written = "groove a\n  hands : RlrrLrll | RlrrLrll\n";
    assertThat(rewritten(played, "Write this part out"))
        .isEqualTo("groove a\n  hands : Rlrr Lrll Rlrr Lrll\n");
    assertThat(rewritten("groove a\n  ha§nds : Rlrr Lrll Rlrr Lrll\n", "Play paradiddle"))
        .isEqualTo(played.replace("§", ""));
    assertThat(written).isNotEmpty();
  }

  @Test
  void aPartBecomesAPatternOfItsOwn() {
    assertThat(rewritten("groove a\n  ha§nds : r(ll) rrl lrr lll\n", "Make a pattern of this part"))
        .isEqualTo(
            "pattern pattern-1 : r(l)(l)rrllrrlll\n\n"
                + "groove a\n"
                + "  hands play pattern-1 in triplets\n");
  }

  @Test
  void aStepIsWrittenOutAndAGrooveBecomesAStep() {
    String text =
        "groove a\n  hands : rlrl rlrl rlrl rlrl\nstep b§ \"B\"\n  text \"Now the kick.\"\n"
            + "  add kick at 1 3\n  right plays ride\n";
    String out = rewritten(text, "Write this step out as a groove");
    assertThat(out)
        .isEqualTo(
            "groove a\n"
                + "  hands : rlrl rlrl rlrl rlrl\n"
                + "groove b \"B\"\n"
                + "  text \"Now the kick.\"\n"
                + "  kick  : x . x .\n"
                + "  snare : .l.l .l.l .l.l .l.l\n"
                + "  ride  : r.r. r.r. r.r. r.r.\n");
    String back =
        rewritten(out.replace("groove b", "groove b§"), "Write this groove as a step from a");
    assertThat(back)
        .isEqualTo(
            "groove a\n"
                + "  hands : rlrl rlrl rlrl rlrl\n"
                + "step b \"B\"\n"
                + "  text \"Now the kick.\"\n"
                + "  kick  : x . x .\n"
                + "  snare : .l.l .l.l .l.l .l.l\n"
                + "  ride  : r.r. r.r. r.r. r.r.\n");
  }

  @Test
  void theHandsOfAPartAreSwapped() {
    assertThat(rewritten("groove a\n  ha§nds : R'l (r)l r{lr} b\n", "Swap the hands of this part"))
        .isEqualTo("groove a\n  hands : L'r (l)r l{rl} b\n");
    assertThat(rewritten("groove a\n  ri§ght : h h h h\n", "Swap the hands of this part"))
        .isEqualTo("groove a\n  left : h h h h\n");
  }

  @Test
  void aStepWrittenOutKeepsCommentsDynamicsAndTexts() {
    String text =
        """
        groove a # the first
          tempo 70
          hands : rlrl rlrl rlrl rlrl
          dynamic p
        # between
        step b "B" # the second
          # what is new
          add kick at 1 3 # with the foot
          crescendo to f from 3 to 4
          text "Now the kick." # aloud

        chart c
          play b§
        """;
    assertThat(
            rewritten(
                text.replace("b§", "b").replace("step b", "step b§"),
                "Write this step out as a groove"))
        .isEqualTo(
            """
            groove a # the first
              tempo 70
              hands : rlrl rlrl rlrl rlrl
              dynamic p
            # between
            groove b "B" # the second
              # what is new
              # with the foot
              tempo 70
              kick  : x . x .
              snare : rlrl rlrl rlrl rlrl
              dynamic p at 1 in bar 1
              crescendo to f from 3 in bar 1 to 4 in bar 1
              text "Now the kick." # aloud

            chart c
              play b
            """);
  }

  @Test
  void partsWrittenOtherwiseKeepTheCommentsBetweenThem() {
    assertThat(
            rewritten(
                "groove a\n"
                    + "  hi§hat : rr rr rr rr # ride on\n"
                    + "  # the backbeat\n"
                    + "  snare : . l . l # crack\n",
                "Write these parts by limb"))
        .isEqualTo(
            "groove a\n"
                + "  # ride on\n"
                + "  # the backbeat\n"
                + "  right : hh hh hh hh\n"
                + "  left  : . s . s # crack\n");
  }

  /** How many of those that were listed were done, and how many were refused when chosen. */
  private int done;

  private int refused;

  /** Every way to write the examples otherwise keeps what a person wrote and hears. */
  @TestFactory
  Stream<DynamicTest> everyRefactoringOfTheExamplesKeepsStrokesCommentsAndTexts()
      throws IOException {
    return Stream.concat(
        CompletionProperties.examples()
            .map(file -> DynamicTest.dynamicTest(file.getFileName().toString(), () -> check(file))),
        // What is listed is nearly always done: it is listed with care, and tried when chosen.
        Stream.of(
            DynamicTest.dynamicTest(
                "few are refused",
                () -> {
                  assertThat(done).isGreaterThan(100);
                  assertThat(refused).isLessThanOrEqualTo(done / 10);
                })));
  }

  private void check(Path path) throws IOException {
    String text = Files.readString(path);
    MemoryFiles files = MemoryFiles.beside(path);
    Compiled compiled = files.trial(MemoryFiles.path("a.tabor"), text);
    int offset = 0;
    for (String line : text.split("\n", -1)) {
      for (Refactoring one : Refactorings.at(compiled, offset + line.length() / 3, files)) {
        Optional<List<TextEdit>> edits = one.edits(files);
        if (edits.isEmpty()) {
          refused++;
        } else if (!one.title().startsWith("Swap")) {
          done++;
          String after = TextEdit.apply(edits.get(), text);
          assertThat(strokes(files.trial(MemoryFiles.path("a.tabor"), after)))
              .as(one.title() + " in line: " + line)
              .isEqualTo(strokes(compiled));
          assertThat(after.chars().filter(c -> c == '#').count())
              .as(one.title() + " in line: " + line)
              .isEqualTo(text.chars().filter(c -> c == '#').count());
        }
      }
      offset += line.length() + 1;
    }
  }

  private static List<String> strokes(Compiled compiled) {
    List<String> found = new ArrayList<>();
    for (Section section : compiled.lesson().sections()) {
      if (section instanceof Groove groove) {
        groove
            .written()
            .forEach(
                s ->
                    found.add(
                        groove.name()
                            + " "
                            + s.bar()
                            + " "
                            + s.at()
                            + " "
                            + s.limb()
                            + " "
                            + s.surface().name()
                            + " "
                            + s.level()
                            + " "
                            + s.ornaments()));
      }
    }
    return found;
  }
}
