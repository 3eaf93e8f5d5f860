package tabor.parse;

import tabor.grammar.TaborLexer;
import tabor.grammar.TaborParser;
import tabor.grammar.TaborParserBaseVisitor;
import tabor.kit.StaffPlace;
import tabor.kit.Surface;
import tabor.source.Span;
import tabor.syntax.KitStatement;
import tabor.syntax.KitStatement.Side;
import tabor.syntax.Num;
import tabor.syntax.Ref;

/** Trees of kit lines to records. */
final class KitLineBuilder extends TaborParserBaseVisitor<KitStatement> {
  private final FirstProblem problems;
  private final NumberBuilder numbers;

  KitLineBuilder(FirstProblem problems, NumberBuilder numbers) {
    this.problems = problems;
    this.numbers = numbers;
  }

  @Override
  public KitStatement visitNewSurface(TaborParser.NewSurfaceContext line) {
    Ref<Character> letter = null;
    Num key = null;
    Ref<StaffPlace> staff = null;
    Ref<Surface.Head> head = null;
    for (TaborParser.ClauseContext clause : line.clauses) {
      if (clause instanceof TaborParser.LetterClauseContext c) {
        problems.once(letter != null, Spans.of(c), c.keyword.getText());
        letter = letter(c.sign);
      } else if (clause instanceof TaborParser.KeyClauseContext c) {
        problems.once(key != null, Spans.of(c), c.keyword.getText());
        key = numbers.whole(c.value, 0, 127, "a MIDI key");
      } else if (clause instanceof TaborParser.StaffClauseContext c) {
        problems.once(staff != null, Spans.of(c), c.keyword.getText());
        staff = staff(c.word.getText(), Spans.of(c.word));
      } else if (clause instanceof TaborParser.HeadClauseContext c) {
        problems.once(head != null, Spans.of(c), c.keyword.getText());
        head = head(c.shape);
      }
    }
    return new KitStatement.NewSurface(
        NameBuilder.surface(line.id), letter, key, staff, head, Spans.of(line));
  }

  private Ref<Character> letter(TaborParser.LetterContext context) {
    String written = context.getText();
    Span span = Spans.of(context);
    if (written.length() != 1) {
      problems.report(
          span, "`" + written + "` is more than one letter", "A surface has one lower-case letter");
    } else if (written.equals("x")) {
      problems.report(
          span,
          "the letter x is taken: it is the surface that a limb plays",
          "Choose another letter");
    }
    return new Ref<>(written.charAt(0), span);
  }

  private Ref<StaffPlace> staff(String written, Span span) {
    if (!written.matches("[a-g][0-9]")) {
      problems.report(
          span,
          "`" + written + "` is not a place on the staff",
          "It is a letter from a to g with an octave, as in the treble clef: e4 is the lowest line,"
              + " f5 the highest");
      return new Ref<>(new StaffPlace('E', 4), span);
    }
    char step = Character.toUpperCase(written.charAt(0));
    return new Ref<>(new StaffPlace(step, written.charAt(1) - '0'), span);
  }

  private static Ref<Surface.Head> head(TaborParser.HeadContext context) {
    Surface.Head head =
        switch (context.word.getType()) {
          case TaborLexer.LETTER_X -> Surface.Head.X;
          case TaborLexer.DIAMOND -> Surface.Head.DIAMOND;
          case TaborLexer.TRIANGLE -> Surface.Head.TRIANGLE;
          case TaborLexer.CIRCLE_X -> Surface.Head.CIRCLE_X;
          default -> Surface.Head.NORMAL;
        };
    return new Ref<>(head, Spans.of(context));
  }

  @Override
  public KitStatement visitNewLetter(TaborParser.NewLetterContext line) {
    return new KitStatement.Letter(letter(line.sign), NameBuilder.surface(line.of), Spans.of(line));
  }

  @Override
  public KitStatement visitWithout(TaborParser.WithoutContext line) {
    return new KitStatement.Without(
        NameBuilder.surface(line.lacking),
        line.instead == null ? null : NameBuilder.surface(line.instead),
        Spans.of(line));
  }

  @Override
  public KitStatement visitLeftHanded(TaborParser.LeftHandedContext line) {
    return new KitStatement.LeftHanded(Spans.of(line));
  }

  @Override
  public KitStatement visitPlaced(TaborParser.PlacedContext line) {
    Num degrees = numbers.whole(line.turned, 0, 180, "an angle");
    if (line.side == null && degrees.whole() != 0) {
      problems.report(
          degrees.span(), "to which side is not said", "Write left or right after degrees");
    }
    Ref<Side> side = null;
    if (line.side != null) {
      boolean left = line.side.getType() == TaborLexer.LEFT;
      side = new Ref<>(left ? Side.LEFT : Side.RIGHT, Spans.of(line.side));
    }
    return new KitStatement.Place(
        NameBuilder.surface(line.what),
        numbers.whole(line.away, 1, 300, "a distance in cm"),
        degrees,
        side,
        line.height == null ? null : numbers.whole(line.height, 0, 250, "a height in cm"),
        Spans.of(line));
  }
}
