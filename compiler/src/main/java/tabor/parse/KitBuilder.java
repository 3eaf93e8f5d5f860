package tabor.parse;

import org.antlr.v4.runtime.Token;
import org.jspecify.annotations.Nullable;
import tabor.grammar.TaborLexer;
import tabor.grammar.TaborParser;
import tabor.grammar.TaborParserBaseVisitor;
import tabor.syntax.KitStatement;
import tabor.syntax.Num;
import tabor.syntax.Word;

/** Trees of kit lines to records. */
final class KitBuilder extends TaborParserBaseVisitor<KitStatement> {
  private final Leaves leaves;

  KitBuilder(Leaves leaves) {
    this.leaves = leaves;
  }

  @Override
  public KitStatement visitNewSurface(TaborParser.NewSurfaceContext line) {
    Word name = Leaves.surface(line.id);
    if (Lists.isTaken(name.text())) {
      leaves.report(
          name.span(),
          "`" + name.text() + "` is a word of the language",
          "Give the surface another name");
    }
    Word letter = null;
    Num key = null;
    Word staff = null;
    Word head = null;
    for (TaborParser.ClauseContext clause : line.clauses) {
      switch (clause.keyword.getType()) {
        case TaborLexer.LETTER -> {
          once(letter, clause);
          letter = letter(clause.word);
        }
        case TaborLexer.KEY -> {
          once(key, clause);
          key = leaves.whole(clause.value, 0, 127, "a MIDI key");
        }
        case TaborLexer.STAFF -> {
          once(staff, clause);
          staff = staff(clause.word);
        }
        default -> {
          once(head, clause);
          head = leaves.listed(clause.word, Lists.HEADS, "a note head");
        }
      }
    }
    return new KitStatement.NewSurface(name, letter, key, staff, head, Spans.of(line));
  }

  private void once(@Nullable Object before, TaborParser.ClauseContext clause) {
    if (before != null) {
      leaves.report(
          Spans.of(clause),
          "`" + clause.keyword.getText() + "` is said twice on this line",
          "Leave one of them out");
    }
  }

  private Word letter(Token token) {
    Word word = Leaves.word(token);
    if (word.text().length() != 1) {
      leaves.report(
          word.span(),
          "`" + word.text() + "` is more than one letter",
          "A surface has one lower-case letter");
    } else if (word.text().equals("x")) {
      leaves.report(
          word.span(),
          "the letter x is taken: it is the surface that a limb plays",
          "Choose another letter");
    }
    return word;
  }

  private Word staff(Token token) {
    Word word = Leaves.word(token);
    if (!word.text().matches("[a-g][0-9]")) {
      leaves.report(
          word.span(),
          "`" + word.text() + "` is not a place on the staff",
          "It is a letter from a to g with an octave, as in the treble clef: e4 is the lowest line,"
              + " f5 the highest");
    }
    return word;
  }

  @Override
  public KitStatement visitLetter(TaborParser.LetterContext line) {
    return new KitStatement.Letter(letter(line.sign), Leaves.surface(line.of), Spans.of(line));
  }

  @Override
  public KitStatement visitWithout(TaborParser.WithoutContext line) {
    return new KitStatement.Without(
        Leaves.surface(line.lacking),
        line.instead == null ? null : Leaves.surface(line.instead),
        Spans.of(line));
  }

  @Override
  public KitStatement visitLeftHanded(TaborParser.LeftHandedContext line) {
    return new KitStatement.LeftHanded(Spans.of(line));
  }

  @Override
  public KitStatement visitPlace(TaborParser.PlaceContext line) {
    Num degrees = leaves.whole(line.degrees, 0, 180, "an angle");
    if (line.side == null && degrees.whole() != 0) {
      leaves.report(
          degrees.span(), "to which side is not said", "Write left or right after degrees");
    }
    return new KitStatement.Place(
        Leaves.surface(line.what),
        leaves.whole(line.distance, 1, 300, "a distance in cm"),
        degrees,
        Leaves.wordOrNull(line.side),
        line.height == null ? null : leaves.whole(line.height, 0, 250, "a height in cm"),
        Spans.of(line));
  }
}
