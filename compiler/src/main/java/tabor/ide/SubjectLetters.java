package tabor.ide;

import java.util.LinkedHashMap;
import java.util.Map;
import tabor.kit.Kit;
import tabor.kit.Surface;
import tabor.source.Span;
import tabor.syntax.LimbRef;
import tabor.syntax.Subject;
import tabor.syntax.SurfaceRef;

/** The letters that mean something in a part, each with what it means, in the order of offers. */
record SubjectLetters(Kit kit) implements Subject.Cases<Map<Character, String>> {
  /** The letters of a part that says what is struck, and of a pattern. */
  static final Map<Character, String> SIDES =
      letters('r', "right", 'l', "left", 'b', "both at once", 'x', "either");

  private static final Map<Character, String> LINE =
      letters(
          'r',
          "right hand",
          'l',
          "left hand",
          'b',
          "both hands",
          'k',
          "right foot",
          'p',
          "left foot");

  private static Map<Character, String> letters(Object... lettersAndWords) {
    Map<Character, String> letters = new LinkedHashMap<>();
    for (int i = 0; i < lettersAndWords.length; i += 2) {
      letters.put((Character) lettersAndWords[i], (String) lettersAndWords[i + 1]);
    }
    return letters;
  }

  @Override
  public Map<Character, String> limb(LimbRef limb) {
    Map<Character, String> found = new LinkedHashMap<>();
    found.put('x', "what the " + limb.limb().words() + " plays");
    kit.letters()
        .forEach(
            (letter, name) -> {
              Surface surface = kit.surface(name);
              if (surface != null && surface.isFoot() != limb.limb().isHand()) {
                found.put(letter, surface.words());
              }
            });
    return found;
  }

  @Override
  public Map<Character, String> hands(Span span) {
    return SIDES;
  }

  @Override
  public Map<Character, String> feet(Span span) {
    return SIDES;
  }

  @Override
  public Map<Character, String> line(Span span) {
    return LINE;
  }

  @Override
  public Map<Character, String> surface(SurfaceRef surface) {
    return SIDES;
  }
}
