package tabor.emit.engrave;

import tabor.notation.Note;

/** How long stems are. */
final class Stems {
  private Stems() {}

  /** From the head nearest the stem's end to that end. */
  static double length(ChordShape chord) {
    int flags = chord.chord().written().type().flags();
    double length = Rule.STEM_LENGTH + Math.max(0, flags - 2) * Rule.BEAM_STEP;
    int slashes = chord.chord().notes().stream().mapToInt(Note::slashes).max().orElse(0);
    boolean buzz = chord.chord().notes().stream().anyMatch(Note::buzz);
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
      } else if (chord.chord().notes().stream().anyMatch(Note::ghost)) {
        length += 0.5;
      }
    }
    return length;
  }
}
