package tabor.parse;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tabor.pattern.Rudiments;

/** Rudiments as people call them, each with its name here. */
final class SaidRudiments {
  private static final Pattern PLAYED =
      Pattern.compile("^(hands|feet|right|left)( hand| foot)? plays? ([a-z0-9 -]+) in (?=[a-z])");

  private static final Pattern ALONE = Pattern.compile("^([a-z0-9 -]+) in (?=[a-z0-9])");

  private SaidRudiments() {}

  /** A rudiment's name in one word: {@code single stroke roll}, {@code 5-stroke rolls}. */
  static String written(String said) {
    Matcher played = PLAYED.matcher(said);
    return played.find() ? played.replaceFirst(SaidRudiments::played) : said;
  }

  /** True for a line that begins with a rudiment, where nobody plays it. */
  static boolean isAlone(String said) {
    Matcher alone = ALONE.matcher(said);
    return alone.find() && named(alone.group(1)) != null;
  }

  private static String played(MatchResult found) {
    String known = named(found.group(3));
    if (known == null) {
      return Matcher.quoteReplacement(found.group());
    }
    String limb = found.group(1) + Objects.requireNonNullElse(found.group(2), "");
    return Matcher.quoteReplacement(
        limb + (limb.endsWith("s") ? " play " : " plays ") + known + " in ");
  }

  private static @Nullable String named(String words) {
    List<String> parts = new ArrayList<>(Arrays.asList(words.split("[ -]+", 0)));
    List<String> numbers =
        List.of("five", "six", "seven", "nine", "ten", "eleven", "thirteen", "fifteen");
    int strokes = List.of("5", "6", "7", "9", "10", "11", "13", "15").indexOf(parts.get(0));
    if (strokes >= 0) {
      parts.set(0, numbers.get(strokes));
    }
    String name = String.join("-", parts);
    return Stream.of(
            name,
            name.replaceAll("s$", ""),
            name.replace("double-stroke-roll", "double-stroke-open-roll"),
            "single-" + name)
        .filter(one -> Rudiments.named(one).isPresent())
        .findFirst()
        .orElse(null);
  }
}
