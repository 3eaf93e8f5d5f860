package tabor.emit.engrave;

import tabor.notation.Event;
import tabor.notation.Voice;
import tabor.notation.Written;

/**
 * A rest, measured.
 *
 * @param rest what it shows
 * @param sign its sign
 * @param x the left edge of the sign, from the column
 * @param y where its origin stands on the staff
 */
record RestShape(Event.Rest rest, Sign sign, double x, double y) {
  static RestShape of(Event.Rest rest, Voice voice) {
    Written.Type type = rest.wholeBar() ? Written.Type.WHOLE : rest.written().type();
    Sign sign = Heads.rest(type);
    double y =
        switch (rest.show()) {
          case SHARED, HIDDEN -> shared(type);
          case OWN -> voice == Voice.HANDS ? above(type) : below(type);
        };
    return new RestShape(rest, sign, (Rule.HEAD - sign.box().width()) / 2, y);
  }

  /** A whole rest hangs from line 4, a half and a breve sit on line 3, all others are centred. */
  private static double shared(Written.Type type) {
    return type == Written.Type.WHOLE ? 1 : 2;
  }

  private static double above(Written.Type type) {
    return type == Written.Type.WHOLE ? 0 : 1;
  }

  private static double below(Written.Type type) {
    return type.compareTo(Written.Type.QUARTER) < 0 ? 4 : 5;
  }

  /** The same rest so far lower. */
  RestShape lowered(double by) {
    return new RestShape(rest, sign, x, y + by);
  }

  /** Its box around a column, its dot included. */
  Box box() {
    Box box = sign.boxAt(x, y, 1);
    return rest.written().dots() == 0 || rest.wholeBar()
        ? box
        : new Box(box.left(), box.top(), box.right() + 0.8, box.bottom());
  }
}
