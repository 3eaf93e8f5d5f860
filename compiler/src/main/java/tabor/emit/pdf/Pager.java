package tabor.emit.pdf;

import java.util.ArrayList;
import java.util.List;
import tabor.emit.engrave.Mark;
import tabor.emit.engrave.Moving;

/** Puts blocks on pages. A section that fits on one page is never torn. */
final class Pager {
  private final double left;
  private final double top;
  private final double bottom;
  private final List<List<Mark>> pages = new ArrayList<>();
  private final List<Handout.Bookmark> bookmarks = new ArrayList<>();
  private double y;

  /** Pages whose blocks stand between two heights. */
  Pager(double left, double top, double bottom) {
    this.left = left;
    this.top = top;
    this.bottom = bottom;
    newPage();
  }

  private void newPage() {
    pages.add(new ArrayList<>());
    y = top;
  }

  /** Adds a section; {@code bookmark} is its entry in the outline, empty for none. */
  void section(List<Block> blocks, String bookmark) {
    if (blocks.isEmpty()) {
      return;
    }
    double whole = height(blocks, 0, blocks.size());
    if (y + whole > bottom && y > top && whole <= bottom - top) {
      newPage();
    }
    boolean marked = bookmark.isEmpty();
    for (int i = 0; i < blocks.size(); i++) {
      int end = i + 1;
      while (end < blocks.size() && blocks.get(end - 1).keep()) {
        end++;
      }
      if (y + height(blocks, i, end) > bottom && y > top) {
        newPage();
      }
      if (!marked) {
        bookmarks.add(new Handout.Bookmark(bookmark, pages.size() - 1, y));
        marked = true;
      }
      Block block = blocks.get(i);
      pages.get(pages.size() - 1).addAll(Moving.by(block.marks(), left, y, 1));
      y += block.height() + block.after();
    }
  }

  private static double height(List<Block> blocks, int from, int to) {
    double sum = 0;
    for (int i = from; i < to; i++) {
      sum += blocks.get(i).height() + (i + 1 < to ? blocks.get(i).after() : 0);
    }
    return sum;
  }

  List<List<Mark>> pages() {
    return pages;
  }

  List<Handout.Bookmark> bookmarks() {
    return bookmarks;
  }
}
