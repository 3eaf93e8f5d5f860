package tabor.emit.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import tabor.emit.engrave.Mark;

/** Blocks on pages: in order, inside, and not torn where they fit. */
class PagerTest {
  private static final double TOP = 40;
  private static final double BOTTOM = 700;

  private static Block block(String name, double height) {
    Mark words = new Mark.Words(name, 0, height, 10, Mark.Align.LEFT, 10);
    return new Block(List.of(words), height, 5, false);
  }

  @Property(tries = 200)
  void everythingIsPlacedInOrderAndInside(
      @ForAll @Size(min = 1, max = 12)
          List<@Size(min = 1, max = 6) List<@IntRange(min = 10, max = 300) Integer>> heights) {
    Pager pager = new Pager(0, TOP, BOTTOM);
    List<String> names = new ArrayList<>();
    for (int s = 0; s < heights.size(); s++) {
      List<Block> blocks = new ArrayList<>();
      for (int b = 0; b < heights.get(s).size(); b++) {
        names.add(s + "." + b);
        Block block = block(s + "." + b, heights.get(s).get(b));
        blocks.add(b == 0 ? block.marked(List.of("section " + s)) : block);
      }
      pager.section(blocks);
    }
    pager.done();
    List<String> placed = new ArrayList<>();
    List<Integer> pageOfFirst = new ArrayList<>();
    double all = 0;
    for (int page = 0; page < pager.pages().size(); page++) {
      assertThat(pager.pages().get(page)).isNotEmpty();
      double before = TOP;
      for (Mark mark : pager.pages().get(page)) {
        Mark.Words words = (Mark.Words) mark;
        assertThat(words.y()).isGreaterThan(before).isLessThanOrEqualTo(BOTTOM + 0.001);
        before = words.y();
        placed.add(words.text());
        if (words.text().endsWith(".0")) {
          pageOfFirst.add(page);
        }
      }
      all += before - TOP;
    }
    assertThat(placed).isEqualTo(names);
    assertThat(pager.bookmarks().stream().map(Handout.Bookmark::sheet)).isEqualTo(pageOfFirst);
    // No page more than greedy filling needs.
    assertThat(pager.pages().size()).isLessThanOrEqualTo(greedy(heights));
    assertThat(all).isPositive();
  }

  @Property(tries = 200)
  void aTableSaysItsHeadingOnEveryPage(
      @ForAll @Size(min = 2, max = 60) List<@IntRange(min = 10, max = 120) Integer> heights) {
    Pager pager = new Pager(0, TOP, BOTTOM);
    Block head = block("heading", 20);
    List<Block> table = new ArrayList<>(List.of(head.kept()));
    List<String> expected = new ArrayList<>();
    for (int i = 0; i < heights.size(); i++) {
      table.add(block("row " + i, heights.get(i)).under(head));
      expected.add("row " + i);
    }
    pager.section(List.of(block("before", 300)));
    pager.section(table);
    pager.done();
    List<String> rows = new ArrayList<>();
    for (List<Mark> page : pager.pages()) {
      double before = TOP;
      String above = "";
      for (Mark mark : page) {
        Mark.Words words = (Mark.Words) mark;
        assertThat(words.y()).isGreaterThan(before).isLessThanOrEqualTo(BOTTOM + 0.001);
        before = words.y();
        if (words.text().startsWith("row")) {
          rows.add(words.text());
          assertThat(above)
              .isIn("heading", rows.size() < 2 ? "heading" : rows.get(rows.size() - 2));
        }
        above = words.text();
      }
    }
    assertThat(rows).isEqualTo(expected);
  }

  private static int greedy(List<List<Integer>> heights) {
    int pages = 1;
    double y = TOP;
    for (List<Integer> section : heights) {
      for (int height : section) {
        if (y + height > BOTTOM) {
          pages++;
          y = TOP;
        }
        y += height + 5;
      }
    }
    return pages;
  }

  private static List<Block> section(String name, int systems, double height) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(new Block(block(name, 30).marks(), 30, 5, true));
    for (int i = 0; i < systems; i++) {
      blocks.add(Block.notes(block(name + "." + i, height).marks(), height, 20));
    }
    return blocks;
  }

  private static List<List<String>> texts(Pager pager) {
    return pager.pages().stream()
        .map(page -> page.stream().map(mark -> ((Mark.Words) mark).text()).toList())
        .toList();
  }

  @Test
  void aSectionThatFitsIsNotTorn() {
    Pager pager = new Pager(0, TOP, BOTTOM);
    pager.section(section("a", 3, 100));
    pager.section(section("b", 3, 100));
    pager.done();
    assertThat(texts(pager))
        .containsExactly(List.of("a", "a.0", "a.1", "a.2"), List.of("b", "b.0", "b.1", "b.2"));
  }

  @Test
  void noSystemIsLeftAloneOfASectionThatIsTorn() {
    Pager pager = new Pager(0, TOP, BOTTOM);
    // Five systems fit on the first page, but then one would be alone on the second.
    pager.section(section("a", 6, 105));
    pager.done();
    assertThat(texts(pager)).hasSize(2);
    assertThat(texts(pager).get(1)).hasSizeGreaterThan(1);
  }

  @Test
  void aHeadingStaysWithItsFirstSystem() {
    Pager pager = new Pager(0, TOP, BOTTOM);
    pager.section(section("a", 5, 105));
    pager.section(section("b", 1, 105));
    pager.done();
    assertThat(texts(pager).get(1)).containsSequence("b", "b.0");
  }

  @Test
  void roomBetweenSystemsIsSqueezedBeforeAPageIsAdded() {
    Pager pager = new Pager(0, TOP, BOTTOM);
    // 30 + 5 + 5 * 112 + 4 * 20 = 675 is too much by 15.
    pager.section(section("a", 5, 112));
    pager.done();
    assertThat(texts(pager)).hasSize(1);
    Mark.Words last = (Mark.Words) pager.pages().get(0).get(5);
    assertThat(last.y()).isLessThanOrEqualTo(BOTTOM + 0.001);
  }

  @Test
  void aSectionMayAskForANewPage() {
    Pager pager = new Pager(0, TOP, BOTTOM);
    pager.section(section("a", 1, 100));
    pager.section(section("b", 1, 100), true);
    pager.done();
    assertThat(texts(pager)).hasSize(2);
  }

  @Test
  void aNewPageLeavesNoHeadAlone() {
    Pager pager = new Pager(0, TOP, BOTTOM);
    pager.head(section("head", 1, 100));
    pager.section(section("a", 1, 100), true);
    pager.section(section("b", 1, 100), true);
    pager.done();
    assertThat(texts(pager)).hasSize(2);
    assertThat(texts(pager).get(0)).contains("head", "a");
  }

  /** Even where a last page with one system is what it takes. */
  @Test
  void aHeadIsNotLeftAloneForTheSakeOfTheLastPage() {
    Pager pager = new Pager(0, TOP, BOTTOM);
    pager.head(section("head", 1, 250));
    pager.section(section("a", 1, 250));
    pager.section(section("b", 1, 150));
    pager.done();
    assertThat(texts(pager)).hasSize(2);
    assertThat(texts(pager).get(0)).contains("head", "a");
  }
}
