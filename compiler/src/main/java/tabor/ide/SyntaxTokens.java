package tabor.ide;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.groove.Level;
import tabor.groove.Loudness;
import tabor.ide.SyntaxToken.Role;
import tabor.source.Span;
import tabor.syntax.At;
import tabor.syntax.Beat;
import tabor.syntax.CountRef;
import tabor.syntax.Heading;
import tabor.syntax.KitStatement;
import tabor.syntax.LaneBar;
import tabor.syntax.LimbRef;
import tabor.syntax.Line;
import tabor.syntax.Name;
import tabor.syntax.Num;
import tabor.syntax.PartStatement;
import tabor.syntax.Ref;
import tabor.syntax.SettingStatement;
import tabor.syntax.Statement;
import tabor.syntax.Subject;
import tabor.syntax.SurfaceRef;
import tabor.syntax.TargetRef;
import tabor.syntax.Text;

/**
 * A line as a row of tokens, in the order written. The tree says what its words mean; what lies
 * between them are keywords and signs.
 */
public final class SyntaxTokens implements Beat.Cases<@Nullable Void> {
  private final List<SyntaxToken> found = new ArrayList<>();

  private SyntaxTokens() {}

  /** The tokens of a line, keywords and signs included; a broken line has none. */
  public static List<SyntaxToken> of(Line line) {
    Statement statement = line.statement();
    if (statement instanceof Statement.Broken) {
      return List.of();
    }
    SyntaxTokens tokens = new SyntaxTokens();
    tokens.walk(statement);
    tokens.found.sort((a, b) -> Integer.compare(a.span().start(), b.span().start()));
    return tokens.withGaps(line);
  }

  private void walk(Object holder) {
    for (Object node : SyntaxNodes.in(holder)) {
      node(holder, node);
    }
  }

  private void node(Object holder, Object node) {
    if (node instanceof Beat.Element element) {
      element.match(this);
    } else if (node instanceof Name name) {
      add(roleOfName(holder, name), name.text(), name.span());
    } else if (node instanceof SurfaceRef surface) {
      boolean made = holder instanceof KitStatement.NewSurface;
      add(made ? Role.SURFACE_NAME : Role.SURFACE, surface.name(), surface.span());
    } else if (node instanceof LimbRef limb) {
      add(Role.LIMB, limb.words(), limb.span());
    } else if (node instanceof TargetRef.OfGroup group) {
      add(Role.LIMB, group.words(), group.span());
    } else if (node instanceof Subject.Hands
        || node instanceof Subject.Feet
        || node instanceof Subject.Line) {
      add(Role.LIMB, ((Subject) node).words(), ((Subject) node).span());
    } else if (node instanceof CountRef count) {
      found.add(new SyntaxToken(Role.COUNT, count.words(), count.span(), count, null));
    } else if (node instanceof Num number) {
      add(Role.NUMBER, number.value().toString(), number.span());
    } else if (node instanceof Text text) {
      Role role = holder instanceof SettingStatement.Use ? Role.FILE : Role.TEXT;
      add(role, text.value(), text.span());
    } else if (node instanceof Ref<?> word) {
      add(roleOfWord(word.value()), word.value().toString(), word.span());
    } else if (node instanceof At.EverySyllable every) {
      add(Role.COUNT, every.syllable().sign(), every.span());
    } else if (node instanceof At.EverySaid every) {
      add(Role.COUNT, every.word(), every.span());
    } else if (node instanceof LaneBar bar) {
      beats(bar);
    } else if (node instanceof Record) {
      walk(node);
    }
  }

  /** Most of a long file: not by way of the components. */
  private void beats(LaneBar bar) {
    for (Beat beat : bar.beats()) {
      for (Beat.Element element : beat.elements()) {
        element.match(this);
      }
      if (beat.beats() != null) {
        node(beat, beat.beats());
      }
    }
  }

  private void add(Role role, String text, Span span) {
    found.add(SyntaxToken.of(role, text, span));
  }

  private static Role roleOfName(Object holder, Name name) {
    if (holder instanceof Heading.Kit kit) {
      return kit.name() == name ? Role.KIT_NAME : Role.KIT;
    }
    if (holder instanceof Heading heading) {
      return heading.from() == name ? Role.SECTION : NameKind.of(heading.kind()).given();
    }
    if (holder instanceof PartStatement.Named) {
      return Role.PATTERN;
    }
    if (holder instanceof SettingStatement) {
      return holder instanceof SettingStatement.On ? Role.KIT : Role.VALUE;
    }
    return Role.SECTION;
  }

  private static Role roleOfWord(Object value) {
    return value instanceof Level || value instanceof Loudness
        ? Role.LEVEL
        : value instanceof Character ? Role.LETTER_NAME : Role.VALUE;
  }

  @Override
  public @Nullable Void hit(Beat.Hit hit) {
    found.add(new SyntaxToken(Role.HIT, String.valueOf(hit.letter()), hit.span(), null, hit));
    return null;
  }

  @Override
  public @Nullable Void rest(Beat.Rest rest) {
    add(Role.SILENCE, ".", rest.span());
    return null;
  }

  @Override
  public @Nullable Void hold(Beat.Hold hold) {
    add(Role.HOLD, "-", hold.span());
    return null;
  }

  @Override
  public @Nullable Void group(Beat.Group group) {
    group.elements().forEach(element -> element.match(this));
    return null;
  }

  @Override
  public @Nullable Void ghosts(Beat.Ghosts ghosts) {
    ghosts.elements().forEach(element -> element.match(this));
    return null;
  }

  /** With what lies between the tokens of a line that was read. */
  private List<SyntaxToken> withGaps(Line line) {
    String text = line.passage().text();
    int end = line.statement().span().end();
    List<SyntaxToken> all = new ArrayList<>();
    int at = line.statement().span().start();
    for (SyntaxToken token : found) {
      gap(text, line.start(), at, token.span().start(), all);
      all.add(token);
      at = Math.max(at, token.span().end());
    }
    gap(text, line.start(), at, end, all);
    return all;
  }

  /** Keywords are runs of letters, all else is signs: the line has been read and is sound. */
  private static void gap(String text, int start, int from, int to, List<SyntaxToken> into) {
    int at = from;
    while (at < to) {
      int end = at + 1;
      char c = text.charAt(start + at);
      if (Character.isLetterOrDigit(c)) {
        while (end < to && isWordPart(text.charAt(start + end))) {
          end++;
        }
      }
      if (!Character.isWhitespace(c)) {
        Role role =
            Character.isLetter(c) ? Role.KEYWORD : Character.isDigit(c) ? Role.NUMBER : Role.SIGN;
        into.add(SyntaxToken.of(role, text.substring(start + at, start + end), new Span(at, end)));
      }
      at = end;
    }
  }

  private static boolean isWordPart(char c) {
    return Character.isLetterOrDigit(c) || c == '-';
  }
}
