package tabor.ide;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import tabor.compile.Compiled;
import tabor.groove.Groove;
import tabor.groove.Section;

/** Other ways to write the same: what comes out, and that it is the same. */
class RecastsTest {
  private static String recast(String marked, String title) {
    int offset = marked.indexOf('§');
    String text = marked.replace("§", "");
    Shelf shelf = new Shelf().put("a.tabor", text);
    List<String> titles = new ArrayList<>();
    for (Mend mend : Recasts.at(shelf.compiled("a.tabor"), offset, shelf)) {
      titles.add(mend.title());
      if (mend.title().equals(title)) {
        return mend.apply(text);
      }
    }
    return "offered only " + titles;
  }

  @Test
  void partsBySurfaceBecomePartsByLimb() {
    String text =
        "groove a\n  hihat : r§r rr rr rr\n  snare : .. l. .. l.\n  kick  : x. .. x. ..\n";
    assertThat(recast(text, "write these parts by limb"))
        .isEqualTo(
            "groove a\n  right      : hh hh hh hh\n  left       : .  s. .  s.\n  right foot : k. .  k. .\n"
                .replace(".  s. .  s.", ". s. . s.")
                .replace("k. .  k. .", "k. . k. ."));
    assertThat(
            recast(
                "groove a\n  right : h§h hh hs hh\n  left : . (s). . s\n",
                "write these parts by surface"))
        .isEqualTo("groove a\n  snare : . (l). .r l\n  hihat : rr rr r. rr\n");
  }

  @Test
  void aPlayedPatternIsWrittenOutAndBack() {
    String played = "groove a\n  hands pl§ay paradiddle in sixteenths\n";
    String written = "groove a\n  hands : RlrrLrll | RlrrLrll\n";
    assertThat(recast(played, "write this part out"))
        .isEqualTo("groove a\n  hands : Rlrr Lrll Rlrr Lrll\n");
    assertThat(recast("groove a\n  ha§nds : Rlrr Lrll Rlrr Lrll\n", "play paradiddle"))
        .isEqualTo(played.replace("§", ""));
    assertThat(written).isNotEmpty();
  }

  @Test
  void aPartBecomesAPatternOfItsOwn() {
    assertThat(recast("groove a\n  ha§nds : r(ll) rrl lrr lll\n", "make a pattern of this part"))
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
    String out = recast(text, "write this step out as a groove");
    assertThat(out)
        .isEqualTo(
            "groove a\n"
                + "  hands : rlrl rlrl rlrl rlrl\n"
                + "groove b \"B\"\n"
                + "  text \"Now the kick.\"\n"
                + "  kick  : r . r .\n"
                + "  snare : .l.l .l.l .l.l .l.l\n"
                + "  ride  : r.r. r.r. r.r. r.r.\n");
    String back =
        recast(out.replace("groove b", "groove b§"), "write this groove as a step from a");
    assertThat(back)
        .isEqualTo(
            "groove a\n"
                + "  hands : rlrl rlrl rlrl rlrl\n"
                + "step b \"B\"\n"
                + "  text \"Now the kick.\"\n"
                + "  kick  : r . r .\n"
                + "  snare : .l.l .l.l .l.l .l.l\n"
                + "  ride  : r.r. r.r. r.r. r.r.\n");
  }

  @Test
  void theHandsOfAPartAreSwapped() {
    assertThat(recast("groove a\n  ha§nds : R'l (r)l r{lr} b\n", "swap the hands of this part"))
        .isEqualTo("groove a\n  hands : L'r (l)r l{rl} b\n");
    assertThat(recast("groove a\n  ri§ght : h h h h\n", "swap the hands of this part"))
        .isEqualTo("groove a\n  left : h h h h\n");
  }

  /** Every recast at every line of every example keeps every stroke. */
  @TestFactory
  Stream<DynamicTest> everyRecastOfTheExamplesKeepsEveryStroke() throws IOException {
    Path folder = Path.of("..", "examples");
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(file -> file.toString().endsWith(".tabor")).sorted().toList().stream()
          .map(file -> DynamicTest.dynamicTest(file.getFileName().toString(), () -> check(file)));
    }
  }

  private static void check(Path file) throws IOException {
    String text = Files.readString(file);
    Shelf shelf = new Shelf().put("a.tabor", text);
    Compiled compiled = shelf.compiled("a.tabor");
    int offset = 0;
    int count = 0;
    for (String line : text.split("\n", -1)) {
      for (Mend mend : Recasts.at(compiled, offset + line.length() / 3, shelf)) {
        if (!mend.title().startsWith("swap")) {
          count++;
          assertThat(strokes(Shelf.alone(mend.apply(text))))
              .as(mend.title() + " in line: " + line)
              .containsAll(strokes(compiled));
        }
      }
      offset += line.length() + 1;
    }
    assertThat(count).isPositive();
  }

  private static List<String> strokes(Compiled compiled) {
    List<String> found = new ArrayList<>();
    for (Section section : compiled.lesson().sections()) {
      if (section instanceof Groove groove) {
        groove
            .strokes()
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
