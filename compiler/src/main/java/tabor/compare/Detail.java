package tabor.compare;

import org.jspecify.annotations.Nullable;

/**
 * One thing said about a lesson or a section that is other than it was.
 *
 * @param what what it is about: {@code tempo}, {@code title}, {@code prose}
 * @param before what it was; null where nothing was said
 * @param after what it is; null where nothing is said any more
 */
public record Detail(String what, @Nullable String before, @Nullable String after) {
  /** What a text is called; it is too long to be repeated. */
  static final String PROSE = "prose";

  /** That a section cannot be worked out, so that its lines are compared. */
  static final String ERRORS = "errors";

  /** {@code tempo 60 → 66}; {@code page letter added}; {@code prose changed}. */
  public String words() {
    if (what.equals(PROSE)) {
      return before == null ? "prose added" : after == null ? "prose taken out" : "prose changed";
    }
    if (what.equals(ERRORS)) {
      return before == null
          ? "has errors now, so that only its lines are compared"
          : "has no errors any more";
    }
    String name = what.isEmpty() ? "" : what + " ";
    if (before == null) {
      return name + after + " added";
    }
    return after == null ? name + before + " taken out" : name + before + " → " + after;
  }
}
