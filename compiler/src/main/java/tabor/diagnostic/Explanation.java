package tabor.diagnostic;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/**
 * The page on a code: what it means, an example and its fix. The pages are those of
 * docs/diagnostics, packed beside the classes.
 *
 * @param code the code
 * @param markdown the page as written
 */
public record Explanation(Code code, String markdown) {

  /** The page of a code. A code without one, which a test forbids, gives a page that says so. */
  public static Explanation of(Code code) {
    String name = "/tabor/diagnostics/" + code.word() + ".md";
    try (InputStream in = Explanation.class.getResourceAsStream(name)) {
      return new Explanation(
          code,
          in == null
              ? "# " + code.word() + "\n\nThere is no page on this yet.\n"
              : new String(in.readAllBytes(), StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The first paragraph below the heading, on one line. */
  public String summary() {
    StringBuilder found = new StringBuilder();
    for (String line : (Iterable<String>) markdown.lines()::iterator) {
      if (line.startsWith("#") || (line.isBlank() && found.length() == 0)) {
        continue;
      }
      if (line.isBlank()) {
        break;
      }
      found.append(found.length() == 0 ? "" : " ").append(line.strip());
    }
    return found.toString().replace("`", "");
  }

  /** The page for a terminal: headings bare, code indented by four. */
  public String plain() {
    StringBuilder out = new StringBuilder();
    boolean code = false;
    for (String line : (Iterable<String>) markdown.lines()::iterator) {
      if (line.startsWith("```")) {
        code = !code;
      } else if (code) {
        out.append(line.isEmpty() ? "" : "    " + line).append('\n');
      } else if (line.startsWith("#")) {
        out.append(line.substring(line.lastIndexOf('#') + 1).strip()).append('\n');
      } else {
        out.append(line.replace("`", "")).append('\n');
      }
    }
    return out.toString();
  }
}
