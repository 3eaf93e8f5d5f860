package tabor.emit.engrave;

import java.util.ArrayList;
import java.util.List;
import tabor.groove.Groove;
import tabor.groove.Loudness;
import tabor.lists.Lists;
import tabor.rhythm.Time;

/** Draws dynamics and hairpins on one row below everything else. */
final class DynamicsPainter {
  /** Height of a hairpin's open end. */
  private static final double OPENING = 1.2;

  private final Canvas canvas;
  private final PlacedSystem line;
  private final List<Item> items = new ArrayList<>();

  DynamicsPainter(Canvas canvas, PlacedSystem line) {
    this.canvas = canvas;
    this.line = line;
  }

  /** A mark, or a hairpin where {@code loudness} is its target and {@code right} its end. */
  private record Item(
      double left, double right, List<Sign> letters, int kind, double from, double to) {}

  private static final int MARK = 0;
  private static final int GROWS = 1;
  private static final int FALLS = -1;

  void paint(Groove groove) {
    for (Loudness.Mark mark : groove.marks()) {
      int bar = line.indexOf(mark.bar());
      if (bar >= 0) {
        mark(bar, mark.at(), mark.loudness());
      }
    }
    for (Loudness.Hairpin hairpin : groove.hairpins()) {
      hairpin(groove, hairpin);
    }
    if (items.isEmpty()) {
      return;
    }
    items.sort(
        (a, b) -> {
          int byPlace = Double.compare(a.left(), b.left());
          return byPlace != 0 ? byPlace : Integer.compare(b.kind(), a.kind());
        });
    List<Item> placed = apart();
    double reach = Double.NEGATIVE_INFINITY;
    for (Item item : placed) {
      reach = Math.max(reach, canvas.below.reach(item.left(), item.right()));
    }
    double base = reach + 0.5 + 1.65;
    for (Item item : placed) {
      draw(item, base);
    }
  }

  /** Room that the dynamics of a bar need where no notes hold them apart. */
  static double room(Groove groove, int bar) {
    int signs =
        Lists.count(groove.marks(), mark -> mark.bar() == bar)
            + Lists.count(groove.hairpins(), pin -> pin.fromBar() == bar)
            + Lists.count(groove.hairpins(), pin -> pin.toBar() == bar);
    return signs < 2 ? 0 : 3 + signs * 3.2;
  }

  private void mark(int bar, Time at, Loudness loudness) {
    List<Sign> letters = letters(loudness);
    double width = width(letters);
    double middle = line.x(bar, at) + Rule.HEAD / 2;
    items.add(new Item(middle - width / 2, middle + width / 2, letters, MARK, 0, 0));
  }

  private void hairpin(Groove groove, Loudness.Hairpin hairpin) {
    int first = line.bars().get(0).bar().number();
    int last = line.bars().get(line.bars().size() - 1).bar().number();
    if (hairpin.fromBar() > last || hairpin.toBar() < first) {
      return;
    }
    int from = line.indexOf(hairpin.fromBar());
    int to = line.indexOf(hairpin.toBar());
    double left = from < 0 ? line.places().starts()[0] + 0.3 : line.x(from, hairpin.from());
    double right = to < 0 ? line.places().end() - 0.5 : line.x(to, hairpin.to()) + Rule.HEAD / 2;
    boolean marked =
        Lists.any(groove.marks(), m -> m.bar() == hairpin.toBar() && m.at().equals(hairpin.to()));
    if (to >= 0 && !marked) {
      mark(to, hairpin.to(), hairpin.target());
    }
    // A hairpin that goes on from the system before, or into the next, keeps its opening.
    Time start = groove.position(hairpin.fromBar(), hairpin.from());
    Time end = groove.position(hairpin.toBar(), hairpin.to());
    Time begins = groove.position(first, Time.ZERO);
    double at = from < 0 ? Durations.share(start, begins, end) : 0;
    double until = to < 0 ? Durations.share(start, groove.position(last + 1, Time.ZERO), end) : 1;
    boolean grows = hairpin.grows();
    items.add(
        new Item(
            left,
            right,
            List.of(),
            grows ? GROWS : FALLS,
            grows ? at : 1 - at,
            grows ? until : 1 - until));
  }

  /** Marks keep their places or move right of the one before; hairpins fill what is left. */
  private List<Item> apart() {
    List<Item> marks = new ArrayList<>();
    double free = Double.NEGATIVE_INFINITY;
    for (Item item : items) {
      if (item.kind() == MARK) {
        double left = Math.max(item.left(), free);
        marks.add(new Item(left, left + item.right() - item.left(), item.letters(), MARK, 0, 0));
        free = left + item.right() - item.left() + 0.4;
      }
    }
    List<Item> hairpins = Lists.filter(items, item -> item.kind() != MARK);
    List<Item> all = new ArrayList<>(marks);
    for (int i = 0; i < hairpins.size(); i++) {
      Item item = hairpins.get(i);
      double left = item.left();
      double right = item.right();
      if (i + 1 < hairpins.size()) {
        // Of two that overlap, the earlier gives way.
        right = Math.min(right, hairpins.get(i + 1).left() - 0.4);
      }
      for (Item mark : marks) {
        boolean atStart = mark.left() <= left + 1.5 && mark.right() > left - 0.4;
        if (atStart) {
          left = Math.max(left, mark.right() + 0.4);
        } else if (mark.left() > left && mark.left() < right + 0.4) {
          right = Math.min(right, mark.left() - 0.4);
        }
      }
      if (right - left > 0.8) {
        all.add(new Item(left, right, List.of(), item.kind(), item.from(), item.to()));
      }
    }
    return all;
  }

  private void draw(Item item, double base) {
    List<Mark> marks = new ArrayList<>();
    if (item.kind() == MARK) {
      double x = item.left();
      for (int i = 0; i < item.letters().size(); i++) {
        Sign letter = item.letters().get(i);
        x -= i == 0 ? 0 : overlap(item.letters().get(i - 1), letter);
        marks.add(canvas.sign(letter, x - letter.box().left(), base));
        x += letter.box().width();
      }
      canvas.marks.add(Mark.Group.of("dynamic", marks));
      return;
    }
    double axis = base - 0.5;
    for (int side : new int[] {-1, 1}) {
      double half = side * OPENING / 2;
      marks.add(
          canvas.line(
              item.left(),
              axis + half * item.from(),
              item.right(),
              axis + half * item.to(),
              Rule.HAIRPIN,
              Mark.Cap.ROUND));
    }
    String kind = item.kind() == GROWS ? "crescendo" : "diminuendo";
    canvas.marks.add(new Mark.Group(List.of("hairpin", kind), java.util.Map.of(), marks));
  }

  private static double width(List<Sign> letters) {
    double width = letters.get(0).box().width();
    for (int i = 1; i < letters.size(); i++) {
      width += letters.get(i).box().width() - overlap(letters.get(i - 1), letters.get(i));
    }
    return width;
  }

  /** How far the boxes of two leaning letters stand into each other. */
  private static double overlap(Sign left, Sign right) {
    boolean afterForte = left.name().equals("dynamicForte");
    boolean beforeForte = right.name().equals("dynamicForte");
    return afterForte && beforeForte ? 0.85 : beforeForte ? 0.5 : 0.25;
  }

  private static List<Sign> letters(Loudness loudness) {
    List<Sign> letters = new ArrayList<>();
    for (char c : loudness.word().toCharArray()) {
      letters.add(Sign.of(c == 'p' ? "dynamicPiano" : c == 'm' ? "dynamicMezzo" : "dynamicForte"));
    }
    return letters;
  }
}
