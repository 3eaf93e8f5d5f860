package tabor.emit.engrave;

import tabor.kit.Surface;
import tabor.notation.Written;
import tabor.words.Words;

/** Which sign a note's head is. */
final class Heads {
  private Heads() {}

  /**
   * The head of a surface at a note value. A breve's head is a whole note's: bars stand beside it.
   */
  static Sign of(Surface.Head head, Written.Type type) {
    String shape =
        switch (head) {
          case NORMAL -> "notehead";
          case X -> "noteheadX";
          case DIAMOND -> "noteheadDiamond";
          case TRIANGLE -> "noteheadTriangleUp";
          case CIRCLE_X -> "noteheadCircleX";
        };
    if (type.isFilled()) {
      return Sign.of(head == Surface.Head.CIRCLE_X ? shape : shape + "Black");
    }
    return Sign.of(shape + (type == Written.Type.HALF ? "Half" : "Whole"));
  }

  /** The rest of a note value. */
  static Sign rest(Written.Type type) {
    return Sign.of("rest" + suffix(type));
  }

  /** The flags of a note value that has some. */
  static Sign flag(Written.Type type, boolean up) {
    return Sign.of("flag" + suffix(type) + (up ? "Up" : "Down"));
  }

  private static String suffix(Written.Type type) {
    return type == Written.Type.BREVE
        ? "DoubleWhole"
        : type.flags() > 0 ? type.part() : Words.capital(Words.word(type));
  }
}
