package tabor.emit.musicxml;

import tabor.notation.Beam;
import tabor.notation.Written;
import tabor.words.Words;

/** Words of the format. */
final class MusicXmlNames {
  private MusicXmlNames() {}

  static String type(Written.Type type) {
    return type.flags() > 1 ? type.part() : Words.word(type);
  }

  static String beam(Beam beam) {
    return switch (beam) {
      case BEGIN -> "begin";
      case CONTINUE -> "continue";
      case END -> "end";
      case FORWARD_HOOK -> "forward hook";
      case BACKWARD_HOOK -> "backward hook";
    };
  }
}
