package tabor.emit.engrave;

import java.util.List;
import java.util.Map;

/** Something drawn: a shape, a sign, a line, words, or a group of such. */
public sealed interface Mark {
  /** Calls the method of {@code cases} that fits. */
  <R> R match(Cases<R> cases);

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

    /** The box of its shape in its place. */
    public Box box() {
      return sign.boxAt(x, y, scale);
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

    /** The box of its ink. */
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
    public Box box() {
      return new Box(left(), y - size * 0.74, left() + width, y + size * 0.22);
    }

    @Override
    public <R> R match(Cases<R> cases) {
      return cases.words(this);
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
  }
}
