package tabor.lsp;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.lifecycle.AfterContainer;
import net.jqwik.api.lifecycle.BeforeContainer;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.resolve.Options;

/**
 * Edits as they come: after each burst the server's diagnostics are those of a fresh compilation of
 * the text as the editor has it, which they can only be if the texts are the same.
 */
class RandomEditsTest {
  private static final List<String> SCRAPS =
      List.of(
          "",
          "\n",
          "\r\n",
          "r",
          "l ",
          " | ",
          "x . x .",
          "groove z\n",
          "step \"S\"\n",
          "  add kick at 2&\n",
          "\"",
          "\"\"\"",
          "#",
          "{",
          "}",
          "(",
          ":2",
          "%",
          "at every &",
          "😀",
          "é",
          "\t",
          "in bar 2",
          "use \"other.tabor\"\n",
          "on four-piece\n",
          "pattern six : rl\n",
          "next\n",
          "time 3/4\n",
          "sheet s \"S\"\n",
          "each ",
          "and ",
          "player mia \"Mia\"\n",
          "sections first to z\n",
          "chart c\n  play z each 2 times\n",
          " for 3 minutes",
          "  trade z 1 bar 2 times\n",
          "goal \"Even\"\n",
          "blank kick\n",
          "say fours e und e\n",
          "2und",
          "language de\n");

  private static Editor editor;
  private static List<String> corpus;
  private static int files;

  @BeforeContainer
  static void start() throws Exception {
    editor = Editor.start();
    corpus = new ArrayList<>();
    try (Stream<Path> found = Files.walk(Path.of("..", "examples"))) {
      for (Path file : found.sorted().toList()) {
        if (file.toString().endsWith(".tabor")) {
          corpus.add(Files.readString(file));
        }
      }
    }
  }

  @AfterContainer
  static void stop() throws Exception {
    editor.close();
  }

  record Change(int place, int length, int scrap) {}

  // 250 tries of 40 changes: ten thousand.
  @Property(tries = 250, shrinking = ShrinkingMode.OFF)
  void whatTheServerSaysIsWhatAFreshCompilationSays(
      @ForAll @IntRange(max = 1000) int which,
      @ForAll @Size(40) List<@IntRange(max = 1_000_000) Integer> numbers)
      throws Exception {
    String name = "r" + files++ + ".tabor";
    String text = corpus.get(which % corpus.size());
    if (which % 5 == 0) {
      text = text.replace("\n", "\r\n");
    }
    assertSame(name, text, editor.open(name, text));
    for (int i = 0; i < numbers.size(); i++) {
      int number = numbers.get(i);
      int start = number % (text.length() + 1);
      int end = Math.min(text.length(), start + number / 7 % 5 * (number / 31 % 4));
      String scrap = SCRAPS.get(number / 13 % SCRAPS.size());
      if (insidePair(text, start) || insidePair(text, end)) {
        continue;
      }
      editor.replace(name, start, end, scrap);
      text = editor.text(name);
      if (i % 4 == 3) {
        assertSame(name, text, editor.diagnostics(name));
      }
    }
    editor.send(name, List.of(new TextDocumentContentChangeEvent(text)));
    assertSame(name, text, editor.diagnostics(name));
    editor.close(name);
  }

  private static boolean insidePair(String text, int at) {
    return at > 0
        && at < text.length()
        && (Character.isLowSurrogate(text.charAt(at))
            || (text.charAt(at) == '\n' && text.charAt(at - 1) == '\r'));
  }

  private static void assertSame(String name, String text, List<Diagnostic> published)
      throws IOException {
    Path path = editor.folder.resolve(name);
    Compiled fresh = new Compiler(Loader.NONE).compile(path, text, Options.NONE);
    List<String> expected =
        fresh.diagnostics().stream()
            .map(
                d ->
                    d.code().word()
                        + " "
                        + Editor.position(text, fresh.span(d.spot()).start())
                        + " "
                        + DiagnosticWriter.words(d, ""))
            .toList();
    List<String> told =
        published.stream()
            .map(
                d ->
                    d.getCode().getLeft()
                        + " "
                        + d.getRange().getStart()
                        + " "
                        + d.getMessage().getLeft())
            .toList();
    assertThat(told).as("in%n%s", text).isEqualTo(expected);
  }
}
