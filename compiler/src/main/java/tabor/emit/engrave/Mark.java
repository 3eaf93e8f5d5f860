package tabor.emit.engrave;

import java.util.List;
import java.util.Map;

/** Something drawn: ink, words, or a group of such. */
public sealed interface Mark {
  /** Calls the method of {@code cases} that fits. */
  <R> R match(Cases<R> cases);

  /** One method for each kind of mark. */
  interface Cases<R> {
    R ink(Ink ink);

    R words(Words words);

    R group(Group group);
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
   * A run of text in the text font.
   *
   * @param text what it says, clean of control characters
   * @param x where its left edge, middle or right edge stands
   * @param y its base line
   * @param size its type size in staff spaces
   * @param align which of its points stands at x
   * @param width its measured width in staff spaces
   */
  record Words(String text, double x, double y, double size, Align align, double width)
      implements Mark {
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
      data = java.util.Collections.unmodifiableMap(new java.util.LinkedHashMap<>(data));
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
