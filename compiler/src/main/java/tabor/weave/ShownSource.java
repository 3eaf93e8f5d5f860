package tabor.weave;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import tabor.compile.Compiled;
import tabor.groove.Section;
import tabor.syntax.Line;
import tabor.syntax.SectionSyntax;
import tabor.syntax.SettingStatement;

/**
 * A lesson's text as a document shows it: as it is written, comments and all, but for what it says
 * to the teacher, which is printed on the teacher's own copy and nowhere else.
 */
final class ShownSource {
  /** A line for the teacher, with all of a text that runs over several lines. */
  private static final Pattern TEACHER =
      Pattern.compile(
          "^[ \\t>]*teacher\\b(?:[^\\r\\n]*?\"\"\"(?s:.*?)(?:\"\"\"|\\z))?[^\\r\\n]*(?:\\R|\\z)",
          Pattern.MULTILINE);

  private ShownSource() {}

  /** All of it. */
  static String whole(Compiled compiled) {
    String text = compiled.text();
    StringBuilder shown = new StringBuilder();
    int done = 0;
    for (SectionSyntax section : compiled.syntax()) {
      Compiled.Where where = compiled.places().get(section.passage());
      if (where == null) {
        continue;
      }
      String before = section.passage().text();
      shown.append(text, done, where.offset()).append(open(section));
      done = where.offset() + before.length();
    }
    return shown.append(text, done, text.length()).toString();
  }

  /** Some sections of it, with a line between. */
  static String sections(Compiled compiled, List<Section> sections) {
    List<String> found = new ArrayList<>();
    for (Section shown : sections) {
      for (SectionSyntax section : compiled.syntax()) {
        if (section.passage() == shown.heading().passage()) {
          found.add(open(section).stripTrailing());
        }
      }
    }
    return String.join("\n\n", found) + "\n";
  }

  /**
   * A text that may not be one of ours, without the lines that begin with {@code teacher} and what
   * their quotes hold.
   */
  static String broken(String text) {
    return TEACHER.matcher(text).replaceAll("");
  }

  /** One passage without the lines that are for the teacher. */
  private static String open(SectionSyntax section) {
    String text = section.passage().text();
    StringBuilder shown = new StringBuilder();
    int done = 0;
    for (Line line : section.lines()) {
      if (line.statement() instanceof SettingStatement.Teacher) {
        int from = text.lastIndexOf('\n', line.start()) + 1;
        int end = text.indexOf('\n', line.spot().span().end());
        shown.append(text, done, from);
        done = end < 0 ? text.length() : end + 1;
      }
    }
    return shown.append(text, done, text.length()).toString();
  }
}
