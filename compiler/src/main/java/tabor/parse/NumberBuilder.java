package tabor.parse;

import java.util.ArrayList;
import java.util.List;
import org.antlr.v4.runtime.Token;
import tabor.grammar.TaborParser;
import tabor.groove.CountingWords;
import tabor.rhythm.Count;
import tabor.rhythm.Count.Syllable;
import tabor.rhythm.Time;
import tabor.source.Span;
import tabor.syntax.CountRef;
import tabor.syntax.Num;

/** Tokens to numbers and counts, with their ranges. */
record NumberBuilder(FirstProblem problems) {
  /** Stands for every number of more than nine digits. */
  static final int HUGE = 999_999_999;

  /**
   * The tempi that a file may ask for, in beats per minute: what players count and MIDI can hold.
   */
  private static final int SLOWEST = 10;

  private static final int FASTEST = 600;

  static int digits(String text) {
    return text.length() > 9 && text.replaceFirst("^0+", "").length() > 9
        ? HUGE
        : Integer.parseInt(text);
  }

  /** A whole number without a range. */
  static Num whole(Token token) {
    return new Num(Time.of(digits(token.getText())), Spans.of(token));
  }

  /** The digits that stand within a longer token. */
  static Num within(String digits, int start) {
    return new Num(Time.of(digits(digits)), new Span(start, start + digits.length()));
  }

  /** The parts of {@code 2+2+3}. */
  static List<Num> sum(Token token) {
    List<Num> parts = new ArrayList<>();
    int at = token.getStartIndex();
    for (String part : token.getText().split("\\+", -1)) {
      parts.add(within(part, at));
      at += part.length() + 1;
    }
    return parts;
  }

  /** A whole number within a range, both ends included. */
  Num whole(Token token, int least, int most, String called) {
    Num num = whole(token);
    int value = num.whole();
    if (value < least || value > most) {
      problems.report(
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

  /** Beats per minute. */
  Num speed(TaborParser.NumberContext number) {
    Num num = new Num(exact(number.digits.getText()), Spans.of(number));
    if (num.value().before(Time.of(SLOWEST)) || Time.of(FASTEST).before(num.value())) {
      problems.report(
          num.span(),
          "a tempo cannot be " + number.digits.getText(),
          "It lies between " + SLOWEST + " and " + FASTEST + " beats per minute");
    }
    return num;
  }

  /** {@code 3&.2/4}, or with a word of the lesson {@code 2trip}. */
  CountRef count(TaborParser.CountContext context) {
    return context.said != null ? said(context.said) : ours(context);
  }

  /** {@code 2trip}, {@code 2trip.2}: what the word means is for the header to say. */
  private CountRef said(Token token) {
    String text = token.getText();
    int word = endOfDigits(text, 0);
    int dot = text.indexOf('.');
    int end = dot < 0 ? text.length() : dot;
    List<Integer> places = new ArrayList<>(0);
    for (int at = end; at < text.length(); ) {
      int next = endOfDigits(text, at + 1);
      places.add(digits(text.substring(at + 1, next)));
      at = next;
    }
    return new CountRef(
        new Count(digits(text.substring(0, word)), Syllable.NONE, places, 0),
        CountingWords.plain(text.substring(word, end)),
        Spans.of(token));
  }

  /** {@code 3&.2/4}. */
  private CountRef ours(TaborParser.CountContext context) {
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
          problems.report(
              span, "a beat cannot be divided in 0", "After / stands 1 or more, as in 3a/4");
        }
      }
      at = end;
    }
    return new CountRef(new Count(beat, syllable, places, division), null, span);
  }

  private static int endOfDigits(String text, int from) {
    int at = from;
    while (at < text.length() && text.charAt(at) >= '0' && text.charAt(at) <= '9') {
      at++;
    }
    return at;
  }
}
