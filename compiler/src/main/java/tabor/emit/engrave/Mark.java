package tabor.emit.engrave;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Something drawn: a shape, a sign, a line, words, or a group of such. */
public sealed interface Mark {
  /** Calls the method of {@code cases} that fits. */
  <R> R match(Cases<R> cases);

  /** Its box; throws {@link java.util.NoSuchElementException} for an empty group. */
  Box box();

  /** The box of all these marks; empty if none of them is drawn. */
  static Optional<Box> box(List<Mark> marks) {
    Optional<Box> all = Optional.empty();
    for (Mark mark : marks) {
      Optional<Box> box =
          mark instanceof Group group ? box(group.marks()) : Optional.of(mark.box());
      if (box.isPresent()) {
        all = all.isPresent() ? Optional.of(all.get().union(box.get())) : box;
      }
    }
    return all;
  }

  /** The same scaled from the origin, then moved. */
  Mark moved(double dx, double dy, double scale);

  /** The same marks scaled from the origin, then moved. */
  static List<Mark> moved(List<Mark> marks, double dx, double dy, double scale) {
    if (dx == 0 && dy == 0 && scale == 1) {
      return marks;
    }
    List<Mark> moved = new ArrayList<>(marks.size());
    for (Mark mark : marks) {
      moved.add(mark.moved(dx, dy, scale));
    }
    return moved;
  }

  /** One method for each kind of mark. */
  interface Cases<R> {
    R ink(Ink ink);

    R glyph(Glyph glyph);

    R line(Line line);

    R words(Words words);

    R group(Group group);
  }

  /** How a line ends. */
  enum Cap {
    /** Cut off square at its end point. */
    BUTT,
    /** With a half circle around its end point. */
    ROUND
  }

  /** Which point of the words stands at their place. */
  enum Align {
    LEFT,
    MIDDLE,
    RIGHT
  }

  /**
   * A filled shape in the colour of the text.
   *
   * @param outline the shape, y downwards
   * @param strength how strong the colour is: 1 for full ink, less for a tint
   */
  record Ink(Contour outline, double strength) implements Mark {
    /** Full ink. */
    public Ink(Contour outline) {
      this(outline, 1);
    }

    /** Throws {@link IllegalArgumentException} for a strength out of range. */
    public Ink {
      if (!(strength > 0 && strength <= 1)) {
        throw new IllegalArgumentException("strength " + strength);
      }
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.ink(this);
    }

    @Override
    public Box box() {
      return outline.bounds();
    }

    @Override
    public Ink moved(double dx, double dy, double by) {
      return new Ink(outline.placed(dx, dy, by, by), strength);
    }
  }

  /**
   * A sign at a place.
   *
   * @param sign which one
   * @param x where its origin stands
   * @param y where its origin stands, downwards
   * @param scale its size; 1 for a sign in staff spaces
   */
  record Glyph(Sign sign, double x, double y, double scale) implements Mark {
    /** Its shape in its place. */
    public Contour contour() {
      return sign.at(x, y, scale);
    }

    @Override
    public Box box() {
      return sign.boxAt(x, y, scale);
    }

    @Override
    public Glyph moved(double dx, double dy, double by) {
      return new Glyph(sign, dx + x * by, dy + y * by, scale * by);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.glyph(this);
    }
  }

  /**
   * A straight line of even thickness.
   *
   * @param x1 one end
   * @param y1 one end
   * @param x2 the other end
   * @param y2 the other end
   * @param thickness above 0
   * @param cap how both ends look
   */
  record Line(double x1, double y1, double x2, double y2, double thickness, Cap cap)
      implements Mark {
    /** Throws {@link IllegalArgumentException} for a line without thickness. */
    public Line {
      if (!(thickness > 0)) {
        throw new IllegalArgumentException("thickness " + thickness);
      }
    }

    /** A level or upright line with square ends. */
    public static Line rule(double x1, double y1, double x2, double y2, double thickness) {
      return new Line(x1, y1, x2, y2, thickness, Cap.BUTT);
    }

    @Override
    public Box box() {
      double half = thickness / 2;
      double length = Math.hypot(x2 - x1, y2 - y1);
      double dx = cap == Cap.ROUND || length == 0 ? half : half * Math.abs(y2 - y1) / length;
      double dy = cap == Cap.ROUND || length == 0 ? half : half * Math.abs(x2 - x1) / length;
      return new Box(
          Math.min(x1, x2) - dx,
          Math.min(y1, y2) - dy,
          Math.max(x1, x2) + dx,
          Math.max(y1, y2) + dy);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.line(this);
    }

    @Override
    public Line moved(double dx, double dy, double by) {
      return new Line(dx + x1 * by, dy + y1 * by, dx + x2 * by, dy + y2 * by, thickness * by, cap);
    }
  }

  /**
   * A run of text in the text face.
   *
   * @param text what it says, clean of control characters
   * @param x where its left edge, middle or right edge stands
   * @param y its base line
   * @param size its type size in staff spaces
   * @param align which of its points stands at x
   * @param width its measured width in staff spaces
   * @param face upright, bold or slanted
   */
  record Words(String text, double x, double y, double size, Align align, double width, Face face)
      implements Mark {
    /** Upright text. */
    public Words(String text, double x, double y, double size, Align align, double width) {
      this(text, x, y, size, align, width, Face.REGULAR);
    }

    /** Its left edge. */
    public double left() {
      return switch (align) {
        case LEFT -> x;
        case MIDDLE -> x - width / 2;
        case RIGHT -> x - width;
      };
    }

    /** The box from ascender to descender of ordinary letters. */
    @Override
    public Box box() {
      return new Box(left(), y - size * 0.74, left() + width, y + size * 0.22);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.words(this);
    }

    @Override
    public Words moved(double dx, double dy, double by) {
      return new Words(text, dx + x * by, dy + y * by, size * by, align, width * by, face);
    }
  }

  /**
   * Marks that belong together.
   *
   * @param classes what they are, for style sheets: {@code stroke}, {@code limb-right-hand}, {@code
   *     changed}
   * @param data facts for scripts and tests, in order: {@code at} of a stroke
   * @param marks in the order of drawing
   */
  record Group(List<String> classes, Map<String, String> data, List<Mark> marks) implements Mark {
    /** Copies the collections. */
    public Group {
      classes = List.copyOf(classes);
      data = MarkFacts.of(data);
      marks = List.copyOf(marks);
    }

    /** A group without facts. */
    public static Group of(String name, List<Mark> marks) {
      return new Group(List.of(name), Map.of(), marks);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.group(this);
    }

    @Override
    public Box box() {
      return Mark.box(marks).orElseThrow();
    }

    @Override
    public Group moved(double dx, double dy, double by) {
      return new Group(classes, data, Mark.moved(marks, dx, dy, by));
    }
  }
}
