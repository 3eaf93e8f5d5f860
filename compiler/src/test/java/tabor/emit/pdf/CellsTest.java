package tabor.emit.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.emit.engrave.Box;
import tabor.emit.engrave.Mark;
import tabor.emit.engrave.Shown;
import tabor.emit.font.OpenFont;
import tabor.groove.Lesson;
import tabor.resolve.Options;

/** Narrow sections side by side. */
class CellsTest {
  private static final HandoutLook ONE_COLUMN =
      new HandoutLook(Paper.A4, false, false, "", words -> "", 1, HandoutLook.Reader.NONE);

  private static Lesson steps(int count) {
    StringBuilder text = new StringBuilder("title \"Where the kick can go\"\n");
    text.append("groove beat \"Eighths and a backbeat\"\n  hihat : xx xx xx xx\n");
    text.append("  snare : . x . x\n  kick : x . x .\n  text \"Even and quiet.\"\n");
    for (int i = 1; i < count; i++) {
      text.append("step s").append(i).append(" \"Another place for the kick\" from beat\n");
      text.append("  add kick at ").append(1 + i % 4).append("&\n");
    }
    return new Compiler(Loader.NONE)
        .compile(java.nio.file.Path.of("kicks.tabor"), text.toString(), Options.NONE)
        .lesson();
  }

  private static Handout handout(int count, HandoutLook look) {
    return HandoutMaker.make(steps(count), look, OpenFont.get());
  }

  /** The boxes of the first five lines of every staff on a page, key apart. */
  private static List<Box> staves(Handout.Sheet sheet) {
    List<Box> staves = new ArrayList<>();
    for (Mark mark : sheet.marks()) {
      if (mark instanceof Mark.Group group && group.classes().contains("system")) {
        for (Mark inner : group.marks()) {
          if (inner instanceof Mark.Group part && part.classes().contains("staff")) {
            staves.add(part.box());
          }
        }
      }
    }
    return staves;
  }

  @Test
  void fourteenStepsOfOneBarFitTwoPages() {
    Handout handout = handout(14, HandoutLook.PLAIN);
    assertThat(handout.sheets().size()).isLessThanOrEqualTo(2);
    int staves = handout.sheets().stream().mapToInt(sheet -> staves(sheet).size()).sum();
    assertThat(staves).isEqualTo(14);
    assertThat(handout.bookmarks()).hasSize(14);
  }

  @Test
  void cellsOfARowStandOnOneHeightAndBesideEachOther() {
    for (Handout.Sheet sheet : handout(9, HandoutLook.PLAIN).sheets()) {
      List<Box> staves = staves(sheet);
      assertThat(staves.stream().map(Box::top).distinct().count()).isLessThan(staves.size());
      for (Box one : staves) {
        for (Box other : staves) {
          assertThat(one == other || !Shown.overlap(one, other, 0.1)).isTrue();
        }
      }
    }
  }

  /** A section of sparse bars, which would look better in two lines, is still whole in its cell. */
  @Test
  void aCellHoldsTheWholeSection() {
    String text =
        "groove a\n  hands : r . r// - | - - R . | r~ - - - | - - - - | R . . l~ | - R r/ -\n"
            + "groove b\n  hands : r l r l\n";
    Lesson lesson =
        new Compiler(Loader.NONE)
            .compile(java.nio.file.Path.of("rolls.tabor"), text, Options.NONE)
            .lesson();
    Handout handout = HandoutMaker.make(lesson, HandoutLook.PLAIN, OpenFont.get());
    String drawn = handout.sheets().get(0).marks().toString();
    assertThat(drawn).contains("bar=1, ", "bar=2, ", "bar=3, ", "bar=5, ", "bar=6, ");
  }

  @Test
  void oneColumnIsOneBelowTheOther() {
    for (Handout.Sheet sheet : handout(5, ONE_COLUMN).sheets()) {
      List<Box> staves = staves(sheet);
      assertThat(staves.stream().map(Box::top).distinct().count()).isEqualTo(staves.size());
    }
  }

  @Test
  void nothingLeavesThePage() {
    for (boolean large : new boolean[] {false, true}) {
      HandoutLook look = new HandoutLook(Paper.LETTER, large, false, HandoutLook.CAUTION);
      for (Handout.Sheet sheet : handout(14, look).sheets()) {
        Box all = Mark.box(sheet.marks()).orElseThrow();
        assertThat(all.left()).isGreaterThan(40);
        assertThat(all.right()).isLessThan(Paper.LETTER.width() - 40);
        assertThat(all.bottom()).isLessThan(Paper.LETTER.height() - 20);
      }
    }
  }

  @Test
  void theNoteStandsUnderTheTitle() {
    Handout handout =
        handout(1, HandoutLook.PLAIN.withNote(words -> "At 80 %, for a left-hander."));
    assertThat(handout.sheets().get(0).marks().toString()).contains("At 80 %, for a left-hander.");
  }

  /** What the empty places of a row cost, beside a narrow section that stands alone too. */
  private static double empty(int from, int to, int columns, List<Integer> widths, int most) {
    boolean alone = columns == 1 && most > 1 && widths.get(from) > 1;
    return (to == widths.size() ? 10 : 45) * (alone ? 1 : columns - (to - from));
  }

  /** Every way to put sections in rows, by trying. */
  private static double cheapest(int from, int before, List<Integer> widths, int most) {
    if (from == widths.size()) {
      return 0;
    }
    double best = Double.POSITIVE_INFINITY;
    for (int columns = 1; columns <= most; columns++) {
      for (int to = from + 1; to <= Math.min(widths.size(), from + columns); to++) {
        boolean fits = columns == 1;
        if (columns > 1) {
          fits = true;
          for (int width : widths.subList(from, to)) {
            fits &= width >= columns;
          }
        }
        if (fits) {
          double cost = 100 + empty(from, to, columns, widths, most);
          cost += before > 0 && before != columns ? 25 : 0;
          best = Math.min(best, cost + cheapest(to, columns, widths, most));
        }
      }
    }
    return best;
  }

  @Property(tries = 100)
  void rowsAreTheCheapest(
      @ForAll @Size(min = 1, max = 8) List<@IntRange(min = 1, max = 3) Integer> widths) {
    List<CellRows.Row> rows =
        CellRows.of(
            widths.size(),
            3,
            new CellRows.Cells() {
              @Override
              public boolean fits(int section, int columns) {
                return widths.get(section) >= columns;
              }

              @Override
              public double height(int section, int columns) {
                return 100;
              }

              @Override
              public boolean beginsRow(int section) {
                return false;
              }
            });
    double cost = 0;
    int at = 0;
    int before = 0;
    for (CellRows.Row row : rows) {
      assertThat(row.from()).isEqualTo(at);
      for (int i = row.from(); row.columns() > 1 && i < row.to(); i++) {
        assertThat(widths.get(i)).isGreaterThanOrEqualTo(row.columns());
      }
      cost += 100 + empty(row.from(), row.to(), row.columns(), widths, 3);
      cost += before > 0 && before != row.columns() ? 25 : 0;
      before = row.columns();
      at = row.to();
    }
    assertThat(at).isEqualTo(widths.size());
    assertThat(cost).isEqualTo(cheapest(0, 0, widths, 3));
  }
}
