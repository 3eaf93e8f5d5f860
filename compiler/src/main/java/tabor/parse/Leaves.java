package tabor.parse;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.antlr.v4.runtime.ParserRuleContext;
import org.antlr.v4.runtime.Token;
import org.jspecify.annotations.Nullable;
import tabor.diagnostic.Near;
import tabor.grammar.TaborLexer;
import tabor.grammar.TaborParser;
import tabor.rhythm.Count;
import tabor.rhythm.Count.Syllable;
import tabor.rhythm.Time;
import tabor.source.Span;
import tabor.syntax.CountWord;
import tabor.syntax.Num;
import tabor.syntax.Text;
import tabor.syntax.Word;

/**
 * The small things that statements are made of: names, numbers, counts, texts. Keeps the first
 * thing that is wrong with the line at hand.
 */
final class Leaves {
  /** Stands for every number of more than nine digits. */
  static final int HUGE = 999_999_999;

  private @Nullable Problem problem;

  /** Forgets the line before. */
  void clear() {
    problem = null;
  }

  /** What is wrong with the line; null if nothing is. */
  @Nullable Problem problem() {
    return problem;
  }

  /** Reports a problem unless the line has one. */
  void report(Problem found) {
    if (problem == null) {
      problem = found;
    }
  }

  /** Reports a syntax error unless the line has one. */
  void report(Span span, String message, @Nullable String help) {
    report(Problem.syntax(span, message, help));
  }

  static Word word(Token token) {
    return new Word(token.getText(), Spans.of(token));
  }

  static @Nullable Word wordOrNull(@Nullable Token token) {
    return token == null ? null : word(token);
  }

  static Word name(TaborParser.NameContext name) {
    return word(name.word);
  }

  static @Nullable Word nameOrNull(TaborParser.@Nullable NameContext name) {
    return name == null ? null : name(name);
  }

  static Word surface(TaborParser.SurfaceContext surface) {
    return word(surface.word);
  }

  /** {@code right}, {@code left}, {@code right foot} or {@code left foot}. */
  static Word limb(TaborParser.LimbContext limb) {
    String side = limb.side.getText();
    boolean foot = limb.part != null && limb.part.getType() == TaborLexer.FOOT;
    return new Word(foot ? side + " foot" : side, Spans.of(limb));
  }

  static @Nullable Word limbOrNull(TaborParser.@Nullable LimbContext limb) {
    return limb == null ? null : limb(limb);
  }

  static Word subject(TaborParser.SubjectContext subject) {
    return subject.who != null
        ? limb(subject.who)
        : subject.what != null ? surface(subject.what) : word(subject.word);
  }

  static List<Word> targets(TaborParser.TargetsContext targets) {
    List<Word> words = new ArrayList<>(targets.items.size());
    for (TaborParser.TargetContext target : targets.items) {
      words.add(
          target.who != null
              ? limb(target.who)
              : target.what != null ? surface(target.what) : word(target.word));
    }
    return words;
  }

  /** A word of a closed list; another word is reported with its near names. */
  Word listed(Token token, Collection<String> list, String called) {
    Word word = word(token);
    if (!list.contains(word.text())) {
      report(unlisted(word, list, called));
    }
    return word;
  }

  static Problem unlisted(Word word, Collection<String> list, String called) {
    List<String> near = Near.names(word.text(), list);
    String help =
        near.isEmpty()
            ? "It is " + (list.size() == 1 ? "" : "one of ") + String.join(", ", list)
            : "Is " + Expected.or(near) + " meant?";
    Problem problem = Problem.syntax(word.span(), "`" + word.text() + "` is not " + called, help);
    for (String name : near) {
      problem = problem.change("Write " + name, word.span(), name);
    }
    return problem;
  }

  /** {@code ghosted}, {@code plain} or {@code accented}. */
  Word level(TaborParser.LevelContext level) {
    return listed(level.word, Lists.LEVELS, "a level");
  }

  @Nullable Word levelOrNull(TaborParser.@Nullable LevelContext level) {
    return level == null ? null : level(level);
  }

  static int digits(String text) {
    return text.length() > 9 && text.replaceFirst("^0+", "").length() > 9
        ? HUGE
        : Integer.parseInt(text);
  }

