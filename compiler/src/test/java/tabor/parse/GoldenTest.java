package tabor.parse;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.Collectors;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tabor.diagnostic.Diagnostic;
import tabor.source.LineIndex;
import tabor.source.Passage;
import tabor.source.Span;
import tabor.syntax.Line;
import tabor.syntax.SectionSyntax;
import tabor.testing.Goldens;

/** What is said of broken lines, and what is read from good ones, as a person would see it. */
class GoldenTest {
  @ParameterizedTest
  @ValueSource(
      strings = {
        "header",
        "headings",
        "kit",
        "beats",
        "edits",
        "chart",
        "misplaced",
        "texts",
        "meant",
        "invisible",
        "starts",
        "teaching",
        "paper"
      })
  void problems(String name) {
    String folder = "tabor/parse/problems/";
    String text = Goldens.resource(folder + name + ".tabor");
    StringBuilder out = new StringBuilder();
    Reader reader = new Reader();
    LineIndex index = new LineIndex(text);
    int offset = 0;
    for (Passage passage : Reader.passages(text)) {
      for (Diagnostic problem : reader.read(passage).problems()) {
        out.append(shown(text, index, problem, offset)).append('\n');
      }
      offset += passage.text().length();
    }
    Goldens.check(folder + name + ".golden", out.toString());
  }

  private static String shown(String text, LineIndex index, Diagnostic problem, int offset) {
    Span span = problem.spot().span().shift(offset);
    int line = index.lineOf(span.start());
    String source = text.substring(index.lineStart(line), index.lineEnd(line));
    int column = index.columnOf(span.start());
    int length = Math.max(1, Math.min(span.length(), source.length() - column));
    StringBuilder out = new StringBuilder();
    out.append(line + 1).append(" | ").append(source.replace('\t', ' ')).append('\n');
    out.append(" ".repeat(String.valueOf(line + 1).length() + 3 + column));
    out.append("^".repeat(length)).append('\n');
    out.append(problem.code().word()).append(": ").append(problem.message()).append('\n');
    if (problem.help() != null) {
      out.append("help: ").append(problem.help()).append('\n');
    }
    for (Diagnostic.Fix fix : problem.fixes()) {
      assertThat(fix.title()).matches("[A-Z].*[^.]");
      out.append("fix: ").append(fix.title()).append(" -> ");
      out.append(
          fix.edits().stream()
              .map(e -> "`" + e.spot().text() + "` to `" + e.text() + "`")
              .collect(Collectors.joining(", ")));
      out.append('\n');
    }
    return out.toString();
  }

  @ParameterizedTest
  @ValueSource(strings = {"everything", "names", "beats", "teaching"})
  void trees(String name) {
    String folder = "tabor/parse/trees/";
    String text = Goldens.resource(folder + name + ".tabor");
    StringBuilder out = new StringBuilder();
    Reader reader = new Reader();
    for (Passage passage : Reader.passages(text)) {
      SectionSyntax section = reader.read(passage);
      if (section.heading() != null) {
        out.append(tree(section.heading()));
      }
      for (Line line : section.lines()) {
        out.append(tree(line));
      }
      for (Diagnostic problem : section.problems()) {
        out.append(problem.message()).append('\n');
      }
    }
    Goldens.check(folder + name + ".golden", out.toString());
  }

  /** Spans show the text that they cover, so that a wrong one is seen at a glance. */
  private static String tree(Line line) {
    String tree = line.statement().toString();
    StringBuilder out = new StringBuilder(line.spot().text()).append('\n').append("  ");
    int from = 0;
    var span = java.util.regex.Pattern.compile("(, )?span=Span\\[start=(\\d+), end=(\\d+)]");
    var found = span.matcher(tree);
    while (found.find()) {
      Span counted = new Span(Integer.parseInt(found.group(2)), Integer.parseInt(found.group(3)));
      out.append(tree, from, found.start());
      out.append(" `").append(line.spot(counted).text().replace("\n", "\\n")).append('`');
      from = found.end();
    }
    return out.append(tree.substring(from)).append("\n").toString();
  }
}
