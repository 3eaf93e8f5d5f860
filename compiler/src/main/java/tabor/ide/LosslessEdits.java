package tabor.ide;

import java.util.List;
import tabor.compile.Compiled;
import tabor.diagnostic.Code;
import tabor.diagnostic.Diagnostic;
import tabor.diagnostic.Severity;
import tabor.parse.LineWords;

/** Tells changes that lose nothing: another spelling of a word, quotes and signs. */
final class LosslessEdits {
  private LosslessEdits() {}

  /** True if the edits of a diagnostic's fix lose nothing that was written. */
  static boolean are(Compiled compiled, Diagnostic diagnostic, List<TextEdit> edits) {
    boolean spelling =
        diagnostic.severity() == Severity.ERROR
            && (diagnostic.code() == Code.SYNTAX || diagnostic.code() == Code.UNKNOWN_NAME);
    return spelling && edits.stream().allMatch(edit -> isOne(compiled.text(), edit));
  }

  private static boolean isOne(String text, TextEdit edit) {
    String old = edit.span().in(text);
    boolean sameLetters = letters(old).equals(letters(edit.text()));
    return sameLetters
        || (isWord(old) && isWord(edit.text()) && !isInBeats(text, edit.span().start()));
  }

  private static String letters(String text) {
    StringBuilder letters = new StringBuilder();
    text.codePoints().filter(Character::isLetterOrDigit).forEach(letters::appendCodePoint);
    return letters.toString();
  }

  private static boolean isWord(String text) {
    return !text.isBlank() && text.chars().noneMatch(Character::isWhitespace);
  }

  /** Among beats every letter is a stroke. */
  private static boolean isInBeats(String text, int offset) {
    return LineWords.endsInBeats(LineEnds.before(text, offset));
  }
}
