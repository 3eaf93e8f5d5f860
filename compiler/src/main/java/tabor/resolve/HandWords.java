package tabor.resolve;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import tabor.lists.Lists;
import tabor.syntax.Line;
import tabor.syntax.SectionSyntax;
import tabor.syntax.Statement;
import tabor.words.Language;
import tabor.words.Words;

/**
 * The words of hands that texts have between square brackets; they follow the player, in the
 * language of the text.
 *
 * <p>{@code [right]} takes the form that its neighbours ask for, as far as the bundle of the
 * language has a rule for them; a form of the language itself, such as {@code [rechten]}, stays
 * that form.
 *
 * @param leftHanded true for a player whose hands are exchanged
 * @param language of the texts, asked for where one has such a word
 */
public record HandWords(boolean leftHanded, Supplier<Language> language) {
  private static final Map<Language, Forms> ALL = new ConcurrentHashMap<>();

  /** The words in the language of the file that a scope is of. */
  static HandWords of(boolean leftHanded, Scope scope) {
    return new HandWords(leftHanded, () -> scope.defaults().wording().language());
  }

  /** Set up only where a text has a bracket: few have one. */
  private static final class Bracket {
    static final Pattern WORD = Pattern.compile("\\[(\\p{L}+)\\]");
  }

  /** The texts of a section, as this player reads them. */
  List<String> prose(SectionSyntax syntax) {
    List<String> prose = new ArrayList<>();
    for (Line line : syntax.lines()) {
      if (line.statement() instanceof Statement.Prose text) {
        prose.add(in(text.text().value()));
      }
    }
    return prose;
  }

  /** A form for either hand. */
  private record Pair(String right, String left) {
    String of(boolean isRight) {
      return isRight ? right : left;
    }

    boolean has(String word) {
      return right.equals(word) || left.equals(word);
    }
  }

  /** A form where a text is like this: up to the word, or from its end on. */
  private record Rule(Pair form, Pattern before, Pattern after) {
    boolean fits(String text, int start, int end) {
      return before.matcher(text.substring(0, start)).find()
          && after.matcher(text.substring(end)).lookingAt();
    }
  }

  /**
   * Of one language.
   *
   * @param pairs its forms, first the one that a word by itself has
   */
  private record Forms(List<Pair> pairs, List<Rule> rules) {
    static Forms of(Language language) {
      Words words = Words.of(language);
      List<Pair> pairs = Lists.map(List.of(words.text("hand.forms").split(" ", -1)), Forms::pair);
      List<Rule> rules = new ArrayList<>();
      for (String rule : words.text("hand.rules").split(" ; ", -1)) {
        String[] parts = rule.split(" _ ", -1);
        if (parts.length == 3) {
          rules.add(new Rule(form(pairs, parts[0]), before(parts[1]), after(parts[2])));
        }
      }
      return new Forms(pairs, rules);
    }

    private static Pair pair(String both) {
      int slash = both.indexOf('/');
      return new Pair(both.substring(0, slash), both.substring(slash + 1));
    }

    private static Pair form(List<Pair> pairs, String right) {
      return Lists.filter(pairs, pair -> pair.right().equals(right)).get(0);
    }

    private static Pattern before(String words) {
      return pattern(words.equals("*") ? "" : "(?:^|[^\\p{L}])(?:" + words + ") $");
    }

    private static Pattern after(String words) {
      return pattern(words.equals("*") ? "" : " (?:" + words + ")(?!\\p{L})");
    }

    private static Pattern pattern(String regex) {
      return Pattern.compile(regex, Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);
    }
  }

  /** A text for the player; a bracket with anything else stays as it is. */
  public String in(String text) {
    if (text.indexOf('[') < 0) {
      return text;
    }
    StringBuilder made = new StringBuilder();
    Matcher found = Bracket.WORD.matcher(text);
    while (found.find()) {
      String word = word(found.group(1), text, found.start(), found.end());
      found.appendReplacement(made, Matcher.quoteReplacement(word));
    }
    return found.appendTail(made).toString();
  }

  private String word(String written, String text, int start, int end) {
    String small = written.substring(0, 1).toLowerCase(Locale.ROOT) + written.substring(1);
    Forms forms = ALL.computeIfAbsent(language.get(), Forms::of);
    boolean plain = small.equals("right") || small.equals("left");
    Pair asked = asked(forms, text, start, end);
    Pair pair = plain ? asked : written(forms, small, asked);
    if (pair == null) {
      return text.substring(start, end);
    }
    boolean isRight = plain ? small.equals("right") : small.equals(pair.right());
    String word = pair.of(isRight != leftHanded);
    return small.equals(written) ? word : Words.capital(word);
  }

  /** The form that the words beside a bracket ask for. */
  private static Pair asked(Forms forms, String text, int start, int end) {
    for (Rule rule : forms.rules()) {
      if (rule.fits(text, start, end)) {
        return rule.form();
      }
    }
    return forms.pairs().get(0);
  }

  /** The pair with a form, of several the one that is asked for; null if there is none. */
  private static @Nullable Pair written(Forms forms, String word, Pair asked) {
    if (asked.has(word)) {
      return asked;
    }
    return forms.pairs().stream().filter(pair -> pair.has(word)).findFirst().orElse(null);
  }
}
