package tabor.ide;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tabor.ide.CompletionItem.Kind;
import tabor.kit.Surface;
import tabor.source.Span;
import tabor.syntax.Heading;
import tabor.syntax.LimbRef;
import tabor.syntax.PartStatement;
import tabor.syntax.Statement;
import tabor.syntax.Subject;
import tabor.syntax.SurfaceRef;

/** The letters and signs that may follow in a part, each written onto its word. */
final class LetterCompletion implements Subject.Cases<Boolean> {
  private final CompletionContext context;
  private final List<CompletionItem> found = new ArrayList<>();

  LetterCompletion(CompletionContext context) {
    this.context = context;
  }

  List<CompletionItem> items() {
    Optional<Statement> statement = context.lane();
    if (statement.isPresent() && statement.get() instanceof PartStatement.Lane lane) {
      lane.subject().match(this);
      if (context.isBarStart()) {
        add("%", "the bar before again");
      }
    } else if (statement.isPresent() && statement.get() instanceof Heading.Pattern) {
      pair();
    } else {
      return List.of();
    }
    add(".", "silence");
    add("-", "the stroke before goes on");
    return found;
  }

  private boolean pair() {
    add("r", "right");
    add("l", "left");
    add("b", "both at once");
    return add("x", "either");
  }

  @Override
  public Boolean limb(LimbRef limb) {
    add("x", "what the " + limb.limb().words() + " plays");
    for (Map.Entry<Character, String> entry : context.kit().letters().entrySet()) {
      Surface surface = context.kit().surface(entry.getValue());
      if (surface != null && surface.isFoot() != limb.limb().isHand()) {
        add(entry.getKey().toString(), surface.words());
      }
    }
    return true;
  }

  @Override
  public Boolean hands(Span span) {
    return pair();
  }

  @Override
  public Boolean feet(Span span) {
    return pair();
  }

  @Override
  public Boolean line(Span span) {
    add("r", "right hand");
    add("l", "left hand");
    add("b", "both hands");
    add("k", "right foot");
    return add("p", "left foot");
  }

  @Override
  public Boolean surface(SurfaceRef surface) {
    return pair();
  }

  private boolean add(String letter, String detail) {
    String word = context.beatWord();
    int offset = context.cursor().offset();
    Span replaced = new Span(offset - word.length(), offset);
    return found.add(new CompletionItem(letter, word + letter, Kind.LETTER, detail, "", replaced));
  }
}