  /** A whole number without a range. */
  static Num whole(Token token) {
    return new Num(Time.of(digits(token.getText())), Spans.of(token));
  }

  /** A whole number within a range, both ends included. */
  Num whole(Token token, int least, int most, String called) {
    Num num = whole(token);
    int value = num.whole();
    if (value < least || value > most) {
      report(
          num.span(),
          called + " cannot be " + token.getText(),
          most == HUGE - 1
              ? value == HUGE ? "It has nine digits at most" : "It is " + least + " or more"
              : "It lies between " + least + " and " + most);
    }
    return num;
  }

  /** A whole number from 1 to what nine digits hold. */
  Num positive(Token token, String called) {
    return whole(token, 1, HUGE - 1, called);
  }

  /** A number with or without decimals, exact. */
  static Time exact(String text) {
    int dot = text.indexOf('.');
    if (dot < 0) {
      return Time.of(digits(text));
    }
    String fraction = text.substring(dot + 1);
    if (dot + fraction.length() > 9) {
      return Time.of(HUGE);
    }
    long den = 1;
    for (int i = 0; i < fraction.length(); i++) {
      den *= 10;
    }
    return Time.of(digits(text.substring(0, dot))).plus(Time.of(digits(fraction), den));
  }

  /** Beats a minute. */
  Num speed(TaborParser.NumberContext number) {
    Num num = new Num(exact(number.digits.getText()), Spans.of(number));
    if (num.value().before(Time.of(Speeds.LEAST)) || Time.of(Speeds.MOST).before(num.value())) {
      report(
          num.span(),
          "a tempo cannot be " + number.digits.getText(),
          "It lies between " + Speeds.LEAST + " and " + Speeds.MOST + " beats a minute");
    }
    return num;
  }

  /** {@code 3&.2/4}. */
  CountWord count(TaborParser.CountContext context) {
    String text = context.digits.getText();
    Span span = Spans.of(context);
    int at = endOfDigits(text, 0);
    int beat = digits(text.substring(0, at));
    Syllable syllable = Syllable.NONE;
    if (at < text.length()) {
      syllable =
          switch (text.charAt(at)) {
            case 'e' -> Syllable.E;
            case 'a' -> Syllable.A;
            case '&', '+' -> Syllable.AND;
            default -> Syllable.NONE;
          };
      at += syllable == Syllable.NONE ? 0 : 1;
    }
    List<Integer> places = new ArrayList<>(2);
    int division = 0;
    while (at < text.length()) {
      int end = endOfDigits(text, at + 1);
      int value = digits(text.substring(at + 1, end));
      if (text.charAt(at) == '.') {
        places.add(value);
      } else {
        division = value;
        if (value == 0) {
          report(span, "a beat cannot be divided in 0", "After / stands 1 or more, as in 3a/4");
        }
      }
      at = end;
    }
    return new CountWord(new Count(beat, syllable, places, division), span);
  }

  private static int endOfDigits(String text, int from) {
    int at = from;
    while (at < text.length() && text.charAt(at) >= '0' && text.charAt(at) <= '9') {
      at++;
    }
    return at;
  }

  /** A text that may run over several lines. */
  static Text prose(TaborParser.TextContext context) {
    String written = context.quoted.getText();
    boolean triple = context.quoted.getType() == TaborLexer.TRIPLE_QUOTED;
    int quotes = triple ? 3 : 1;
    String inner = written.substring(quotes, written.length() - quotes);
    return new Text(triple ? Prose.unindented(inner) : inner, triple, Spans.of(context));
  }

  /** A text that names something: its lines, if it has several, are joined. */
  static Text title(TaborParser.TextContext context) {
    Text text = prose(context);
    return text.triple()
        ? new Text(text.value().strip().replaceAll("\\s*\\n\\s*", " "), true, text.span())
        : text;
  }

  static @Nullable Text titleOrNull(TaborParser.@Nullable TextContext context) {
    return context == null ? null : title(context);
  }

  static Span span(ParserRuleContext context) {
    return Spans.of(context);
  }

  /** The tempi that a file may ask for, in beats a minute: what players count and MIDI can hold. */
  static final class Speeds {
    static final int LEAST = 10;
    static final int MOST = 600;

    private Speeds() {}
  }
}
