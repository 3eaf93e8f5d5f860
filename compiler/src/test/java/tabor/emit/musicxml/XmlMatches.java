package tabor.emit.musicxml;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What a text holds, one after the other. */
final class XmlMatches {
  private XmlMatches() {}

  /** The first group of each match of a pattern. */
  static List<String> all(String pattern, String text) {
    List<String> found = new ArrayList<>();
    Matcher matcher = Pattern.compile(pattern).matcher(text);
    while (matcher.find()) {
      found.add(matcher.group(1));
    }
    return found;
  }
}
