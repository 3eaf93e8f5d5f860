package tabor.emit.musicxml;

import tabor.notation.Beam;
import tabor.notation.Written;

/** Words of the format. */
final class MusicXmlNames {
  private MusicXmlNames() {}

  static String type(Written.Type type) {
    return switch (type) {
      case BREVE -> "breve";
      case WHOLE -> "whole";
      case HALF -> "half";
      case QUARTER -> "quarter";
      case EIGHTH -> "eighth";
      case SIXTEENTH -> "16th";
      case THIRTY_SECOND -> "32nd";
      case SIXTY_FOURTH -> "64th";
      case HUNDRED_TWENTY_EIGHTH -> "128th";
      case TWO_HUNDRED_FIFTY_SIXTH -> "256th";
      case FIVE_HUNDRED_TWELFTH -> "512th";
      case THOUSAND_TWENTY_FOURTH -> "1024th";
    };
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
