package tabor.parse;

import org.jspecify.annotations.Nullable;
import tabor.grammar.TaborLexer;
import tabor.grammar.TaborParser;
import tabor.syntax.Text;

/** Quoted texts to what they say. */
final class TextBuilder {
  private TextBuilder() {}

  /** A text that may run over several lines. */
  static Text prose(TaborParser.TextContext context) {
    String written = context.quoted.getText();
    boolean triple = context.quoted.getType() == TaborLexer.TRIPLE_QUOTED;
    int quotes = triple ? 3 : 1;
    String inner = written.substring(quotes, written.length() - quotes);
    return new Text(triple ? unindented(inner) : inner, triple, Spans.of(context));
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

  /**
   * What a triple text says: the first and the last line are left out if they are blank, the
   * indentation common to all lines is taken off (a first line right after the quotes has none to
   * take), lines end with LF.
   */
  private static String unindented(String inner) {
    String[] lines = inner.split("\r\n|\r|\n", -1);
    int common = Integer.MAX_VALUE;
    for (int i = 1; i < lines.length; i++) {
      if (!lines[i].isBlank()) {
        common = Math.min(common, indentation(lines[i]));
      }
    }
    StringBuilder text = new StringBuilder();
    boolean first = true;
    for (int i = 0; i < lines.length; i++) {
      boolean blank = lines[i].isBlank();
      if (blank && (i == 0 || i == lines.length - 1)) {
        continue;
      }
      if (!first) {
        text.append('\n');
      }
      first = false;
      if (!blank) {
        text.append(i == 0 ? lines[i].strip() : lines[i].substring(common).stripTrailing());
      }
    }
    return text.toString();
  }

  private static int indentation(String line) {
    int at = 0;
    while (at < line.length() && (line.charAt(at) == ' ' || line.charAt(at) == '\t')) {
      at++;
    }
    return at;
  }
}
