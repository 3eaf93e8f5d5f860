package tabor.emit.engrave;

import tabor.lists.Lists;
import tabor.notation.Note;

/** How long stems are. */
final class Stems {
  private Stems() {}

  /** From the head nearest the stem's end to that end. */
  static double length(ChordShape chord) {
    int flags = chord.chord().written().type().flags();
    double length = Rule.STEM_LENGTH + Math.max(0, flags - 2) * Rule.BEAM_STEP;
    int slashes = Lists.most(chord.chord().notes(), Note::slashes);
    boolean buzz = Lists.any(chord.chord().notes(), Note::buzz);
    int signs = buzz ? 1 : slashes;
    if (signs > 0) {
      // The strokes through a stem need their own stretch between head and beam or flag.
      double needed = 0.95 + signs * 0.74 + (flags > 0 ? 0.35 + flags * Rule.BEAM_STEP : 0.6);
      double forFlags = chord.hasFlags() ? 1.8 : 0;
      length = Math.max(length, needed + forFlags);
    }
    if (chord.hasFlags() && chord.up()) {
      // The flag hangs on the side where dots and closing parentheses stand.
      if (!chord.dots().isEmpty()) {
        length += 0.75;
      } else if (Lists.any(chord.chord().notes(), Note::ghost)) {
        length += 0.5;
      }
    }
    return length;
  }
}
