package tabor.groove;

/**
 * How an ornament that came or went is named.
 *
 * @param everywhere where every stroke of a part has it, such as {@code now with flams}
 * @param some before the places, such as {@code flam}
 */
record OrnamentWords(String everywhere, String some) {

  /** For an ornament that is new. */
  static OrnamentWords gained(Ornament ornament) {
    return switch (ornament) {
      case FLAM -> new OrnamentWords("now with flams", "flam");
      case DRAG -> new OrnamentWords("now with drags", "drag");
      case RUFF -> new OrnamentWords("now with ruffs", "ruff");
      case DIDDLE -> new OrnamentWords("now in diddles", "diddle");
      case OPEN_ROLL -> new OrnamentWords("now in open rolls", "open roll");
      case BUZZ -> new OrnamentWords("now buzzed", "buzzed");
      case CHOKE -> new OrnamentWords("now choked", "choked");
      case RIMSHOT -> new OrnamentWords("now with rimshots", "rimshot");
    };
  }

  /** For an ornament that is gone. */
  static OrnamentWords lost(Ornament ornament) {
    String word = ornament.word().replace('-', ' ');
    return new OrnamentWords("no " + word + " any more", "no " + word);
  }
}
