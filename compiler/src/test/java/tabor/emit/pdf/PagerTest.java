package tabor.emit.pdf;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
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
  void sectionsThatFitAreNotTorn(
      @ForAll @Size(min = 1, max = 12)
          List<@Size(min = 1, max = 6) List<@IntRange(min = 10, max = 300) Integer>> heights) {
    Pager pager = new Pager(0, TOP, BOTTOM);
    List<String> names = new ArrayList<>();
    for (int s = 0; s < heights.size(); s++) {
      List<Block> blocks = new ArrayList<>();
      for (int b = 0; b < heights.get(s).size(); b++) {
        names.add(s + "." + b);
        blocks.add(block(s + "." + b, heights.get(s).get(b)));
      }
      pager.section(blocks, "section " + s);
    }
    List<String> placed = new ArrayList<>();
    List<List<Integer>> pagesOf = new ArrayList<>();
    heights.forEach(h -> pagesOf.add(new ArrayList<>()));
    for (int page = 0; page < pager.pages().size(); page++) {
      assertThat(pager.pages().get(page)).isNotEmpty();
      double before = TOP;
      for (Mark mark : pager.pages().get(page)) {
        Mark.Words words = (Mark.Words) mark;
        assertThat(words.y()).isGreaterThan(before).isLessThanOrEqualTo(BOTTOM);
        before = words.y();
        placed.add(words.text());
        pagesOf.get(Integer.parseInt(words.text().split("\\.", -1)[0])).add(page);
      }
    }
    assertThat(placed).isEqualTo(names);
    for (int s = 0; s < heights.size(); s++) {
      int sum = heights.get(s).stream().mapToInt(h -> h + 5).sum() - 5;
      if (sum <= BOTTOM - TOP) {
        assertThat(pagesOf.get(s).stream().distinct()).hasSize(1);
      }
      assertThat(pager.bookmarks().get(s).sheet()).isEqualTo(pagesOf.get(s).get(0));
    }
  }
}
