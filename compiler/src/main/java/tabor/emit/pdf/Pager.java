package tabor.emit.pdf;

import java.util.ArrayList;
import java.util.List;
import tabor.emit.engrave.Mark;

/**
 * Puts blocks on pages, best overall: as few pages as possible, then the fewest sections torn and
 * no page with one system alone, then all pages filled alike. Room between systems is squeezed or
 * stretched within limits to get there.
 */
final class Pager {
  /** How far elastic room may shrink. */
  private static final double SQUEEZE = 0.6;

  /** How far elastic room may grow. */
  private static final double STRETCH = 1.6;

  private static final double PAGE = 1000;
  private static final double TORN = 60;
  private static final double LONELY = 120;

  /** A first page with nothing below the head costs more than any section torn. */
  private static final double HEADLINE = 400;

  /** A page with one system on it looks forgotten if it is filled less than this. */
  private static final double LITTLE = 0.35;

  private static final double EMPTINESS = 100;
  private static final double SQUEEZED = 8;

  private final double left;
  private final double top;
  private final double bottom;
  private final List<Item> items = new ArrayList<>();
  private final List<List<Mark>> pages = new ArrayList<>();
  private final List<Handout.Bookmark> bookmarks = new ArrayList<>();
  private int sections;
  private int heads;

  /** A block with what it belongs to. */
  private record Item(Block block, int section, boolean newPage) {}

  /** Pages whose blocks stand between two heights. */
  Pager(double left, double top, double bottom) {
    this.left = left;
    this.top = top;
    this.bottom = bottom;
  }

  /**
   * Adds a section.
   *
   * @param newPage true if a page begins with it
   */
  void section(List<Block> blocks, boolean newPage) {
    for (int i = 0; i < blocks.size(); i++) {
      // Behind nothing but the head a new page would leave the head alone.
      items.add(new Item(blocks.get(i), sections, newPage && i == 0 && sections > heads));
    }
    sections++;
  }

  /** Adds what stands above the first section; it does not stay behind alone. */
  void head(List<Block> blocks) {
    section(blocks, false);
    heads = sections;
  }

  /** Adds a section to the page where there is room. */
  void section(List<Block> blocks) {
    section(blocks, false);
  }

  /** Breaks everything added into pages. */
  Pager done() {
    int count = items.size();
    double[] best = new double[count + 1];
    int[] from = new int[count + 1];
    for (int end = 1; end <= count; end++) {
      best[end] = Double.POSITIVE_INFINITY;
      for (int start = end - 1; start >= 0; start--) {
        double cost = page(start, end);
        if (best[start] + cost < best[end]) {
          best[end] = best[start] + cost;
          from[end] = start;
        }
        double least = height(start, end, SQUEEZE) - items.get(start).block().headroom();
        if (cost == Double.POSITIVE_INFINITY && least > bottom - top) {
          break;
        }
        if (items.get(start).newPage()) {
          break;
        }
      }
      if (best[end] == Double.POSITIVE_INFINITY) {
        // Nothing that belongs together fits: it goes over as it comes.
        best[end] = best[end - 1] + PAGE * 4;
        from[end] = end - 1;
      }
    }
    List<Integer> ends = new ArrayList<>();
    for (int end = count; end > 0; end = from[end]) {
      ends.add(0, end);
    }
    int start = 0;
    for (int end : ends) {
      place(start, end);
      start = end;
    }
    if (pages.isEmpty()) {
      pages.add(new ArrayList<>());
    }
    return this;
  }

  private double height(int start, int end, double factor) {
    double sum = items.get(start).block().headroom();
    for (int i = start; i < end; i++) {
      Block block = items.get(i).block();
      double after = block.elastic() ? block.after() * factor : block.after();
      sum += block.height() + (i + 1 < end ? after : 0);
    }
    return sum;
  }

  /** What a page with these items costs; infinite if they may not stand on one. */
  private double page(int start, int end) {
    boolean last = end == items.size();
    if (!last && items.get(end - 1).block().keep() && !items.get(end).newPage()) {
      return Double.POSITIVE_INFINITY;
    }
    double room = bottom - top;
    double natural = height(start, end, 1);
    double cost = PAGE;
    if (height(start, end, SQUEEZE) > room) {
      if (end - start > 1) {
        return Double.POSITIVE_INFINITY;
      }
      // A block higher than a page has one of its own.
    } else if (natural > room) {
      double elastic = natural - height(start, end, SQUEEZE);
      double share = (natural - room) / elastic;
      cost += SQUEEZED * share * share;
    } else if (!last && !items.get(end).newPage()) {
      double free = (room - natural) / room;
      cost += EMPTINESS * free * free;
    }
    int systems = 0;
    for (int i = start; i < end; i++) {
      systems += items.get(i).block().systems();
    }
    cost += start > 0 && systems == 1 && natural < room * LITTLE ? LONELY : 0;
    if (!last && items.get(end - 1).section() < heads && items.get(end).section() >= heads) {
      cost += HEADLINE;
    }
    if (!last && items.get(end - 1).section() == items.get(end).section()) {
      cost += TORN;
      cost += alone(start, end, -1) ? LONELY : 0;
    }
    if (start > 0 && items.get(start - 1).section() == items.get(start).section()) {
      cost += alone(start, end, 1) ? LONELY : 0;
    }
    return cost;
  }

  /** True if a torn section leaves a single system on this page, at its end or its start. */
  private boolean alone(int start, int end, int step) {
    int at = step > 0 ? start : end - 1;
    int section = items.get(at).section();
    int systems = 0;
    for (int i = at; i >= start && i < end && items.get(i).section() == section; i += step) {
      systems += items.get(i).block().systems();
    }
    return systems == 1;
  }

  private void place(int start, int end) {
    List<Mark> page = new ArrayList<>();
    pages.add(page);
    double factor = factor(start, end);
    double y = top;
    Block head = items.get(start).block().head();
    if (head != null) {
      page.addAll(Mark.moved(head.marks(), left, y, 1));
      y += items.get(start).block().headroom();
    }
    for (int i = start; i < end; i++) {
      Block block = items.get(i).block();
      for (String title : block.bookmarks()) {
        bookmarks.add(new Handout.Bookmark(title, pages.size() - 1, y));
      }
      page.addAll(Mark.moved(block.marks(), left, y, 1));
      y += block.height() + (block.elastic() ? block.after() * factor : block.after());
    }
  }

  /** How much of its elastic room a page uses; the last page stays natural if it can. */
  private double factor(int start, int end) {
    double room = bottom - top;
    double natural = height(start, end, 1);
    double elastic = natural - height(start, end, 0);
    if (elastic <= 0) {
      return 1;
    }
    double wanted = 1 + (room - natural) / elastic;
    boolean last = end == items.size() || items.get(end).newPage();
    return Math.max(SQUEEZE, Math.min(last ? 1 : STRETCH, wanted));
  }

  List<List<Mark>> pages() {
    return pages;
  }

  List<Handout.Bookmark> bookmarks() {
    return bookmarks;
  }
}
