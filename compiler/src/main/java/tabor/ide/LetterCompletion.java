package tabor.ide;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tabor.ide.CompletionItem.Kind;
import tabor.source.Span;
import tabor.syntax.Heading;
import tabor.syntax.PartStatement;
import tabor.syntax.Statement;

/** The letters and signs that may follow in a part, each written onto its word. */
final class LetterCompletion {
  private final CompletionContext context;
  private final List<CompletionItem> found = new ArrayList<>();

  LetterCompletion(CompletionContext context) {
    this.context = context;
  }

  List<CompletionItem> items() {
    Optional<Statement> statement = context.lane();
    if (statement.isPresent() && statement.get() instanceof PartStatement.Lane lane) {
      lane.subject().match(new SubjectLetters(context.kit())).forEach(this::letter);
      if (context.isBarStart()) {
        add("%", "the bar before again");
      }
    } else if (statement.isPresent() && statement.get() instanceof Heading.Pattern) {
      SubjectLetters.SIDES.forEach(this::letter);
    } else {
      return List.of();
    }
    add(".", "silence");
    add("-", "the stroke before goes on");
    return found;
  }

  private void letter(char letter, String detail) {
    add(String.valueOf(letter), detail);
  }

  private void add(String letter, String detail) {
    String word = context.beatWord();
    int offset = context.cursor().offset();
    Span replaced = new Span(offset - word.length(), offset);
    found.add(new CompletionItem(letter, word + letter, Kind.LETTER, detail, "", replaced));
  }
}
