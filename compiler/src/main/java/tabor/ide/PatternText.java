package tabor.ide;

import java.util.List;
import tabor.pattern.PatternPlace;
import tabor.pattern.Rudiments;
import tabor.syntax.Beat;

/** A built-in pattern as it would be written. */
final class PatternText {
  private PatternText() {}

  /** The places one after another: {@code RlrrLrll}. */
  static String of(List<PatternPlace> places) {
    StringBuilder text = new StringBuilder();
    for (PatternPlace place : places) {
      char letter = place.accent() ? Character.toUpperCase(place.letter()) : place.letter();
      text.append("'".repeat(place.graceNotes())).append(letter);
      text.append(place.diddle() ? Beat.Suffix.DIDDLE.sign() : "");
      text.append(place.buzz() ? Beat.Suffix.BUZZ.sign() : "");
    }
    return text.toString();
  }

  /** The short name that players say of a rudiment: {@code paradiddle}. */
  static String spoken(String rudiment) {
    String single = "single-";
    boolean said =
        rudiment.startsWith(single)
            && Rudiments.named(rudiment.substring(single.length())).isPresent();
    return said ? rudiment.substring(single.length()) : rudiment;
  }
}
