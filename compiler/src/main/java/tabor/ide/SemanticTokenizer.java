package tabor.ide;

import java.util.ArrayList;
import java.util.List;
import tabor.ide.SyntaxToken.Role;
import tabor.parse.LineWords;
import tabor.source.Span;
import tabor.syntax.Heading;
import tabor.syntax.Line;
import tabor.syntax.SectionSyntax;
import tabor.syntax.Statement;

/** The meaning of each word of a file, for colouring. */
public final class SemanticTokenizer {
  /** Kinds of token, in the order that a client is told of. */
  public enum Kind {
    KEYWORD("keyword"),
    SECTION("class"),
    PATTERN("function"),
    KIT("type"),
    SURFACE("variable"),
    LIMB("parameter"),
    VALUE("enumMember"),
    NUMBER("number"),
    COUNT("event"),
    TEXT("string"),
    STROKE("property"),
    SIGN("operator"),
    COMMENT("comment");

    private final String word;

    Kind(String word) {
      this.word = word;
    }

    /** The protocol's standard word that comes nearest. */
    public String word() {
      return word;
    }
  }

  /**
   * A token on one line.
   *
   * @param span where in the passage
   * @param kind what it is
   * @param given true where a name is given
   * @param accent true for an accented stroke
   */
  public record Token(Span span, Kind kind, boolean given, boolean accent) {}

  private SemanticTokenizer() {}

  /** The tokens of a section, or of a header, in order; their spans count from its beginning. */
  public static List<Token> of(SectionSyntax section) {
    String text = section.passage().text();
    List<Token> found = new ArrayList<>();
    for (Line line : References.lines(section)) {
      Statement statement = line.statement();
      if (statement instanceof Statement.Broken || statement instanceof Heading.Faulty) {
        for (LineWords.Word word : LineWords.of(line.spot().text())) {
          Span span = word.span().shift(line.start() + statement.span().start());
          add(span, kind(word.kind()), false, false, text, found);
        }
      } else {
        for (SyntaxToken token : SyntaxTokens.of(line)) {
          boolean accent = token.hit() != null && token.hit().accent();
          Span span = token.span().shift(line.start());
          add(span, kind(token.role()), token.givesName(), accent, text, found);
        }
      }
    }
    for (Comments.Comment comment : Comments.of(section)) {
      found.add(new Token(comment.span(), Kind.COMMENT, false, false));
    }
    found.sort((a, b) -> Integer.compare(a.span().start(), b.span().start()));
    return found;
  }

  /** A token does not run over a line end: the protocol has none that do. */
  private static void add(
      Span span, Kind kind, boolean given, boolean accent, String text, List<Token> found) {
    int from = span.start();
    while (from < span.end()) {
      int to = from;
      while (to < span.end() && !LineEnds.isLineEnd(text.charAt(to))) {
        to++;
      }
      if (to > from) {
        found.add(new Token(new Span(from, to), kind, given, accent));
      }
      from = to + 1;
    }
  }

  private static Kind kind(LineWords.Kind kind) {
    return switch (kind) {
      case KEYWORD -> Kind.KEYWORD;
      case NAME -> Kind.SURFACE;
      case NUMBER -> Kind.NUMBER;
      case COUNT -> Kind.COUNT;
      case TEXT -> Kind.TEXT;
      case STROKE -> Kind.STROKE;
      case SIGN -> Kind.SIGN;
    };
  }

  private static Kind kind(Role role) {
    return switch (role) {
      case KEYWORD -> Kind.KEYWORD;
      case SECTION, SECTION_NAME -> Kind.SECTION;
      case PATTERN, PATTERN_NAME -> Kind.PATTERN;
      case KIT, KIT_NAME, PLAYER, PLAYER_NAME -> Kind.KIT;
      case SURFACE, SURFACE_NAME -> Kind.SURFACE;
      case LIMB -> Kind.LIMB;
      case VALUE, LEVEL -> Kind.VALUE;
      case NUMBER -> Kind.NUMBER;
      case COUNT -> Kind.COUNT;
      case TEXT, FILE -> Kind.TEXT;
      case HIT, LETTER_NAME -> Kind.STROKE;
      case SILENCE, HOLD, SIGN -> Kind.SIGN;
    };
  }
}
