package tabor.ide;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import tabor.compile.Compiled;
import tabor.ide.Form.Label;
import tabor.source.Span;

/** How the statement under the cursor is written, and which word of it comes next. */
public final class Signatures {
  private Signatures() {}

  /**
   * A statement's form.
   *
   * @param form as a person reads it
   * @param meaning what it does
   * @param words where each of its words stands in the form
   * @param active which of them is being written; -1 if the statement is complete
   */
  public record Signature(String form, String meaning, List<Span> words, int active) {
    /** Copies the list. */
    public Signature {
      words = List.copyOf(words);
    }
  }

  /** The form of the line that is being typed at an offset; empty before its first word. */
  public static Optional<Signature> at(Compiled compiled, int offset) {
    Cursor cursor = Cursor.at(compiled, offset);
    String text = compiled.text();
    int start = offset;
    while (start > cursor.start() && !Situation.isLineEnd(text.charAt(start - 1))) {
      start--;
    }
    Typed typed = Typed.of(text.substring(start, offset));
    if (typed.inComment() || typed.words().isEmpty()) {
      return Optional.empty();
    }
    for (Phrase phrase : Phrase.ALL) {
      if (phrase.rooms().contains(Situation.room(cursor.section()))
          && typed.words().contains(phrase.keyword())) {
        Set<Integer> states = phrase.form().begin();
        for (String word : typed.words()) {
          states = phrase.form().after(states, word);
        }
        if (!states.isEmpty()) {
          return Optional.of(signature(phrase, phrase.form().next(states)));
        }
      }
    }
    return Optional.empty();
  }

  private static Signature signature(Phrase phrase, List<Label> next) {
    String shown = phrase.form().shown();
    List<Span> words = new ArrayList<>();
    int at = 0;
    while (at < shown.length()) {
      int end = at;
      while (end < shown.length() && " []…".indexOf(shown.charAt(end)) < 0) {
        end++;
      }
      if (end > at) {
        words.add(new Span(at, end));
      }
      at = end + 1;
    }
    int first = next.stream().mapToInt(Label::from).min().orElse(-1);
    int active = -1;
    for (int i = 0; i < words.size(); i++) {
      if (words.get(i).start() == first) {
        active = i;
      }
    }
    return new Signature(shown, phrase.meaning(), words, active);
  }
}
